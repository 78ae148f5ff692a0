// The queries of sql/ on generated answers, in an engine from outside, against what `stepboard report` says of the same
// files: `node tools/sql.mjs duckdb|chdb PEOPLE ANSWERS-EACH`. Each engine lies in a place of its own, put there by setup.sh.
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root, tools } from "./shell.mjs";

const [engine = "duckdb", people = "200", each = "500"] = process.argv.slice(2);
const python = join(tools, engine, "bin", "python");
const debug = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug");
const folder = mkdtempSync(join(tmpdir(), "stepboard-sql-"));

function run(program, args, options = {}) {
  return execFileSync(program, args, { cwd: root, encoding: "utf8", stdio: ["ignore", "pipe", "inherit"], maxBuffer: 1 << 28, ...options });
}

/** Runs one step and says how long it took. */
function timed(what, step) {
  const start = Date.now();
  const came = step();
  console.log(`${what}: ${((Date.now() - start) / 1000).toFixed(1)} s`);
  return came;
}

try {
  run("cargo", ["build", "--locked", "--quiet", "--bin", "stepboard", "--example", "made"]);
  const stepboard = (...words) => run(join(debug, "stepboard"), words, { cwd: folder });
  const journals = join(folder, "journals");
  mkdirSync(journals);
  timed(`${people} people, ${each} answers each`, () => run(join(debug, "examples", "made"), ["crowd", journals, people, each, "voided"]));
  // A tablet with an event of each kind, decisions of walks among them.
  const eachKind = join(folder, "each-kind");
  run(join(debug, "examples", "made"), ["files", eachKind]);
  const files = [...readdirSync(journals).map((name) => join(journals, name)), join(eachKind, "results.all.json")];
  const report = join(folder, "report.json");
  writeFileSync(report, timed("stepboard report", () => stepboard("report", ...files)));
  timed("stepboard export", () => stepboard("export", ...files, "out=results"));
  timed("the same as CSV", () => stepboard("export", ...files, "out=csv", "format=csv"));
  // Exporting a part again, and older files, changes nothing.
  timed("a tablet again", () => stepboard("export", files[0], "out=results"));
  console.log(timed(engine, () => run(python, [join("tests", "sql", "same.py"), engine, folder, report, join(root, "sql"), "csv"])).trim());
} finally {
  rmSync(folder, { recursive: true, force: true });
}
