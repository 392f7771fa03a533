/*
 * The Node half of the build: runs the pinned Python to compile the library and
 * to make the memory snapshot.
 *
 *   node bundle_inside.mjs library  RUNTIME WHEELS.zip REQUESTS.json INSIDE.py OUT.zip HELD.json
 *   node bundle_inside.mjs snapshot RUNTIME LIBRARY.zip REQUESTS.json HELD.json OUT.bin DATA.bin
 *   node bundle_inside.mjs entered  RUNTIME MODULE.wasm SNAPSHOT.bin DATA.bin REQUESTS.json OUT.bin
 */

import crypto from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { PLACE, ROOM, startPython } from "../theme/assets/engine/python.js";
import { marking } from "./bundle_used.mjs";

const HERE = { ...PLACE, IN_NODE: true, IN_NODE_ESM: true, IN_BROWSER: false, IN_BROWSER_WEB_WORKER: false };

/* Nothing of the day or of chance may get into what is built. */
function freezeClockAndChance() {
  const moment = 1_577_836_800_000;
  const RealDate = Date;
  globalThis.Date = class extends RealDate {
    constructor(...given) { super(...(given.length ? given : [moment])); }
    static now() { return moment; }
  };
  performance.now = () => 1000;
  let seed = 1;
  const fill = (view) => {
    const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
    for (let i = 0; i < bytes.length; i++) {
      seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
      bytes[i] = seed >>> 16;
    }
    return view;
  };
  crypto.randomFillSync = fill;
  globalThis.crypto.getRandomValues = fill;
}

/* The stock runtime, with no package list and so nothing to fetch. */
async function stockPython(runtime, inside, options = {}) {
  const { loadPyodide } = await import(pathToFileURL(join(runtime, "pyodide.mjs")));
  const python = await loadPyodide({
    indexURL: runtime,
    lockFileContents: { info: platformOf(runtime), packages: {} },
    packageBaseUrl: "/nowhere/",
    ...options,
  });
  python.FS.writeFile("/home/pyodide/inside.py", readFileSync(inside));
  return python;
}

function platformOf(runtime) {
  return JSON.parse(readFileSync(join(runtime, "pyodide-lock.json"), "utf8")).info;
}

async function makeLibrary([runtime, wheels, requests, inside, out, held]) {
  const python = await stockPython(runtime, inside);
  python.FS.writeFile("/wheels.zip", readFileSync(wheels));
  python.globals.set("requests", readFileSync(requests, "utf8"));
  python.runPython(`
import glob, json, sys
sys.path.insert(0, "/wheels.zip")
import inside
roots = ["/wheels.zip", *glob.glob("/lib/python3*.zip")]
packed = inside.library(roots, json.loads(requests))
held = json.dumps(inside.to_hold(roots))
`);
  writeFileSync(out, python.globals.get("packed").toJs());
  writeFileSync(held, python.globals.get("held"));

  const second = await stockPython(runtime, inside, { stdLibURL: out });
  second.globals.set("requests", readFileSync(requests, "utf8"));
  second.globals.set("held", readFileSync(held, "utf8"));
  second.runPython(`
import glob, json, inside
(root,) = glob.glob("/lib/python3*.zip")
packed = inside.trimmed(root, json.loads(held)["modules"], json.loads(requests))
`);
  writeFileSync(out, second.globals.get("packed").toJs());
}

/* Runs of bytes that differ, joined over gaps of so many words: laying a new run takes longer than a few bytes more. */
function differingRuns(memory, laidDown, gap = 64) {
  const [now, before] = [memory, laidDown].map((b) => new Uint32Array(b.buffer, b.byteOffset, b.byteLength / 4));
  const runs = [];
  let last = null;
  for (let word = 0; word < now.length; word++) {
    if (now[word] === (word < before.length ? before[word] : 0)) continue;
    if (last && word - last.end <= gap) last.end = word + 1;
    else runs.push(last = { start: word, end: word + 1 });
  }
  return runs.map(({ start, end }) => [4 * start, 4 * (end - start)]);
}

/* Marker, length of the head, number of runs, 0; the head; offset and length of each run; the bytes. */
function sparse(memory, laidDown, state) {
  const runs = differingRuns(memory, laidDown);
  let head = JSON.stringify({ memory: memory.length, state });
  head = head.padEnd(4 * Math.ceil(head.length / 4));
  const encoded = new TextEncoder().encode(head);
  if (encoded.length % 4) throw new Error("the state holds letters beyond ASCII");
  return Buffer.concat([
    new Uint8Array(new Uint32Array([0x31575358, encoded.length, runs.length, 0]).buffer),
    encoded,
    new Uint8Array(new Uint32Array(runs.flat()).buffer),
    ...runs.map(([from, length]) => memory.subarray(from, from + length)),
  ]);
}

/* One answer wakes the units; answering more only leaves more litter in the memory. */
async function makeSnapshot([runtime, library, requests, held, out, data]) {
  freezeClockAndChance();
  const { default: createModule } = await import(pathToFileURL(join(runtime, "pyodide.asm.mjs")));
  let laidDown;
  const python = await startPython({
    createModule,
    wasm: WebAssembly.compile(readFileSync(join(runtime, "pyodide.asm.wasm"))),
    platform: platformOf(runtime),
    library: readFileSync(library),
    forSnapshot: true,
    place: HERE,
    onInstance: ({ exports }) => { laidDown = new Uint8Array(exports.memory.buffer).slice(); },
  });
  python.globals.set("_held", readFileSync(held, "utf8"));
  python.globals.set("_asked", readFileSync(requests, "utf8"));
  const replies = python.runPython(`
import gc, importlib, json
_held = json.loads(_held)
for _name in _held["modules"]: importlib.import_module(_name)
if _held["tables"]:
    from calc.data.tables import table as _table
    for _name in _held["tables"]: _table(_name)
    del _table
_run = importlib.import_module("calc.bridge").run
_replies = json.dumps([_run(json.loads(_asked)[0])])
del _name, _held, _asked, _run
gc.collect()
_replies
`);
  python.runPython("del _replies, gc, importlib, json; import gc as _gc; _gc.collect(); del _gc");
  const state = python._api.serializeHiwireState();
  const memory = new Uint8Array(python._module.HEAP8.buffer).slice();
  if (memory.length !== laidDown.length) throw new Error(`the heap grew to ${memory.length} bytes`);
  let end = laidDown.length;
  while (end && !laidDown[end - 1]) end--;
  end = 16 * Math.ceil(end / 16);
  laidDown = laidDown.subarray(0, end);
  writeFileSync(data, laidDown);
  writeFileSync(out, sparse(memory, laidDown, state));
  writeFileSync(out.replace(/\.bin$/, ".json"), JSON.stringify({
    memory: memory.length,
    memory_sha256: crypto.createHash("sha256").update(memory).digest("hex"),
    replies: JSON.parse(replies),
  }));
}

/* What a page asks, with whatever the reader typed; other requests here are malformed on purpose. */
const ASKED = /^\{"calculator": ?"[^"]+", ?"texts": ?\{(?:(?:, ?)?"[^"]*": ?"(?:[^"\\]|\\.)*")*\}(?:, ?"drawings": ?\w+)?\}$/;

/* For each function of the module, whether starting or any of these requests enters it. */
async function findEntered([runtime, module, snapshot, data, requests, out]) {
  const MOST = 65_536;
  const marks = ROOM + 32 * 1024 * 1024; // far above what answers take
  freezeClockAndChance();
  const { default: createModule } = await import(pathToFileURL(join(runtime, "pyodide.asm.mjs")));
  let memory;
  const python = await startPython({
    createModule,
    wasm: WebAssembly.compile(marking(readFileSync(module), marks)),
    platform: platformOf(runtime),
    snapshot: new Uint8Array(readFileSync(snapshot)),
    data: new Uint8Array(readFileSync(data)),
    place: HERE,
    room: marks + MOST,
    onInstance: ({ exports }) => { memory = exports.memory; },
  });
  const bridge = python.pyimport("calc.bridge");
  for (const request of JSON.parse(readFileSync(requests, "utf8"))) {
    const fault = /"fault": "\w+"/.exec(bridge.run(request));
    if (fault && ASKED.test(request)) throw new Error(`${request.slice(0, 200)}: ${fault[0]}`);
  }
  python.runPython("import gc; gc.collect()");
  if (memory.buffer.byteLength !== marks + MOST) throw new Error("the memory grew over the marks");
  writeFileSync(out, new Uint8Array(memory.buffer, marks, MOST));
}

const [what, ...given] = process.argv.slice(2);
try {
  await { library: makeLibrary, snapshot: makeSnapshot, entered: findEntered }[what](given);
  process.exit(0);
} catch (error) {
  console.error(String(error.message).slice(-2000)); // not the stack: the script is one long line
  process.exit(1);
}
