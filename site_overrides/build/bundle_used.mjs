/*
 * The module with those functions only that answers use.
 *
 *   node bundle_used.mjs cut  STOCK.wasm MODULE.wasm ENTERED.txt CALLS.dot OUT.wasm
 *   node bundle_used.mjs list STOCK.wasm VERSION ENTERED.bin OUT.txt
 *
 * Most of Python's functions are never called here. What the usual requests entered
 * stays, and all that it may call by name, whatever the values are; so do small
 * functions, as they cost little. Any other function stops with a trap instead of
 * doing what it did; the page then starts again with the whole module. What the
 * module lays into memory is a file of its own, as it need not be compiled.
 *
 * ENTERED.txt names a function by the one before it that the package's module exports,
 * and how many functions it stands behind that: `PyLong_FromLong+2`. Its first line
 * says which module that is.
 */

import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { exportedFunctions, importedFunctions, number, readNumber, withBodies, withoutData } from "./bundle_wasm.mjs";

const SMALL = 100; // bytes
const TRAP = Buffer.from([0x00, 0x00, 0x0b]); // no locals; unreachable; end

/** The module, which writes 1 to `marks` plus its own number whenever a function is entered. */
export function marking(bytes, marks) {
  return withBodies(bytes, (body, function_) => {
    let [groups, at] = readNumber(body, 0);
    for (; groups; groups--) at = readNumber(body, at)[1] + 1; // how many locals, and their type
    const mark = [0x41, 0, 0x41, 1, 0x3a, 0, ...number(marks + function_)]; // i32.const 0, i32.const 1, i32.store8
    return Buffer.concat([body.subarray(0, at), Buffer.from(mark), body.subarray(at)]);
  });
}

/* Which functions are entered, or may be called by name from one that is. */
function reached(marks, graph) {
  const calls = new Map();
  for (const [, from, to] of graph.matchAll(/"(\d+)" -> "(\d+)"; \/\/ call/g)) {
    if (!calls.has(from)) calls.set(from, []);
    calls.get(from).push(Number(to));
  }
  if (!calls.size) throw new Error("binaryen writes its graph of calls in another way now");
  const found = new Set();
  const next = Array.from(marks.keys()).filter((function_) => marks[function_]);
  while (next.length) {
    const function_ = next.pop();
    if (found.has(function_)) continue;
    found.add(function_);
    next.push(...(calls.get(String(function_)) ?? []));
  }
  return found;
}

const byText = (a, b) => (a < b ? -1 : Number(a > b));

/* The name of each function of the package's module that has a body, by its number among these. */
function names(stock, count) {
  const first = importedFunctions(stock);
  const exported = new Map();
  for (const [name, function_] of exportedFunctions(stock).sort(([a], [b]) => byText(a, b))) {
    if (!exported.has(function_ - first)) exported.set(function_ - first, name);
  }
  let [last, behind] = ["", 0];
  return Array.from({ length: count }, (_, function_) => {
    [last, behind] = exported.has(function_) ? [exported.get(function_), 0] : [last, behind + 1];
    return behind ? `${last}+${behind}` : last;
  });
}

const bodiesOf = (bytes) => {
  let count = 0;
  withBodies(bytes, (body) => { count++; return body; });
  return count;
};

const heading = (stock) => `module ${createHash("sha256").update(stock).digest("hex")}`;

/* One for each function: whether the list names it. */
function entered(stock, list) {
  const [line, ...listed] = list.trimEnd().split("\n");
  if (!line.endsWith(heading(stock))) {
    throw new Error("The list of functions that answers enter is that of another runtime: run make engine-lock.");
  }
  const named = new Set(listed);
  return Uint8Array.from(names(stock, bodiesOf(stock)), (name) => Number(named.has(name)));
}

const [what, ...given] = import.meta.filename === process.argv[1] ? process.argv.slice(2) : [];

if (what === "list") {
  const [module, version, marks, out] = given;
  const stock = readFileSync(module);
  const used = readFileSync(marks);
  const listed = names(stock, bodiesOf(stock)).filter((_, function_) => used[function_]).sort(byText);
  writeFileSync(out, `${[`pyodide ${version}, ${heading(stock)}`, ...listed].join("\n")}\n`);
}

if (what === "cut") {
  const [module, numbered, list, graph, out] = given;
  try {
    const stays = reached(entered(readFileSync(module), readFileSync(list, "utf8")), readFileSync(graph, "utf8"));
    writeFileSync(out, withoutData(withBodies(
      readFileSync(numbered),
      (body, function_) => (stays.has(function_) || body.length <= SMALL ? body : TRAP),
    )));
  } catch (error) {
    console.error(error.message);
    process.exit(1);
  }
}
