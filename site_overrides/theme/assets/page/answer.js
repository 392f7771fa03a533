/* The answer of a calculator: shown, greyed or taken away. Python writes its HTML
   and escapes what a reader typed; every other word goes in as text. */

import { element } from "./page.js";

const NONE = "No answer: see the message beside the field.";

export function createAnswer(place) {
  const first = Array.from(place.childNodes);
  const note = element("p", { text: "Inputs changed: this answer is of earlier values.", class: "bb-stale-note", hidden: "" });
  place.before(note);

  const openFolds = () =>
    new Set(Array.from(place.querySelectorAll("details[open] > summary"), (summary) => summary.textContent));

  function setStale(stale) {
    note.hidden = !stale;
    place.toggleAttribute("data-stale", stale);
    place.dispatchEvent(new Event("answer", { bubbles: true }));
  }

  return {
    setStale,
    show(made) {
      const open = openFolds();
      place.innerHTML = made.html;
      for (const summary of place.querySelectorAll("details > summary")) {
        if (open.has(summary.textContent)) summary.parentElement.open = true;
      }
      setStale(false);
    },
    showFirst() {
      place.replaceChildren(...first);
      setStale(false);
    },
    showNone(sentences) {
      const lines = sentences.length ? sentences : [NONE];
      place.replaceChildren(...lines.map((text) => element("p", { text, class: "bb-none" })));
      setStale(false);
    },
  };
}
