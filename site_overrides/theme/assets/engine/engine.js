/*
 * The page's side of the engine: one for the whole visit, as this module is loaded
 * once and instant navigation keeps it.
 *
 * When the worker says nothing for too long, or breaks, it is started once more
 * from the whole module and the library, if it never came up or if a question needs
 * what was left out of the start; the same way if it hangs on a question. After that
 * the engine has failed and the page points to its table.
 */

import { FILES } from "./files.js";

const SILENT_STARTING = 20_000;
const SILENT_ANSWERING = 10_000;
const CACHE = `engine-${FILES.snapshot.unpacked.sha256.slice(0, 12)}`;

/* Faults of a reply that mean something is not in the snapshot, not a reader's mistake. */
const NOT_HELD = new Set([
  "FileNotFoundError", "ImportError", "ModuleNotFoundError", "OSError", "ZipImportError",
]);

const listeners = new Set();
const waiting = new Map(); // id of each question -> { request, resolve, reject }
let settings = null;
let worker = null;
let starting = null; // { promise, resolve, reject }
let state = { step: "idle", loaded: 0, total: 0 };
let restarted = false;
let timer = 0;
let lastId = 0;

function tell(news) {
  state = { ...state, ...news };
  for (const listener of listeners) listener(state);
}

function expectNews() {
  clearTimeout(timer);
  const answering = state.step === "ready";
  if (answering && !waiting.size) return;
  timer = setTimeout(
    () => recover(answering ? "no answer in time" : "no news in time"),
    answering ? SILENT_ANSWERING : SILENT_STARTING,
  );
}

function fail(message) {
  clearTimeout(timer);
  worker?.terminate();
  worker = null;
  tell({ step: "failed", message });
  const error = new Error(message);
  starting.reject(error);
  for (const { reject } of waiting.values()) reject(error);
  waiting.clear();
}

function recover(message, { missing, damaged } = {}) {
  worker?.terminate();
  if (damaged && !settings.fresh) {
    settings = { ...settings, fresh: true };
    return launch();
  }
  if (restarted) return fail(message);
  restarted = true;
  if (missing || state.step !== "ready") settings = { ...settings, fallback: true };
  return launch();
}

function receive({ data }) {
  if (data.broken) return recover(data.broken, data);
  if (data.news) {
    tell(data.news);
  } else if (data.step) {
    tell(data);
    if (data.step === "ready") starting.resolve();
  } else {
    const reply = JSON.parse(data.reply);
    if (NOT_HELD.has(reply.fault) && !settings.fallback) return recover(reply.fault, { missing: true });
    restarted = false;
    waiting.get(data.id)?.resolve(reply);
    waiting.delete(data.id);
  }
  return expectNews();
}

function launch() {
  tell({ step: "loading", loaded: 0, whole: Boolean(settings.fallback) });
  worker = new Worker(new URL("./worker.js", import.meta.url), {
    type: "module",
    name: JSON.stringify(settings),
  });
  worker.onmessage = receive;
  worker.onerror = (event) => {
    event.preventDefault?.();
    recover(event.message || "the worker could not be loaded");
  };
  for (const [id, { request }] of waiting) worker.postMessage({ id, request });
  expectNews();
}

/**
 * Start the engine, or do nothing when it is started.
 *
 * options.cache:    name of the release's cache, where the files are kept.
 * options.fallback: start from the whole module and the library, without the snapshot.
 * options.check:    compare the checksum of the restored memory (for tests).
 *
 * Resolves when it answers; rejects when it has failed. A failed engine is
 * started afresh by calling this again.
 */
export function startEngine(options = {}) {
  if (starting && state.step !== "failed") return starting.promise;
  starting = withResolvers();
  starting.promise.catch(() => undefined);
  restarted = false;
  settings = {
    cache: CACHE,
    ...options,
    controlled: Boolean(navigator.serviceWorker?.controller),
    files: FILES,
  };
  launch();
  return starting.promise;
}

function withResolvers() {
  const parts = {};
  parts.promise = new Promise((resolve, reject) => Object.assign(parts, { resolve, reject }));
  return parts;
}

/**
 * Ask the bridge.
 *
 * request: what the bridge takes, such as { calculator, texts }.
 *
 * Gives the bridge's reply; rejects only when the engine has failed.
 */
export function ask(request) {
  startEngine();
  if (state.step === "failed") return Promise.reject(new Error(state.message));
  return new Promise((resolve, reject) => {
    const id = ++lastId;
    const text = JSON.stringify(request);
    waiting.set(id, { request: text, resolve, reject });
    worker.postMessage({ id, request: text });
    expectNews();
  });
}

/**
 * Hear of the engine: { step, loaded, total, message, kept, whole }, where step is idle,
 * loading, starting, ready or failed, the bytes are those of this visit, kept says
 * that all that arrived is now on the device, and whole that nothing is left out.
 * The callback is called at once with the present state; gives a function that
 * stops it.
 */
export function onProgress(callback) {
  listeners.add(callback);
  callback(state);
  return () => listeners.delete(callback);
}

const needed = [FILES.script, FILES.unpacker, FILES.wasm, FILES.data, FILES.snapshot];

async function privateFolder() {
  const root = await navigator.storage?.getDirectory?.();
  return root?.getDirectoryHandle("engine");
}

async function isHeld(folder, cache, { name, unpacked }) {
  const handle = unpacked && await folder?.getFileHandle(unpacked.name).catch(() => undefined);
  if (handle && (await handle.getFile()).size === unpacked.bytes) return true;
  const names = unpacked ? [unpacked.name, name] : [name];
  const found = names.map((each) => cache?.match(new URL(each, import.meta.url).href));
  return (await Promise.all(found)).some(Boolean);
}

/**
 * What a start needs: { held, bytes }. held says whether all of it is on this
 * device already, bytes how much a first start brings over the line.
 */
export async function engineHeld(cacheName = CACHE) {
  const folder = await privateFolder().catch(() => undefined);
  const cache = await globalThis.caches?.open(cacheName).catch(() => undefined);
  const found = await Promise.all(needed.map((file) => isHeld(folder, cache, file)));
  return { held: found.every(Boolean), bytes: needed.reduce((sum, file) => sum + file.bytes, 0) };
}

/** Remove what the engine keeps outside the caches. */
export async function forgetEngine() {
  const root = await navigator.storage?.getDirectory?.();
  await root?.removeEntry("engine", { recursive: true }).catch(() => undefined);
}
