// Runs what gates a change, stage by stage, and counts: `node tools/test.mjs` all of it, with names only those.
// A stage that fails does not hide the ones after it.
import { spawn } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { root, tool } from "./shell.mjs";

/** Longest that one file of tests may take, in milliseconds: what hangs fails instead of holding up the rest. */
const FILE_MOST = 15 * 60_000;
/** And one stage. */
const STAGE_MOST = 40 * 60_000;
const WARNINGS_FAIL = ["--", "-D", "warnings"];

/** Name, program, arguments, and how its output is counted: one check where nothing else is said. */
const stages = [
  { name: "format", run: ["cargo", "fmt", "--all", "--check"] },
  { name: "lint", run: ["cargo", "clippy", "--locked", "--workspace", "--all-targets", ...WARNINGS_FAIL] },
  {
    name: "lint-web",
    run: ["cargo", "clippy", "--locked", "--target", "wasm32-unknown-unknown", "--features", "web", "--lib", "--bin", "app", ...WARNINGS_FAIL],
  },
  { name: "unit", run: ["cargo", "test", "--locked", "--workspace"], count: cargoTests },
  { name: "coverage", run: ["node", "tools/coverage.mjs", "--check"] },
  { name: "agree", run: ["node", "tools/agree.mjs"] },
  { name: "docs", run: ["cargo", "doc", "--locked", "--workspace", "--no-deps"], env: { RUSTDOCFLAGS: "-D warnings" } },
  { name: "licences", run: [tool("cargo-deny"), "--all-features", "check", "bans", "licenses", "sources"], count: verdicts },
  { name: "content", run: ["cargo", "run", "--locked", "--quiet", "--bin", "stepboard", "--", "check", "content"] },
  { name: "dist", run: ["node", "tools/dist.mjs"] },
  { name: "size", run: ["node", "tools/size.mjs"] },
  { name: "schema", run: nodeTests("tests/schema"), count: nodeCount },
  { name: "signed", run: nodeTests("tests/signed"), count: nodeCount },
  { name: "sql", run: ["node", "tools/sql.mjs", "duckdb", "200", "500"], count: values },
  { name: "timed", run: nodeTests("tests/browser", { fits: isTimed }), count: nodeCount },
  { name: "browser", run: nodeTests("tests/browser", { fits: (name) => !isTimed(name), atOnce: 2 }), count: nodeCount },
  { name: "firefox", run: nodeTests("tests/browser", { fits: isShort, atOnce: 2 }), env: { ENGINE: "firefox" }, count: nodeCount },
  { name: "webkit", run: nodeTests("tests/browser", { fits: isShort, atOnce: 2 }), env: { ENGINE: "webkit" }, count: nodeCount },
];

/** Tests that measure run with nothing beside them. */
function isTimed(name) {
  return name.endsWith(".timed.test.mjs");
}

/** Tests that are short enough to run in every engine each time. */
function isShort(name) {
  return name.startsWith("short_");
}

function nodeTests(folder, { fits = () => true, atOnce = 1 } = {}) {
  const path = join(root, folder);
  const names = existsSync(path) ? readdirSync(path).filter((name) => name.endsWith(".test.mjs") && fits(name)).sort() : [];
  const files = names.map((name) => join(folder, name));
  return ["node", "--test", `--test-concurrency=${atOnce}`, `--test-timeout=${FILE_MOST}`, "--test-reporter=spec", ...files];
}

function cargoTests(output) {
  const lines = [...output.matchAll(/^test result: \w+\. (\d+) passed; (\d+) failed/gm)];
  return sum(lines.map(([, passed, failed]) => [Number(passed), Number(failed)]));
}

function nodeCount(output) {
  const number = (word) => Number(output.match(new RegExp(`^\\S+ ${word} (\\d+)$`, "m"))?.[1] ?? 0);
  // What was skipped or left for later was not shown to work.
  return [number("pass"), number("fail") + number("cancelled") + number("skipped") + number("todo")];
}

function verdicts(output) {
  const words = [...output.matchAll(/\b(?:bans|licenses|sources) (ok|FAILED)/g)].map(([, word]) => word === "ok");
  return sum(words.map((ok) => [ok ? 1 : 0, ok ? 0 : 1]));
}

function values(output) {
  const [, agree, of] = output.match(/(\d+) of (\d+) values agree/) ?? [0, 0, 0];
  return [Number(agree), of - agree];
}

function sum(pairs) {
  return pairs.reduce(([a, b], [c, d]) => [a + c, b + d], [0, 0]);
}

/** Runs one program, shows its output as it comes, and gives that output and whether it went well, and in time. */
function watch([program, ...args], env) {
  return new Promise((done) => {
    // A group of its own, so that what it started ends with it.
    const child = spawn(program, args, { cwd: root, env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"], detached: true });
    const stop = () => process.kill(-child.pid, "SIGKILL");
    const late = setTimeout(() => {
      console.error(`stopped: not done in ${STAGE_MOST / 60_000} minutes`);
      stop();
    }, STAGE_MOST);
    const told = ["SIGINT", "SIGTERM"].map((signal) => [signal, () => (stop(), process.exit(1))]);
    for (const [signal, end] of told) process.once(signal, end);
    let output = "";
    const hear = (stream) => (bytes) => {
      output += bytes;
      stream.write(bytes);
    };
    child.stdout.on("data", hear(process.stdout));
    child.stderr.on("data", hear(process.stderr));
    const end = (result) => {
      clearTimeout(late);
      for (const [signal, listener] of told) process.off(signal, listener);
      done(result);
    };
    child.on("error", (error) => {
      console.error(`${program}: ${error.message}`);
      end({ output: "", well: false });
    });
    child.on("close", (code) => end({ output: output.replace(/\x1b\[[0-9;]*m/g, ""), well: code === 0 }));
  });
}

async function main() {
  const asked = process.argv.slice(2);
  const unknown = asked.filter((name) => !stages.some((stage) => stage.name === name));
  if (unknown.length > 0) {
    console.error(`no stage ${unknown.join(", ")}; there are ${stages.map((stage) => stage.name).join(", ")}`);
    process.exit(2);
  }
  const lines = [];
  let total = [0, 0];
  for (const stage of stages.filter(({ name }) => asked.length === 0 || asked.includes(name))) {
    console.log(`\n== ${stage.name}`);
    const start = Date.now();
    const { output, well } = await watch(stage.run, stage.env);
    let [passed, failed] = stage.count ? stage.count(output) : [well ? 1 : 0, well ? 0 : 1];
    // A stage that fails before it counts, or counts nothing at all, has failed.
    if (failed === 0 && (!well || passed === 0)) failed = 1;
    total = sum([total, [passed, failed]]);
    const seconds = Math.round((Date.now() - start) / 1000);
    lines.push(`${stage.name}: ${passed} passed, ${failed} failed (${seconds} s)`);
    console.log(lines.at(-1));
  }
  console.log(`\n${lines.join("\n")}\n\n${total[0]} passed, ${total[1]} failed`);
  process.exit(total[1] === 0 ? 0 : 1);
}

await main();
