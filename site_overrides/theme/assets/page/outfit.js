/* What the reader has: kept in this browser by one block, put into the fields of the
   others. Python writes and reads the file; here it is only carried. */

import { offerFile } from "./file.js";
import { button, element, remember, remembered } from "./page.js";
import { ask } from "./starter.js";

const KEY = "benchbook-outfit";
const MOST = 100_000; // bytes read of a file; an outfit is far shorter
const FAILED = "The calculator gave no answer. Nothing is changed; try again.";
const FROM = "From your outfit. ";

export const keptFile = () => remembered("localStorage", KEY);

export function mountOutfit(block, form) {
  if (block.dataset.outfit === "use") mountUse(block, form);
  if (block.dataset.outfit === "keep") mountKeep(block, form);
}

const failure = (reply) => reply?.errors?.[0].message ?? FAILED;

function mountUse(block, { fields, texts, calculate, takeTexts, status }) {
  const use = button("Use my outfit", async () => {
    status.sayNow("Looking at your outfit.");
    const fill = { calculator: block.dataset.calculator, texts: texts(), outfit: keptFile() };
    const reply = await ask({ fill }).catch(() => null);
    if (!reply?.texts) {
      status.sayNow(failure(reply));
      return;
    }
    const values = new Map(Object.entries(reply.texts));
    for (const field of fields) if (field.from === FROM && !values.has(field.name)) field.showFirst();
    const heading = values.size ? "Values from your outfit. Check each one." : "Nothing is taken from your outfit.";
    takeTexts({ values, problems: reply.said, mark: FROM, heading });
    block.dataset.changed = "";
    block.querySelector("[data-link-note]").scrollIntoView({ block: "center" });
    await calculate();
    const isRefused = fields.some(({ box }) => box.getAttribute("aria-invalid") === "true");
    if (!isRefused) status.say(reply.said.join(" "));
  });
  const look = () => { use.hidden = !keptFile(); };
  block.querySelector("[data-tools]").prepend(use);
  addEventListener("storage", function hear() {
    if (block.isConnected) look();
    else removeEventListener("storage", hear);
  });
  look();
}

function mountKeep(block, { fields, texts, calculate, showAsked, reset, isLinked }) {
  const line = element("p", { role: "status", class: "bb-outfit", data: { outfitLine: "" } });
  const row = element("div", { class: "bb-tools", data: { outfitTools: "" } });
  const input = element("input", { type: "file", accept: ".json,application/json", hidden: "", "aria-label": "File of an outfit" });
  const own = fields.filter(({ box }) => !box.matches("[data-rules-choice], [name=shown_in], [data-today]"));

  function show(read) {
    for (const field of own) {
      if (Object.hasOwn(read, field.name)) field.show(String(read[field.name]));
      else field.clear();
      field.setError("");
    }
    showAsked();
  }

  /* The file of what stands in the form; what Python refuses is shown beside its field. */
  async function write() {
    const reply = await calculate({ all: true });
    const made = reply && await ask({ outfit: { keep: texts() } }).catch(() => null);
    if (!made?.text) line.textContent = reply ? failure(made) : "Not kept: see the message beside the field.";
    return made?.text;
  }

  async function keep() {
    const file = await write();
    if (!file) return;
    remember("localStorage", KEY, file);
    const isKept = keptFile() === file;
    if (isKept) delete block.dataset.changed;
    line.textContent = isKept ? "Kept on this phone, in this browser and nowhere else." : "This browser keeps nothing: save a file.";
  }

  async function save() {
    const text = await write();
    if (!text) return;
    offerFile(line, {
      text, type: "application/json", name: "my-outfit.json", words: "The file of my outfit",
      after: ". Put it where you find it again.",
    });
  }

  async function open() {
    const [file] = input.files;
    if (!file) return;
    const text = await file.slice(0, MOST).text().catch(() => "");
    input.value = ""; // the same file can be opened again
    line.textContent = "Reading the file.";
    const reply = await ask({ outfit: { open: text, rules: texts().rules } }).catch(() => null);
    if (!reply?.texts) {
      line.textContent = failure(reply);
      return;
    }
    show(reply.texts);
    block.dataset.changed = "";
    line.textContent = "Opened. Check it, then press Keep on this phone.";
    calculate();
  }

  function forget() {
    if (!confirm("Forget the outfit that is kept on this phone?")) return;
    remember("localStorage", KEY, null);
    reset();
    line.textContent = "Forgotten. Nothing of it is left in this browser.";
  }

  function restore() {
    try {
      show(JSON.parse(keptFile()).texts);
      block.dataset.own = "";
      line.textContent = "This is the outfit kept on this phone.";
    } catch {
      line.textContent = "Nothing is kept on this phone yet.";
    }
  }

  input.addEventListener("change", open);
  row.append(
    button("Keep on this phone", keep),
    button("Save as a file", save),
    button("Open a file", () => input.click()),
    button("Forget it", forget),
    input,
  );
  block.querySelector("[data-form]").append(row, line);
  document.addEventListener("visibilitychange", function seen() {
    if (!block.isConnected) document.removeEventListener("visibilitychange", seen);
    else if (document.visibilityState === "visible") {
      for (const field of fields) field.followClock();
      if ("own" in block.dataset) calculate(); // another day may have come
    }
  });
  if (isLinked) line.textContent = "";
  else restore();
}
