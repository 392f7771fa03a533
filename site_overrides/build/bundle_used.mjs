/*
 * The module with those functions only that answers use.
 *
 *   node bundle_used.mjs MODULE.wasm USED.bin OUT.wasm
 *
 * Nine tenths of Python's functions are never called here. Each function that none of
 * the usual requests reached stops with a trap instead of doing what it did; the page
 * then starts again with the whole module. Small functions stay: they cost little, and
 * what is rare is often small.
 */

import { readFileSync, writeFileSync } from "node:fs";
import { number, readNumber, withBodies } from "./bundle_wasm.mjs";

const SMALL = 200; // bytes
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

if (import.meta.filename === process.argv[1]) {
  const [module, used, out] = process.argv.slice(2);
  const marks = readFileSync(used);
  writeFileSync(out, withBodies(
    readFileSync(module),
    (body, function_) => (marks[function_] || body.length <= SMALL ? body : TRAP),
  ));
}
