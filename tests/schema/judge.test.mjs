// What `stepboard judge` reads and prints keeps to the published JSON Schema, read by a validator from outside the
// project; and the schema refuses what the command refuses.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import { root } from "../../tools/shell.mjs";

const command = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug", "stepboard");
const judge = (words, input) => JSON.parse(execFileSync(command, ["judge", ...words], { input, encoding: "utf8" }));

const ajv = new Ajv({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });
ajv.addSchema(judge(["--schema"]));
const told = ajv.getSchema("urn:stepboard:schema:judge:1#/$defs/description");
const judged = ajv.getSchema("urn:stepboard:schema:judge:1#/$defs/judgement");

const folder = join(root, "tests", "data", "jobs");
const jobs = readdirSync(folder).filter((name) => name.endsWith(".json"));

function keeps(check, value, what) {
  assert(check(value), `${what}: ${ajv.errorsText(check.errors)}`);
}

test("the example is a description, and it is judged: not accepted, and something shows later than it is made", () => {
  const example = judge(["--example"]);
  keeps(told, example, "--example");
  const answer = judge(["-"], JSON.stringify(example));
  keeps(judged, answer, "the verdict on --example");
  assert.equal(answer.accepted, false);
  assert(answer.findings.length >= 2);
  const stages = ["room", "sand", "stain", "fill", "seal", "colour", "shade", "scrape", "clear", "cure", "buff", "later"];
  assert(answer.findings.some(({ made, shows }) => stages.indexOf(shows) > stages.indexOf(made)));
});

test("there are jobs to judge", () => {
  assert(jobs.length >= 20, `${jobs.length} jobs`);
});

for (const name of jobs) {
  test(`${name} is a description, and its verdict keeps to the schema`, () => {
    const { about, expect, ...description } = JSON.parse(readFileSync(join(folder, name), "utf8"));
    assert(about && expect, "it says what it is about and what is expected");
    keeps(told, description, name);
    keeps(judged, judge(["-"], JSON.stringify(description)), `the verdict on ${name}`);
  });
}

test("what the command refuses, the schema refuses", () => {
  const steps = [{ operation: "sand-wood" }];
  const wrong = [
    {},
    { steps },
    { ticket: "lute-body", job: {}, steps },
    { ticket: "no-such", steps },
    { ticket: "lute-body", sheet: "no-such", steps },
    { ticket: "lute-body", steps: [{ operation: "no-such" }] },
    { ticket: "lute-body", steps: [{}] },
    { ticket: "lute-body", steps, more: 1 },
    { ticket: "lute-body", steps: [{ operation: "sand-wood", more: 1 }] },
    { ticket: "lute-body", steps: [{ operation: "sand-wood", after_h: -1 }] },
    { ticket: "lute-body", steps: [{ operation: "sand-wood", how: ["no-such"] }] },
    { ticket: "lute-body", steps: [{ operation: "sand-wood", untold: ["no-such"] }] },
    { ticket: "lute-body", steps, air: [{ air_c: 20, rh: 50 }] },
    { ticket: "lute-body", steps, air: [{ from_h: 0, air_c: 20, rh: 150 }] },
    { ticket: "lute-body", steps, detail: "all" },
    { ticket: "lute-body", steps, settings: { "no-such": 1 } },
  ];
  for (const one of wrong) {
    const text = JSON.stringify(one);
    assert(!told(one), `the schema takes ${text}`);
    assert.equal(spawnSync(command, ["judge", "-"], { input: text }).status, 2, `the command takes ${text}`);
  }
});
