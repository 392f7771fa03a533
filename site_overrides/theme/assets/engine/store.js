/*
 * The engine's files: from the release's cache, else from the network; checked each
 * time, and kept at once. What lies unpacked on the device is checked while it is
 * already in use, as that takes a third of a start; nothing is answered before the
 * check is through. Unpacking takes ten times as long as reading, so unpacked
 * copies lie ready in the origin's private files, which are read three times as fast
 * as a cache; a browser without private files keeps the unpacked in the cache, in
 * place of the packed. An address that is neither https nor localhost has no such
 * places and no checksums; there everything comes from the network each time.
 */

import { unpackStream } from "./unxz.js";

const FOLDER = "engine";
const TYPES = { wasm: "application/wasm", mjs: "text/javascript" };

export const addressOf = (name) => new URL(name, import.meta.url).href;

export async function sha256Of(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function isWhole(bytes, { bytes: length, sha256 }) {
  if (bytes.length !== length) return false;
  return !self.crypto?.subtle || await sha256Of(bytes) === sha256;
}

/* The origin's private files, as get, put, and keepOnly; undefined without them. */
async function openFiles() {
  const root = await navigator.storage?.getDirectory?.().catch(() => undefined);
  const folder = await root?.getDirectoryHandle(FOLDER, { create: true });
  if (!folder) return undefined;
  return {
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

/* The release's cache, in the same shape; undefined without one. */
async function openCache(cacheName) {
  const cache = await self.caches?.open(cacheName).catch(() => undefined);
  return cache && {
    async get(name) {
      const response = await cache.match(addressOf(name));
      return response && new Uint8Array(await response.arrayBuffer());
    },
    async put(name, bytes) {
      const headers = { "Content-Type": TYPES[name.split(".").at(-1)] ?? "application/octet-stream" };
      await cache.put(addressOf(name), new Response(bytes, { headers }));
    },
    async keepOnly() {},
  };
}

/* The pieces of a download, each reported, all kept for the check. */
function countPieces(onPiece, kept) {
  return new TransformStream({
    transform(piece, controller) {
      kept.push(piece);
      onPiece(piece.length);
      controller.enqueue(piece);
    },
  });
}

function joinPieces(pieces) {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

async function* piecesOf(stream) {
  const reader = stream.getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
}

/**
 * Open the store of a release.
 *
 * cacheName: name of the release's cache.
 * onPiece:   called with the number of bytes of each piece that arrives.
 * fresh:     whether unpacked copies on the device are left alone, as one was damaged.
 */
export async function openStore(cacheName, onPiece, fresh) {
  const [files, cache] = await Promise.all([openFiles().catch(() => undefined), openCache(cacheName)]);
  const shelf = files ?? cache;
  const writes = [];
  const checks = [];
  let isClosed = false;

  async function held(place, name, file) {
    const bytes = await place?.get(name).catch(() => undefined);
    return bytes && await isWhole(bytes, file) ? bytes : undefined;
  }

  /* Bytes of an unpacked copy, whose check is still under way. */
  async function unchecked({ name, ...file }) {
    const bytes = fresh ? undefined : await shelf?.get(name).catch(() => undefined);
    if (bytes?.length !== file.bytes) return undefined;
    checks.push(isWhole(bytes, file));
    return bytes;
  }

  // A full disk must not stop an answer.
  function keep(place, name, bytes) {
    if (!isClosed) writes.push(place?.put(name, bytes).catch(() => undefined));
  }

  async function download(file) {
    const kept = await held(cache, file.name, file);
    const response = kept ? new Response(kept) : await fetch(addressOf(file.name));
    if (!response.ok) throw new Error(`${file.name}: the server answered ${response.status}`);
    return response.body;
  }

  return {
    /* Bytes of a file that is used as it is sent. It is kept where a service worker finds it. */
    async plain(file) {
      const kept = await held(cache, file.name, file);
      if (kept) return kept;
      const pieces = [];
      for await (const piece of piecesOf((await download(file)).pipeThrough(countPieces(onPiece, pieces))));
      const bytes = joinPieces(pieces);
      if (!await isWhole(bytes, file)) throw new Error(`${file.name} is not the file of this release`);
      keep(cache, file.name, bytes);
      return bytes;
    },

    /*
     * A file that is sent packed, unpacked; if it was held, `isSound` tells of its check. `unpacker` gives the unpacker when one is
     * needed. `alongside` gets the unpacked bytes as a stream while they arrive;
     * nothing may run on them before this is through.
     */
    async unpacked(file, unpacker, alongside) {
      const kept = await unchecked(file.unpacked);
      if (kept) return kept;
      const packed = [];
      const stream = (await download(file))
        .pipeThrough(countPieces(onPiece, packed))
        .pipeThrough(unpackStream(await unpacker()));
      const [ours, theirs] = alongside ? stream.tee() : [stream];
      alongside?.(theirs);
      const pieces = [];
      for await (const piece of piecesOf(ours)) pieces.push(piece);
      const sent = joinPieces(packed);
      if (!await isWhole(sent, file)) throw new Error(`${file.name} is not the file of this release`);
      const bytes = joinPieces(pieces);
      if (files) keep(cache, file.name, sent);
      keep(shelf, file.unpacked.name, bytes);
      return bytes;
    },

    /* Whether all unpacked copies that were taken are what they should be. */
    async isSound() {
      return (await Promise.all(checks)).every(Boolean);
    },

    /* Keep nothing from now on; done when what is being kept is whole. */
    async close() {
      isClosed = true;
      await Promise.all(writes);
    },

    /* Done when all that arrived is kept and what older releases left is gone. */
    async settled(names) {
      await Promise.all(writes);
      await files?.keepOnly(new Set(names)).catch(() => undefined);
    },
  };
}
