// What a function calls, and the same function where those it calls have other numbers (WebAssembly Core Specification 2.0,
// section 5.4, and its SIMD).
import { Reader, leb } from "./module.mjs";

const CALLS = new Set([0x10, 0x12, 0xd2]);
const INDIRECT = new Set([0x11, 0x13]);
const BLOCKS = new Set([0x02, 0x03, 0x04]);
const ONE_NUMBER = new Set([0x0c, 0x0d, 0x20, 0x21, 0x22, 0x23, 0x24, 0x25, 0x26, 0x41, 0x42, 0xd0]);
const BR_TABLE = 0x0e;
const SELECT_TYPED = 0x1c;
const MEMORY = [0x28, 0x3e];
const MEMORY_SIZE = new Set([0x3f, 0x40]);
const F32_CONST = 0x43;
const F64_CONST = 0x44;
const END = 0x0b;
/** Instructions that nothing follows: control, drop and select, comparing and reckoning. */
const ALONE = new Set([0x00, 0x01, 0x05, END, 0x0f, 0x1a, 0x1b, 0xd1, ...between(0x45, 0xc4)]);
const MORE = 0xfc;
/** How many numbers follow each of the kind `MORE`. */
const MORE_NUMBERS = [0, 0, 0, 0, 0, 0, 0, 0, 2, 1, 2, 1, 2, 1, 2, 1, 1, 1];
const SIMD = 0xfd;
const SIMD_BYTES = 16;

function between(least, most) {
  return Array.from({ length: most - least + 1 }, (_, nth) => least + nth);
}

/** Tells each call of a function's code: the number called, and where that number stands. */
function eachCall(code, told) {
  const from = new Reader(code);
  // Locals: runs of so many of a type.
  from.list(() => [from.number(), from.byte()]);
  const skip = (count) => {
    for (let left = count; left > 0; left -= 1) from.number();
  };
  while (!from.done) {
    const op = from.byte();
    if (CALLS.has(op)) {
      const start = from.at;
      const index = from.number();
      told(index, start, from.at);
    } else if (INDIRECT.has(op)) skip(2);
    else if (BLOCKS.has(op) || ONE_NUMBER.has(op)) from.signed();
    else if (op === BR_TABLE) skip(from.number() + 1);
    else if (op === SELECT_TYPED) from.bytes(from.number());
    else if (op >= MEMORY[0] && op <= MEMORY[1]) skip(2);
    else if (MEMORY_SIZE.has(op)) from.byte();
    else if (op === F32_CONST) from.bytes(4);
    else if (op === F64_CONST) from.bytes(8);
    else if (op === MORE) skip(MORE_NUMBERS[from.number()]);
    else if (op === SIMD) simd(from, skip);
    else if (!ALONE.has(op)) throw new Error(`an instruction that is not known: 0x${op.toString(16)}`);
  }
  if (from.at !== code.length || code.at(-1) !== END) throw new Error("a function that was not read as it is written");
}

/** What follows an instruction of the vectors: a place in memory, a lane, both, or sixteen bytes. */
function simd(from, skip) {
  const op = from.number();
  if (op <= 11 || op === 92 || op === 93) skip(2);
  else if (op === 12 || op === 13) from.bytes(SIMD_BYTES);
  else if (op >= 21 && op <= 34) from.byte();
  else if (op >= 84 && op <= 91) {
    skip(2);
    from.byte();
  }
}

/** The numbers of all functions that a function calls, as often as it does. */
export function calledBy(code) {
  const called = [];
  eachCall(code, (index) => called.push(index));
  return called;
}

/** The same code where functions have the numbers that `places` gives them. */
export function renumbered(code, places) {
  const pieces = [];
  let done = 0;
  eachCall(code, (index, start, end) => {
    pieces.push(code.subarray(done, start), Buffer.from(leb(places(index))));
    done = end;
  });
  pieces.push(code.subarray(done));
  return Buffer.concat(pieces);
}
