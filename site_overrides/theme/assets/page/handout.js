/* One page of this site as a sheet of paper, with the answers of the values that its link names. */

import { createField } from "./fields.js";
import { readLink } from "./link.js";
import { SITE } from "./page.js";
import { ask } from "./starter.js";

const NEEDLESS = "script, form, [data-no-print], [data-tools], [data-files], [data-rules-place], [data-by-hand], .headerlink";
const MARKS = ["id", "for", "name", "aria-labelledby", "aria-describedby"];

/* An address of this very site, or null. */
export function ownAddress(text) {
  try {
    const address = new URL(text.trim(), location.href);
    return address.href.startsWith(SITE) ? address : null;
  } catch {
    return null;
  }
}

/* Texts of a form as the page comes, with those that a link sets. */
function textsOf(block, values) {
  const id = block.dataset.calculator;
  const fields = Array.from(block.querySelectorAll("[data-field]"), (wrap) => createField(wrap, id));
  const chosen = {};
  const texts = {};
  const rules = values.get("rules");
  for (const field of fields) {
    if (values.has(field.name)) field.show(values.get(field.name));
    else if (rules) field.followRules(rules);
    field.followChoices(chosen);
    if (!field.isAsked()) continue;
    if (field.isChoice) chosen[field.name] = field.chosen();
    if (field.sent()) texts[field.name] = field.sent();
  }
  return texts;
}

/* The answer that a link names, in its place; an answer of examples keeps that word. */
async function answerAnew(article, address) {
  const blocks = Array.from(article.querySelectorAll("[data-calculator]"));
  for (const block of blocks) {
    const calculator = block.dataset.calculator;
    const found = readLink(address, calculator, block === blocks[0]);
    if (!found) continue;
    const place = block.querySelector("[data-answer]");
    const reply = await ask({ calculator, texts: textsOf(block, found.values) });
    block.querySelector("[data-example-note]")?.remove();
    if (reply.html) place.innerHTML = reply.html;
    else place.textContent = (reply.errors ?? [{ message: "No answer." }]).map(({ message }) => message).join(" ");
    block.dataset.answered = "";
  }
  for (const spot of article.querySelectorAll("[data-figure]")) {
    const [calculator, result] = spot.dataset.figure.split(":");
    const row = article.querySelector(`[data-calculator="${calculator}"][data-answered] [data-result="${result}"] .bb-value`);
    if (row) spot.textContent = row.textContent;
  }
}

/* Nothing of the page stays alive on the sheet; a drawing keeps the names that it uses itself. */
function still(article, address) {
  for (const block of article.querySelectorAll("[data-calculator]:not([data-answered])")) {
    const note = block.querySelector("[data-example-note]");
    if (note) block.querySelector("[data-answer]").before(note);
  }
  for (const each of article.querySelectorAll(NEEDLESS)) each.remove();
  for (const box of article.querySelectorAll("textarea")) {
    box.setAttribute("aria-label", box.closest(".bb-write")?.querySelector("label")?.textContent ?? "To write on");
  }
  for (const each of article.querySelectorAll("*")) {
    if (each.closest("svg")) continue;
    for (const mark of MARKS) each.removeAttribute(mark);
    for (const hook of Object.keys(each.dataset)) delete each.dataset[hook];
  }
  for (const link of article.querySelectorAll("a[href]")) link.href = new URL(link.getAttribute("href"), address).href;
  for (const picture of article.querySelectorAll("img[src]")) picture.src = new URL(picture.getAttribute("src"), address).href;
  for (const fold of article.querySelectorAll("details")) fold.open = true;
}

/* Title and article of a page; it comes from the same host, or from what the device keeps. */
export async function fetchHandout(address) {
  const reply = await fetch(address.origin + address.pathname);
  if (!reply.ok) throw new Error("there is no such page");
  const made = new DOMParser().parseFromString(await reply.text(), "text/html");
  const found = made.querySelector("article.md-content__inner");
  const heading = found?.querySelector("h1");
  if (!heading) throw new Error("that is no page with text");
  const article = document.createElement("section");
  article.className = "bb-pack-page bb-pack-handout";
  article.dataset.sheetPage = "handout";
  article.append(...document.adoptNode(found).childNodes);
  await answerAnew(article, address);
  still(article, address);
  return { title: heading.textContent.trim(), article };
}
