/* A sheet to fill in and print: what is written is kept in this browser and nowhere else. */

import { answered, isOwn, onAnswer, workedFrom } from "./answered.js";
import { linkOf } from "./form.js";
import { printOnePage } from "./one_page.js";
import { button, remember, remembered } from "./page.js";

const SHIFT = 12 * 60 * 60 * 1000; // ms; ticks older than a long shift are nobody's

function read(key) {
  try {
    const kept = JSON.parse(remembered("localStorage", key));
    return typeof kept?.at === "number" && kept.written && Array.isArray(kept.ticked) ? kept : null;
  } catch {
    return null;
  }
}

export function mountSheet(sheet) {
  const key = `sheet-${sheet.dataset.sheet}`;
  const boxes = Array.from(sheet.querySelectorAll("textarea[data-keep]"));
  const ticks = Array.from(sheet.querySelectorAll("input[data-keep]"));
  const line = sheet.querySelector("[data-kept]");
  const tools = sheet.querySelector("[data-sheet-tools]");

  /* A box grows with its text, so that paper shows all of it. */
  const grow = (box) => { box.parentElement.dataset.text = box.value; };

  function save() {
    const written = Object.fromEntries(boxes.filter((box) => box.value).map((box) => [box.dataset.keep, box.value]));
    const ticked = ticks.filter((tick) => tick.checked).map((tick) => tick.dataset.keep);
    const isEmpty = !ticked.length && !Object.keys(written).length;
    remember("localStorage", key, isEmpty ? null : JSON.stringify({ at: Date.now(), written, ticked }));
    sheet.dataset.changed = "";
    line.textContent = isEmpty || read(key) ? "" : "This browser keeps nothing: print the sheet before you leave the page.";
  }

  function restore() {
    const kept = read(key);
    const isOld = kept && Date.now() - kept.at > SHIFT;
    for (const box of boxes) {
      box.value = String(kept?.written[box.dataset.keep] ?? "").slice(0, box.maxLength);
      grow(box);
    }
    for (const tick of ticks) tick.checked = Boolean(kept) && !isOld && kept.ticked.includes(tick.dataset.keep);
    if (!kept) return;
    const since = new Date(kept.at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
    line.textContent = `Kept in this browser, last written ${since}.${isOld ? " Its ticks are of another shift and are cleared." : ""}`;
  }

  function clear() {
    if (!confirm("Clear all that is written and ticked on this sheet?")) return;
    remember("localStorage", key, null);
    restore();
    delete sheet.dataset.changed;
    line.textContent = "Cleared. Nothing of it is left in this browser.";
  }

  /* Figures come from the answers above; of example values only with that word. */
  function fill() {
    for (const place of sheet.querySelectorAll("[data-figure]")) {
      const [calculator, result] = place.dataset.figure.split(":");
      const got = answered(calculator, result);
      const words = got && (isOwn(calculator) ? got.text : `${got.text} (of the example values: give your own above)`);
      show(place, words);
    }
    for (const place of sheet.querySelectorAll("[data-basis]")) {
      const words = isOwn(place.dataset.basis) ? workedFrom(place.dataset.basis) : "";
      place.textContent = words;
      place.hidden = !words;
    }
    for (const place of sheet.querySelectorAll("[data-link]")) {
      show(place, isOwn(place.dataset.link) ? linkOf(place.dataset.link) : "");
    }
  }

  function show(place, words) {
    place.textContent = words ?? "";
    place.classList.toggle("bb-blank", !words);
  }

  sheet.addEventListener("input", ({ target }) => {
    if (target.matches("textarea")) grow(target);
    save();
  });
  tools.append(button("Print this sheet", () => (sheet.matches(".bb-score") ? printOnePage(sheet) : print())), button("Clear this sheet", clear));
  document.addEventListener("visibilitychange", function seen() {
    if (!sheet.isConnected) document.removeEventListener("visibilitychange", seen);
    else if (document.visibilityState === "visible" && Date.now() - (read(key)?.at ?? Infinity) > SHIFT) restore();
  });
  onAnswer(sheet, fill);
  restore();
  fill();
}
