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
 *   {cache, files, controlled, fallback, fresh, check}
 */

import { RELEASE, startPython } from "./python.js";
import { sha256Of } from "./places.js";
import { openStore } from "./store.js";

const settings = JSON.parse(self.name);
const { files } = settings;
const [script, wasm, images] = settings.fallback
  ? [files.whole_script, files.whole_wasm, ["library"]]
  : [files.script, files.wasm, ["data", "snapshot"]];
const total = [script, files.unpacker, wasm, ...images.map((role) => files[role])].reduce((sum, { bytes }) => sum + bytes, 0);
const warm = `warm-${wasm.unpacked.name}`; // lies on a device once it was warmed up
const WARM_UP = 1_000, REST = 20, KEEPING = 3_000; // ms
const waiting = [];
let loaded = 0;
let store = null;
let canKeepCode = false;
let run = null;
let latest = null; // what was asked last

self.onmessage = ({ data }) => (run ? reply(data) : waiting.push(data));

/* What answers never used was left out of the module and stops it: only a start from the whole helps. */
function reply({ id, request }) {
  try {
    postMessage({ id, reply: run(request) });
    latest = request;
  } catch (error) {
    giveUp(error, true);
  }
}

function report(step) {
  postMessage({ step, loaded, total });
}

/* Compiles while it arrives; once it is held, from the service worker, as browsers keep what they compiled so. */
async function compiledModule(unpacker) {
  const answered = await store.answered(wasm);
  if (answered) {
    canKeepCode = true;
    return WebAssembly.compileStreaming(answered);
  }
  let compiling;
  const bytes = await store.unpacked(wasm, unpacker, (response) => {
    compiling = WebAssembly.compileStreaming(response);
    compiling.catch(() => undefined); // the check of the bytes speaks first
  });
  return compiling ?? WebAssembly.compile(bytes);
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/*
 * Asks the latest question again and again, once for each module on a device, for a second in
 * all and with as much rest between: browsers keep only compiled code that has run a while,
 * and take a moment for it. Whoever leaves before is warmed up at the next visit.
 */
async function warmUp() {
  let spent = 0;
  while (spent < WARM_UP) {
    const began = performance.now();
    run(latest);
    const took = performance.now() - began;
    spent += took;
    await pause(Math.max(took, REST));
  }
  await pause(KEEPING);
  await store.mark(warm);
}

async function checkMemory(memory) {
  if (await sha256Of(memory) !== files.snapshot.memory_sha256) {
    throw new Error("the memory was restored wrongly");
  }
  postMessage({ news: { memoryChecked: true } });
}

async function start() {
  report("loading");
  store = await openStore(settings, (bytes) => {
    loaded += bytes;
    report("loading");
  });
  const imported = store.script(script).then((address) => import(address));
  let compiledUnpacker;
  const unpacker = () => compiledUnpacker ??= store.plain(files.unpacker).then((bytes) => WebAssembly.compile(bytes));
  const module = compiledModule(unpacker);
  const { library, data, snapshot } = Object.fromEntries(images.map((role) => [role, store.unpacked(files[role], unpacker)]));
  for (const bytes of [library, data, snapshot]) bytes?.catch(() => undefined); // whoever waits for it hears of it
  const [{ default: createModule }] = await Promise.all([imported, module]);
  report("starting");
  const python = await startPython({
    createModule,
    wasm: module,
    platform: files.platform,
    library: await library,
    data,
    snapshot,
    onMemory: settings.check ? checkMemory : undefined,
  });
  const bridge = python.pyimport("calc.bridge");
  if (!store.isSound()) throw new Error("a copy on this device is damaged");
  run = (request) => bridge.run(request).replaceAll(RELEASE, files.release);
  report("ready");
  for (const message of waiting.splice(0)) reply(message);
  await store.settled([
    ...[files.data, files.snapshot, files.library].map((file) => file.unpacked.name),
    warm,
  ]);
  postMessage({ news: { kept: true } });
  if (canKeepCode && latest && !await store.isMarked(warm)) await warmUp();
}

/* Whoever hears of it ends this worker: no file may be left half written. */
async function giveUp(error, missing = false) {
  await store?.close();
  const damaged = Boolean(store) && !store.isSound();
  postMessage({ broken: String(error?.message ?? error), missing, damaged });
}

start().catch((error) => giveUp(error));
