/*
 * Cuts the runtime down to what one Python without extension modules uses.
 *
 *   node --input-type=module - RUNTIME OUT.mjs OUT.wasm <bundle_prune.mjs
 *
 * (read from standard input, so that terser is found in the working directory).
 *
 * As shipped, the module offers some 8,500 names to extension modules, and the
 * script carries them all twice; naming them takes longer than reading a snapshot.
 * The script loses the lines that only pass names on, then whatever nothing uses;
 * the module loses the exports that the script no longer asks for, and then, by
 * binaryen, the functions that nothing reaches. Both files are changed copies under
 * MPL-2.0; this recipe is how to make them again.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { minify } from "terser";

const [runtime, scriptOut, wasmOut] = process.argv.slice(-3);
const wasm = readFileSync(join(runtime, "pyodide.asm.wasm"));
const compiled = new WebAssembly.Module(wasm);
const wanted = new Set(WebAssembly.Module.imports(compiled).map(({ name }) => name));
const addressed = new Set(
  WebAssembly.Module.imports(compiled).filter(({ module }) => module.startsWith("GOT.")).map(({ name }) => name),
);
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
  text = once(text, "export default _createPyodideModule;", "function leftOut(){throw new Error(\"left out of this build\")}\nexport default _createPyodideModule;");
  const made = await minify(text, {
    module: true,
    compress: { defaults: false, unused: true, dead_code: true, pure_getters: true, side_effects: true, passes: 4 },
    mangle: { keep_classnames: true },
    format: { comments: false },
  });
  return made.code;
}

function readNumber(bytes, at) {
  let value = 0, shift = 0, byte;
  do {
    byte = bytes[at++];
    value += (byte & 127) * 2 ** shift;
    shift += 7;
  } while (byte & 128);
  return [value, at];
}

function number(value) {
  const bytes = [];
  do {
    bytes.push((value & 127) | (value > 127 ? 128 : 0));
    value = Math.floor(value / 128);
  } while (value);
  return bytes;
}

/* The export section holds only the entries to keep; all other sections stay as they are. */
function withExports(bytes, keep) {
  const EXPORTS = 7;
  const parts = [bytes.subarray(0, 8)];
  for (let at = 8; at < bytes.length;) {
    const id = bytes[at];
    const [size, start] = readNumber(bytes, at + 1);
    if (id !== EXPORTS) {
      parts.push(bytes.subarray(at, start + size));
    } else {
      const kept = [];
      let [count, from] = readNumber(bytes, start);
      for (; count; count--) {
        const [length, name] = readNumber(bytes, from);
        const [, end] = readNumber(bytes, name + length + 1);
        if (keep.has(bytes.toString("utf8", name, name + length))) kept.push(bytes.subarray(from, end));
        from = end;
      }
      const body = Buffer.concat([Buffer.from(number(kept.length)), ...kept]);
      parts.push(Buffer.from([id, ...number(body.length)]), body);
    }
    at = start + size;
  }
  return Buffer.concat(parts);
}

const script = await pruned(readFileSync(join(runtime, "pyodide.asm.mjs"), "utf8"));
const words = new Set(script.match(/[\w$]+/g));
const keep = new Set(offered.map(({ name, kind }) => [name, kind])
  .filter(([name, kind]) => kind === "memory" || kind === "table" || kind === "tag" || words.has(name) || addressed.has(name))
  .map(([name]) => name));
writeFileSync(scriptOut, script);
writeFileSync(wasmOut, withExports(wasm, keep));
