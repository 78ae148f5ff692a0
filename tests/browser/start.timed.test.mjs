// How long the app takes until its first screen can be used, beside the least page of the same framework, built, served and marked
// alike. Both are loaded for the first time, in turn, in the same browser; what counts is the middle one of nine pairs.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { build, minimal } from "../../tools/minimal.mjs";
import { serve } from "../../tools/serve.mjs";
import { dist, root } from "../../tools/shell.mjs";
import { SIZES, journey } from "./harness.mjs";

const PAIRS = 9;
/** What the app is to keep to in the end, and the growth over what is recorded that fails. */
const GOAL = 1.6;
const GROWTH = 1.3;
const RECORDED = JSON.parse(readFileSync(join(root, "tools", "start.json"), "utf8")).ratio;

/**
 * Milliseconds from the call of a page to its mark, from an address that nobody has seen before. What the page does after that ends
 * before the next is called, and the page is left for an empty one: browsers would else find the program compiled already.
 */
async function loaded(page, folder, ends) {
  const { server, port } = await serve(folder, 0);
  const usable = () => page.driver.executeScript("return performance.getEntriesByName('usable')[0]?.startTime");
  try {
    await page.driver.get(`http://127.0.0.1:${port}/`);
    const mark = await page.until("the first screen", usable);
    await ends();
    await page.driver.get("about:blank");
    return mark;
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

const app = (page) => loaded(page, dist, () => page.kept());
/** It does nothing more once it stands there. */
const least = (page) => loaded(page, minimal, () => {});

const middle = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

test("the first screen is usable not much later than the least page of the framework", { timeout: 900_000 }, async () => {
  build();
  await journey("start", SIZES[0], async (page) => {
    await page.one("heading");
    await page.assertClean();
    const missed = await page.driver.executeScript("return performance.getEntriesByName('rest-missed').length");
    assert.equal(missed, 0, "the first screen called something of the rest before it was there: see tools/later.mjs");
    const pairs = [];
    for (let nth = 0; nth <= PAIRS; nth += 1) pairs.push([await app(page), await least(page)]);
    // The first pair warms the browser up.
    pairs.shift();
    const ratio = middle(pairs.map(([ours, its]) => ours / its));
    const [ours, its] = [0, 1].map((of) => middle(pairs.map((pair) => pair[of])).toFixed(0));
    console.log(`usable after ${ours} ms, the least page after ${its} ms: ${ratio.toFixed(2)} times, goal ${GOAL}, recorded ${RECORDED}`);
    await page.driver.get(page.address);
    await page.listen();
    page.elsewhere = [];
    assert(ratio <= RECORDED * GROWTH, `${ratio.toFixed(2)} times, recorded ${RECORDED}: make it quicker, or accept it in tools/start.json`);
  });
});
