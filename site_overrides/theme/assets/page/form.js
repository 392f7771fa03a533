/* One calculator on a page: its fields, its link, its answer. */

import { createAnswer } from "./answer.js";
import { errorWords, showErrors } from "./errors.js";
import { createField } from "./fields.js";
import { mountFiles } from "./files.js";
import { readLink, showAddress, writeLink } from "./link.js";
import { createLinkNote } from "./linked.js";
import { mountOutfit } from "./outfit.js";
import { reflectRules, storedRules } from "./rules.js";
import { ask, engineState, idle, onEngine, start } from "./starter.js";
import { createStatus } from "./status.js";
import { mountTools } from "./tools.js";

const CHANGED = "Inputs changed: leave the field or press Calculate for a new answer.";
const mounted = new Set();

export function mountCalculator(block) {
  const form = block.querySelector("[data-form]");
  const id = block.dataset.calculator;
  const fields = Array.from(form.querySelectorAll("[data-field]"), (wrap) => createField(wrap, id));
  const rules = fields.find((field) => field.box.matches("[data-rules-choice]"));
  const status = createStatus(form.querySelector("[data-engine]"));
  const answer = createAnswer(block.querySelector("[data-answer]"));
  const linkNote = createLinkNote(form);
  let answered = JSON.stringify(request()); // what the answer on the page rests on
  const first = answered;
  let turn = 0;
  let waiting = 0; // questions on their way
  let isTyping = false; // between a keystroke and leaving the field

  function texts({ phoneDay = true } = {}) {
    const asked = fields.filter((field) => field.isAsked() && (phoneDay || !field.isPhoneDay()));
    return Object.fromEntries(asked.map((field) => [field.name, field.sent()]).filter(([, text]) => text));
  }

  function request() {
    return { calculator: id, texts: texts(), units: {} };
  }

  const isAlone = () => document.querySelectorAll("[data-calculator]").length === 1;
  const linkWith = (given) => writeLink(location, given, id, isAlone());
  const link = () => linkWith(texts({ phoneDay: false }));
  const keepsOutfit = block.dataset.outfit === "keep"; // it stays out of the address
  const isFirst = () => document.querySelector("[data-calculator]") === block;

  /* Nothing is asked twice, and an answer that was overtaken is not shown. */
  async function calculate({ all = false } = {}) {
    const asked = request();
    const key = JSON.stringify(asked);
    if (key === answered && !all) {
      showErrors(fields, [], all);
      answer.setStale(false);
      status.say("");
      return null;
    }
    const mine = (turn += 1);
    answer.setStale(true);
    let reply;
    waiting += 1;
    try {
      reply = await ask({ ...asked, drawings: false });
    } catch {
      if (mine === turn && engineState() !== "failed") status.sayNow("The calculator gave no answer. Use the table on this page, or press Calculate to try again.");
      return null;
    } finally {
      waiting -= 1;
    }
    if (mine !== turn) return null;
    const shown = showErrors(fields, reply.errors ?? [], all);
    if (reply.errors) {
      answered = null;
      answer.showNone(shown.elsewhere);
      status.say(errorWords(shown, reply.errors));
      return null;
    }
    answered = key;
    answer.show(reply);
    if ("changed" in block.dataset && !keepsOutfit) showAddress(link());
    tools.drawSquare();
    if (reply.answer.more) showDrawings(asked, mine);
    const [result] = Object.values(reply.answer.results);
    status.say(`New answer. ${result.label}: ${result.text}.`);
    return reply;
  }

  /* Maps and curves take longer: they follow the answer and never hold it up. */
  async function showDrawings(asked, mine) {
    const whole = await ask(asked).catch(() => null);
    if (whole && !whole.errors && mine === turn) {
      answer.show(whole);
      tools.drawSquare();
    }
  }

  /* What is asked a first time takes longest: the reader's own question is the second. */
  function warmUp() {
    idle().then(() => (waiting ? null : ask({ ...request(), drawings: false }))).catch(() => {});
  }

  function markChanged() {
    isTyping = true;
    block.dataset.changed = block.dataset.own = "";
    turn += 1;
    const same = JSON.stringify(request()) === answered;
    answer.setStale(!same);
    status.say(same ? "" : CHANGED);
  }

  /* Back to the values and the answer that the page came with. */
  function reset() {
    for (const field of fields) {
      field.showFirst();
      field.setError("");
      field.followClock();
    }
    useStoredRules();
    showAsked();
    linkNote.hide();
    delete block.dataset.changed;
    delete block.dataset.own;
    showAddress(location.pathname);
    if (JSON.stringify(request()) === first) {
      turn += 1;
      answered = first;
      answer.showFirst();
      status.say("These are the example values again.");
    } else {
      calculate();
    }
  }

  function clearExamples() {
    for (const field of fields) if (field.isExample && !field.isChoice) field.clear();
    answer.showNone(["No answer yet: write your own values."]);
    answered = null;
    block.dataset.changed = "";
    turn += 1;
    status.say("The examples are cleared.");
    fields.find((field) => field.isAsked() && !field.isChoice && !field.sent())?.box.focus();
  }

  function useStoredRules() {
    const chosen = storedRules();
    if (rules && Array.from(rules.box.options).some(({ value }) => value === chosen)) rules.box.value = chosen;
    reflectRules();
    followRules();
  }

  function followRules() {
    if (rules) for (const field of fields) field.followRules(rules.sent());
  }

  /* Some fields are asked only with certain choices. */
  function showAsked() {
    const chosen = {};
    for (const field of fields) {
      field.followChoices(chosen);
      if (field.isChoice && field.isAsked()) chosen[field.name] = field.chosen();
    }
  }

  /* What a link leaves out stands as the example of the rule set that holds. */
  function readAddress() {
    const found = readLink(location, id, isFirst());
    if (!found) return;
    const others = fields.filter((field) => field !== rules && !found.values.has(field.name));
    for (const field of others) {
      field.showFirst();
      field.followClock();
    }
    takeTexts(found);
    for (const field of others) if (rules) field.followRules(rules.sent());
    showAsked();
  }

  /* Texts that were typed elsewhere: by a link, from an outfit. */
  function takeTexts(found) {
    block.dataset.own = "";
    linkNote.show(found, fields, tools.resetButton());
    showAsked();
    if (rules?.sent()) reflectRules(rules.sent());
    tools.refresh();
  }

  form.addEventListener("input", markChanged);
  form.addEventListener("change", () => {
    isTyping = false;
    followRules();
    showAsked();
    tools.refresh();
    calculate();
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    block.dataset.own = "";
    status.sayNow("Working it out.");
    calculate({ all: true });
  });
  for (const touch of ["focusin", "pointerdown"]) {
    form.addEventListener(touch, () => start().catch(() => {}), { once: true });
  }

  const tools = mountTools(block, { fields, calculate, link, linkWith, reset, clearExamples });
  mountFiles(block, request);
  useStoredRules();
  for (const field of fields) field.followClock();
  mountOutfit(block, { fields, texts, calculate, takeTexts, showAsked, reset, status, isLinked: Boolean(readLink(location, id, isFirst())) });
  showAsked();

  const examples = () => fields.filter((field) => field.isAsked() && field.isExample && !field.isChoice).map((field) => field.label());
  const entry = { block, link, request, examples, apply() { readAddress(); tools.refresh(); settle(); } };
  function settle() {
    if (JSON.stringify({ ...request(), texts: texts({ phoneDay: false }) }) === answered) return;
    answer.setStale(true);
    status.say("The answer below is of other values; yours follow when the calculator is ready.");
    if (engineState() === "ready") calculate();
  }
  /* A reader may be quicker than the scripts of the page: what stands in a box is not the example then. */
  function takeEarly() {
    const typed = fields.filter((field) => field.takeEarly());
    if (!typed.length) return;
    markChanged();
    isTyping = false;
    followRules();
    showAsked();
    tools.refresh();
    settle();
  }
  mounted.add(entry);
  entry.apply();
  takeEarly();
  onEngine(({ state, words }) => {
    if (!block.isConnected) return mounted.delete(entry) && false;
    if (words) status.sayNow(words);
    if (state !== "ready" || isTyping || waiting) return true;
    if (JSON.stringify(request()) === answered) warmUp();
    else calculate();
    return true;
  });
}

/* Address that opens one calculator of this page with the values in it. */
export const linkOf = (id) => entryOf(id)?.link();

const entryOf = (id) => Array.from(mounted).find(({ block }) => block.isConnected && block.dataset.calculator === id);

/* Calculator and texts of one form of this page, as they stand in it now. */
export const requestOf = (id) => entryOf(id)?.request();

/* Labels of what still holds an example value. */
export const examplesOf = (id) => entryOf(id)?.examples() ?? [];

/* The address changed while the page stayed. */
export function applyLink() {
  for (const { block, apply } of mounted) if (block.isConnected) apply();
}
