// An order of pieces for compressors that see little at once: gzip looks back 32 KiB, so pieces that share much must
// stand near each other.

/** Runs of so many bytes are what pieces share: shorter ones are everywhere, longer ones miss code that differs a little. */
const RUN = 6;
/** Of all runs one in so many is looked at, by its hash: the order hardly changes with all of them. */
const SAMPLE = 2;
/** A run in more pieces than this tells nothing of any two. */
const COMMON = 200;
/** Bytes behind a piece that it is held against: gzip's 32 KiB, less what the piece itself needs. */
const WINDOW = 28_000;

/** Puts pieces in order: each time the one that shares most with those just before it, for its length. */
export function alike(pieces) {
  const { holders, runs } = shared(pieces.map(sampled));
  const left = new Set(pieces.keys());
  /** How many of a piece's runs are in the window. */
  const score = new Int32Array(pieces.length);
  const inWindow = new Int32Array(holders.length);
  const order = [];
  let bytes = 0;
  let oldest = 0;
  // A long piece is held to less of a share than a short one: what it shares saves more.
  const scale = pieces.map(({ length }) => 1 / (length + RUN) ** 0.75);

  const enter = (piece) => {
    bytes += pieces[piece].length;
    for (const run of runs[piece]) if (inWindow[run]++ === 0) for (const holder of holders[run]) score[holder] += 1;
  };
  const leave = (piece) => {
    bytes -= pieces[piece].length;
    for (const run of runs[piece]) if (--inWindow[run] === 0) for (const holder of holders[run]) score[holder] -= 1;
  };
  while (left.size > 0) {
    let best;
    let most = -1;
    for (const piece of left) {
      const worth = score[piece] * scale[piece];
      if (worth > most) [best, most] = [piece, worth];
    }
    left.delete(best);
    order.push(best);
    enter(best);
    while (bytes > WINDOW && oldest < order.length - 1) leave(order[oldest++]);
  }
  return order;
}

/** Hashes of a sample of the runs of a piece, each once. */
function sampled(piece) {
  const hashes = new Set();
  for (let at = 0; at + RUN <= piece.length; at += 1) {
    // FNV-1a, stirred so that its low digits depend on every byte.
    let hash = 0x811c9dc5;
    for (let next = at; next < at + RUN; next += 1) hash = Math.imul(hash ^ piece[next], 0x01000193);
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
    hash = (hash ^ (hash >>> 12)) >>> 0;
    if (hash % SAMPLE === 0) hashes.add(hash);
  }
  return hashes;
}

/** Runs that two pieces have and not too many: the pieces that hold each, and those of each piece. */
function shared(hashes) {
  const found = new Map();
  hashes.forEach((of, piece) => {
    for (const hash of of) {
      const holders = found.get(hash);
      if (holders) holders.push(piece);
      else found.set(hash, [piece]);
    }
  });
  const holders = [...found.values()].filter(({ length }) => length > 1 && length <= COMMON);
  const runs = hashes.map(() => []);
  holders.forEach((pieces, run) => pieces.forEach((piece) => runs[piece].push(run)));
  return { holders, runs };
}
