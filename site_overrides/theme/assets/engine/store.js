/*
 * The engine's files: from this release's cache, else from the network, checked
 * and kept at once. What came packed is kept unpacked, as unpacking takes longer
 * than reading. Without a cache or checksums (an address that is neither https
 * nor localhost) everything comes from the network each time.
 */

import { unpackStream } from "./unxz.js";

const TYPES = { wasm: "application/wasm", mjs: "text/javascript" };

const address = (name) => new URL(name, import.meta.url).href;

async function checkedBytes(bytes, file) {
  if (bytes.byteLength !== file.bytes) throw new Error(`${file.name} has another length`);
  if (!self.crypto?.subtle) return bytes;
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const sha256 = [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  if (sha256 !== file.sha256) throw new Error(`${file.name} is not the file of this release`);
  return bytes;
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

/**
 * Open the store of a release.
 *
 * cacheName: name of the release's cache.
 * onPiece:   called with the number of bytes of each piece that arrives.
 */
export async function openStore(cacheName, onPiece) {
  const cache = await self.caches?.open(cacheName).catch(() => undefined);
  const held = async (name) => (await cache?.match(address(name)))?.clone();

  async function keep(name, bytes) {
    const headers = { "Content-Type": TYPES[name.split(".").at(-1)] ?? "application/octet-stream" };
    // A full disk must not stop an answer.
    await cache?.put(address(name), new Response(bytes, { headers })).catch(() => undefined);
  }

  async function download(file) {
    const response = (await held(file.name)) ?? (await fetch(address(file.name)));
    if (!response.ok) throw new Error(`${file.name}: the server answered ${response.status}`);
    return response;
  }

  return {
    /* Bytes of a file that is sent as it is. */
    async plain(file) {
      const kept = await held(file.name);
      if (kept) return checkedBytes(new Uint8Array(await kept.arrayBuffer()), file);
      const response = await download(file);
      const pieces = [];
      await response.body.pipeThrough(countPieces(onPiece, pieces)).pipeTo(new WritableStream());
      const bytes = await checkedBytes(joinPieces(pieces), file);
      await keep(file.name, bytes);
      return bytes;
    },

    /*
     * A file that is sent packed: its bytes, unpacked and checked. `alongside` gets
     * the unpacked bytes as a stream while they arrive; nothing may run on them
     * before the check is through. `later` is done when the copy is kept.
     */
    async unpacked(file, unpacker, alongside) {
      const kept = await held(file.unpacked.name);
      if (kept) {
        const bytes = new Uint8Array(await kept.arrayBuffer());
        return { bytes: await checkedBytes(bytes, file.unpacked), later: Promise.resolve() };
      }
      const response = await download(file);
      const packed = [];
      let stream = response.body.pipeThrough(countPieces(onPiece, packed)).pipeThrough(unpackStream(await unpacker));
      if (alongside) {
        const [ours, theirs] = stream.tee();
        stream = ours;
        alongside(new Response(theirs, { headers: { "Content-Type": TYPES.wasm } }));
      }
      const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
      await checkedBytes(joinPieces(packed), file);
      const later = keep(file.unpacked.name, bytes).then(() => cache?.delete(address(file.name)));
      return { bytes, later };
    },

    held,
    address,
  };
}
