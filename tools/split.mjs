// Parts a program in two: what its first screen needs, and the rest, which is fetched while that screen is looked at.
//
// The first part holds a short stand-in for each function of the rest that it may call. A stand-in asks for the rest where that is
// not there yet, which then comes at once (`src/device/boot/rest.js`), and calls the function by its place in the table of functions,
// which the rest fills. So the parting decides how soon something works, and whether the page begins anew where a browser gets
// nothing at once.
import { renumbered } from "./code.mjs";
import { HEAD, KIND, Reader, SECTION, leb, limits, list, parsed, section, sleb, text } from "./module.mjs";
import { numbered, parting } from "./parting.mjs";

/** What the first part imports to have the rest brought. */
export const BRING = { module: "rest", name: "bring" };
/** The module that the rest imports from, and the name of the global of the first part that says whether the rest is there. */
const FROM = "first";
const READY = "ready";
const I32 = 0x7f;
const CHANGES = 0x01;
const NO_LOCALS = 0;
const OP = { end: 0x0b, if: 0x04, nothing: 0x40, not: 0x45, call: 0x10, indirect: 0x11, local: 0x20, global: 0x23, i32: 0x41 };
const FUNCTIONS = 0;
/** Names of functions are numbers of few letters: each stands in both parts. */
const RADIX = 36;

/** Both parts of a program, and what they hold in words; how they are parted is told to `parting`. */
export function split(wasm, how) {
  const whole = parsed(wasm);
  const parts = parting(whole, how);
  const { firsts, rests, standIns, used, extra } = parts;
  const imported = whole.imports.length;
  // One import more, behind the others, and one function, which all stand-ins call.
  const inFirst = numbered(imported, imported + 1, [...firsts, ...standIns]);
  const inRest = numbered(0, 0, [...used, ...rests]);
  const tables = whole.tables.map(({ of, limits: { flags, least, most } }, nth) => {
    const more = nth === FUNCTIONS ? extra : 0;
    return [of, ...limits({ flags, least: least + more, most: most === null ? null : most + more })];
  });
  const typeOf = (index) => (index < imported ? whole.imports[index].type : whole.types[index - imported]);
  const shared = [
    ...tables.map((type, nth) => ({ name: `T${nth}`, kind: KIND.table, index: nth, type })),
    { name: "M", kind: KIND.memory, index: 0, type: limits(whole.memories[0]) },
    ...whole.globals.map((type, nth) => ({ name: `G${nth}`, kind: KIND.global, index: nth, type })),
    ...used.map((index, nth) => ({ name: nth.toString(RADIX), kind: KIND.function, index: inFirst(index), type: leb(typeOf(index)) })),
  ];
  return {
    first: firstPart(whole, { ...parts, inFirst, tables, shared, typeOf }),
    rest: restPart(whole, { ...parts, inRest, shared, typeOf }),
    told: `${firsts.length} functions in the first part, ${rests.length} in the rest, ${standIns.length} stand-ins`,
  };
}

function firstPart(whole, { codeOf, firsts, standIns, places, inFirst, tables, shared, typeOf }) {
  const { bodies, imports, signatures } = whole;
  const keep = kept(bodies);
  const bring = imports.length;
  const check = bring + 1 + firsts.length + standIns.length;
  const ready = whole.globals.length;
  const plain = signatures.findIndex(({ takes, gives }) => takes === 0 && gives === 0);
  if (plain < 0) throw new Error("no function takes and gives nothing");
  const standIn = (index) => {
    const values = Array.from({ length: signatures[typeOf(index)].takes }, (_, nth) => [OP.local, ...leb(nth)]).flat();
    const call = [OP.i32, ...sleb(places.get(index)), OP.indirect, ...leb(typeOf(index)), FUNCTIONS];
    return Buffer.from([NO_LOCALS, OP.call, ...leb(check), ...values, ...call, OP.end]);
  };
  const checking = Buffer.from([NO_LOCALS, OP.global, ...leb(ready), OP.not, OP.if, OP.nothing, OP.call, ...leb(bring), OP.end, OP.end]);
  const exports = [
    ...whole.exports.map(({ name, kind, index }) => [...text(name), kind, ...leb(kind === KIND.function ? inFirst(index) : index)]),
    ...shared.map(({ name, kind, index }) => [...text(name), kind, ...leb(index)]),
    [...text(READY), KIND.global, ...leb(ready)],
  ];
  return Buffer.concat([
    HEAD,
    keep(SECTION.type),
    section(SECTION.import, oneMore(bodies.get(SECTION.import), [...text(BRING.module), ...text(BRING.name), KIND.function, ...leb(plain)])),
    section(SECTION.function, list([...[...firsts, ...standIns].map(typeOf), plain].map(leb))),
    section(SECTION.table, list(tables)),
    keep(SECTION.memory),
    section(SECTION.global, oneMore(bodies.get(SECTION.global), [I32, CHANGES, OP.i32, 0, OP.end])),
    section(SECTION.export, list(exports)),
    ...whole.start.map((index) => section(SECTION.start, Buffer.from(leb(inFirst(index))))),
    section(SECTION.element, list(whole.elements.map(({ at, functions }) => run(at, functions.map(inFirst))))),
    keep(SECTION.dataCount),
    section(SECTION.code, list([...firsts.map((index) => renumbered(codeOf(index), inFirst)), ...standIns.map(standIn), checking].map(sized))),
    keep(SECTION.data),
  ]);
}

function restPart({ bodies }, { codeOf, rests, places, inRest, shared, typeOf }) {
  return Buffer.concat([
    HEAD,
    kept(bodies)(SECTION.type),
    section(SECTION.import, list(shared.map(({ name, kind, type }) => [...text(FROM), ...text(name), kind, ...type]))),
    section(SECTION.function, list(rests.map(typeOf).map(leb))),
    section(SECTION.element, list(runs(places).map(([at, functions]) => run(at, functions.map(inRest))))),
    section(SECTION.code, list(rests.map((index) => renumbered(codeOf(index), inRest)).map(sized))),
  ]);
}

/** Sections as they are, or nothing where there is none. */
function kept(bodies) {
  return (id) => (bodies.has(id) ? section(id, bodies.get(id)) : Buffer.alloc(0));
}

/** A piece behind its length. */
function sized(piece) {
  return Buffer.concat([Buffer.from(leb(piece.length)), piece]);
}

/** A list as it stands in a section, with one more piece at its end. */
function oneMore(body, piece) {
  const from = new Reader(body);
  const count = from.number();
  return Buffer.concat([Buffer.from(leb(count + 1)), body.subarray(from.at), Buffer.from(piece)]);
}

/** Functions that stand in the table from a place on. */
function run(at, functions) {
  return [0, OP.i32, ...sleb(at), OP.end, ...list(functions.map(leb))];
}

/** Places that follow on each other, each run with the functions that stand there. */
function runs(places) {
  const found = [];
  for (const [index, at] of [...places].sort(([, a], [, b]) => a - b)) {
    const [start, functions] = found.at(-1) ?? [];
    if (functions && start + functions.length === at) functions.push(index);
    else found.push([at, [index]]);
  }
  return found;
}
