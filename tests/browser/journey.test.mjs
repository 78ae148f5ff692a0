// The main job, as a newcomer does it, at three sizes.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answer, begin, handIn, home, next, recorded, stage, verdict } from "./apprentice.mjs";
import { SIZES, journey } from "./harness.mjs";

const CARDS = 10;
const STAGES = 5;

for (const size of SIZES) {
  test(`a newcomer answers ten cards over five stages, sees why, and nothing is lost (${size.name})`, () =>
    journey("newcomer", size, async (page) => {
      await home(page);
      await page.shot("home");
      await begin(page);
      const stages = new Set();
      const kinds = new Set();
      for (let done = 0; done < CARDS; done += 1) {
        stages.add(await stage(page));
        const kind = await answer(page);
        if (!kinds.has(kind)) {
          kinds.add(kind);
          await page.assertFits(kind);
          await page.assertAccessible(`a card, ${kind}`);
          await page.shot(`card-${kind.replaceAll(" ", "-")}`);
        }
        const heading = await handIn(page);
        const text = await page.text();
        assert.match(text, /Your answer/, heading);
        assert.match(text, /The rule/, heading);
        if (!heading.startsWith("Right")) assert.match(text, /Right is/, heading);
        if (done === 0) {
          await page.assertFits("a verdict");
          await page.assertAccessible("a verdict");
          await page.shot("verdict");
        }
        await page.says("Saved on this tablet");
        if (done + 1 < CARDS) await next(page);
      }
      assert(stages.size >= STAGES, `only ${[...stages].join(", ")}`);

      const before = await verdict(page);
      await page.reload();
      assert.equal(await verdict(page), before, "a reload goes on where it was");

      await page.press("link", "Back");
      await home(page);
      await page.press("link", "My record");
      assert.equal(await recorded(page), CARDS);
      await page.assertFits("my record");
      await page.assertAccessible("my record");
      await page.shot("record");
    }));
}

test("a reload in the middle of a card keeps what was picked", () =>
  journey("reload", SIZES[0], async (page) => {
    await begin(page);
    await answer(page);
    await page.press("radio", "On a test board");
    await page.one("button", "Hand it in");
    await page.reload();
    await page.press("button", "Hand it in");
    await verdict(page);
  }));

test("cards go round without a network, and are there after a reload", () =>
  journey("offline-cards", SIZES[0], async (page) => {
    await home(page);
    await page.kept();
    await page.goOffline();
    await page.reload();
    await begin(page);
    await answer(page);
    const before = await handIn(page);
    await page.says("Saved on this tablet");
    await page.reload();
    assert.equal(await verdict(page), before);
    await page.press("link", "Back");
    await page.press("link", "My record");
    assert.equal(await recorded(page), 1);
  }));

test("home is drawn and marked usable, and the next step answers a tap", () =>
  journey("usable", SIZES[0], async (page) => {
    await home(page);
    const marks = await page.driver.executeScript("return performance.getEntriesByName('usable').length");
    assert.equal(marks, 1);
    await begin(page);
  }));
