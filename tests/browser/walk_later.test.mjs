// A job walked on one's own with mistakes that come out later than they are made, each at the operation, or after the time,
// that its row of a published table names.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { By } from "selenium-webdriver";
import { root } from "../../tools/shell.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { asked, begin, decide, shown, stored } from "./walker.mjs";

/**
 * Mistakes of a job in their order: the row, what it says of where it shows, the operation that makes it and how, what it is
 * called on the screen, and the operation at which those words of the row come true on this job. `hurried`: without the wait
 * before it; `fresh`: as the first coat of a morning; `last`: when all else is done.
 */
const MISTAKES = [
  { row: "se-01", says: "stain, and again in gloss", of: "sand-wood", picks: { strokes: "across-the-grain" }, fault: "Sanding scratch", shows: "stain-wood" },
  { row: "se-18", says: "next coat", of: "clean-off", picks: { cloth: "tack-heavy" }, fault: "Fish-eye", shows: "seal-coat" },
  { row: "se-05", says: "first seal coat", of: "stain-wood", picks: { stain: "water-dye" }, fault: "Raised grain", shows: "washcoat" },
  { row: "se-08", says: "seal coat", of: "wipe-filler", picks: { "wiped-when": "by-the-clock" }, hurried: true, fault: "Pinholes in pores", shows: "seal-coat" },
  { row: "se-15", says: "levelling, weeks later", of: "clear-coats", numbers: { coats: 2, between: 0.25 }, fresh: true, fault: "Solvent pop", shows: "level-film" },
  { row: "se-29", says: "assembly", of: "fit-parts", picks: { fitted: "as-it-is" }, last: true, fault: "Peeling", shows: "hand-over" },
];

/** A row of the published orders that go wrong: its faults, and where it says that they show. */
function published(id) {
  const text = readFileSync(join(root, "tests", "data", "sequence-errors.csv"), "utf8");
  const row = text.split("\n").find((line) => line.startsWith(`${id},`));
  assert(row, id);
  const all = [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) => quoted ?? plain);
  return { says: all[5], faults: all[6].split(";") };
}

/** What is decided next: a mistake when its time has come, else what a right way has next. */
function next(plan, mistake, morning) {
  const [first] = plan;
  const work = plan.find((one) => one.work)?.work;
  if (mistake?.last) {
    const whole = { operation: mistake.of, parts: [0], picks: mistake.picks };
    return first === "hand-over" ? { decision: { work: whole }, made: true } : { decision: first };
  }
  const due = mistake && work?.operation === mistake.of && (mistake.hurried || first.work) && (!mistake.fresh || morning);
  if (!due) return { decision: first };
  const numbers = { ...work.numbers, ...mistake.numbers };
  return { decision: { work: { ...work, numbers, picks: { ...work.picks, ...mistake.picks } } }, made: true };
}

/** The faults that the screen shows after a decision, by name. */
async function faults(page, first) {
  if (!(await shown(page, ".walk-shows"))) return [];
  if (first) {
    await page.says("It shows now");
    await page.says("What mends it");
    await page.seenInEach("walk-shows");
  }
  const headings = await page.driver.findElements(By.css(".walk-fault h3"));
  const names = await Promise.all(headings.map((heading) => heading.getText()));
  await page.press("button", "Go on as it is");
  return names.map((name) => name.split(",")[0]);
}

/** Walks the job with its mistakes; gives which fault came out at which operation. */
async function walkWrong(page) {
  const [left, came] = [[...MISTAKES], []];
  let [plan, morning] = [[], false];
  while (await shown(page, ".walk-hand")) {
    if (plan.length === 0) {
      const walk = (await stored(page))[0];
      plan = asked(walk, "--right").decisions.slice(walk.decisions.length);
    }
    const { decision, made } = next(plan, left[0], morning);
    if (made) left.shift();
    plan = made ? [] : plan.slice(1);
    await decide(page, decision);
    assert(!(await shown(page, ".warned")), "nothing is told before");
    if (decision.wait) morning = decision.wait === "morning";
    for (const fault of await faults(page, came.length === 0)) came.push([decision.work?.operation, fault]);
  }
  assert.deepEqual(left, [], "every mistake was made");
  return came;
}

testWith("size", "on one's own nothing is told before, and each of six mistakes comes out at the later operation that its row names", () =>
  journey("walk-own", SIZES[0], async (page) => {
    await begin(page, "A box in a hurry", "On your own");
    const came = await walkWrong(page);
    const atWork = MISTAKES.filter(({ last }) => !last);
    assert.deepEqual(came.sort(), atWork.map(({ shows, fault }) => [shows, fault]).sort());
    await page.one("heading", "What it came to");
    const told = asked((await stored(page))[0]);
    const operation = (turn) => told.turns[turn].decision.work?.operation ?? told.turns[turn].decision;
    for (const { row, says, of, shows } of MISTAKES) {
      const wanted = published(row);
      assert(wanted.says.includes(says), `${row} says ${wanted.says}`);
      const fault = told.faults.find(({ rule }) => rule === row);
      assert.deepEqual(fault.faults, wanted.faults, row);
      assert.deepEqual([operation(fault.made_in_turn), operation(fault.shown_in_turn)], [of, shows], row);
      assert(fault.made_in_turn < fault.shown_in_turn, `${row} comes out later than it is made`);
    }
    assert.equal(told.faults.length, MISTAKES.length);
    for (const { fault } of MISTAKES) await page.says(fault);
    // Hours are not in the published rows and say so: their steps are, the time of a step is the shop's.
    await page.says("Not mended");
    await page.says(/of waiting, our estimate/);
    await page.seenInEach("walk-faults");
  }));
