/* A link for a lesson: which of the values go into it, and how it is pasted into a page. */

import { copyText } from "./copying.js";
import { button, element } from "./page.js";
import { ask } from "./starter.js";

const WHICH = {
  all: "All values",
  changed: "Only those that I changed",
  pick: "Those that I pick",
};
/* What a box of its own decides: the rule set, and the units of the results. */
const FIXED = { rules: "Fix the rule set", shown_in: "Fix the units of the results" };
const SIGNS = /[\\`*_{}[\]<>()#!|~&]/g; // what Markdown would read as its own

export const htmlLine = (title, address) => element("a", { text: title, href: address }).outerHTML;

export const markdownLine = (title, address) => `[${title.replace(SIGNS, "\\$&")}](<${address}>)`;

function tick(kind, name, text, isTicked, data) {
  const label = element("label", { class: "bb-pick" });
  const box = element("input", { type: kind, name, autocomplete: "off", data });
  box.checked = isTicked;
  label.append(box, element("span", { text }));
  return { label, box };
}

function group(legend, ...lines) {
  const made = element("fieldset", { class: "bb-picks" });
  made.append(element("legend", { text: legend }), ...lines);
  return made;
}

/* `linkWith` makes an address of texts by name. */
export function mountLesson(block, { fields, linkWith }) {
  const title = block.querySelector(".bb-title").textContent;
  const fold = element("details", { class: "bb-lesson", data: { lesson: "", noPrint: "" } });
  fold.append(element("summary", { text: "Link for a lesson" }));
  block.querySelector("[data-tools]").after(fold);
  fold.addEventListener("toggle", () => {
    if (!fold.isConnected || fold.dataset.built === "") return;
    fold.dataset.built = "";
    build();
  });

  const asked = () => fields.filter((field) => field.isAsked() && !field.isPhoneDay());
  const values = () => asked().filter((field) => !(field.name in FIXED));

  function build() {
    const mark = `${block.dataset.calculator}-lesson`;
    const which = Object.entries(WHICH).map(([value, text], turn) => {
      const { label, box } = tick("radio", `${mark}-which`, text, turn === 0, { which: value });
      box.value = value;
      return label;
    });
    const fixed = Object.entries(FIXED).map(([name, text]) => tick("checkbox", `${mark}-${name}`, text, name === "rules", { fix: name }));
    const picks = group("Values in the link");
    picks.dataset.picks = "";
    const picked = new Set(values().filter((field) => field.isChanged()).map((field) => field.name));
    const words = element("input", { type: "text", maxlength: "120", autocomplete: "off", data: { lessonTitle: "" } });
    words.value = title;
    const named = element("label", { class: "bb-lesson-words", text: "Words that the link shows" });
    named.append(words);
    const said = element("p", { class: "bb-lesson-said" });
    const lines = {
      address: line("Address", "address"),
      html: line("Line for a page in HTML", "HTML line"),
      markdown: line("Line for a page in Markdown", "Markdown line"),
    };
    const square = element("div", { class: "bb-lesson-square", data: { lessonSquare: "" } });
    const problem = element("p", { class: "bb-none", hidden: "" });
    const copySquare = button("Copy the square code as SVG", () => copyText(copySquare, "Square code", square.innerHTML));
    fold.append(
      group("Which values", ...which), picks, group("Set by the link", ...fixed.map(({ label }) => label)), named, said,
      ...Object.values(lines).flatMap(({ label, copy }) => [label, copy]), square, problem, copySquare,
    );
    let drawn = "";

    const chosenWhich = () => fold.querySelector("[data-which]:checked").value;

    function texts() {
      const way = chosenWhich();
      const isIn = (field) => {
        if (field.name in FIXED) return fold.querySelector(`[data-fix="${field.name}"]`).checked;
        if (way === "pick") return picked.has(field.name);
        return way === "changed" ? field.isChanged() : field.sent() !== "" || field.isChanged();
      };
      return Object.fromEntries(asked().filter(isIn).map((field) => [field.name, field.sent()]));
    }

    function listPicks() {
      picks.hidden = chosenWhich() !== "pick";
      if (picks.hidden) return;
      const rows = values().map((field) => {
        const { label, box } = tick("checkbox", `${mark}-pick`, `${field.label()}: ${field.said() || "left empty"}`, picked.has(field.name), { pick: field.name });
        box.addEventListener("change", () => {
          if (box.checked) picked.add(field.name);
          else picked.delete(field.name);
          write();
        });
        return label;
      });
      picks.replaceChildren(picks.firstChild, ...rows);
    }

    async function write() {
      const sent = texts();
      const address = linkWith(sent);
      const shown = words.value.trim() || title;
      const count = Object.keys(sent).filter((name) => !(name in FIXED)).length;
      said.textContent = count
        ? "What is left out stands as an example on the reader's page."
        : "No value is in the link yet: the reader's page opens with its examples.";
      lines.address.box.value = address;
      lines.html.box.value = htmlLine(shown, address);
      lines.markdown.box.value = markdownLine(shown, address);
      if (address === drawn) return;
      drawn = address;
      const reply = await ask({ square: address }).catch(() => ({}));
      if (address !== drawn) return;
      square.innerHTML = reply.svg ?? "";
      problem.textContent = reply.errors?.[0].message ?? (reply.svg ? "" : "The square code could not be drawn here.");
      problem.hidden = Boolean(reply.svg);
      copySquare.hidden = !reply.svg;
    }

    function refresh() {
      if (!fold.open) return;
      /* Units can be fixed only where some are chosen. */
      for (const { label, box } of fixed) {
        const field = asked().find(({ name }) => name === box.dataset.fix);
        label.hidden = !field?.sent();
      }
      listPicks();
      write();
    }

    block.addEventListener("change", ({ target }) => { if (!target.matches("[data-pick]")) refresh(); });
    block.addEventListener("answer", refresh);
    words.addEventListener("input", write);
    fold.addEventListener("toggle", refresh);
    refresh();
  }

  function line(text, what) {
    const label = element("label", { class: "bb-lesson-line", text });
    const box = element("textarea", { readonly: "", rows: "3" });
    label.append(box);
    const copy = button(`Copy the ${what}`, () => copyText(copy, text, box.value));
    return { label, box, copy };
  }
}
