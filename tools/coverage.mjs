// What the reference tests hold against the outside, as a table in DEVELOPERS.md: runs them and counts what they note
// (`tests/support/covered.rs`). `node tools/coverage.mjs` writes the table, `--check` only says whether it still stands.
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./shell.mjs";

const NOTES = join(root, "target", "covered.tsv");
const DOCUMENT = join(root, "DEVELOPERS.md");
const [BEGIN, END] = ["<!-- coverage: written by `make coverage` -->", "<!-- end of coverage -->"];
/** Columns that say where a row comes from; a row counts when one of them says it was read or computed. */
const ORIGIN = /^prov/;
const SOUND = /fetched|computed/;
/** What a cell begins with that names a source for something beside the fact itself. */
const UNREAD = /^memory|^fetched: none/;

/** Test targets that note what they check. */
function targets() {
  const tests = join(root, "tests");
  const notes = (path) => /covered::|\.checked\(/.test(readFileSync(path, "utf8"));
  const sources = (entry) => {
    const path = join(tests, entry);
    if (!statSync(path).isDirectory()) return entry.endsWith(".rs") ? [path] : [];
    return existsSync(join(path, "main.rs")) ? readdirSync(path).map((name) => join(path, name)) : [];
  };
  return readdirSync(tests).filter((entry) => sources(entry).some(notes)).map((entry) => entry.replace(/\.rs$/, ""));
}

function run() {
  mkdirSync(join(root, "target"), { recursive: true });
  rmSync(NOTES, { force: true });
  const names = targets().flatMap((name) => ["--test", name]);
  const env = { ...process.env, STEPBOARD_COVERED: NOTES };
  execFileSync("cargo", ["test", "--locked", "--quiet", ...names], { cwd: root, env, stdio: ["ignore", "ignore", "inherit"] });
  return readFileSync(NOTES, "utf8").trim().split("\n").map((line) => line.split("\t"));
}

/** Fields of each record of a CSV text; quoted fields may hold commas and line ends. */
function records(text) {
  const found = [[]];
  const field = /("(?:[^"]|"")*"|[^,\r\n]*)(,|\r?\n|$)/gy;
  for (let match = field.exec(text); match && field.lastIndex <= text.length; match = field.exec(text)) {
    found.at(-1).push(match[1].startsWith('"') ? match[1].slice(1, -1).replaceAll('""', '"') : match[1]);
    if (match[2] === "" || field.lastIndex === text.length) break;
    if (match[2] !== ",") found.push([]);
  }
  return found;
}

/** Numbers of the rows of a table that may be a check; rows from memory may not. */
function sound(file) {
  const [header, ...rows] = records(readFileSync(join(root, "tests", "data", file), "utf8"));
  const columns = header.flatMap((name, at) => (ORIGIN.test(name) ? [at] : []));
  const counts = (row) => columns.length === 0 || columns.some((at) => SOUND.test(row[at]) && !UNREAD.test(row[at]));
  return new Set(rows.flatMap((row, at) => (counts(row) ? [at + 1] : [])));
}

/** A row of the document's table for each family and source: rows to check, rows checked. */
function table(notes) {
  const rows = new Map();
  const values = new Map();
  const out = new Map();
  for (const [kind, family, source, number] of notes) {
    const key = `${family}\t${source}`;
    if (kind === "out") out.set(key, (out.get(key) ?? new Set()).add(Number(number)));
    else if (kind === "row") rows.set(key, (rows.get(key) ?? new Set()).add(Number(number)));
    else values.set(key, (values.get(key) ?? 0) + Number(number));
  }
  const lines = [];
  for (const [key, met] of rows) {
    const [family, file] = key.split("\t");
    const due = sound(file);
    const beside = [...(out.get(key) ?? [])].filter((row) => due.delete(row)).length;
    const name = beside > 0 ? `\`${file}\`, ${beside} rows of which no rule speaks left out by name` : `\`${file}\``;
    lines.push([family, name, due.size, [...met].filter((row) => due.has(row)).length]);
  }
  for (const [key, met] of values) lines.push([...key.split("\t"), met, met]);
  lines.sort((a, b) => (`${a[0]}\t${a[1]}` < `${b[0]}\t${b[1]}` ? -1 : 1));
  return lines;
}

function written(lines) {
  // Arithmetic on figures that nobody read in a source is shown and not counted.
  const counted = lines.filter(([, source]) => !source.includes("arithmetic only"));
  const sum = (at) => counted.reduce((total, line) => total + line[at], 0);
  const show = (cells) => `| ${cells.join(" | ")} |`;
  return [
    BEGIN,
    show(["rule family", "source", "to check", "checked and passing"]),
    show(["---", "---", "---:", "---:"]),
    ...lines.map(show),
    show(["all", "", sum(2), sum(3)]),
    END,
  ].join("\n");
}

const document = readFileSync(DOCUMENT, "utf8");
const [start, end] = [document.indexOf(BEGIN), document.indexOf(END)];
if (start < 0 || end < start) throw new Error("DEVELOPERS.md has no place for the coverage table");
const wanted = document.slice(0, start) + written(table(run())) + document.slice(end + END.length);
if (!process.argv.includes("--check")) {
  writeFileSync(DOCUMENT, wanted);
} else if (wanted !== document) {
  console.error("the coverage table in DEVELOPERS.md is not what the tests note: run `make coverage`");
  process.exit(1);
}
