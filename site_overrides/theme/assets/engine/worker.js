/*
 * The engine: Python in a worker. Text in, text out; everything it says is one of
 *   {step, loaded, total}     a step of starting, or a block that has arrived
 *   {step: "ready", ms, from} it answers from now on
 *   {id, reply}               the bridge's reply to {id, request}
 *   {broken}                  it cannot go on; the client decides what is next
 *
 * Its settings come in its name, since a service worker drops an address's query:
 *   {cache, files, controlled, fallback, warmUp, check}
 */

import { startPython } from "./python.js";
import { openStore } from "./store.js";

const settings = JSON.parse(self.name);
const { files } = settings;
const began = performance.now();
const waiting = [];
let run = null;

self.onmessage = ({ data }) => (run ? reply(data) : waiting.push(data));

function reply({ id, request }) {
  postMessage({ id, reply: run(request) });
}

const total = [files.script, files.unpacker, files.wasm, settings.fallback ? files.library : files.snapshot]
  .reduce((sum, file) => sum + file.bytes, 0);
let loaded = 0;

function report(step) {
  postMessage({ step, loaded, total });
}

/* The compiled module: with the browser's own cache of machine code where a service worker answers. */
async function compiledModule(store, unpacker) {
  if (settings.controlled && await store.held(files.wasm.unpacked.name)) {
    const response = await fetch(store.address(files.wasm.unpacked.name));
    if (response.ok) {
      const copy = response.clone();
      const [compiled] = await Promise.all([WebAssembly.compileStreaming(response), copy.arrayBuffer()]);
      return { compiled, later: Promise.resolve(), cached: true };
    }
  }
  let compiling = null;
  const { bytes, later } = await store.unpacked(files.wasm, unpacker, (response) => {
    compiling = WebAssembly.compileStreaming(response);
    compiling.catch(() => undefined);
  });
  return { compiled: await (compiling ?? WebAssembly.compile(bytes)), later, cached: false };
}

async function start() {
  report("loading");
  const store = await openStore(settings.cache, (bytes) => {
    loaded += bytes;
    report("loading");
  });
  const unpacker = store.plain(files.unpacker).then((bytes) => WebAssembly.compile(bytes));
  const module = compiledModule(store, unpacker);
  const memory = store.unpacked(settings.fallback ? files.library : files.snapshot, unpacker);
  const script = store.plain(files.script).then(() => import(store.address(files.script.name)));
  const [{ compiled, later, cached }, { bytes, later: later2 }, { default: createModule }] =
    await Promise.all([module, memory, script]);
  report("starting");
  const python = await startPython({
    createModule,
    wasm: compiled,
    platform: files.platform,
    laid: files.snapshot.laid,
    ...(settings.fallback ? { library: bytes } : { snapshot: bytes }),
    onMemory: settings.check ? checkMemory : undefined,
  });
  const bridge = python.pyimport("calc.bridge");
  run = (request) => bridge.run(request);
  report("ready");
  for (const message of waiting.splice(0)) reply(message);
  await Promise.all([later, later2]);
}

async function checkMemory(memory) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", memory));
  const sha256 = [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  if (sha256 !== files.snapshot.memory_sha256) throw new Error("the memory was restored wrongly");
  postMessage({ step: "memory checked", loaded, total });
}

start().catch((error) => postMessage({ broken: String(error?.message ?? error) }));
