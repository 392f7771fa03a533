/* Values of a link in a form, and the note that says so. */

import { element, quoted } from "./page.js";

const LINK = "Values set by the link. Check each one.";

export function createLinkNote(form) {
  const note = element("div", { class: "bb-link", hidden: "", data: { linkNote: "" } });
  form.prepend(note);
  return {
    hide() { note.hidden = true; },

    /* Show what a link or an outfit sets; what it names and the form does not ask is said. */
    show({ values, problems, heading = LINK, mark = "" }, fields, resetButton) {
      const left = new Map(values);
      for (const field of fields) {
        if (left.has(field.name)) field.show(left.get(field.name), mark);
        left.delete(field.name);
      }
      const unknown = Array.from(left.keys(), (name) =>
        `The link also sets ${quoted(name, 40)}, which is not asked here; it is left out.`);
      const lines = [heading, ...problems, ...unknown];
      note.replaceChildren(...lines.map((text) => element("p", { text })), resetButton);
      note.hidden = false;
    },
  };
}
