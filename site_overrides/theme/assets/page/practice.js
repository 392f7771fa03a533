/* A learner at a set: one question at a time, missed ones come back. Python makes the questions and judges the
   answers; how far a learner is stays on this device. */

import { copyOrShow } from "./copying.js";
import { readLink, showAddress, writeLink } from "./link.js";
import { SITE, button, element, remember, remembered } from "./page.js";
import { storedRules } from "./rules.js";
import { ask, onEngine, start } from "./starter.js";

const NOTHING = "The set could not be made here. Load the page again, or ask for the printed one.";
const LEVELS = ["bare", "steps", "worked"];

const randomSeed = () => String(1 + (crypto.getRandomValues(new Uint32Array(1))[0] % 999999));

const today = () => new Date().toLocaleDateString([], { dateStyle: "long" });

export function mountPractice(block) {
  const kind = block.dataset.practice;
  const find = (hook) => block.querySelector(`[data-practice-${hook}]`);
  const [form, question, buttons, said, tools, first] = ["form", "question", "buttons", "said", "tools", "first"].map(find);
  const choices = Array.from(form.querySelectorAll("[data-practice-choice]"));
  const linked = readLink(location, kind, true);
  let texts = linked ? Object.fromEntries(linked.values) : { rules: storedRules() ?? "us", seed: "1" };
  let about = null;
  let left = []; // numbers still to answer, in their order
  let missed = {}; // how often each was missed
  let isOpen = false; // a question waits for its answer

  const key = () => `practice-${kind}-${new URLSearchParams(texts)}`;
  const say = (words) => { if (said.textContent !== words) said.textContent = words; };
  const practice = (more) => ask({ practice: { set: kind, texts, ...more } }).catch(() => ({ errors: [{ message: NOTHING }] }));
  const keep = () => remember("localStorage", key(), JSON.stringify({ release: about.words, left, missed }));

  function restore() {
    left = Array.from({ length: about.count }, (_, place) => place + 1);
    missed = {};
    try {
      const kept = JSON.parse(remembered("localStorage", key()));
      const isOurs = kept?.release === about.words && Array.isArray(kept.left);
      if (isOurs) [left, missed] = [kept.left.filter((number) => left.includes(number)), kept.missed ?? {}];
    } catch {
      // what was kept cannot be read: from the beginning
    }
  }

  /* What the page was opened with is what the choices show; after that they say what is made. */
  function showChoices() {
    for (const choice of choices) {
      const wanted = texts[choice.dataset.practiceChoice];
      if (Array.from(choice.options, ({ value }) => value).includes(wanted)) choice.value = wanted;
    }
  }

  async function begin() {
    say("Making the set.");
    const reply = await practice({});
    if (reply.errors) return stop(reply.errors[0].message);
    about = reply;
    first.hidden = true;
    restore();
    if (!about.count) return stop("There are no questions here yet.");
    return show();
  }

  function stop(words) {
    isOpen = false;
    question.replaceChildren();
    buttons.replaceChildren(primary("Try again", begin));
    say(words);
  }

  function primary(words, press) {
    const made = button(words, press);
    made.className = "bb-primary";
    return made;
  }

  async function show(level = "") {
    if (!left.length) return end();
    const [number] = left;
    const times = missed[number] ?? 0;
    const help = level || (times ? LEVELS[Math.min(times, 2)] : "");
    const reply = await practice({ number, level: help });
    if (reply.errors) return stop(reply.errors[0].message);
    question.innerHTML = reply.html;
    isOpen = true;
    const check = primary("Check", () => {});
    check.type = "submit";
    buttons.replaceChildren(check);
    const shown = LEVELS.indexOf(question.querySelector("[data-level]")?.dataset.level);
    if (shown >= 0 && shown < 2) buttons.append(button("More help", () => show(LEVELS[shown + 1])));
    say(`${about.words} Left: ${left.length}.${times ? " This one was missed before." : ""}`);
    question.focus({ preventScroll: true });
    question.scrollIntoView({ block: "nearest" });
    return null;
  }

  function given() {
    const box = question.querySelector("[data-practice-answer]");
    if (box) return box.value;
    const parts = Array.from(question.querySelectorAll("fieldset"), (part) => part.querySelector("input:checked")?.value ?? "");
    return parts.join(",");
  }

  async function check() {
    if (!isOpen) return null;
    const [number] = left;
    const reply = await practice({ number, answer: given() });
    if (!isOpen || left[0] !== number) return null;
    if (reply.errors) return say(reply.errors[0].message);
    isOpen = false;
    left.shift();
    if (!reply.right) {
      missed[number] = (missed[number] ?? 0) + 1;
      left.push(number);
    }
    keep();
    for (const box of question.querySelectorAll("input")) box.disabled = true;
    const back = reply.right ? "" : left.length > 1 ? " It comes back at the end." : " Once more.";
    const next = primary(left.length ? "Next" : "To the end", () => show());
    buttons.replaceChildren(next);
    if (reply.page) {
      const address = `${SITE}${reply.page.replace(/(index)?\.md$/, "")}${reply.page.endsWith("index.md") ? "" : "/"}`;
      buttons.append(element("a", { text: "Read it on its page", href: address, class: "bb-button" }));
    }
    question.dataset.verdict = reply.right ? "right" : "wrong";
    say(`${reply.said}${back}`);
    next.focus({ preventScroll: true });
    buttons.scrollIntoView({ block: "nearest" });
    return null;
  }

  function end() {
    isOpen = false;
    question.replaceChildren(element("p", { text: about.end, class: "bb-end" }), element("p", { text: `${today()}. ${about.words}` }));
    buttons.replaceChildren(primary("Once more from the beginning", again));
    say(about.end);
    question.focus({ preventScroll: true });
  }

  function again() {
    remember("localStorage", key(), null);
    restore();
    show();
  }

  function change(more) {
    texts = { ...texts, ...more };
    showAddress(writeLink(location, texts, kind, true));
    begin();
  }

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    check();
  });
  form.addEventListener("change", ({ target }) => {
    const name = target.dataset.practiceChoice;
    if (name) change({ [name]: target.value });
  });
  question.addEventListener("input", () => delete question.dataset.verdict);
  tools.append(
    button("Another set", () => change({ seed: randomSeed() })),
    button("Start over", () => about && again()),
    button("Copy link", () => copyOrShow(tools, "Link to this set", writeLink(location, texts, kind, true))),
  );
  form.hidden = false;
  showChoices();
  buttons.replaceChildren(primary("Start", begin));
  for (const problem of linked?.problems ?? []) say(problem);
  onEngine(({ state, words }) => {
    if (!block.isConnected) return false;
    if (words && !about) say(words);
    if (state === "ready" && !about && linked) begin();
    return true;
  });
  block.addEventListener("focusin", () => start().catch(() => {}), { once: true });
}
