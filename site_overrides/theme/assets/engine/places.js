/*
 * Where the engine's files lie on a device: the release's cache, whose address a
 * service worker answers, and the origin's private files, which are read three times
 * as fast. An address that is neither https nor localhost has neither, and no checksums.
 */

const FOLDER = "engine";
const TYPES = { wasm: "application/wasm", mjs: "text/javascript" };

/* What a response with such a file says of itself. */
export const typed = (name) => ({ headers: { "Content-Type": TYPES[name.split(".").at(-1)] ?? "application/octet-stream" } });

export const addressOf = (name) => new URL(name, import.meta.url).href;

export async function sha256Of(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

export async function isWhole(bytes, { bytes: length, sha256 }) {
  if (bytes.length !== length) return false;
  return !self.crypto?.subtle || await sha256Of(bytes) === sha256;
}

/**
 * FNV-1a of 32-bit words, the last one filled up with zeros, in four turns, as hexadecimal.
 *
 * The build says the same of each file (`bundle.py`).
 */
export function sumOf(bytes) {
  const words = new Int32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2);
  const PRIME = 0x01000193;
  let a = 0x811c9dc5, b = a, c = a, d = a;
  const whole = words.length & ~3;
  for (let at = 0; at < whole; at += 4) {
    a = Math.imul(a ^ words[at], PRIME);
    b = Math.imul(b ^ words[at + 1], PRIME);
    c = Math.imul(c ^ words[at + 2], PRIME);
    d = Math.imul(d ^ words[at + 3], PRIME);
  }
  const rest = new Uint8Array(16);
  rest.set(bytes.subarray(4 * whole));
  return [a, b, c, d]
    .map((sum, turn) => Math.imul(sum ^ new Int32Array(rest.buffer)[turn], PRIME) >>> 0)
    .map((sum) => sum.toString(16).padStart(8, "0")).join("");
}

/* The origin's private files, as has, get, put, and keepOnly; undefined without them. */
async function openFiles() {
  const root = await navigator.storage?.getDirectory?.();
  const folder = await root?.getDirectoryHandle(FOLDER, { create: true });
  if (!folder) return undefined;
  return {
    has: (name) => folder.getFileHandle(name).then(() => true, () => false),
    async get(name) {
      const handle = await folder.getFileHandle(name).catch(() => undefined);
      if (!handle) return undefined;
      try {
        const open = await handle.createSyncAccessHandle({ mode: "read-only" });
        const bytes = new Uint8Array(open.getSize());
        open.read(bytes, { at: 0 });
        open.close();
        return bytes;
      } catch {
        // Another tab has it open, and this browser lets only one at a time.
        return new Uint8Array(await (await handle.getFile()).arrayBuffer());
      }
    },
    async put(name, bytes) {
      const handle = await folder.getFileHandle(name, { create: true });
      const open = await handle.createSyncAccessHandle();
      try {
        open.truncate(0);
        if (open.write(bytes, { at: 0 }) !== bytes.length) throw new Error("no room");
        open.flush();
      } catch (error) {
        open.close();
        await folder.removeEntry(name).catch(() => undefined); // half a file only takes room
        throw error;
      }
      open.close();
    },
    async keepOnly(names) {
      for await (const name of folder.keys()) {
        if (!names.has(name)) await folder.removeEntry(name);
      }
    },
  };
}

/* The release's cache in the same shape, and remove; undefined without one. */
async function openCache(cacheName) {
  const cache = await self.caches?.open(cacheName).catch(() => undefined);
  return cache && {
    async has(name) {
      return Boolean(await cache.match(addressOf(name)));
    },
    async get(name) {
      const response = await cache.match(addressOf(name));
      return response && new Uint8Array(await response.arrayBuffer());
    },
    async put(name, bytes) {
      await cache.put(addressOf(name), new Response(bytes, typed(name)));
    },
    remove: (name) => cache.delete(addressOf(name)),
    async keepOnly() {},
  };
}

/**
 * Open both: { files, cache }, each undefined where a browser has none.
 *
 * cacheName: name of the release's cache.
 */
export async function openPlaces(cacheName) {
  const [files, cache] = await Promise.all([openFiles().catch(() => undefined), openCache(cacheName)]);
  return { files, cache };
}
