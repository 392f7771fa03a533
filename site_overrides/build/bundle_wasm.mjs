/* Takes a WebAssembly module apart by its sections and puts it together again. */

const EXPORTS = 7, CODE = 10, DATA = 11, DATA_COUNT = 12;
const FUNCTION = 0;

/** The number at a place, and the place after it. */
export function readNumber(bytes, at) {
  let value = 0, shift = 0, byte;
  do {
    byte = bytes[at++];
    value += (byte & 127) * 2 ** shift;
    shift += 7;
  } while (byte & 128);
  return [value, at];
}

/** A number as a module holds it. */
export function number(value) {
  const bytes = [];
  do {
    bytes.push((value & 127) | (value > 127 ? 128 : 0));
    value = Math.floor(value / 128);
  } while (value);
  return bytes;
}

/* The same module with one section changed: `change` gives its entries from its bytes and their place. */
function withSection(bytes, wanted, change) {
  const parts = [bytes.subarray(0, 8)];
  for (let at = 8; at < bytes.length;) {
    const [size, start] = readNumber(bytes, at + 1);
    if (bytes[at] !== wanted) {
      parts.push(bytes.subarray(at, start + size));
    } else {
      const entries = change(start);
      const body = Buffer.concat([Buffer.from(number(entries.length)), ...entries]);
      parts.push(Buffer.from([wanted, ...number(body.length)]), body);
    }
    at = start + size;
  }
  return Buffer.concat(parts);
}

/* Where a section's entries begin. */
function sectionOf(bytes, wanted) {
  for (let at = 8; at < bytes.length;) {
    const [size, start] = readNumber(bytes, at + 1);
    if (bytes[at] === wanted) return start;
    at = start + size;
  }
  throw new Error(`the module has no section ${wanted}`);
}

/** How many functions the module takes from outside; its own are numbered after these. */
export const importedFunctions = (bytes) =>
  WebAssembly.Module.imports(new WebAssembly.Module(bytes)).filter(({ kind }) => kind === "function").length;

/** Name and number of each function that the module exports. */
export function exportedFunctions(bytes) {
  const found = [];
  let [count, from] = readNumber(bytes, sectionOf(bytes, EXPORTS));
  for (; count; count--) {
    const [length, name] = readNumber(bytes, from);
    const [index, end] = readNumber(bytes, name + length + 1);
    if (bytes[name + length] === FUNCTION) found.push([bytes.toString("utf8", name, name + length), index]);
    from = end;
  }
  return found;
}

/** The module without what it lays into memory; whoever starts it must. */
export function withoutData(bytes) {
  const parts = [bytes.subarray(0, 8)];
  for (let at = 8; at < bytes.length;) {
    const [size, start] = readNumber(bytes, at + 1);
    if (bytes[at] !== DATA && bytes[at] !== DATA_COUNT) parts.push(bytes.subarray(at, start + size));
    at = start + size;
  }
  return Buffer.concat(parts);
}

/** The module with those exports only that `keeps` says yes to, by name. */
export function withExports(bytes, keeps) {
  return withSection(bytes, EXPORTS, (start) => {
    const kept = [];
    let [count, from] = readNumber(bytes, start);
    for (; count; count--) {
      const [length, name] = readNumber(bytes, from);
      const [, end] = readNumber(bytes, name + length + 1);
      if (keeps(bytes.toString("utf8", name, name + length))) kept.push(bytes.subarray(from, end));
      from = end;
    }
    return kept;
  });
}

/** The module with the body of each function changed: `change` gets it and the function's number. */
export function withBodies(bytes, change) {
  return withSection(bytes, CODE, (start) => {
    const bodies = [];
    const [count, first] = readNumber(bytes, start);
    let from = first;
    for (let function_ = 0; function_ < count; function_++) {
      const [length, at] = readNumber(bytes, from);
      const body = change(bytes.subarray(at, at + length), function_);
      bodies.push(Buffer.concat([Buffer.from(number(body.length)), body]));
      from = at + length;
    }
    return bodies;
  });
}
