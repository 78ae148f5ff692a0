// Two windows on one walk: none overwrites what the other has stored.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey, testWith } from "./harness.mjs";
import { goTo } from "./office.mjs";
import { ask, begin, decide, right, stored } from "./walker.mjs";

const WORDS = "Another window of this tablet has gone on with this walk.";

/** The same app in another tab, on the same profile. */
async function tab(page, address) {
  const first = await page.driver.getWindowHandle();
  await page.driver.switchTo().newWindow("tab");
  await page.driver.get(`${page.address}${address}`);
  return { first, second: await page.driver.getWindowHandle(), to: (handle) => page.driver.switchTo().window(handle) };
}

test("a window that comes too late shows the walk as it is stored, says so, and goes on from there", () =>
  journey("walk-windows", SIZES[1], async (page) => {
    await begin(page, "A plain plate", "Guided");
    const [walk] = await stored(page);
    const way = right(walk);
    await decide(page, way[0]);
    const tabs = await tab(page, `#/walk/${walk.id}`);
    await page.says("On the ticket");
    await decide(page, way[1]);
    await decide(page, way[2]);
    const gone = (await stored(page))[0];
    assert.deepEqual(gone.decisions, way.slice(0, 3));
    await tabs.to(tabs.first);
    await ask(page, { wait: "morning" });
    await page.says(WORDS);
    assert.deepEqual((await stored(page))[0], gone, "what the other window stored is there");
    await page.assertAccessible("a walk that another window has gone on with");
    await page.shot("walk-overtaken");
    await decide(page, way[3]);
    assert.deepEqual((await stored(page))[0].decisions, way.slice(0, 4), "it goes on from what is stored");
    await page.until("the strip to go", async () => !(await page.text()).includes(WORDS));
    // The other one is behind now, and two quick decisions of one window are none of another.
    await tabs.to(tabs.second);
    await ask(page, { wait: "morning" });
    await page.says(WORDS);
    assert.equal((await stored(page)).length, 1, "it is kept once");
    for (const decision of way.slice(4, 6)) await decide(page, decision);
    assert.deepEqual((await stored(page))[0].decisions, way.slice(0, 6));
  }));

testWith("seen", "a walk that was left out in another window does not come back", () =>
  journey("walk-left-out", SIZES[1], async (page) => {
    await begin(page, "A plain plate", "Guided");
    const tabs = await tab(page, "#/walk");
    await page.press("button", "Leave out: A plain plate");
    await page.press("button", "Leave it out for good");
    await page.says("is left out");
    // A window that is shown again reads what is kept: there is nothing left to decide on.
    await tabs.to(tabs.first);
    await page.says("There is no walk of that name on this tablet.");
    assert.deepEqual(await stored(page), []);
    await goTo(page, "#/walk");
    await page.says("Easy");
    assert(!(await page.has("link", "Go on: A plain plate")));
  }));
