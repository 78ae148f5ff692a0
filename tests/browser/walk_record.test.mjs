// What a walk leaves behind: sealed while it goes on, then in the record, in a file of results and on the instructor's tablet.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { readIn } from "./crowd.mjs";
import { SIZES, journey } from "./harness.mjs";
import { stored as inStore } from "./office.mjs";
import { begin, decide, right, shown, stored } from "./walker.mjs";

/** The events of walks that the tablet has stored. */
const walked = async (page) => (await inStore(page, "journal")).map((text) => JSON.parse(text)).filter((one) => one.event === "walked");

/** What stands before mouth and nose after decisions. */
const walkedWith = (decisions) => decisions.findLast((one) => one.wear)?.wear.respirator ?? undefined;

test("what was wrong on one's own is sealed until the walk is over, then it stands in the record and travels", () =>
  journey("walk-record", SIZES[0], async (page) => {
    await begin(page, "A plain plate", "On your own");
    const [walk] = await stored(page);
    const all = right(walk);
    const first = all.slice(0, all.findIndex((one) => one.work?.operation === "sand-wood") + 1);
    // se-01 of tests/data/sequence-errors.csv: the last strokes run across the grain.
    const { work } = first.at(-1);
    work.picks = { ...work.picks, strokes: "across-the-grain" };
    for (const decision of first) await decide(page, decision);
    await page.until("all of it to be written down", async () => (await walked(page)).length === first.length);
    const last = (await walked(page)).at(-1);
    assert.deepEqual([last.step.decided.way, last.step.decided.broke], ["own", ["se-01"]]);
    assert.equal(last.step.decided.known.respirator, walkedWith(first));
    // Nothing of it is told while the walk goes on, and nothing is written twice when it is opened again.
    const quiet = async (to) => {
      await page.driver.executeScript("location.hash = arguments[0]", to);
      await page.driver.sleep(300);
      assert.doesNotMatch(await page.text(), /Wrong on jobs walked/, to);
    };
    await quiet("#/record");
    await quiet("#/crew");
    await page.driver.executeScript("location.hash = '#/walk'");
    await page.press("link", "Go on: A plain plate");
    await page.until("the floor", () => shown(page, ".walk-ops"));
    await decide(page, "hand-over");
    await page.one("heading", "What it counts for");
    await page.says("the first decision of each kind counts");
    await page.until("the end to be written down", async () => (await walked(page)).length === first.length + 1);

    await page.driver.executeScript("location.hash = '#/record'");
    await page.one("heading", "Wrong on jobs walked");
    await page.assertFits("the record with a walk");
    await page.assertAccessible("the record with a walk");
    await page.shot("walk-record");
    await page.driver.executeScript(`const made = URL.createObjectURL.bind(URL);
      URL.createObjectURL = (blob) => { blob.text().then((text) => { window.last = text; }); return made(blob); };`);
    await page.press("button", "Save a copy");
    const copy = await page.until("the copy", () => page.driver.executeScript("return window.last"));
    assert.equal(JSON.parse(copy).events.filter((one) => one.event === "walked").length, first.length + 1);
    await page.press("link", /Sand the wood/);
    await page.says("What was known then");
    await page.assertAccessible("a decision of a walk");
    await page.shot("walk-decision");

    // On the instructor's tablet.
    const folder = mkdtempSync(join(tmpdir(), "stepboard-walk-"));
    const file = join(folder, "results.json");
    writeFileSync(file, copy);
    await journey("walk-crew", SIZES[1], async (other) => {
      await other.driver.executeScript("location.hash = '#/crew'");
      await readIn(other, [file]);
      await other.press("link", "Without a name");
      await other.one("heading", "Wrong on jobs walked");
      await other.one("heading", "Jobs walked");
      await other.assertFits("a person who walked");
      await other.assertAccessible("a person who walked");
      await other.shot("walk-crew");
      await other.press("link", /Sand the wood/);
      await other.says("What was known then");
      await other.assertAccessible("a decision of somebody's walk");
      await other.shot("walk-crew-decision");
    });
    rmSync(folder, { recursive: true });
  }));
