/*
 * The engine: Python in a worker. Text in, text out; everything it says is one of
 *   {step, loaded, total}  loading (a block has arrived), starting, ready
 *   {news}                 kept: all is on the device; memoryChecked: as built
 *   {id, reply}            the bridge's reply to {id, request}
 *   {broken, missing, damaged}  it cannot go on, for lack of something left out where `missing` says
 *                          so, for a damaged copy on this device where `damaged` does; the client
 *                          decides what is next
 *
 * Its settings come in its name, since a service worker drops an address's query:
 *   {cache, files, fallback, fresh, check}
 */

import { startPython } from "./python.js";
import { addressOf, openStore, sha256Of } from "./store.js";

const settings = JSON.parse(self.name);
const { files } = settings;
const [script, wasm, image] = settings.fallback
  ? [files.whole_script, files.whole_wasm, files.library]
  : [files.script, files.wasm, files.snapshot];
const total = [script, files.unpacker, wasm, image].reduce((sum, { bytes }) => sum + bytes, 0);
const waiting = [];
let loaded = 0;
let store = null;
let run = null;

self.onmessage = ({ data }) => (run ? reply(data) : waiting.push(data));

/* What answers never used was left out of the module and stops it: only a start from the whole helps. */
function reply({ id, request }) {
  try {
    postMessage({ id, reply: run(request) });
  } catch (error) {
    giveUp(error, true);
  }
}

function report(step) {
  postMessage({ step, loaded, total });
}

/* Compiles while it arrives, or at once when it is held. */
async function compiledModule(store, unpacker) {
  let compiling;
  const bytes = await store.unpacked(wasm, unpacker, (stream) => {
    const response = new Response(stream, { headers: { "Content-Type": "application/wasm" } });
    compiling = WebAssembly.compileStreaming(response);
    compiling.catch(() => undefined); // the check of the bytes speaks first
  });
  return compiling ?? WebAssembly.compile(bytes);
}

async function checkMemory(memory) {
  if (await sha256Of(memory) !== files.snapshot.memory_sha256) {
    throw new Error("the memory was restored wrongly");
  }
  postMessage({ news: { memoryChecked: true } });
}

async function start() {
  report("loading");
  store = await openStore(settings.cache, (bytes) => {
    loaded += bytes;
    report("loading");
  }, settings.fresh);
  let compiledUnpacker;
  const unpacker = () => compiledUnpacker ??= store.plain(files.unpacker).then((bytes) => WebAssembly.compile(bytes));
  const module = compiledModule(store, unpacker);
  const bytes = store.unpacked(image, unpacker);
  bytes.catch(() => undefined); // whoever waits for it hears of it
  const imported = store.plain(script).then(() => import(addressOf(script.name)));
  const [{ default: createModule }] = await Promise.all([imported, module]);
  report("starting");
  const python = await startPython({
    createModule,
    wasm: module,
    platform: files.platform,
    laid: files.snapshot.laid,
    ...(settings.fallback ? { library: await bytes } : { snapshot: bytes }),
    onMemory: settings.check ? checkMemory : undefined,
  });
  const bridge = python.pyimport("calc.bridge");
  if (!await store.isSound()) throw new Error("a copy on this device is damaged");
  run = (request) => bridge.run(request);
  report("ready");
  for (const message of waiting.splice(0)) reply(message);
  await store.settled(
    [files.wasm, files.snapshot, files.whole_wasm, files.library].map((file) => file.unpacked.name),
  );
  postMessage({ news: { kept: true } });
}

/* Whoever hears of it ends this worker: no file may be left half written. */
async function giveUp(error, missing = false) {
  await store?.close();
  const damaged = Boolean(store) && !await store.isSound();
  postMessage({ broken: String(error?.message ?? error), missing, damaged });
}

start().catch((error) => giveUp(error));
