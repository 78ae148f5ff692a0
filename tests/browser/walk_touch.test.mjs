// A whole job by real touches alone, and how long somebody takes for it by published figures.
import assert from "node:assert/strict";
import { Finger } from "./finger.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { asked, begin, places, shown, stored, walkAlone } from "./walker.mjs";

/** An apprentice does a whole job in 10 to 15 minutes on a tablet, and a hard one in as much longer as it has more to decide. */
const MINUTES_MOST = 15;
const HARD_MOST = 25;
const [EASY, HARD] = ["A plain plate", "A lyre of mixed woods"];

/** Does what the guide says, touch by touch, and reads what it says. */
async function guided(page) {
  const { finger } = page;
  const decided = async () => (await stored(page))[0].decisions.length;
  while (await shown(page, ".walk-hand")) {
    await finger.reads();
    const before = await decided();
    await finger.tap(".walk-guide .control");
    await page.until("something opened or done", async () => (await shown(page, ".walk-do:not(.not-yet)")) || (await decided()) > before);
    if ((await decided()) === before) {
      await finger.reads();
      await finger.tap(".walk-do");
    }
    await page.until("what the guide said to be stored", async () => (await decided()) > before);
  }
}

for (const [job, way, walk, most] of [
  [EASY, "Guided", guided, MINUTES_MOST],
  [EASY, "On your own", walkAlone, MINUTES_MOST],
  [HARD, "Guided", guided, HARD_MOST],
  [HARD, "On your own", walkAlone, HARD_MOST],
]) {
  testWith("finger", `${job}, ${way.toLowerCase()}, by touch alone`, () =>
    journey("walk-touch", SIZES[0], async (page) => {
      await begin(page, job, way);
      await places(page);
      page.finger = await Finger.of(page);
      await walk(page);
      const told = asked((await stored(page))[0]);
      assert.deepEqual([told.lapses, told.faults], [[], []]);
      console.log(`${job}, ${way.toLowerCase()}: ${page.finger.told()}`);
      assert(page.finger.minutes() <= most, page.finger.told());
    }));
}
