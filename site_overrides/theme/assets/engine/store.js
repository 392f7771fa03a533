/*
 * The engine's files: from the device, else from the network, checked, and kept at
 * once. What comes is held against its SHA-256. What lies ready on the device is held
 * against a plain sum, which finds decay and takes a fifth of the time; nothing is
 * answered before. Unpacking takes ten times as long as reading, so unpacked copies
 * lie in the origin's private files; without those they take the place of the packed
 * in the cache. A module lies unpacked in the cache, so that the service worker can
 * answer its address: browsers keep what they compiled of such a module. Without
 * https or localhost everything comes from the network each time.
 */

import { addressOf, isWhole, openPlaces, sumOf, typed } from "./places.js";
import { unpackStream } from "./unxz.js";

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
 * settings: { cache, fresh, controlled }: name of the release's cache; whether copies
 *           on the device are left alone, as one was damaged; whether a service worker
 *           answers from the cache.
 * onPiece:  called with the number of bytes of each piece that arrives.
 */
export async function openStore({ cache: cacheName, fresh, controlled }, onPiece) {
  const { files, cache } = await openPlaces(cacheName);
  const shelfOf = ({ name }) => (name.endsWith(".wasm") ? cache ?? files : files ?? cache);
  const writes = [];
  let isSound = true; // what was taken from the device
  let isClosed = false;

  /* Bytes of a copy on the device. One that is damaged is found out while others are still awaited. */
  async function taken(place, file) {
    const bytes = fresh ? undefined : await place?.get(file.name).catch(() => undefined);
    if (bytes?.length !== file.bytes) return undefined;
    if (sumOf(bytes) !== file.sum) isSound = false;
    return bytes;
  }

  // A full disk must not stop an answer.
  function keep(place, name, bytes) {
    if (!isClosed) writes.push(place?.put(name, bytes).catch(() => undefined));
  }

  async function download(file) {
    const kept = await cache?.get(file.name).catch(() => undefined);
    const isSound = kept && await isWhole(kept, file);
    if (kept && !isSound) await cache.remove(file.name); // or a service worker answers with it again
    const response = isSound ? new Response(kept) : await fetch(addressOf(file.name));
    if (!response.ok) throw new Error(`${file.name}: the server answered ${response.status}`);
    return { body: response.body, isSound };
  }

  return {
    /* Bytes of a file that is used as it is sent. It is kept where a service worker finds it. */
    async plain(file) {
      const { body, isSound } = await download(file);
      const pieces = [];
      for await (const piece of piecesOf(body.pipeThrough(countPieces(onPiece, pieces))));
      const bytes = joinPieces(pieces);
      if (isSound) return bytes;
      if (!await isWhole(bytes, file)) throw new Error(`${file.name} is not the file of this release`);
      keep(cache, file.name, bytes);
      return bytes;
    },

    /* A script, when it lies where importing it finds it; gives its address. */
    async script(file) {
      if (!await taken(cache, file)) await this.plain(file);
      if (fresh) await Promise.all(writes); // over what was damaged
      return addressOf(file.name);
    },

    /* A response of the service worker with an unpacked file; undefined where it has none. */
    async answered({ unpacked }) {
      if (fresh || !controlled || !await cache?.has(unpacked.name).catch(() => false)) return undefined;
      const [response, bytes] = await Promise.all([fetch(addressOf(unpacked.name)), taken(cache, unpacked)]);
      return response.ok && bytes ? response : undefined;
    },

    /*
     * A file that is sent packed, unpacked. `unpacker` gives the unpacker when one is
     * needed. `alongside` gets a response with the unpacked bytes while they arrive;
     * nothing may run on them before this is through.
     */
    async unpacked(file, unpacker, alongside) {
      const kept = await taken(shelfOf(file.unpacked), file.unpacked);
      if (kept) return kept;
      const packed = [];
      const { body } = await download(file);
      const stream = body
        .pipeThrough(countPieces(onPiece, packed))
        .pipeThrough(unpackStream(await unpacker()));
      const [ours, theirs] = alongside ? stream.tee() : [stream];
      alongside?.(new Response(theirs, typed(file.unpacked.name)));
      const pieces = [];
      for await (const piece of piecesOf(ours)) pieces.push(piece);
      const sent = joinPieces(packed);
      if (!await isWhole(sent, file)) throw new Error(`${file.name} is not the file of this release`);
      const bytes = joinPieces(pieces);
      if (files) keep(cache, file.name, sent);
      keep(shelfOf(file.unpacked), file.unpacked.name, bytes);
      return bytes;
    },

    /* Whether all copies that were taken from the device are what they should be. */
    isSound: () => isSound,

    /* Whether something is done that is done once on a device; yes where that cannot be kept. */
    isMarked: async (name) => !files || files.has(name),
    mark: (name) => files.put(name, new Uint8Array()).catch(() => undefined),

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
