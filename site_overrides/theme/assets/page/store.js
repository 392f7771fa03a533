/* What this device keeps of the release, read from its caches each time. */

import { checked, inTurns, isWhole, markSaved, missing } from "../../sw/how.js";
import { MANIFEST, SAVED, SAVING, addressOf, bytesOf, cacheName } from "../../sw/what.js";
import { SITE } from "./page.js";

export const canKeep = () => "serviceWorker" in navigator && "caches" in window;

/* The release that this page is of, as the build wrote it into every page. */
const release = document.querySelector("meta[name=benchbook-release]")?.content;

export const releaseCache = release && cacheName(release);

async function readManifest() {
  const kept = await caches.match(addressOf(MANIFEST, SITE), { cacheName: releaseCache });
  const manifest = await (kept ?? (await fetch(addressOf(MANIFEST, SITE)))).json();
  if (manifest.key !== release) throw new Error("the host has another release; load the page again");
  return { manifest, isInstalled: Boolean(kept) };
}

/* What is kept: `isInstalled` all text, `isReady` all that a calculator needs too. */
export async function readKept() {
  const { manifest, isInstalled } = await readManifest();
  const paths = await missing(manifest, SITE);
  const isReady = isInstalled && isWhole(manifest, paths);
  const date = isReady ? await savedDate() : null;
  return { manifest, paths, bytes: bytesOf(manifest, paths), isInstalled, isReady, date };
}

async function savedDate() {
  const cache = await caches.open(releaseCache);
  if (!(await cache.match(addressOf(SAVED, SITE)))) await markSaved(cache, SITE);
  return (await cache.match(addressOf(SAVED, SITE))).text();
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
  await navigator.serviceWorker.ready;
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
