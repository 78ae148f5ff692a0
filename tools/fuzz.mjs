// Runs the readers under libFuzzer for so many seconds each (SECONDS), from the files that the app itself makes: `make fuzz`. It wants
// a nightly toolchain and cargo-fuzz, and says so.
import { execFileSync, spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { root, run } from "./shell.mjs";

const TARGETS = ["files", "signed", "codes", "kept"];
const seconds = Number(process.argv[2] ?? 900);
const folder = join(root, "tests", "fuzz");
const seeds = join(root, "target", "fuzz-seeds");

const has = (args) => spawnSync("cargo", args, { stdio: "ignore" }).status === 0;
if (!has(["+nightly", "--version"])) fail("a nightly toolchain is wanted: rustup toolchain install nightly");
if (!has(["fuzz", "--version"])) run("cargo", ["install", "--quiet", "--debug", "cargo-fuzz"]);

mkdirSync(seeds, { recursive: true });
run("cargo", ["run", "--quiet", "--locked", "--example", "made", "files", seeds]);
for (const target of TARGETS) {
  const corpus = join(folder, "corpus", target);
  mkdirSync(corpus, { recursive: true });
  const files = readdirSync(seeds, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  // Files of the same name lie in several folders: each is called by its whole path.
  for (const { parentPath, name } of files) {
    const path = join(parentPath, name);
    copyFileSync(path, join(corpus, relative(seeds, path).replaceAll(sep, "-")));
  }
  console.log(`== ${target}, ${seconds} s`);
  execFileSync("cargo", ["+nightly", "fuzz", "run", "--fuzz-dir", folder, target, "--", `-max_total_time=${seconds}`, "-rss_limit_mb=4096", "-max_len=65536", "-print_final_stats=1"], { cwd: root, stdio: "inherit" });
}

function fail(why) {
  console.error(`fuzz: ${why}`);
  process.exit(1);
}
