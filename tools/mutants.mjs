// Mutation testing of rules, process, learning and record: changes the source in one small place, builds, and sees whether a fast
// test fails. `node tools/mutants.mjs [COUNT] [SEED]` takes a seeded sample; a run that was killed goes on where it
// stopped, as long as sources, tests and content are the same. Mutants are those that `cargo mutants` lists; they are
// tried here one after the other in warm copies of the tree, which takes seconds where a fresh build takes minutes.
import { execFileSync, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { appendFileSync, cpSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { dirname, join } from "node:path";
import { root } from "./shell.mjs";

const [count, seed] = [Number(process.argv[2] ?? 300), Number(process.argv[3] ?? 1)];
const workers = Number(process.env.STEPBOARD_WORKERS ?? Math.min(2, availableParallelism()));
const place = join(root, "target", "mutants");
/**
 * Test targets that hold the model, what was learnt and what was kept against the outside and their laws; cards and what shows
 * itself only in them are not asked.
 */
const FAST = new RegExp(`^(${[
  "reference_", "laws_", "rules_", "decisions", "sequence", "process", "judge", "practitioner",
  "workup", "learn", "evidence", "observation", "attempts", "journal", "set_taking", "check_sitting", "void", "memory_pick",
  "sets_done", "ready", "signing_asked", "people", "exchange_results", "hazards",
].join("|")})`);
/** What decides whether an earlier result still holds. */
const INPUTS = ["src", "tests", "content", "build.rs", "Cargo.toml", "Cargo.lock"];
const ENV = {
  ...process.env, STEPBOARD_LAW_INPUTS: "1000", RUST_BACKTRACE: "0", CARGO_TERM_COLOR: "never",
  CARGO_PROFILE_DEV_OPT_LEVEL: "0", CARGO_PROFILE_TEST_OPT_LEVEL: "0", CARGO_PROFILE_DEV_DEBUG: "0", CARGO_PROFILE_TEST_DEBUG: "0",
};
/** Packages are built once and optimised: the passphrases of the laws about sign-off take a minute else. */
const OPTIMISED = ["--config", 'profile.dev.package."*".opt-level=2'];
/** A build or a test that takes this long, ms, hangs: a mutant can make a loop endless. */
const PATIENCE = { first: 3_600_000, build: 600_000, test: 120_000 };

const files = execFileSync("git", ["ls-files", "-co", "--exclude-standard", "--deduplicate"], { cwd: root, encoding: "utf8" })
  .trim().split("\n").filter((path) => existsSync(join(root, path)));

/** Stops with a word about it, without the trace of the script. */
function fail(message) {
  console.error(message);
  running.forEach((end) => end());
  process.exit(1);
}
/** What ends the programs that run now. */
const running = new Set();

function fingerprint() {
  const hash = createHash("sha256");
  const matters = files.filter((path) => INPUTS.some((input) => path === input || path.startsWith(`${input}/`)));
  for (const path of matters) hash.update(`${path}\0`).update(readFileSync(join(root, path)));
  return hash.digest("hex").slice(0, 16);
}

/** Numbers in [0, 1) that only the seed decides (mulberry32, public domain). */
function* draws(state) {
  for (;;) {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    yield ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  }
}

function sample() {
  const listed = JSON.parse(execFileSync("cargo", ["mutants", "--list", "--json"], { cwd: root, encoding: "utf8", maxBuffer: 2 ** 28 }));
  listed.sort((a, b) => (a.name < b.name ? -1 : 1));
  const dice = draws(seed);
  for (let at = listed.length - 1; at > 0; at -= 1) {
    const other = Math.floor(dice.next().value * (at + 1));
    [listed[at], listed[other]] = [listed[other], listed[at]];
  }
  return { all: listed.length, mutants: listed.slice(0, count) };
}

/** The text with the one hunk of a diff put in. */
function mutated(text, diff, name) {
  const hunk = diff.split("\n").slice(2);
  const start = Number(hunk[0].match(/^@@ -(\d+)/)[1]) - 1;
  const body = hunk.slice(1).filter((line) => /^[ +-]/.test(line));
  const side = (mark) => body.filter((line) => line[0] === " " || line[0] === mark).map((line) => line.slice(1));
  const [before, after, lines] = [side("-"), side("+"), text.split("\n")];
  if (before.some((line, at) => line !== lines[start + at])) fail(`${name}: the diff does not fit the file`);
  return [...lines.slice(0, start), ...after, ...lines.slice(start + before.length)].join("\n");
}

/** Runs a program in a process group of its own, so that all of it can be ended. */
function watch(program, args, options, patience) {
  return new Promise((done) => {
    const child = spawn(program, args, { ...options, env: { ...ENV, ...options.env }, detached: true, stdio: ["ignore", "pipe", "pipe"] });
    let [out, err, late] = ["", "", false];
    child.stdout.on("data", (bytes) => { out += bytes; });
    child.stderr.on("data", (bytes) => { err += bytes; });
    const end = () => { try { process.kill(-child.pid, "SIGKILL"); } catch { /* it ended by itself */ } };
    const timer = setTimeout(() => { late = true; end(); }, patience);
    running.add(end);
    child.on("error", (error) => fail(String(error)));
    child.on("close", (code) => { clearTimeout(timer); running.delete(end); done({ out, err, late, well: code === 0 && !late }); });
  });
}
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => { running.forEach((end) => end()); process.exit(1); });

/** A copy of the tree with its own build, kept warm. */
class Worker {
  constructor(number) {
    this.tree = join(place, `tree-${number}`);
    this.env = { CARGO_TARGET_DIR: join(place, `build-${number}`) };
    const targets = readdirSync(join(root, "tests")).filter((name) => FAST.test(name) && (name.endsWith(".rs") || existsSync(join(root, "tests", name, "main.rs"))));
    this.tests = targets.map((name) => name.replace(/\.rs$/, ""));
    const source = (name) => {
      const path = join(root, "tests", name);
      return name.endsWith(".rs") ? readFileSync(path, "utf8") : readdirSync(path).map((file) => readFileSync(join(path, file), "utf8")).join("\n");
    };
    this.sources = targets.map(source);
  }

  /** Tests that name the module of a file, and the others: most mutants are caught by the first, which build sooner. */
  byNearness(file) {
    const [, layer, module] = file.match(/^src\/(\w+)\/(\w+)/);
    const names = new RegExp(`\\b${layer}::(${module}|\\{[^}]*\\b${module})\\b`);
    // What is learnt and kept is named without its module.
    const ofLayer = new RegExp(`\\b${layer}::`);
    const naming = (pattern) => this.tests.filter((_, at) => pattern.test(this.sources[at]));
    const byModule = naming(names);
    const near = byModule.length > 0 ? byModule : naming(ofLayer);
    const far = this.tests.filter((name) => !near.includes(name));
    return [near, far].filter((tests) => tests.length > 0);
  }

  prepare() {
    const kept = new Set(files);
    if (existsSync(this.tree)) {
      const old = readdirSync(this.tree, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
      for (const entry of old) {
        const path = join(entry.parentPath ?? entry.path, entry.name);
        if (!kept.has(path.slice(this.tree.length + 1))) rmSync(path);
      }
    }
    for (const path of files) {
      const to = join(this.tree, path);
      if (existsSync(to) && readFileSync(to).equals(readFileSync(join(root, path)))) continue;
      mkdirSync(dirname(to), { recursive: true });
      cpSync(join(root, path), to);
    }
  }

  /** Builds and runs the fast tests: `caught`, `missed`, `unviable`, `timeout` or, where it was not built in time, `undecided`; and what showed it. */
  async outcome(tests, patience = PATIENCE.build) {
    const args = ["test", ...OPTIMISED, "--offline", "--locked", "--no-run", "--message-format=json-render-diagnostics", ...tests.flatMap((name) => ["--test", name])];
    const built = await watch("cargo", args, { cwd: this.tree, env: this.env }, patience);
    if (built.late) return ["undecided", "build"];
    if (!built.well) return ["unviable", built.err.includes("custom build command") ? "refused by the content check" : built.err];
    const programs = built.out.split("\n").filter((line) => line.startsWith("{")).map((line) => JSON.parse(line))
      .filter((message) => message.reason === "compiler-artifact" && message.executable && message.target.kind.includes("test"));
    // Laws last: they take longest.
    programs.sort((a, b) => a.target.name.startsWith("laws_") - b.target.name.startsWith("laws_"));
    for (const { executable, target } of programs) {
      const ran = await watch(executable, ["--quiet"], { cwd: this.tree, env: this.env }, PATIENCE.test);
      if (ran.late) return ["timeout", target.name];
      if (!ran.well) return ["caught", `${target.name} ${ran.out.match(/^---- (\S+) stdout/m)?.[1] ?? ""}`.trim()];
    }
    return ["missed", ""];
  }

  async try(mutant) {
    const path = join(this.tree, mutant.file);
    const sound = readFileSync(path, "utf8");
    writeFileSync(path, mutated(sound, mutant.diff, mutant.name));
    try {
      let found;
      for (const tests of this.byNearness(mutant.file)) {
        found = await this.outcome(tests);
        if (found[0] !== "missed") break;
      }
      return found;
    } finally {
      writeFileSync(path, sound);
    }
  }
}

/** Wilson's 95 % interval of a share. */
function interval(hits, all) {
  const z = 1.959964;
  const [share, square] = [hits / all, z * z];
  const [middle, half] = [share + square / (2 * all), z * Math.sqrt((share * (1 - share)) / all + square / (4 * all * all))];
  return [middle - half, middle + half].map((bound) => (100 * bound) / (1 + square / all));
}

function report(all, mutants, results) {
  const of = (outcome) => mutants.filter((mutant) => results.get(mutant.name)?.outcome === outcome);
  const [caught, late, missed, unviable, undecided] = ["caught", "timeout", "missed", "unviable", "undecided"].map(of);
  const [hits, viable] = [caught.length + late.length, caught.length + late.length + missed.length];
  const survivors = join(place, "survivors.txt");
  writeFileSync(survivors, missed.map(({ name, diff }) => `${name}\n${diff}\n`).join("\n"));
  const [low, high] = viable ? interval(hits, viable) : [0, 0];
  console.log(`${mutants.length} of ${all} mutants, seed ${seed}: ${caught.length} caught, ${late.length} timed out, ${missed.length} missed, ${unviable.length} did not build, ${undecided.length} not in time`);
  console.log(`caught ${hits} of ${viable} viable: ${((100 * hits) / Math.max(viable, 1)).toFixed(1)} %, 95 % interval ${low.toFixed(1)} to ${high.toFixed(1)} %`);
  console.log(`survivors: ${survivors}`);
}

mkdirSync(place, { recursive: true });
const ledger = join(place, `results-${fingerprint()}.jsonl`);
const results = new Map();
if (existsSync(ledger)) {
  // The last line may have been cut off.
  for (const line of readFileSync(ledger, "utf8").split("\n")) {
    try { const result = JSON.parse(line); results.set(result.name, result); } catch { /* not whole */ }
  }
}
const { all, mutants } = sample();
const left = mutants.filter((mutant) => !results.has(mutant.name));
if (left.length > 0) {
  console.log(`${left.length} of ${mutants.length} mutants to try`);
  await Promise.all(Array.from({ length: Math.min(workers, left.length) }, async (_, number) => {
    const worker = new Worker(number);
    worker.prepare();
    const [sound, why] = await worker.outcome(worker.tests, PATIENCE.first);
    if (sound !== "missed") fail(`the tests do not pass without a mutant: ${sound}, ${why}`);
    for (let mutant = left.shift(); mutant; mutant = left.shift()) {
      const start = Date.now();
      const [outcome, by] = await worker.try(mutant);
      const seconds = Math.round((Date.now() - start) / 100) / 10;
      const result = { name: mutant.name, outcome, by: outcome === "unviable" && by.length > 60 ? "compiler" : by, seconds };
      results.set(result.name, result);
      appendFileSync(ledger, `${JSON.stringify(result)}\n`);
      console.log(`${outcome.padEnd(8)} ${String(seconds).padStart(5)} s  ${mutant.name}${result.by ? `  [${result.by}]` : ""}`);
    }
  }));
}
report(all, mutants, results);
