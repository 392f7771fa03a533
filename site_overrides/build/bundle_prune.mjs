/*
 * Cuts the runtime down to what one Python without extension modules uses.
 *
 *   node bundle_prune.mjs PACKAGES SCRIPT.mjs MODULE.wasm OUT.mjs OUT.wasm
 *
 * As shipped, the module offers some 8,500 names to extension modules, and the
 * script carries them all twice; naming them takes longer than reading a snapshot.
 * The script loses the lines that only pass names on, then whatever nothing uses;
 * the module loses the exports that the script no longer asks for, and then, by
 * binaryen, the functions that nothing reaches. Both files are changed copies under
 * MPL-2.0; this recipe is how to make them again.
 *
 * PACKAGES is the folder of npm's packages, for terser.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { withExports } from "./bundle_wasm.mjs";

const [packages, scriptIn, wasmIn, scriptOut, wasmOut] = process.argv.slice(2);
const { minify } = createRequire(join(resolve(packages), "any.js"))("terser");
const wasm = readFileSync(wasmIn);
const compiled = new WebAssembly.Module(wasm);
const wanted = new Set(WebAssembly.Module.imports(compiled).map(({ name }) => name));
const offered = WebAssembly.Module.exports(compiled);

/* Names that our own loader and build read from the outside. */
const OURS = ["API", "ENV", "FS", "HEAP8", "HEAPU8", "HEAPU32", "_Py_Version", "_emscripten_get_sbrk_ptr"];

function once(text, pattern, replacement) {
  const parts = text.split(pattern);
  if (parts.length !== 2) throw new Error(`expected one ${pattern}, found ${parts.length - 1}`);
  return parts.join(replacement);
}

/* `wasmImports={...}` without what the module does not import. */
function fewerImports(script) {
  const from = script.indexOf("wasmImports={") + "wasmImports={".length;
  const to = script.indexOf("}", from);
  const kept = script.slice(from, to).split(",").filter((entry) => wanted.has(entry.split(":")[0]));
  return script.slice(0, from) + kept.join(",") + script.slice(to);
}

/* Without the lines that only hand a name on, unless something reads it there. */
function fewerNames(script) {
  const handedOn = /Module\["(\w+)"\]=\1;/g;
  const exported = /(\w+=)?Module\["(\w+)"\]=(wasmExports\["\w+"\](?:\.value>>>0)?[;}])/g;
  const rest = script.replace(handedOn, "").replace(exported, "");
  const read = new Set([
    ...OURS,
    ...[...rest.matchAll(/(?:Module|public_api|\bm)\??\.(\w+)/g)].map(([, name]) => name),
    ...[...rest.matchAll(/\["(\w+)"\]/g)].map(([, name]) => name),
  ]);
  return script
    .replace(handedOn, (line, name) => (read.has(name) ? line : ""))
    .replace(exported, (line, variable, name, value) =>
      (read.has(name) ? line : variable ? variable + value : value.endsWith("}") ? "}" : ""))
    .replace(/\b_?(\w+)\.sig="\w*";/g, (line, name) => (wanted.has(name) ? line : ""))
    // Extension modules bring scripts as text; there are none, and a page forbids eval.
    .replace(/\beval\(/g, "leftOut(");
}

async function pruned(script) {
  let text = fewerNames(fewerImports(script));
  // Only extension modules ask for functions by address; both lines make an object of every function.
  text = once(text, "updateGOT(origExports);", "");
  text = once(text, "updateTableMap(0,wasmTable.length)", "");
  text = once(text, "export default _createPyodideModule;", "function leftOut(){throw new Error(\"left out of this build\")}\nexport default _createPyodideModule;");
  const made = await minify(text, {
    module: true,
    compress: { defaults: false, unused: true, dead_code: true, pure_getters: true, side_effects: true, passes: 4 },
    mangle: { keep_classnames: true },
    format: { comments: false },
  });
  return readAtOnce(made.code);
}

/* Browsers read a function in brackets once, any other twice: to see where it ends, and when it is called. */
function readAtOnce(code) {
  const opened = code.replace(/^async function (\w+)\(/, "const $1=(async function(");
  const closed = opened.replace(/\}(?=function \w+\(\)\{throw new Error\("left out)/, "});");
  if (closed.length !== code.length + "const =(".length - " ".length + ");".length) throw new Error("the script looks otherwise now");
  return closed;
}

const script = await pruned(readFileSync(scriptIn, "utf8"));
const words = new Set(script.match(/[\w$]+/g));
const keep = new Set(offered.map(({ name, kind }) => [name, kind])
  .filter(([name, kind]) => kind === "memory" || kind === "table" || kind === "tag" || words.has(name))
  .map(([name]) => name));
writeFileSync(scriptOut, script);
writeFileSync(wasmOut, withExports(wasm, (name) => keep.has(name)));
