/* A watch counted on the page. What is kept is when it ends, so that sleep, reload and
   other pages change nothing. It helps the watcher; it is never the alarm. */

import { answered, onAnswer } from "./answered.js";
import { mountCalendar } from "./calendar.js";
import { button, element, remember, remembered } from "./page.js";
import { mountWake } from "./wake.js";

const SECOND = 1000; // ms
const MINUTE = 60 * SECOND;

function read(key) {
  try {
    const kept = JSON.parse(remembered("localStorage", key));
    const isWhole = [kept?.start, kept?.end, kept?.until, kept?.every].every(Number.isFinite);
    return isWhole && kept.end > kept.start && kept.until >= kept.end ? kept : null;
  } catch {
    return null;
  }
}

/* Time of day, rounded up to the minute so that nobody leaves early. */
function clock(time) {
  const at = new Date(Math.ceil(time / MINUTE) * MINUTE);
  const words = at.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  if (at.toDateString() === new Date().toDateString()) return words;
  return `${words} on ${at.toLocaleDateString([], { weekday: "long" })}`;
}

function left(duration) {
  const seconds = Math.ceil(Math.max(duration, 0) / SECOND);
  const two = (number) => String(number).padStart(2, "0");
  const short = `${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  return seconds < 3600 ? short : `${Math.floor(seconds / 3600)}:${short}`;
}

const minutes = (duration) => `${Math.ceil(duration / MINUTE)} min`;

/* What is on at a moment: what is left of it in ms, and the sentence for it. */
function phase(kept, now) {
  if (kept.stopped) {
    const isShort = kept.stopped < kept.end;
    const end = isShort ? kept.end : kept.until;
    const cut = `Stopped at ${clock(kept.stopped)}, ${minutes(end - kept.stopped)} before its end.`;
    return { left: end - kept.stopped, words: isShort ? `${cut} A watch with a gap starts again from the beginning.` : cut };
  }
  if (now < kept.end) {
    return { runs: true, left: kept.end - now, words: `Watch until ${clock(kept.end)}. Stay the whole time.` };
  }
  if (now < kept.until) {
    const turns = kept.every ? Math.floor((now - kept.end) / kept.every) + 1 : Infinity;
    const next = kept.every ? Math.min(kept.end + turns * kept.every, kept.until) : kept.until;
    return {
      runs: true,
      left: next - now,
      words: `The watch was over at ${clock(kept.end)}. Look in again until ${clock(kept.until)}, next at ${clock(next)} at the latest.`,
    };
  }
  return { left: 0, words: `Over since ${clock(kept.until)}. Look, smell and feel once more before you lock up.` };
}

export function mountTimer(block) {
  const { of: calculator } = block.dataset;
  const key = `timer-${calculator}`;
  const face = element("p", { role: "timer", class: "bb-face", tabindex: "-1", "aria-labelledby": `${block.id}-title` });
  const line = element("p", { role: "status", class: "bb-timer-line" });
  const press = (words, change) => button(words, () => {
    change();
    face.focus({ preventScroll: true }); // the button pressed may be gone
  });
  const start = press("Start the watch", begin);
  const stop = press("Stop before its end", () => keep({ ...read(key), stopped: Date.now() }));
  const goOn = press("Somebody stayed: go on", () => keep({ ...read(key), stopped: null }));
  const clear = press("Clear the timer", () => keep(null));
  const tools = element("div", { class: "bb-tools" });
  start.className = "bb-primary";
  tools.append(stop, goOn, clear);
  block.querySelector("[data-by-hand]").remove();
  block.append(face, line, start, tools);
  mountCalendar(tools, () => read(key));
  mountWake(block);
  let next;
  let note = ""; // what happened, said before what is on

  /* Lengths of the answer above in ms; null where it gives no time to watch. */
  function lengths() {
    const ms = (part) => Math.ceil((answered(calculator, block.dataset[part])?.si ?? 0) * SECOND);
    const watch = ms("watch");
    return watch > 0 ? { watch, later: ms("later"), every: ms("every") } : null;
  }

  function keep(kept, words = "") {
    remember("localStorage", key, kept && JSON.stringify(kept));
    note = kept && !read(key) ? "This browser keeps nothing, so it cannot count: watch by a clock." : words;
    draw();
  }

  function begin() {
    const length = lengths();
    const now = Date.now();
    if (!length) {
      note = "The answer above gives no time yet. Write down the time now, and start when the answer is there.";
      draw();
      return;
    }
    const end = now + length.watch;
    keep({ start: now, end, until: end + length.later, every: length.every, stopped: null });
  }

  /* Never shorter than the answer above, also when it changed after the start. */
  function lengthen() {
    const kept = read(key);
    const length = lengths();
    if (!kept && length) note = "";
    if (kept && length && Date.now() < kept.until && !kept.stopped) {
      const end = Math.max(kept.end, kept.start + length.watch);
      const until = Math.max(kept.until, end + length.later);
      const every = Math.min(kept.every || Infinity, length.every || Infinity);
      const longer = { ...kept, end, until, every: Number.isFinite(every) ? every : 0 };
      if (JSON.stringify(longer) !== JSON.stringify(kept)) {
        keep(longer, "Lengthened: the answer above asks for more.");
        return;
      }
    }
    draw();
  }

  function draw() {
    clearTimeout(next);
    if (!block.isConnected) return leaving.abort();
    const kept = read(key);
    const now = Date.now();
    const on = kept ? phase(kept, now) : null;
    const isRunning = Boolean(on?.runs);
    const length = lengths();
    block.dataset.timer = isRunning ? "running" : "off";
    start.hidden = Boolean(kept);
    stop.hidden = !isRunning;
    goOn.hidden = !kept?.stopped || now >= kept.until;
    clear.hidden = !kept || isRunning;
    face.textContent = left(on ? on.left : length?.watch ?? 0);
    face.hidden = !kept && !length;
    say([note, on?.words ?? "Not started. Press Start when the last flame goes out."].filter(Boolean).join(" "));
    if (isRunning && document.visibilityState === "visible") {
      next = setTimeout(draw, on.left % SECOND || SECOND);
    }
  }

  function say(words) {
    if (line.textContent !== words) line.textContent = words;
  }

  const leaving = new AbortController();
  const { signal } = leaving;
  document.addEventListener("visibilitychange", draw, { signal });
  for (const seen of ["pageshow", "focus", "storage"]) addEventListener(seen, draw, { signal });
  onAnswer(block, lengthen);
  draw();
}
