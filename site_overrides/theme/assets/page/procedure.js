/* Ticks of a procedure: a place to come back to, never a record. */

import { button, element, remember, remembered } from "./page.js";

const LIFE = 4 * 60 * 60 * 1000; // ms
const EXPIRED = "Ticks older than 4 hours are cleared. Start again from the first step.";

export function mountProcedure(block) {
  const key = `ticks-${location.pathname}-${block.dataset.procedure}`;
  const ticks = Array.from(block.querySelectorAll("[data-tick]"));
  const line = block.querySelector("[data-stopped]");
  const again = button("Clear the ticks", () => clear());
  line.setAttribute("role", "status");
  line.after(again);

  function say(...words) {
    line.replaceChildren(...words);
    line.hidden = !words.length;
  }

  function clear(...words) {
    for (const tick of ticks) tick.checked = false;
    remember("sessionStorage", key, null);
    again.hidden = true;
    say(...words);
  }

  function save() {
    const ticked = ticks.filter((tick) => tick.checked).map((tick) => tick.dataset.tick);
    again.hidden = !ticked.length;
    remember("sessionStorage", key, ticked.length ? JSON.stringify({ at: Date.now(), ticked }) : null);
    say();
  }

  /* Where to go on: not the step itself, but the pause point that it stands under; where acting comes first, step 1. */
  function sayStopped(next) {
    const whole = block.dataset.kind === "do-then-confirm";
    const pause = whole ? block.querySelector("[data-pause]") : next.closest("[data-pause]");
    const first = pause.querySelector("[data-tick]");
    const where = element("a", { text: `step ${ticks.indexOf(first) + 1}`, href: `#${pause.id}` });
    say(`You stopped at step ${ticks.indexOf(next) + 1}. Start again at ${whole ? "" : "the last pause point: "}`, where, ".");
  }

  function restore() {
    const kept = read(key);
    if (!kept) return clear();
    if (Date.now() - kept.at > LIFE) return clear(EXPIRED);
    for (const tick of ticks) tick.checked = kept.ticked.includes(tick.dataset.tick);
    again.hidden = false;
    const next = ticks.find((tick) => !tick.checked);
    if (next) sayStopped(next);
  }

  block.addEventListener("change", save);
  document.addEventListener("visibilitychange", () => {
    const kept = document.visibilityState === "visible" && block.isConnected && read(key);
    if (kept && Date.now() - kept.at > LIFE) clear(EXPIRED);
  });
  restore();
}

function read(key) {
  try {
    const kept = JSON.parse(remembered("sessionStorage", key));
    return Array.isArray(kept?.ticked) && typeof kept.at === "number" ? kept : null;
  } catch {
    return null;
  }
}
