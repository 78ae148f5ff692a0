// What `stepboard deal` and `stepboard grade` print keeps to the published JSON Schemas, read by a validator from
// outside the project; and the schemas refuse what they should.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import { root } from "../../tools/shell.mjs";

const COUNT = 20;
const command = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug", "stepboard");

const ajv = new Ajv({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });
for (const name of ["deal", "grade"]) {
  ajv.addSchema(JSON.parse(readFileSync(join(root, "content", "schema", `${name}.schema.json`), "utf8")));
}
const dealt = ajv.getSchema("urn:stepboard:schema:deal:1");
const answered = ajv.getSchema("urn:stepboard:schema:grade:1#/$defs/answer_line");
const graded = ajv.getSchema("urn:stepboard:schema:grade:1#/$defs/grade_line");

const names = (folder, from) =>
  readdirSync(join(root, "content", folder))
    .filter((name) => name.endsWith(".toml"))
    .flatMap((name) => from(readFileSync(join(root, "content", folder, name), "utf8")));
const families = names("families", (text) => [...text.matchAll(/^id = "([^"]+)"/gm)].map(([, id]) => id));
const sheets = names("sheets", (text) => [text.match(/^slug = "([^"]+)"/m)[1]]);

function stepboard(words, input) {
  return execFileSync(command, words, { input, encoding: "utf8", maxBuffer: 1 << 28 });
}

function keeps(check, value, what) {
  assert(check(value), `${what}: ${ajv.errorsText(check.errors)}\n${JSON.stringify(value).slice(0, 2000)}`);
}

function deal(family, sheet) {
  return JSON.parse(stepboard(["deal", family, `count=${COUNT}`, `sheet=${sheet}`, "--key"]));
}

/** A stroke over a face as a hand makes it, and sets of passes. */
const STROKE = [[0, -2000, 500, 90, 100, 200, 0], [500, 2000, 0], [500, 2000, 10, 90, 0]];
const SET = { line_mm: [[-180, 0], [180, 0]], wide_mm: 280, distance_mm: 200, speed_m_s: 0.3, lead_mm: 50, lag_mm: 50 };
const PASSES = [SET, { ...SET, overlap: 0.4, wait_s: 60 }];

/** Two answers for each card: that not enough is told, and the first thing that its kind lets one say. */
function answers(card) {
  const letters = card.options.map(({ letter }) => letter);
  const some = {
    "choose-one": { pick: letters[0] },
    "choose-all": { picks: letters.slice(0, 2) },
    order: { order: letters },
    number: { value: 1, unit: card.units[0] },
    point: { x_mm: 40, y_mm: 25 },
    diagnose: { tests: ["A"], fault: "A", cause: "A", remedy: "A" },
    spray: card.seed % 2 ? { hand: STROKE } : { passes: PASSES },
  }[card.kind];
  assert(some, `an unknown kind, ${card.kind}`);
  return ["not-enough", some].map((answer) => ({
    family: card.family, version: card.version, seed: card.seed, sheet: card.sheet, answer,
  }));
}

test("there are families and sheets to ask about", () => {
  assert(families.length > 0 && sheets.length >= 3);
});

for (const family of families) {
  test(`cards and grades of ${family} keep to their schemas`, () => {
    for (const sheet of sheets) {
      const document = deal(family, sheet);
      keeps(dealt, document, `deal ${family} sheet=${sheet}`);
      assert.equal(document.cards.length, COUNT);
      const lines = document.cards.flatMap(answers);
      for (const line of lines) keeps(answered, line, "an answer");
      const grades = stepboard(["grade"], lines.map((line) => JSON.stringify(line)).join("\n")).trim().split("\n");
      assert.equal(grades.length, lines.length);
      for (const grade of grades) keeps(graded, JSON.parse(grade), `grade ${family} sheet=${sheet}`);
    }
  });
}

test("the schemas refuse what is no card, no answer and no grade", () => {
  const document = deal(families[0], sheets[0]);
  const without = ({ seed, ...card }) => card;
  assert(!dealt({ ...document, cards: document.cards.map(without) }), "a card without its seed");
  assert(!dealt({ ...document, more: 1 }), "a member that is not in the schema");
  assert(!answered({ ...answers(document.cards[0])[0], answer: "perhaps" }), "an answer of no kind");
  assert(!answered({ ...answers(document.cards[0])[0], answer: { hand: [[1, 2]] } }), "a path of one half a point");
  assert(!answered({ ...answers(document.cards[0])[0], answer: { passes: [{ ...SET, more: 1 }] } }), "a set with more");
  assert(!graded({}), "an empty grade");
});
