// Runs the same sample of calculations, cards, judged jobs and schedules natively and in WebAssembly, and compares what they gave.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./shell.mjs";

const TARGET = "wasm32-unknown-unknown";
const SAMPLE = /sample of (\d+) lines\n([\s\S]*?)\nend of the sample/;

function build(...target) {
  execFileSync("cargo", ["build", "--locked", "--quiet", "--example", "agree", ...target], { cwd: root, stdio: ["ignore", "inherit", "inherit"] });
  return join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), ...target.slice(1), "debug", "examples");
}

function lines(text, where) {
  const [, count, sample] = text.match(SAMPLE) ?? [];
  if (sample === undefined) throw new Error(`the sample did not run to its end ${where}`);
  const found = sample.split("\n");
  if (found.length !== Number(count)) throw new Error(`${found.length} lines of ${count} ${where}`);
  return found;
}

function natively() {
  return lines(execFileSync(join(build(), "agree"), { cwd: root, encoding: "latin1" }), "natively");
}

async function inWasm() {
  const bytes = readFileSync(join(build("--target", TARGET), "agree.wasm"));
  const { instance } = await WebAssembly.instantiate(bytes, {});
  instance.exports.main(0, 0);
  return lines(Buffer.from(instance.exports.memory.buffer).toString("latin1"), "in WebAssembly");
}

const [ours, theirs] = [natively(), await inWasm()];
const odd = ours.filter((line, at) => line !== theirs[at]).map((line) => line.replace(/ [0-9a-f]+$/, ""));
if (odd.length > 0 || ours.length !== theirs.length) {
  console.error(`native and WebAssembly differ: ${odd.join(", ") || "in the number of lines"}`);
  process.exit(1);
}
console.log(`native and WebAssembly give the same bits: ${ours.length} calculations, card families and tickets`);
