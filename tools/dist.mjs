// Builds the app into dist/: plain files that any web server can host, under any path.
//
// Every file but index.html, the service worker and the manifest carries its content's hash in its name, so that a
// browser may keep it for ever. Wherever index.html, the style sheets or the boot scripts name a file, the name is put in here:
//   index.html  <!-- styles --> and <!-- boot --> become the tags; any "styles/…" path becomes the hashed name
//   styles/     *.css, in the order of their names, become one sheet without comments; every other file is copied
//   src/device/boot/*.js, in the order of their names, become one script; with sw.js they are the only ones written by
//   hand; app.webmanifest lies beside them
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { basename, extname, join, relative } from "node:path";
import { alike } from "./alike.mjs";
import { isLater } from "./later.mjs";
import { dist, root } from "./shell.mjs";
import { BRING, split } from "./split.mjs";
import { compiled, optimise } from "./wasm.mjs";

const bound = join(root, "target", "web");
const styles = join(root, "styles");
const HASH_LENGTH = 10;
/**
 * What makes the file shorter and what is sent longer, each measured by leaving it out: a call compresses better than what
 * would stand in its place, a value worked out again than one put by, data whole than in many pieces. Without the two first the
 * functions of `src/content/apart.rs` would be one again, which costs time at the start.
 */
const NOT_SMALLER = ["inlining", "inlining-optimizing", "local-cse", "memory-packing"];
/** So many functions keep the lowest numbers, which recur in the code and so compress well. */
const MOST_CALLED = 100;
/** Browsers compile no more than this while a page waits (Chromium, 8 MB). */
const AT_ONCE_MOST = 8_000_000;
/** The glue, where the program has started and where it says what the program calls. */
const STARTED = "wasm = instance.exports;";
const CALLED = '"./app_bg.js": import0,';

compile();
rmSync(dist, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });
/** Names in dist, in the order written. */
const written = [];
bundle();

function compile() {
  rmSync(bound, { recursive: true, force: true });
  compiled(["--bin", "app"], bound);
  const wasm = join(bound, "app_bg.wasm");
  // Functions that are called most come first.
  optimise(wasm, ["-Oz", ...NOT_SMALLER.map((pass) => `--skip-pass=${pass}`), "--reorder-functions", "--debuginfo"]);
  const { first, rest, told } = split(readFileSync(wasm), { isLater, inOrder });
  for (const part of [first, rest]) if (!WebAssembly.validate(part)) throw new Error("a part of the program is not valid");
  if (rest.length > AT_ONCE_MOST) throw new Error(`the rest of the program has ${rest.length} bytes`);
  console.log(`dist: ${told}`);
  writeFileSync(wasm, first);
  writeFileSync(join(bound, "rest.wasm"), rest);
}

function bundle() {
  const names = new Map();
  const assets = files(styles).filter((path) => extname(path) !== ".css");
  for (const path of assets) names.set(relative(root, path), hashed(basename(path), readFileSync(path)));

  const sheets = readdirSync(styles).filter((name) => name.endsWith(".css")).sort();
  const css = sheets.map((name) => readFileSync(join(styles, name), "utf8")).join("\n");
  const fromStyles = new Map([...names].map(([path, name]) => [relative("styles", path), name]));
  const sheet = hashed("styles.css", rename(terse(css), fromStyles));

  const wasm = hashed("app.wasm", readFileSync(join(bound, "app_bg.wasm")));
  for (const path of files(join(bound, "snippets"))) write(relative(bound, path), readFileSync(path));
  const rest = hashed("rest.wasm", readFileSync(join(bound, "rest.wasm")));
  let glue = readFileSync(join(bound, "app.js"), "utf8").replaceAll("app_bg.wasm", wasm);
  glue = fill(glue, STARTED, `${STARTED} stepboard.rest.first = wasm;`);
  glue = fill(glue, CALLED, `${CALLED} ${BRING.module}: { ${BRING.name}: () => stepboard.rest.bring() },`);
  const script = hashed("app.js", glue);
  const parts = files(join(root, "src/device/boot")).map((path) => readFileSync(path, "utf8"));
  const named = new Map([["./app.js", `./${script}`], ["./app.wasm", `./${wasm}`], ["./rest.wasm", `./${rest}`]]);
  const boot = hashed("boot.js", rename(parts.join("\n"), named));

  let page = readFileSync(join(root, "index.html"), "utf8");
  page = fill(page, "<!-- styles -->", `<link rel="stylesheet" href="${sheet}">`);
  // Not held up by the style sheet: nothing is painted without that either way.
  page = fill(page, "<!-- boot -->", [
    `<link rel="preload" href="${wasm}" as="fetch" type="application/wasm" crossorigin>`,
    `<link rel="modulepreload" href="${script}">`,
    `<script type="module" async src="${boot}"></script>`,
  ].join("\n"));
  write("app.webmanifest", rename(readFileSync(join(root, "src/device/app.webmanifest"), "utf8"), names));
  write("index.html", rename(page, names));

  // Licences are there to be read, and pictures for home screens are asked for once: neither is kept on the tablet.
  const kept = written.filter((name) => ![".txt", ".png"].includes(extname(name)));
  const list = kept.map((name) => [name === "index.html" ? "./" : name, digest(readFileSync(join(dist, name)))]);
  const worker = readFileSync(join(root, "src/device/sw.js"), "utf8");
  const build = hash(JSON.stringify(list) + worker);
  write("sw.js", fill(fill(worker, '"BUILD"', JSON.stringify(build)), '["FILES"]', JSON.stringify(list)));
  console.log(`dist: build ${build}, ${written.length} files`);
}

/** Functions as they shall stand: those called most as they come, the others by what they share. */
function inOrder(code) {
  const first = [...code.keys()].slice(0, MOST_CALLED);
  return [...first, ...alike(code.slice(MOST_CALLED)).map((index) => MOST_CALLED + index)];
}

/** Every file below a folder, sorted. */
function files(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

function hash(bytes) {
  return digest(bytes).slice(0, HASH_LENGTH);
}

function digest(bytes) {
  return createHash("sha256").update(bytes).digest("hex");
}

function write(name, bytes) {
  const path = join(dist, name);
  mkdirSync(join(path, ".."), { recursive: true });
  writeFileSync(path, bytes);
  written.push(name);
}

/** Writes a file under its own name and its hash, and gives that name. */
function hashed(name, bytes) {
  const end = extname(name);
  const full = `${basename(name, end)}-${hash(bytes)}${end}`;
  write(full, bytes);
  return full;
}

/** A style sheet without what only people read. No text in ours has a brace, a semicolon or a colon before a space. */
function terse(css) {
  return css.replace(/\/\*.*?\*\//gs, "").replace(/\s*\n\s*/g, " ").replace(/ *([{};]) */g, "$1").replaceAll(": ", ":");
}

/** Longer paths first, so that no path is taken for the end of another. */
function rename(text, names) {
  const paths = [...names.keys()].sort((a, b) => b.length - a.length);
  return paths.reduce((now, path) => now.replaceAll(path, names.get(path)), text);
}

function fill(text, mark, value) {
  if (!text.includes(mark)) throw new Error(`${mark} is missing`);
  return text.replace(mark, () => value);
}
