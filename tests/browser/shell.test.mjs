// What holds whatever the screens are: the app starts at every size, asks nothing of other hosts, passes the
// accessibility check and opens again without a network.
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { test } from "node:test";
import { dist } from "../../tools/shell.mjs";
import { recorded } from "./apprentice.mjs";
import { everyScreen } from "./crawl.mjs";
import { SIZES, journey } from "./harness.mjs";
import { goTo, stored } from "./office.mjs";
import { Seed } from "./seed.mjs";
import { begin } from "./walker.mjs";

/** Fewest screens that are reached: with fewer the links are not found any more. */
const SCREENS = 40;
/** Stores that each version of the database had. */
const VERSIONS = [["journal", "state"], ["book"], ["sheets", "sets", "results", "outbox", "offered"]];

for (const size of SIZES) {
  test(`the app starts on a ${size.name} screen`, () =>
    journey("start", size, async (page) => {
      assert.equal(await page.driver.getTitle(), "Stepboard");
      await page.assertFits("home");
      await page.assertAccessible("home");
      await page.shot("start");
    }));
}

test("after one visit the app opens without a network", () =>
  journey("offline", SIZES[0], async (page) => {
    await page.kept();
    await page.goOffline();
    await page.reload();
    assert.equal(await page.driver.getTitle(), "Stepboard");
    await page.kept();
  }));

test("without a network each screen is there", { timeout: 240_000 }, () =>
  journey("offline-screens", SIZES[0], async (page) => {
    await page.kept();
    await page.goOffline();
    await page.reload();
    const seen = await everyScreen(page, (address) => page.assertFits(address));
    assert(seen.length >= SCREENS, `only ${seen.length} screens`);
  }));

/** A file of the app that runs nothing and that each engine shows as it is. */
const STILL = readdirSync(dist).find((name) => name.endsWith(".txt"));

/** Makes the database of a version, with an event in its journal, before the app has opened one. */
const MAKE = `const [version, stores, event, done] = arguments;
  const asked = indexedDB.open("stepboard", version);
  asked.onupgradeneeded = () => stores.forEach((name) => asked.result.createObjectStore(name));
  asked.onerror = () => done(String(asked.error));
  asked.onsuccess = () => {
    const work = asked.result.transaction("journal", "readwrite");
    work.objectStore("journal").put(JSON.stringify(event), event.sequence);
    work.oncomplete = () => { asked.result.close(); done(""); };
  };`;

for (let version = 1; version <= VERSIONS.length; version += 1) {
  test(`a database of version ${version} is opened with what is in it, and has what this version needs`, () =>
    journey(`database-${version}`, SIZES[0], async (page) => {
      const [event] = new Seed("0123456789abcdef", "").answer("wants-filler", true).events;
      const stores = VERSIONS.slice(0, version).flat();
      assert.equal(await page.driver.executeAsyncScript(MAKE, version, stores, event), "");
      page.path = "";
      await page.load();
      await goTo(page, "#/record");
      await page.until("the answer on the record", async () => (await recorded(page)) === 1);
      await begin(page, "A plain plate", "Guided");
      assert.equal((await stored(page, "walks")).length, 1);
      await page.listen();
      // A page that names no icon is asked for one by the browser.
      page.problems = page.problems.filter((problem) => !problem.includes("favicon.ico"));
    }, { path: STILL }));
}
