// A WebAssembly file as its sections (WebAssembly Core Specification 2.0, section 5.5), to be taken apart and put together.

export const SECTION = { custom: 0, type: 1, import: 2, function: 3, table: 4, memory: 5, global: 6, export: 7, start: 8, element: 9, code: 10, data: 11, dataCount: 12 };
/** What is imported or exported. */
export const KIND = { function: 0, table: 1, memory: 2, global: 3 };
export const HEAD = Buffer.from([0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00]);
const FUNCTION_TYPE = 0x60;
const FUNCTION_NAMES = 1;
/** Limits that tell a most beside a least. */
const HAS_MOST = 1;

/** Reads bytes one after another. */
export class Reader {
  constructor(bytes, at = 0) {
    this.source = bytes;
    this.at = at;
  }

  get done() {
    return this.at >= this.source.length;
  }

  byte() {
    if (this.done) throw new Error("read past the end");
    return this.source[this.at++];
  }

  bytes(length) {
    this.at += length;
    return this.source.subarray(this.at - length, this.at);
  }

  /** A number without sign, LEB128. */
  number() {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = this.byte();
      value += (byte & 0x7f) * 2 ** shift;
      if (byte < 0x80) return value;
    }
  }

  /** A number with a sign, as its bytes: they are the same wherever it stands. */
  signed() {
    const start = this.at;
    while (this.byte() >= 0x80);
    return this.source.subarray(start, this.at);
  }

  text() {
    return this.bytes(this.number()).toString("utf8");
  }

  list(each) {
    return Array.from({ length: this.number() }, () => each(this));
  }

  /** A table's or a memory's least and most. */
  limits() {
    const flags = this.byte();
    return { flags, least: this.number(), most: flags & HAS_MOST ? this.number() : null };
  }
}

/** A number without sign as LEB128. */
export function leb(value) {
  const bytes = [];
  for (let rest = value; ; rest = Math.floor(rest / 0x80)) {
    if (rest < 0x80) return [...bytes, rest];
    bytes.push((rest % 0x80) | 0x80);
  }
}

/** A number with a sign as LEB128, of 32 bits. */
export function sleb(value) {
  const bytes = [];
  for (let rest = value; ; rest >>= 7) {
    const byte = rest & 0x7f;
    if ((rest >> 7 === 0 && byte < 0x40) || (rest >> 7 === -1 && byte >= 0x40)) return [...bytes, byte];
    bytes.push(byte | 0x80);
  }
}

export function text(value) {
  const bytes = Buffer.from(value);
  return [...leb(bytes.length), ...bytes];
}

/** A list of pieces, each an array of bytes. */
export function list(pieces) {
  return Buffer.concat([Buffer.from(leb(pieces.length)), ...pieces.map((piece) => Buffer.from(piece))]);
}

export function section(id, body) {
  return Buffer.concat([Buffer.from([id, ...leb(body.length)]), body]);
}

export function limits({ flags, least, most }) {
  return [flags, ...leb(least), ...(most === null ? [] : leb(most))];
}

/** What of a file is needed to split it. Anything that our compiler does not make is refused. */
export function parsed(wasm) {
  const bodies = new Map();
  const names = [];
  const reader = new Reader(wasm, HEAD.length);
  while (!reader.done) {
    const id = reader.byte();
    const body = reader.bytes(reader.number());
    if (id > SECTION.dataCount) throw new Error(`a section of the kind ${id}`);
    if (id === SECTION.custom) readNames(body, names);
    else bodies.set(id, body);
  }
  const read = (id, each) => (bodies.has(id) ? new Reader(bodies.get(id)).list(each) : []);
  return {
    bodies,
    names,
    /** The function that runs at the start, where there is one. */
    start: bodies.has(SECTION.start) ? [new Reader(bodies.get(SECTION.start)).number()] : [],
    /** How many values each type of function takes and gives. */
    signatures: read(SECTION.type, typeOf),
    imports: read(SECTION.import, importOf),
    /** The types of the functions that are not imported. */
    types: read(SECTION.function, (from) => from.number()),
    tables: read(SECTION.table, (from) => ({ of: from.byte(), limits: from.limits() })),
    memories: read(SECTION.memory, (from) => from.limits()),
    globals: read(SECTION.global, globalOf),
    exports: read(SECTION.export, (from) => ({ name: from.text(), kind: from.byte(), index: from.number() })),
    elements: read(SECTION.element, elementOf),
    code: read(SECTION.code, (from) => from.bytes(from.number())),
  };
}

function typeOf(from) {
  if (from.byte() !== FUNCTION_TYPE) throw new Error("a type that is not of a function");
  const count = () => from.bytes(from.number()).length;
  return { takes: count(), gives: count() };
}

function importOf(from) {
  const [module, name, kind] = [from.text(), from.text(), from.byte()];
  if (kind !== KIND.function) throw new Error("something other than a function is imported");
  return { module, name, type: from.number() };
}

/** A global's type and whether it changes; what it begins with is not needed. */
function globalOf(from) {
  const type = [from.byte(), from.byte()];
  constant(from);
  return type;
}

/** Where a run of functions stands in the table of functions. */
function elementOf(from) {
  if (from.number() !== 0) throw new Error("a run of the table that is not filled at the start");
  return { at: constant(from), functions: from.list(() => from.number()) };
}

const END = 0x0b;
const I32_CONST = 0x41;
const I64_CONST = 0x42;
const F32_CONST = 0x43;
const F64_CONST = 0x44;
const REF_NULL = 0xd0;

/** A constant expression: its value where it is a whole number of 32 bits. */
function constant(from) {
  const op = from.byte();
  let value = null;
  if (op === I32_CONST) value = new Reader(from.signed()).number();
  else if (op === I64_CONST) from.signed();
  else if (op === F32_CONST) from.bytes(4);
  else if (op === F64_CONST) from.bytes(8);
  else if (op === REF_NULL) from.byte();
  else throw new Error(`a constant of the kind ${op}`);
  if (from.byte() !== END) throw new Error("a constant of more than one step");
  return value;
}

function readNames(body, names) {
  const reader = new Reader(body);
  if (reader.text() !== "name") return;
  while (!reader.done) {
    const id = reader.byte();
    const part = new Reader(reader.bytes(reader.number()));
    if (id === FUNCTION_NAMES) part.list(() => (names[part.number()] = part.text()));
  }
}
