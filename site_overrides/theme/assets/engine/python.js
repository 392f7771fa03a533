/*
 * Starts the pinned Python, from a memory snapshot or from its library.
 *
 * Calls the module script directly, as its own loader would fetch two files by
 * fixed names and knows no sparse snapshot. These are private interfaces of the
 * one version that the build pins; the build ties all files together by hash.
 */

export const PLACE = {
  IN_NODE: false, IN_NODE_ESM: false, IN_NODE_COMMONJS: false, IN_BUN: false, IN_DENO: false,
  IN_SHELL: false, IN_WORKERD: false, IN_SAFARI: false,
  IN_BROWSER: true, IN_BROWSER_MAIN_THREAD: false, IN_BROWSER_WEB_WORKER: true,
};
const HOME = "/home/pyodide";
/* What every answer calls its release; the worker puts the release in its place, so that no built file holds it. */
export const RELEASE = "@release@";
const MISSING = Symbol("error value of the wasm boundary");
export const ROOM = 40 * 1024 * 1024;
const PAGE = 64 * 1024;

/* What the module script asks of a loader, in its own words. */
function describeModule({ wasm, data, platform, library, snapshot, forSnapshot, place, onInstance }) {
  const settings = {
    noImageDecoding: true,
    noAudioDecoding: true,
    noWasmDecoding: false,
    noInitialRun: Boolean(snapshot),
    thisProgram: "/python",
    arguments: [],
    print: (text) => console.log(text),
    printErr: (text) => console.warn(text),
    onExit: (code) => { settings.exitCode = code; },
    locateFile: (name) => name,
    API: {
      config: {
        jsglobals: globalThis, env: {}, args: [], packages: [],
        packageBaseUrl: "/nowhere/", packageCacheDir: "/nowhere/", cdnUrl: "/nowhere/",
        enableRunUntilComplete: false, _makeSnapshot: forSnapshot,
      },
      runtimeEnv: place,
      lockFilePromise: Promise.resolve({ info: platform, packages: {} }),
    },
    preRun: [(module) => {
      const packed = module.HEAPU32[module._Py_Version >>> 2];
      const [major, minor] = [packed >>> 24 & 255, packed >>> 16 & 255];
      module.API.pyVersionTuple = [major, minor, packed >>> 8 & 255];
      module.API.sitePackages = `/lib/python${major}.${minor}/site-packages`;
      module.FS.mkdirTree(module.API.sitePackages);
      module.FS.mkdirTree(`/lib/python${major}.${minor}/lib-dynload`);
      if (library) module.FS.writeFile(`/lib/python${major}${minor}.zip`, library);
      module.FS.mkdirTree(HOME);
      module.FS.chdir(HOME);
      Object.assign(module.ENV, { HOME, LANG: "C.UTF-8", PYTHONINSPECT: "1", BENCHBOOK_RELEASE: RELEASE });
      settings.module = module;
    }],
    instantiateWasm(imports, received) {
      imports.env.Jsv_GetError_import = () => MISSING;
      imports.env.JsvError_Check = (value) => value === MISSING;
      Promise.all([wasm, data])
        .then(([compiled, bytes]) => WebAssembly.instantiate(compiled, imports).then((instance) => {
          if (bytes) new Uint8Array(instance.exports.memory.buffer).set(bytes);
          onInstance(instance);
          received(instance, compiled);
        }))
        .catch(settings.fail);
      return {};
    },
  };
  return settings;
}

/* Takes room for the whole library before any of it is loaded: a snapshot fits only memory of its own size. */
function takeRoom(memory, room) {
  const lacking = room - memory.buffer.byteLength;
  if (lacking > 0) memory.grow(Math.ceil(lacking / PAGE));
}

/* A sparse snapshot: what differs from the memory that the module itself lays down. */
function readSnapshot(bytes) {
  const [, headBytes, runs] = new Uint32Array(bytes.buffer, bytes.byteOffset, 4);
  const head = JSON.parse(new TextDecoder().decode(bytes.subarray(16, 16 + headBytes)));
  const table = new Uint32Array(bytes.buffer, bytes.byteOffset + 16 + headBytes, 2 * runs);
  return { head, table, data: 16 + headBytes + 8 * runs };
}

/* Lays the snapshot into memory that start-up has already written to. */
function restoreMemory(module, bytes, laidDown) {
  const { head, table, data } = readSnapshot(bytes);
  const memory = module.HEAPU8;
  if (memory.length < head.memory) throw new Error("the memory has another size");
  const written = module.HEAPU32[module._emscripten_get_sbrk_ptr() >>> 2];
  memory.fill(0, laidDown.length, Math.max(written, laidDown.length));
  memory.set(laidDown);
  let from = data;
  for (let run = 0; run < table.length; run += 2) {
    memory.set(bytes.subarray(from, from + table[run + 1]), table[run]);
    from += table[run + 1];
  }
  return head.state;
}

/**
 * Start Python.
 *
 * createModule: default export of the module script.
 * wasm:         the compiled module, or a promise of it.
 * platform:     what the build's lock says of it; the runtime compares.
 * library:      bytes of the zipped library; needed without a snapshot.
 * snapshot:     bytes of the sparse snapshot, or a promise of them.
 * data:         what the module lays into memory, or a promise of it (snapshot only).
 * onInstance:   called with the module before any of its code has run.
 * forSnapshot:  whether a snapshot will be made of it (at build time).
 * room:         bytes of memory taken before anything is loaded.
 * place:        where this runs, in the runtime's words; a browser's worker.
 * onMemory:     called with the memory as restored, for a check of its checksum.
 *
 * Gives the runtime's public interface; rejects when anything does not fit.
 */
export async function startPython({
  createModule, wasm, data, platform, library, snapshot, onMemory, onInstance, forSnapshot = false,
  place = PLACE, room = ROOM,
}) {
  const settings = describeModule({
    wasm, data, platform, library, snapshot, forSnapshot, place,
    onInstance(instance) {
      takeRoom(instance.exports.memory, room);
      onInstance?.(instance);
    },
  });
  // A failed compile would otherwise leave the module script waiting for ever.
  const failed = new Promise((_, reject) => { settings.fail = reject; });
  const module = await Promise.race([createModule(settings), failed]);
  if (settings.exitCode !== undefined) throw new Error(`Python ended with ${settings.exitCode}`);
  module.locateFile = (name) => { throw new Error(`nothing to load for ${name}`); };
  let state;
  if (snapshot) {
    state = restoreMemory(module, await snapshot, await data);
    await onMemory?.(module.HEAPU8);
  }
  const python = module.API.finalizeBootstrap(state);
  module.API.sys.path.insert(0, "");
  module.API._pyodide.set_excepthook();
  await module.API.packageIndexReady;
  module.API.initializeStreams();
  // A snapshot holds the random numbers of the day it was made.
  if (snapshot) python.runPython("import random; random.seed()");
  return python;
}
