/*
 * The engine of the site under Node: the same script, module, snapshot and library
 * as a browser gets.
 *
 *   node engine.mjs answer ENGINE snapshot|library   requests on stdin, replies on stdout; from the library
 *                                                    the module is whole, else it holds what answers use
 *   node engine.mjs heap ENGINE                      requests on stdin, on stdout the bytes of the heap
 *                                                    before and after, and how many answers differ
 *   node engine.mjs tables ENGINE                    names on stdin, rows of each table on stdout
 *   node engine.mjs suite ENGINE LIBRARY.zip TREE.zip SUITE.py   the test suite, full library
 */

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { PLACE, startPython } from "../../site_overrides/theme/assets/engine/python.js";
import { unpackStream } from "../../site_overrides/theme/assets/engine/unxz.js";

const [what, folder, ...given] = process.argv.slice(2);
const engine = resolve(folder);
const { FILES } = await import(pathToFileURL(join(engine, "files.js")));

async function unpacked({ name }) {
  const unpacker = new WebAssembly.Module(readFileSync(join(engine, FILES.unpacker.name)));
  const packed = new ReadableStream({
    start(controller) {
      controller.enqueue(new Uint8Array(readFileSync(join(engine, name))));
      controller.close();
    },
  });
  const pieces = [];
  for await (const piece of packed.pipeThrough(unpackStream(unpacker))) pieces.push(piece);
  return new Uint8Array(Buffer.concat(pieces));
}

async function started(image, isWhole = !image.snapshot) {
  const [script, wasm] = isWhole ? [FILES.whole_script, FILES.whole_wasm] : [FILES.script, FILES.wasm];
  const { default: createModule } = await import(pathToFileURL(join(engine, script.name)));
  return startPython({
    createModule,
    wasm: WebAssembly.compile(await unpacked(wasm)),
    platform: FILES.platform,
    data: image.snapshot && await unpacked(FILES.data),
    place: { ...PLACE, IN_NODE: true, IN_NODE_ESM: true, IN_BROWSER: false, IN_BROWSER_WEB_WORKER: false },
    onMemory(memory) {
      const sha256 = createHash("sha256").update(memory).digest("hex");
      if (sha256 !== FILES.snapshot.memory_sha256) throw new Error("the memory was restored wrongly");
    },
    ...image,
  });
}

async function answer([from]) {
  const python = await started(
    from === "snapshot" ? { snapshot: await unpacked(FILES.snapshot) } : { library: await unpacked(FILES.library) },
  );
  const bridge = python.pyimport("calc.bridge");
  const requests = JSON.parse(readFileSync(0, "utf8"));
  process.stdout.write(JSON.stringify(requests.map((request) => {
    const began = performance.now();
    const reply = bridge.run(request);
    return { reply, ms: performance.now() - began };
  })));
}

async function heap() {
  const python = await started({ snapshot: await unpacked(FILES.snapshot) });
  const bridge = python.pyimport("calc.bridge");
  const size = () => python._module.HEAPU8.length;
  const before = size();
  const replies = new Set(JSON.parse(readFileSync(0, "utf8")).map((request) => bridge.run(request)));
  const answers = Array.from(replies).filter((reply) => reply.startsWith('{"answer"')).length;
  process.stdout.write(JSON.stringify({ before, after: size(), answers }));
}

/* Asked in other words than the bridge's, so of the whole module. */
async function tables() {
  const python = await started({ snapshot: await unpacked(FILES.snapshot) }, true);
  python.globals.set("names", readFileSync(0, "utf8"));
  process.stdout.write(python.runPython(`
import json
from calc.data.tables import table
json.dumps({name: len(table(name)) for name in json.loads(names)})
`));
}

async function suite([library, tree, script]) {
  const python = await started({ library: new Uint8Array(readFileSync(library)) });
  python.FS.writeFile("/tree.zip", new Uint8Array(readFileSync(tree)));
  return python.runPython(readFileSync(script, "utf8"));
}

try {
  const code = await { answer, heap, suite, tables }[what](given);
  process.exitCode = typeof code === "number" ? code : 0;
} catch (error) {
  console.error(String(error.message).slice(-3000)); // not the stack: the script is one long line
  process.exitCode = 1;
}
