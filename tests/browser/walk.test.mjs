// Walking a job: one done right with a guide, one that was killed and gone on with.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey } from "./harness.mjs";
import { asked, begin, decide, right, shown, stored } from "./walker.mjs";

test("a plain plate is walked guided from raw wood to the hand-over: nothing is warned of, and it is delivered in time", () =>
  journey("walk-guided", SIZES[1], async (page) => {
    await begin(page, "A plain plate", "Guided");
    const [walk] = await stored(page);
    for (const decision of right(walk)) {
      await decide(page, decision);
      assert(!(await shown(page, ".warned")), `${JSON.stringify(decision)} is warned of`);
    }
    await page.one("heading", "What it came to");
    await page.says("Handed over in time.");
    const text = await page.text();
    assert.match(text, /Duties left undone\s+None\./);
    assert.match(text, /Faults, by what made them\s+None showed\./);
    const told = asked((await stored(page))[0]);
    assert.deepEqual([told.lapses, told.faults, told.in_time], [[], [], true]);
    await page.assertFits("the report");
    await page.assertAccessible("the report");
    await page.shot("walk-report");
  }));

test("a walk whose tab was killed is gone on with where it stood", () =>
  journey("walk-killed", SIZES[2], async (page) => {
    await begin(page, "A plain plate", "Guided");
    const first = right((await stored(page))[0]).slice(0, 5);
    for (const decision of first) await decide(page, decision);
    const before = (await stored(page))[0];
    const old = await page.driver.getWindowHandle();
    await page.driver.switchTo().newWindow("tab");
    const anew = await page.driver.getWindowHandle();
    await page.driver.switchTo().window(old);
    await page.driver.close();
    await page.driver.switchTo().window(anew);
    await page.driver.get(`${page.address}#/walk`);
    await page.press("link", "Go on: A plain plate");
    await page.says("Take the dust off");
    assert.deepEqual((await stored(page))[0], before);
    const next = right(before)[0];
    await decide(page, next);
    assert.deepEqual((await stored(page))[0].decisions.at(-1), next);
  }));
