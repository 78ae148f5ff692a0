// What `stepboard spray` reads and prints keeps to the published JSON Schema, read by a validator from outside the project;
// and the schema refuses what the command refuses.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import { root } from "../../tools/shell.mjs";

const command = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug", "stepboard");
const spray = (words, input) => JSON.parse(execFileSync(command, ["spray", ...words], { input, encoding: "utf8" }));

const ajv = new Ajv({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });
ajv.addSchema(JSON.parse(readFileSync(join(root, "content", "schema", "spray.schema.json"), "utf8")));
const run = ajv.getSchema("urn:stepboard:schema:spray:1#/$defs/run");
const result = ajv.getSchema("urn:stepboard:schema:spray:1#/$defs/result");

function keeps(check, value, what) {
  assert(check(value), `${what}: ${ajv.errorsText(check.errors)}`);
}

const slug = (file) => /^slug = "(.+)"$/m.exec(readFileSync(join(root, "content", "sprays", file), "utf8"))[1];
const tasks = readdirSync(join(root, "content", "sprays")).map(slug);

test("the good run of every task, and what comes of it, keep to the schema", () => {
  assert(tasks.length >= 6, `${tasks.length} tasks`);
  for (const task of tasks) {
    const good = spray([task, "--good"]);
    keeps(run, good, `${task} --good`);
    keeps(result, spray(["-"], JSON.stringify(good)), task);
  }
});

test("a run that fails keeps to it too, with its findings and what to do better", () => {
  const slow = spray(["clear-panel", "--good"]);
  for (const set of slow.passes) set.speed_m_s = 0.08;
  const answer = spray(["-"], JSON.stringify(slow));
  keeps(result, answer, "a slow run");
  assert(answer.findings.length > 0 && answer.places.length > 0);
});

test("the schema refuses what the command refuses", () => {
  const point = (more) => ({ t_s: 0, x_mm: 0, y_mm: 0, distance_mm: 180, trigger: 1, ...more });
  const path = (...points) => ({ task: "clear-panel", path: points });
  const good = path(point(), point({ t_s: 1, x_mm: 10 }));
  keeps(run, good, "two points");
  assert.equal(spawnSync(command, ["spray"], { input: JSON.stringify(good) }).status, 0);
  const wrong = [
    { path: good.path },
    { task: "clear-panel" },
    { ...good, passes: [] },
    { ...good, tack: 1 },
    path(point()),
    path(point(), point({ t_s: -1 })),
    path(point(), point({ trigger: 2 })),
    path(point(), point({ distance_mm: 20 })),
    path(point(), { t_s: 1 }),
    { task: "clear-panel", passes: [{ line_mm: [[0, 0]], distance_mm: 180, speed_m_s: 0.3, lead_mm: 0, lag_mm: 0 }] },
    { task: "clear-panel", passes: [{ line_mm: [[0, 0], [9, 0]], distance_mm: 180, speed_m_s: 9, lead_mm: 0, lag_mm: 0 }] },
  ];
  for (const one of wrong) {
    const text = JSON.stringify(one);
    assert(!run(one), `the schema takes ${text}`);
    assert.equal(spawnSync(command, ["spray"], { input: text }).status, 2, `the command takes ${text}`);
  }
});
