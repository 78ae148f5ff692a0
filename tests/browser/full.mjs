// A tablet with 100,000 answers: how long until its first screen can be used beside an empty one, and how long until the next card
// lies there: `make full`, since it takes a while. Figures that are told and held against what they were; the goals stand beside them.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { root } from "../../tools/shell.mjs";
import { begin, home } from "./apprentice.mjs";
import { SIZES, journey } from "./harness.mjs";
import { Seed } from "./seed.mjs";

const ENTRIES = 100_000;
/** Answers of a day: some seven years of them. */
const A_DAY = 40;
const STARTS = 5;
/** What the app is to keep to in the end. */
const GOAL = { start: 1.3, next_ms: 10 };
const GROWTH = 1.3;
const RECORDED = JSON.parse(readFileSync(join(root, "tools", "start.json"), "utf8")).full;

const middle = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

async function starts(page) {
  const took = [];
  for (let nth = 0; nth <= STARTS; nth += 1) {
    await page.reload();
    took.push(await page.until("the mark", () => page.driver.executeScript("return performance.getEntriesByName('usable')[0]?.startTime"), 60_000));
  }
  return middle(took.slice(1));
}

test("a tablet with 100,000 answers starts, and deals the next card", { timeout: 600_000 }, () =>
  journey("full", SIZES[0], async (page) => {
    await home(page);
    const empty = await starts(page);
    const families = ["dew-point", "surface-gap", "warm-enough"];
    const seed = new Seed("0123456789abcdef", "", "");
    const now = Date.now();
    for (let nth = 0; nth < ENTRIES; nth += 1) {
      const stamp = seed.stamp("answered", (ENTRIES - nth) / A_DAY);
      seed.events.push({ ...stamp, at: new Date(now - ((ENTRIES - nth) * 86_400_000) / A_DAY).toISOString(), family: families[nth % 3], version: 1,
        seed: nth, sheet: { slug: "nitrocellulose", hash: "00" }, answer: { term: "koa" }, certainty: "test-board", mark: nth % 5 ? "right" : "wrong",
        guess: 0.25, active_seconds: 20, help: "none", within: "practice" });
    }
    await seed.put(page);
    await page.until("the first screen", async () => (await page.all("button", /^(Start with|Go on)/)).length > 0, 120_000);
    const full = await starts(page);
    await page.driver.executeScript(`window.at = {}; document.addEventListener("click", () => { at.pressed ??= performance.now(); }, true);
      new MutationObserver(() => { if (document.querySelector(".choices, .order, .panel, .number")) at.dealt ??= performance.now(); })
        .observe(document.body, { subtree: true, childList: true });`);
    await begin(page);
    const at = await page.driver.executeScript("return window.at");
    const next = at.dealt - at.pressed;
    const ratio = full / empty;
    console.log(`${ENTRIES} entries: usable after ${full.toFixed(0)} ms, empty after ${empty.toFixed(0)} ms: ${ratio.toFixed(2)} times, goal ${GOAL.start}, recorded ${RECORDED}; the card drawn ${next.toFixed(0)} ms after the touch, goal ${GOAL.next_ms} to pick it`);
    assert(ratio <= RECORDED * GROWTH, `${ratio.toFixed(2)} times, recorded ${RECORDED}`);
  }));
