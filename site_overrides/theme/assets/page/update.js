/* A newer release: found, offered, and taken only when the reader says so. */

import { button, element } from "./page.js";
import { lineIsFree } from "./starter.js";
import { canKeep, keepText, registerWorker, releaseCache } from "./store.js";

const HOUR = 3_600_000; // ms
const BUSY = "[data-changed], [data-timer=running]";
const LOST = "[data-calculator][data-changed]"; // all else is kept
const places = new Set();
const watched = new WeakSet();
let waiting = null;
let wasControlled = false;

const isBusy = () => document.querySelector(BUSY) !== null;

function offer(place) {
  if (!waiting) return;
  const lost = document.querySelector(LOST) ? "what you typed above is then lost" : "your timer and your sheet go on";
  const words = isBusy()
    ? `New version ready. It starts when you next open the site, or now: ${lost}.`
    : "New version ready.";
  place.replaceChildren(
    element("span", { text: `${words} ` }),
    button("Use the new version", () => waiting.postMessage("take over")),
  );
}

export function mountUpdate(place) {
  places.add(place);
  offer(place);
}

function offerEverywhere(worker) {
  waiting = worker;
  for (const place of places) if (place.isConnected) offer(place);
}

/* Where the workers of the site stand now; one that is being installed may pass any
   of its states before a page hears of it, so that each is looked for, not awaited. */
function look(registration) {
  const { installing, waiting: installed } = registration;
  if (installed && navigator.serviceWorker.controller) offerEverywhere(installed);
  if (!installing || watched.has(installing)) return;
  watched.add(installing);
  installing.addEventListener("statechange", () => look(registration));
}

/* Another tab took the new version: this one follows unless the reader is at work. */
function follow() {
  if (wasControlled && !isBusy()) location.reload();
  wasControlled = true;
}

async function register() {
  const registration = await registerWorker();
  const ask = () => registration.update().then(look, () => {});
  look(registration);
  registration.addEventListener("updatefound", () => look(registration));
  if (registration.active) ask(); // to register again looks for nothing
  setInterval(ask, HOUR);
}

/* Saving the text waits until the page itself has come, and its engine. */
export function watchReleases() {
  if (!canKeep() || !releaseCache) return;
  wasControlled = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.addEventListener("controllerchange", follow);
  const tell = () => document.dispatchEvent(new Event("kept"));
  const begin = () => lineIsFree.then(register).then(() => keepText()).then(tell).catch(() => {});
  if (document.readyState === "complete") begin();
  else addEventListener("load", begin, { once: true });
}
