// The functions of a WebAssembly file (WebAssembly Core Specification 2.0, section 5.5): their code, and new names.

const MAGIC_AND_VERSION = 8;
const CUSTOM = 0;
const IMPORT = 2;
const CODE = 10;
const FUNCTION_NAMES = 1;

/** The code of each function that is not imported, in order. */
export function codeOf(wasm) {
  const reader = new Reader(sections(wasm).find(({ id }) => id === CODE).body);
  return Array.from({ length: reader.number() }, () => reader.bytes(reader.number()));
}

/** The same file with other names: `names` of the functions that are not imported, in order, and nothing else named. */
export function named(wasm, names) {
  const kept = sections(wasm).filter(({ id, body }) => id !== CUSTOM || nameOf(body) !== "name");
  const first = importedFunctions(wasm);
  const map = names.flatMap((name, at) => [...leb(first + at), ...text(name)]);
  const list = [...leb(names.length), ...map];
  const body = [...text("name"), FUNCTION_NAMES, ...leb(list.length), ...list];
  return Buffer.concat([
    wasm.subarray(0, MAGIC_AND_VERSION), ...kept.map(({ whole }) => whole), Buffer.from([CUSTOM, ...leb(body.length), ...body]),
  ]);
}

function sections(wasm) {
  const found = [];
  const reader = new Reader(wasm, MAGIC_AND_VERSION);
  while (reader.at < wasm.length) {
    const start = reader.at;
    const id = reader.byte();
    const body = reader.bytes(reader.number());
    found.push({ id, body, whole: wasm.subarray(start, reader.at) });
  }
  return found;
}

function nameOf(body) {
  const reader = new Reader(body);
  return reader.bytes(reader.number()).toString("utf8");
}

/** How many functions are imported: they have the first numbers. */
function importedFunctions(wasm) {
  const section = sections(wasm).find(({ id }) => id === IMPORT);
  if (!section) return 0;
  const reader = new Reader(section.body);
  let functions = 0;
  for (let left = reader.number(); left > 0; left -= 1) {
    reader.bytes(reader.number());
    reader.bytes(reader.number());
    // wasm-bindgen imports functions alone.
    if (reader.byte() !== 0) throw new Error("something other than a function is imported");
    reader.number();
    functions += 1;
  }
  return functions;
}

class Reader {
  constructor(bytes, at = 0) {
    this.source = bytes;
    this.at = at;
  }

  byte() {
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
}

function leb(value) {
  const bytes = [];
  for (let rest = value; ; rest >>>= 7) {
    if (rest < 0x80) return [...bytes, rest];
    bytes.push((rest & 0x7f) | 0x80);
  }
}

function text(value) {
  const bytes = Buffer.from(value);
  return [...leb(bytes.length), ...bytes];
}
