// Which functions of a program belong to its first part and which to the rest, and how each part numbers them.
import { calledBy } from "./code.mjs";
import { KIND } from "./module.mjs";

/**
 * Functions are told by their numbers in the whole program.
 *
 * `isLater` says of a function, by its name and code, whether it is of the rest; so is what only those call. `inOrder` puts the code
 * of functions in an order.
 */
export function parting(whole, { isLater, inOrder }) {
  const { imports, code, elements, exports, names, tables } = whole;
  const imported = imports.length;
  const codeOf = (index) => code[index - imported];
  const calls = code.map(calledBy);
  const callsOf = (index) => calls[index - imported];
  const first = reached(whole, callsOf, (index) => index >= imported && !isLater(names[index] ?? "", codeOf(index)));
  const isRest = (index) => index >= imported && !first.has(index);
  const ordered = (indices) => inOrder(indices.map(codeOf)).map((at) => indices[at]);
  const defined = Array.from(code, (_, at) => imported + at);
  const firsts = ordered(defined.filter((index) => !isRest(index)));
  const rests = ordered(defined.filter(isRest));

  // What the first part may call of the rest has a place in the table of functions: its own, or one behind all others.
  const places = new Map();
  for (const { at, functions } of elements) functions.forEach((index, nth) => isRest(index) && places.set(index, at + nth));
  const exported = exports.filter(({ kind }) => kind === KIND.function).map(({ index }) => index);
  const called = new Set([...firsts.flatMap(callsOf), ...exported]);
  const extra = rests.filter((index) => called.has(index) && !places.has(index));
  extra.forEach((index, nth) => places.set(index, tables[0].limits.least + nth));

  return {
    codeOf,
    firsts,
    rests,
    places,
    /** How many places the table has more. */
    extra: extra.length,
    standIns: rests.filter((index) => places.has(index)),
    /** What the rest calls of the first part, those called most first, which get the shortest numbers. */
    used: mostFirst(rests.flatMap(callsOf).filter((index) => !isRest(index))),
  };
}

/** Numbers of functions in a part, from `from` on; the first `kept` keep theirs. */
export function numbered(kept, from, indices) {
  const numbers = new Map(indices.map((index, nth) => [index, from + nth]));
  return (index) => {
    if (numbers.has(index)) return numbers.get(index);
    if (index < kept) return index;
    throw new Error(`function ${index} is not in this part`);
  };
}

/** What the exports, the start and the table lead to without going through what `isFirst` leaves out. */
function reached({ exports, elements, start }, callsOf, isFirst) {
  const found = new Set();
  const left = [
    ...exports.filter(({ kind }) => kind === KIND.function).map(({ index }) => index),
    ...elements.flatMap(({ functions }) => functions),
    ...start,
  ];
  while (left.length > 0) {
    const index = left.pop();
    if (found.has(index) || !isFirst(index)) continue;
    found.add(index);
    left.push(...callsOf(index));
  }
  return found;
}

function mostFirst(indices) {
  const times = new Map();
  for (const index of indices) times.set(index, (times.get(index) ?? 0) + 1);
  return [...times].sort(([, a], [, b]) => b - a).map(([index]) => index);
}
