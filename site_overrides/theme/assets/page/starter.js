/* The one engine of a visit: when it may start, and what is said meanwhile. */

import { megabytes } from "./page.js";
import { releaseCache } from "./store.js";

const PATIENCE = 20_000; // ms
const LINE_PACE = 1_000; // ms between two sentences about progress
const STEPS = { loading: "loading", starting: "starting Python" };

let stopTelling = null;
let engine = null; // promise of the engine, once it is wanted
let now = { state: "asleep", words: "" };
const listeners = new Set();

/* Hear of the engine; a listener that returns false is heard no more. */
export function onEngine(listener) {
  if (listener(now) !== false) listeners.add(listener);
}

export const engineState = () => now.state;

function tell(state, words) {
  now = { state, words };
  for (const listener of listeners) if (listener(now) === false) listeners.delete(listener);
}

function tellProgress() {
  let last = 0;
  return ({ step, loaded, total, kept }) => {
    if (kept) document.dispatchEvent(new Event("kept"));
    if (now.state !== "starting" || !STEPS[step] || Date.now() - last < LINE_PACE) return;
    last = Date.now();
    const share = loaded ? `, ${megabytes(loaded)} of ${megabytes(total)}` : "";
    tell("starting", `Starting the calculator: ${STEPS[step]}${share}.`);
  };
}

const load = () => import("../engine/engine.js");

function tellFailure() {
  engine = null;
  tell("failed", "The calculator could not start here. Use the table on this page, or press Calculate to try again.");
}

async function begin() {
  tell("starting", "Starting the calculator.");
  const patience = setTimeout(
    () => tell("slow", "This takes long. Use the table on this page; the calculator is still starting."),
    PATIENCE,
  );
  try {
    const made = await load();
    stopTelling?.();
    stopTelling = made.onProgress(tellProgress());
    await made.startEngine(releaseCache ? { cache: releaseCache } : {});
    tell("ready", "The calculator is ready.");
    return made;
  } catch (error) {
    tellFailure();
    throw error;
  } finally {
    clearTimeout(patience);
  }
}

export const start = () => (engine ??= begin());

export async function ask(request) {
  const made = await start();
  try {
    return await made.ask(request);
  } catch (error) {
    tellFailure();
    throw error;
  }
}

function isThrifty() {
  const line = navigator.connection;
  if (line?.saveData || matchMedia("(prefers-reduced-data: reduce)").matches) return true;
  return line?.type === "cellular" || /^(slow-)?[23]g$/.test(line?.effectiveType ?? "");
}

export const idle = () =>
  new Promise((done) => {
    if (window.requestIdleCallback) requestIdleCallback(done, { timeout: 3000 });
    else setTimeout(done, 1000);
  });

/* Bytes that a start would bring over a line that is dear; 0 where it is not. */
async function dearBytes() {
  if (!isThrifty()) return 0;
  const { held, bytes } = await load().then((made) => made.engineHeld(releaseCache));
  return held ? 0 : bytes;
}

/* Start while the page is read, unless the line is dear and something is to be fetched. */
export async function startWhenIdle() {
  if (engine) return;
  const bytes = await dearBytes();
  if (engine) return;
  if (bytes) {
    tell("asleep", `The calculator starts when you touch a field: ${megabytes(bytes)}.`);
    return;
  }
  await idle();
  start().catch(() => {});
}
