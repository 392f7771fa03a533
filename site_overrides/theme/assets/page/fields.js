/* One field of a form. What was typed is what is sent, until the reader edits it. */

import { ask } from "./starter.js";
import { element } from "./page.js";

const EXAMPLE = "Example value. ";
const NAMES_ITS_UNIT = /[\p{L}#№"'″′”’%°º]/u;

/* What was typed with the unit chosen beside it, unless it names one itself. */
export function withUnit(text, unit) {
  const bare = text.replace(/(\d)[eE]([+-]?\d)/g, "$1$2");
  return !unit || NAMES_ITS_UNIT.test(bare) ? text : `${text} ${unit}`;
}

/* Number and unit of a text whose end is one of the units offered. */
export function splitUnit(text, units) {
  for (const unit of units) {
    const number = unit && text.endsWith(unit) ? text.slice(0, -unit.length).trim() : "";
    if (number && !NAMES_ITS_UNIT.test(number)) return { number, unit };
  }
  return null;
}

export function createField(wrap, calculator) {
  const name = wrap.dataset.field;
  const box = wrap.querySelector(`[name="${name}"]`);
  const unit = wrap.querySelector("[data-unit]");
  const error = wrap.querySelector("[data-error]");
  const units = unit ? Array.from(unit.options, (option) => option.value) : [];
  const first = { value: asBuilt(box), unit: unit && asBuilt(unit) };
  const isEarly = box.value !== first.value || (unit && unit.value !== first.unit);
  const early = isEarly ? { value: box.value, unit: unit?.value } : null; // typed before this script was here
  const isChoice = box instanceof HTMLSelectElement;
  const mark = createMark(box);
  let original = null; // text as typed or linked, where the box shows something else
  let shownUnit = unit?.value;
  let turn = 0;

  /* The box takes other words: a conversion that is on its way no longer counts. */
  function take(asTyped, isExample = false, from = "") {
    turn += 1;
    original = asTyped;
    field.isExample = isExample && !from;
    field.from = from;
    mark(from || (isExample ? EXAMPLE : ""));
  }

  box.addEventListener("input", () => {
    take(null);
    field.touched = true;
  });
  unit?.addEventListener("input", async () => {
    const wanted = unit.value;
    const typed = box.value.trim();
    if (typed) original ??= withUnit(typed, shownUnit);
    shownUnit = wanted;
    if (!typed) return;
    const exact = splitUnit(original, units);
    if (exact?.unit === wanted) {
      box.value = exact.number;
      return;
    }
    box.value = original; // true by itself until its conversion is here
    const mine = (turn += 1);
    const convert = { calculator, field: name, text: original, unit: wanted };
    const reply = await ask({ convert }).catch(() => ({}));
    if (mine === turn && typeof reply.text === "string") box.value = reply.text;
  });

  const field = {
    name,
    box,
    isChoice,
    isExample: false,
    from: "", // where its text comes from, if it was not typed here
    touched: false,
    isAsked: () => !wrap.hidden,
    /* The option that holds: the one picked, or the one assumed. */
    chosen: () => box.value || box.dataset.assumed,
    followChoices(chosen) {
      if (!wrap.dataset.when) return;
      const conditions = Object.entries(JSON.parse(wrap.dataset.when));
      wrap.hidden = !conditions.every(([choice, options]) => options.includes(chosen[choice]));
    },
    sent() {
      if (original !== null) return original;
      const typed = isChoice ? box.value : box.value.trim();
      return typed && withUnit(typed, isChoice ? "" : unit?.value);
    },
    label: () => wrap.querySelector("label").firstChild.textContent.trim(),
    /* As `sent`, in the words of the page where it is a choice. */
    said() {
      if (isChoice) return box.selectedOptions[0]?.textContent ?? "";
      const typed = box.value.trim();
      return typed && withUnit(typed, unit?.selectedOptions[0]?.textContent);
    },
    /* Whether it is other than what the page came with; another rule set's example is not. */
    isChanged: () => !field.isExample && field.sent() !== initial,
    show(text, from = "") {
      const split = splitUnit(text, units);
      box.value = split ? split.number : text;
      if (unit) unit.value = shownUnit = split ? split.unit : first.unit;
      take(isChoice && box.value === text ? null : text, isExampleOf(box, text), from);
    },
    /* Another rule set has its own example: it follows while the box still holds one. */
    followRules(rules) {
      const text = box.dataset[`example${rules.slice(0, 1).toUpperCase()}${rules.slice(1)}`];
      if (field.isExample && text !== undefined && text !== field.sent()) field.show(text);
    },
    /* The day of the phone's own clock, until the reader writes another. */
    isPhoneDay: () => "today" in box.dataset && !field.touched && original === null,
    followClock() {
      if (field.isPhoneDay()) box.value = phoneDay();
    },
    showFirst() {
      box.value = first.value;
      if (unit) unit.value = shownUnit = first.unit;
      take(null, "example" in box.dataset && first.value !== "");
      field.touched = false;
    },
    /* What was typed before this script was here; false where nothing was. */
    takeEarly() {
      if (!early) return false;
      box.value = early.value;
      if (unit) unit.value = shownUnit = early.unit;
      take(null);
      field.touched = true;
      return true;
    },
    clear() {
      box.value = "";
      take(null);
      field.touched = false;
    },
    setError(message) {
      error.textContent = message;
      error.hidden = !message;
      if (message) box.setAttribute("aria-invalid", "true");
      else box.removeAttribute("aria-invalid");
      if (message) error.closest("details")?.setAttribute("open", "");
    },
  };
  field.showFirst();
  const initial = field.sent();
  return field;
}

/* What the page came with, whatever stands in the box by now. */
function asBuilt(box) {
  if (!(box instanceof HTMLSelectElement)) return box.defaultValue;
  return (Array.from(box.options).find((option) => option.defaultSelected) ?? box.options[0])?.value ?? "";
}

/* Whether a text is the example of any rule set. */
function isExampleOf(box, text) {
  return Object.entries(box.dataset).some(([hook, example]) => hook.startsWith("example") && example === text);
}

/* The mark goes into the hint, which screen readers read with the box; it is there only
   while it says something, as the theme hides an empty hint. */
function createMark(box) {
  const hint = document.getElementById((box.getAttribute("aria-describedby") ?? "").split(" ")[0]);
  const mark = element("span", { class: "bb-mark" });
  return (words) => {
    mark.textContent = words;
    if (words) hint?.prepend(mark);
    else mark.remove();
  };
}

/* The day as a date box takes it, by the phone's clock and place. */
function phoneDay() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
