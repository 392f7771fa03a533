/*
 * Unpacks .xz as it arrives. Browsers unpack gzip by themselves, but gzip is
 * two fifths larger here; the unpacker is xz-embedded, 12 kB, from the build.
 */

const FINISHED = 1;

/* Words of the unpacker's context, by position. */
const SIZE = 0, IN = 1, IN_AT = 2, IN_END = 3, OUT_AT = 5;

/**
 * Give a stream that takes .xz in pieces and gives what was packed.
 *
 * compiled: the unpacker as a WebAssembly.Module.
 */
export function unpackStream(compiled) {
  const { memory, create_context, supply_input, get_next_output } =
    new WebAssembly.Instance(compiled).exports;
  const context = create_context();
  const words = () => new Uint32Array(memory.buffer, context, 6);
  let more = false; // the last output filled its buffer, so more is waiting

  function takeOutput(controller) {
    const result = get_next_output(context);
    if (result > FINISHED) throw new Error(`a file could not be unpacked (${result})`);
    const [size, , , , out, given] = words();
    if (given) controller.enqueue(new Uint8Array(memory.buffer).slice(out, out + given));
    words()[OUT_AT] = 0;
    more = given === size || words()[IN_AT] < words()[IN_END];
    return result === FINISHED;
  }

  return new TransformStream({
    transform(piece, controller) {
      let from = 0;
      while (more || from < piece.length) {
        if (words()[IN_AT] === words()[IN_END]) {
          const part = piece.subarray(from, from + words()[SIZE]);
          new Uint8Array(memory.buffer).set(part, words()[IN]);
          supply_input(context, part.length);
          from += part.length;
        }
        takeOutput(controller);
      }
    },
    flush(controller) {
      // The unpacker says that it is done only when asked once more with nothing left.
      supply_input(context, 0);
      if (!takeOutput(controller)) throw new Error("a file ends too early");
    },
  });
}
