// What the app weighs: every file of dist/, compressed as hosts do. Fails when it has grown by
// more than a little since the weight in tools/size.json; `--record` writes today's weight there, as a change to read.
import { readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { dist, root } from "./shell.mjs";

const KIB = 1024;
const BUDGET = 450 * KIB;
const GROWTH = 0.03;
const record = join(root, "tools", "size.json");

const rows = readdirSync(dist, { recursive: true })
  .filter((name) => statSync(join(dist, name)).isFile())
  .sort()
  .map((name) => {
    const bytes = readFileSync(join(dist, name));
    const brotli = brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY } });
    return { name, plain: bytes.length, gzip: gzipSync(bytes, { level: 9 }).length, brotli: brotli.length };
  });
const add = (key) => rows.reduce((sum, row) => sum + row[key], 0);
rows.push({ name: "all", plain: add("plain"), gzip: add("gzip"), brotli: add("brotli") });

const widest = Math.max(...rows.map(({ name }) => name.length));
const line = (name, ...cells) => console.log(name.padEnd(widest), ...cells.map((cell) => String(cell).padStart(9)));
line("file", "bytes", "gzip -9", "brotli");
for (const { name, plain, gzip, brotli } of rows) line(name, plain, gzip, brotli);

const { gzip } = rows.at(-1);
if (process.argv.includes("--record")) writeFileSync(record, `${JSON.stringify({ gzip })}\n`);
const before = JSON.parse(readFileSync(record, "utf8")).gzip;
const kib = (bytes) => `${(bytes / KIB).toFixed(1)} KiB`;
console.log(`${kib(gzip)} compressed; recorded ${kib(before)}, budget ${kib(BUDGET)}`);
// The budget is the goal of the finished app, and is said each time; what gates is growth.
if (gzip > BUDGET) console.log(`over the budget by ${kib(gzip - BUDGET)}`);
if (gzip > before * (1 + GROWTH)) fail("grown by more than 3 %: make it smaller, or accept it with `node tools/size.mjs --record`");

function fail(why) {
  console.error(`size: ${why}`);
  process.exit(1);
}
