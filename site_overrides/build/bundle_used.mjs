/*
 * The module with those functions only that answers use.
 *
 *   node bundle_used.mjs MODULE.wasm USED.bin CALLS.dot OUT.wasm
 *
 * Most of Python's functions are never called here. What the usual requests entered
 * stays, and all that it may call by name, whatever the values are; so do small
 * functions, as they cost little. Any other function stops with a trap instead of
 * doing what it did; the page then starts again with the whole module. What the
 * module lays into memory is a file of its own, as it need not be compiled.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { number, readNumber, withBodies, withoutData } from "./bundle_wasm.mjs";

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

if (import.meta.filename === process.argv[1]) {
  const [module, used, graph, out] = process.argv.slice(2);
  const stays = reached(readFileSync(used), readFileSync(graph, "utf8"));
  writeFileSync(out, withoutData(withBodies(
    readFileSync(module),
    (body, function_) => (stays.has(function_) || body.length <= SMALL ? body : TRAP),
  )));
}
