// Draws every fault and every wood, three seeds each, onto one page for people to look at: target/sheet/index.html.
import { execFileSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./shell.mjs";

const SEEDS = [1, 2, 3];
const SEVERITIES = ["slight", "plain", "severe"];
const folder = join(root, "target", "sheet");
const stepboard = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug", "stepboard");
mkdirSync(folder, { recursive: true });
execFileSync("cargo", ["build", "--quiet", "--locked"], { cwd: root, stdio: "inherit" });
const list = JSON.parse(execFileSync(stepboard, ["picture", "--list"], { encoding: "utf8" }));

function tile(name, words) {
  const out = `${name}.png`;
  execFileSync(stepboard, ["picture", ...words, `out=${join(folder, out)}`]);
  return `<figure><img src="${out}" alt=""><figcaption>${words.join(" ")}</figcaption></figure>`;
}

const woods = list.wood.map((wood) => {
  const tiles = SEEDS.map((seed) => tile(`${wood}-${seed}`, [`wood=${wood}`, `seed=${seed}`]));
  const buffed = tile(`${wood}-buffed`, [`wood=${wood}`, "seed=1", "finish=buffed", "amber=0.35", "shaded=yes"]);
  return `<h2>${wood}</h2><div>${[...tiles, buffed].join("")}</div>`;
});
const faults = list.shown.map(({ fault, looks }) => {
  const tiles = SEVERITIES.map((severity, n) => {
    const { words } = looks[n % looks.length];
    return tile(`${fault}-${severity}`, [`seed=${SEEDS[n]}`, `fault=${fault}`, `severity=${severity}`, ...words]);
  });
  return `<h2>${fault}</h2><div>${tiles.join("")}</div>`;
});
writeFileSync(join(folder, "index.html"), `<!doctype html><meta charset="utf-8"><title>All faults and woods</title>
<style>body{font:14px sans-serif;background:#d6d8d6}div{display:flex;gap:8px;flex-wrap:wrap}figure{margin:0}figcaption{max-width:480px}</style>
<h1>Faults</h1>${faults.join("\n")}<h1>Woods</h1>${woods.join("\n")}`);
console.log(`${list.shown.length} faults and ${list.wood.length} woods: ${join(folder, "index.html")}`);
