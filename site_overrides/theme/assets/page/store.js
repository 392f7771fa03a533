/* What this device keeps of the release, read from its caches each time. */

import { checked, inTurns, isWhole, markSaved, missing } from "../../sw/how.js";
import { MANIFEST, SAVED, SAVING, addressOf, bytesOf, cacheName } from "../../sw/what.js";
import { SITE } from "./page.js";

const NOT_KEPT = "the pages did not come whole, or this device has no room for them";

export const canKeep = () => "serviceWorker" in navigator && "caches" in window;

/* The release that this page is of, as the build wrote it into every page. */
const releaseOf = () => document.querySelector("meta[name=benchbook-release]")?.content;
const release = releaseOf();

export const releaseCache = release && cacheName(release);

/* Whether a click has brought a page of another release to the scripts of this one. */
export const isOfOtherRelease = () => releaseOf() !== release;

export const registerWorker = () =>
  navigator.serviceWorker.register(new URL("sw.js", SITE), { type: "module", updateViaCache: "none" });

async function readManifest() {
  const kept = await caches.match(addressOf(MANIFEST, SITE), { cacheName: releaseCache });
  const manifest = await (kept ?? (await fetch(addressOf(MANIFEST, SITE)))).json();
  if (manifest.key !== release) throw new Error("the host has another release; load the page again");
  return { manifest, isListed: Boolean(kept) };
}

/* What is kept: `isInstalled` all text, `isReady` all that a calculator needs too. */
export async function readKept() {
  const { manifest, isListed } = await readManifest();
  const paths = await missing(manifest, SITE);
  const isInstalled = isListed && paths.every((path) => manifest.files[path].role !== "text");
  const isReady = isInstalled && isWhole(manifest, paths);
  const date = isReady ? await savedDate() : null;
  return { manifest, paths, bytes: bytesOf(manifest, paths), isInstalled, isReady, date };
}

async function savedDate() {
  const cache = await caches.open(releaseCache);
  const read = () => cache.match(addressOf(SAVED, SITE));
  if (!(await read())) await markSaved(cache, SITE).catch(() => {}); // a full disk keeps no date
  return (await read())?.text() ?? null;
}

/* The site's worker once it runs. It does not when the text could not be kept. */
async function runningWorker(signal) {
  const registration = await registerWorker();
  if (registration.active) return registration.active;
  const worker = registration.installing ?? registration.waiting;
  return new Promise((resolve, reject) => {
    const look = () => {
      if (registration.active) resolve(registration.active);
      else if (worker.state === "redundant") reject(new Error(NOT_KEPT));
    };
    worker.addEventListener("statechange", look);
    signal?.addEventListener("abort", () => reject(signal.reason));
    look();
  });
}

/* A browser may clear the caches and leave the worker: it fetches the text once more. */
export async function keepText(signal) {
  const worker = await runningWorker(signal);
  if ((await readKept()).isInstalled) return;
  const { port1, port2 } = new MessageChannel();
  const isKept = new Promise((resolve, reject) => {
    port1.onmessage = ({ data }) => resolve(data);
    signal?.addEventListener("abort", () => reject(signal.reason));
  });
  worker.postMessage("keep the text", [port2]);
  if (!(await isKept)) throw new Error(NOT_KEPT);
}

/* Fetch one file past the worker, check it and keep it; the browser's own copy first. */
async function keep(manifest, path, cacheMode, onBytes, signal) {
  const address = addressOf(path, SITE);
  const response = await fetch(address, { cache: cacheMode, signal, headers: { [SAVING]: "1" } });
  const cache = await caches.open(releaseCache);
  await cache.put(address, checked(response, manifest.files[path], onBytes));
}

/* Fetch all that is missing; what came whole stays, so a second try goes on from there. */
export async function saveAll(onBytes, signal) {
  await keepText(signal);
  const { manifest, paths, bytes: total } = await readKept();
  const arrived = new Map();
  const save = (path, cacheMode) => {
    arrived.set(path, 0);
    return keep(manifest, path, cacheMode, (bytes) => {
      arrived.set(path, arrived.get(path) + bytes);
      onBytes([...arrived.values()].reduce((sum, each) => sum + each, 0), total);
    }, signal);
  };
  await inTurns(paths, (path) =>
    save(path, "force-cache").catch((error) => {
      if (signal.aborted) throw error;
      return save(path, "reload");
    }));
  await markSaved(await caches.open(releaseCache), SITE);
}
