/* How: one release is kept in one cache, and each file is checked against its SHA-256. */

import { MANIFEST, SAVED, addressOf, addressesOf, cacheName, isOurs, pathsOf } from "./what.js";

const AT_ONCE = 6;
const SECOND_TRY = 1_000; // ms

async function hex(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/* A response that fails before its last part is handed on if the checksum is wrong. */
export function checked(response, file, onBytes = () => {}) {
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  const parts = [];
  const check = new TransformStream({
    transform(part, out) {
      if (parts.length) out.enqueue(parts.at(-1));
      parts.push(part);
      onBytes(part.byteLength);
    },
    async flush(out) {
      const sum = await hex(await new Blob(parts).arrayBuffer());
      if (sum !== file.sha256) throw new Error("the checksum is wrong");
      if (parts.length) out.enqueue(parts.at(-1));
    },
  });
  const headers = { "content-type": response.headers.get("content-type") ?? "" };
  return new Response(response.body.pipeThrough(check), { headers });
}

export async function inTurns(items, work) {
  const queue = [...items];
  const turn = async () => {
    while (queue.length) await work(queue.shift());
  };
  await Promise.all(Array.from({ length: AT_ONCE }, turn));
}

/* Paths of a release that are not kept here; read from the cache, not from memory. */
export async function missing(manifest, scope) {
  const name = cacheName(manifest.key);
  if (!(await caches.has(name))) return pathsOf(manifest);
  const kept = new Set((await (await caches.open(name)).keys()).map((request) => request.url));
  return pathsOf(manifest).filter(
    (path) => !addressesOf(path, manifest, scope).some((address) => kept.has(address)),
  );
}

export const isWhole = (manifest, paths) => paths.every((path) => manifest.files[path].role === "spare");

export const markSaved = async (cache, scope) =>
  cache.put(addressOf(SAVED, scope), new Response(new Date().toISOString()));

/* Files that earlier releases hold, by checksum, and whether one was held whole. */
async function earlier(scope, ours) {
  const held = new Map();
  let whole = false;
  for (const name of (await caches.keys()).filter((each) => isOurs(each) && each !== ours)) {
    const cache = await caches.open(name);
    const listed = await cache.match(addressOf(MANIFEST, scope));
    if (!listed) continue;
    const manifest = await listed.json();
    const gone = await missing(manifest, scope);
    whole ||= isWhole(manifest, gone);
    for (const path of pathsOf(manifest).filter((each) => !gone.includes(each))) {
      held.set(manifest.files[path].sha256, { cache, addresses: addressesOf(path, manifest, scope) });
    }
  }
  return { held, whole };
}

/* Take a file over from an earlier release, under the name that it was kept by. */
async function takeOver(cache, address, { cache: old, addresses: [packed, unpacked] }) {
  const sent = await old.match(packed);
  const response = sent ?? (unpacked && (await old.match(unpacked)));
  if (response) await cache.put(sent ? address : unpacked, response);
  return Boolean(response);
}

/* A file of a release from the host; one lost connection does not stop all the others. */
async function bring(cache, address, file) {
  try {
    await cache.put(address, checked(await fetch(address, { cache: "no-cache" }), file));
  } catch {
    await new Promise((done) => setTimeout(done, SECOND_TRY));
    await cache.put(address, checked(await fetch(address, { cache: "reload" }), file));
  }
}

async function trustedManifest({ digest, scope }) {
  for (const cache of ["no-cache", "reload"]) {
    const response = await fetch(addressOf(MANIFEST, scope), { cache });
    const bytes = await response.clone().arrayBuffer();
    if ((await hex(bytes)) === digest) return { response, manifest: await response.clone().json() };
  }
  throw new Error("the host is changing releases; try later");
}

/* All or nothing: the manifest goes in last, and without it nothing is used. Who
   had everything saved gets everything of the new release before it is offered. */
export async function install(release) {
  const { scope } = release;
  const name = cacheName(release.key);
  const had = await caches.has(name);
  try {
    const { response, manifest } = await trustedManifest(release);
    const cache = await caches.open(name);
    const { held, whole } = await earlier(scope, name);
    const wanted = (await missing(manifest, scope)).filter((path) => {
      const { role, sha256 } = manifest.files[path];
      return whole || role === "text" || held.has(sha256);
    });
    await inTurns(wanted, async (path) => {
      const address = addressOf(path, scope);
      const file = manifest.files[path];
      const old = held.get(file.sha256);
      if (!old || !(await takeOver(cache, address, old))) await bring(cache, address, file);
    });
    await cache.put(addressOf(MANIFEST, scope), response);
    if (whole) await markSaved(cache, scope);
  } catch (error) {
    if (!had) await caches.delete(name);
    throw error;
  }
}

export async function dropOthers({ key }) {
  const ours = cacheName(key);
  const others = (await caches.keys()).filter((name) => isOurs(name) && name !== ours);
  await Promise.all(others.map((name) => caches.delete(name)));
}

let known; // the manifest, read once in the life of this worker

/* A file of the release from its cache, else checked from the host and kept. The
   engine checks and keeps its own files, unpacked. */
export async function reply(event, { key, scope }, path) {
  const cache = await caches.open(cacheName(key));
  const kept = await cache.match(addressOf(path, scope));
  if (kept) return kept;
  known ??= await (await cache.match(addressOf(MANIFEST, scope)))?.json();
  const file = known?.files[path];
  if (!file && known?.files[`${path}/`]) {
    const { search } = new URL(event.request.url);
    return Response.redirect(addressOf(`${path}/${search}`, scope));
  }
  if (!file) return elsewhere(event.request, cache, scope);
  const fetched = await fetch(event.request);
  if (!fetched.ok || file.role !== "text") return fetched;
  const response = checked(fetched, file);
  event.waitUntil(cache.put(addressOf(path, scope), response.clone()).catch(() => {}));
  return response;
}

async function elsewhere(request, cache, scope) {
  try {
    return await fetch(request);
  } catch (error) {
    const page = request.mode === "navigate" && (await cache.match(addressOf("404.html", scope)));
    if (!page) throw error;
    return new Response(page.body, { status: 404, headers: page.headers });
  }
}
