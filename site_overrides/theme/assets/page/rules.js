/* The rule set: a visible choice, the same on every page, never guessed. */

import { remember, remembered } from "./page.js";

const KEY = "benchbook-rules";
const HOOK = "[data-rules-choice]";

export const storedRules = () => remembered("localStorage", KEY);

export function reflectRules(rules = storedRules() ?? document.querySelector(HOOK)?.value) {
  if (rules) document.documentElement.dataset.rules = rules;
  else delete document.documentElement.dataset.rules;
}

/* A choice outside a form: shown where it works, set to what was chosen before. */
export function mountRules(place) {
  const choice = place.querySelector(HOOK);
  choice.value = storedRules() ?? "";
  place.hidden = false;
}

let following = false; // while the other choices of the page follow one

/* Show one rule set in all choices of the page; each form hears of it. */
export function showRules(rules) {
  reflectRules(rules);
  following = true;
  for (const choice of document.querySelectorAll(HOOK)) {
    const offered = Array.from(choice.options, (option) => option.value);
    if (choice.value !== rules && offered.includes(rules)) {
      choice.value = rules;
      choice.dispatchEvent(new Event("change", { bubbles: true }));
    }
  }
  following = false;
}

document.addEventListener("change", ({ target }) => {
  if (following || !target.matches?.(HOOK)) return;
  remember("localStorage", KEY, target.value);
  showRules(target.value);
});
