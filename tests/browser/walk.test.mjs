// Walking a job: one done right with a guide, one that was killed and gone on with.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey, testWith } from "./harness.mjs";
import { askAgain, asked, begin, decide, followGuide, right, shown, stored, walkAlone } from "./walker.mjs";

/** Taps that a whole walk may take, each figure that is typed counted as one: some ten minutes at six seconds a tap. */
const TAPS_MOST = 110;

test("a plain plate is walked as the guide says, from raw wood to the hand-over: nothing is warned of, and it is delivered in time", () =>
  journey("walk-guided", SIZES[1], async (page) => {
    await begin(page, "A plain plate", "Guided");
    page.taps = 0;
    while (await shown(page, ".walk-hand")) {
      await followGuide(page);
      assert(!(await shown(page, ".warned")), "what the guide says is warned of");
    }
    assert(page.taps <= TAPS_MOST, `${page.taps} taps`);
    await page.one("heading", "What it came to");
    await page.says("Handed over in time.");
    const text = await page.text();
    assert.match(text, /Duties left undone\s+None\./);
    assert(text.indexOf("Duties left undone") < text.indexOf("Faults, by what made them"), "safety comes first");
    assert.match(text, /Faults, by what made them\s+None showed\./);
    const told = asked((await stored(page))[0]);
    assert.deepEqual([told.lapses, told.faults, told.in_time], [[], [], true]);
    await page.assertFits("the report");
    await page.assertAccessible("the report");
    await page.shot("walk-report");
  }));

test("a whole job is done on one's own by touch alone in few taps, nothing left undone", () =>
  journey("walk-alone", SIZES[0], async (page) => {
    await begin(page, "A plain plate", "On your own");
    page.taps = 0;
    await walkAlone(page);
    assert(page.taps <= TAPS_MOST, `${page.taps} taps`);
    const told = asked((await stored(page))[0]);
    assert.deepEqual([told.lapses, told.faults, told.in_time], [[], [], true]);
  }));

test("what is warned of at one touch is said of the parts that were picked: it is not done to others", () =>
  journey("walk-warned", SIZES[0], async (page) => {
    await begin(page, "A plain plate", "Guided");
    while ((await stored(page))[0].decisions.at(-1)?.work?.operation !== "seal-coat") await followGuide(page);
    await askAgain(page, "seal-coat");
    await page.until("a warning", () => shown(page, ".warned"));
    await page.says("Do it all the same");
    await page.driver.executeScript("document.querySelector('.walk-part input').click()");
    await page.until("no warning", async () => !(await shown(page, ".warned")));
    assert(await shown(page, ".walk-do.not-yet"), "it is done to other parts");
  }));

testWith("end", "a walk whose browser was ended is gone on with where it stood, to its report", () =>
  journey("walk-killed", SIZES[2], async (page) => {
    await begin(page, "A plain plate", "Guided");
    const first = right((await stored(page))[0]).slice(0, 5);
    for (const decision of first) await decide(page, decision);
    const before = (await stored(page))[0];
    await page.end();
    await page.again();
    await page.one("heading");
    await page.driver.get(`${page.address}#/walk`);
    await page.press("link", "Go on: A plain plate");
    await page.says("Take the dust off");
    assert.deepEqual((await stored(page))[0], before);
    const next = right(before)[0];
    await decide(page, next);
    assert.deepEqual((await stored(page))[0].decisions.at(-1), next);
    while (await shown(page, ".walk-hand")) await followGuide(page);
    await page.one("heading", "What it came to");
    const told = asked((await stored(page))[0]);
    assert.deepEqual([told.lapses, told.faults, told.in_time], [[], [], true]);
  }));

test("back from the menu leads to the walk that it was opened on", () =>
  journey("walk-menu", SIZES[1], async (page) => {
    await begin(page, "A plain plate", "Guided");
    const at = await page.driver.executeScript("return location.hash");
    await page.press("link", "Menu");
    await page.one("heading", "Menu");
    await page.press("link", "Back");
    await page.until("the floor", () => shown(page, ".walk-ops"));
    assert.equal(await page.driver.executeScript("return location.hash"), at);
  }));
