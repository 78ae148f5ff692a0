// Measures how long the model takes, and the same figures beside general-purpose Python libraries in the same run; writes
// both as tables into DEVELOPERS.md, with the day and the class of machine.
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { root } from "./shell.mjs";

const DOCUMENT = join(root, "DEVELOPERS.md");
const [BEGIN, END] = ["<!-- times: written by `make bench` -->", "<!-- end of times -->"];
const VENV = join(root, "target", "compare");
const LIBRARIES = ["psychrolib==2.5.0", "colour-science==0.4.7", "pingouin==0.7.0"];

function out(program, args) {
  return execFileSync(program, args, { cwd: root, encoding: "utf8", stdio: ["ignore", "pipe", "inherit"], maxBuffer: 2 ** 26 });
}

/** The programs of the comparison, fetched once into a place of their own. */
function python() {
  const program = join(VENV, "bin", "python");
  if (!existsSync(join(VENV, "ready"))) {
    out("python3", ["-m", "venv", VENV]);
    out(program, ["-m", "pip", "install", "--quiet", ...LIBRARIES]);
    writeFileSync(join(VENV, "ready"), LIBRARIES.join("\n"));
  }
  return program;
}

const show = (cells) => `| ${cells.join(" | ")} |`;
const rows = (text) => text.trim().split("\n").filter((line) => line.includes("\t")).map((line) => line.split("\t"));

function model() {
  // name, fastest, slowest, median, …, between box-drawing lines
  const text = out("cargo", ["bench", "--locked", "--quiet", "--bench", "model", "--bench", "spraying"]);
  console.log(text);
  const lines = [...text.matchAll(/^[│ ]*[├╰]─ (\S+)\s+(.+?)\s+│\s+(.+?)\s+│\s+(.+?)\s+│/gm)];
  if (lines.length === 0) throw new Error("the benchmark printed no times");
  return lines.map(([, name, fastest, , median]) => show([name.replaceAll("_", " "), median, fastest]));
}

function beside() {
  const ours = new Map(rows(out("cargo", ["bench", "--locked", "--quiet", "--bench", "beside"])));
  const theirs = rows(out(python(), [join("tests", "compare", "beside.py")]));
  return theirs.map(([name, library, ns]) => {
    const own = ours.get(name);
    if (own === undefined) throw new Error(`${name} is timed in Python only`);
    const ratio = Number(ns) / Number(own);
    return show([name, library, `${Math.round(Number(ns))} ns`, `${Math.round(Number(own))} ns`, `${ratio < 10 ? ratio.toFixed(1) : Math.round(ratio)} times`]);
  });
}

const day = new Date().toISOString().slice(0, 10);
const text = [
  BEGIN,
  `Measured ${day} on ${availableParallelism()} cores, optimised for speed; the ratios are of one run on the same machine.`,
  "",
  show(["the model", "median", "fastest"]), show(["---", "---:", "---:"]), ...model(),
  "",
  show(["one of", "beside", "takes", "here", "ratio"]), show(["---", "---", "---:", "---:", "---:"]), ...beside(),
  END,
].join("\n");
const document = readFileSync(DOCUMENT, "utf8");
const [start, end] = [document.indexOf(BEGIN), document.indexOf(END)];
if (start < 0 || end < start) throw new Error("DEVELOPERS.md has no place for the times");
writeFileSync(DOCUMENT, document.slice(0, start) + text + document.slice(end + END.length));
console.log(text);
