// A tablet with a long journal shows its first screen before the journal is read: what the whole journal would show, or nothing of
// it. What reads the journal is held back here, so that one sees both.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answer, begin, handIn, home } from "./apprentice.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { deviceOf, goTo, handOver, stored, takeIn } from "./office.mjs";
import { Seed } from "./seed.mjs";

/** More events than are read before anything is drawn. */
const LONG = 1_200;
const READING = "Reading what was answered on this tablet";
/** Keeps whoever asks for the journal alone waiting behind a write that does not end before it is let go. */
const HELD = `{ const before = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (stores, mode, ...more) {
    if (String(stores) === "journal" && mode === "readonly" && !window.letGo) {
      const journal = before.call(this, ["journal"], "readwrite").objectStore("journal");
      const wait = () => { if (!window.letGo) journal.get(0).onsuccess = wait; };
      wait();
    }
    return before.call(this, stores, mode, ...more);
  }; }`;

const letGo = (page) => page.driver.executeScript("window.letGo = true");
const shown = (page) => page.driver.executeScript("return document.querySelector('main').innerText");
const marked = (page, name) => page.driver.executeScript("return performance.getEntriesByName(arguments[0]).length > 0", name);
/** The number behind all that the kept first screen tells of. */
const kept = async (page) => JSON.parse((await stored(page, "state", "front")) ?? "{}").next;

/** A long journal of practice, most of it right, whose last answers are those of today. */
async function long(page) {
  const seed = new Seed(await deviceOf(page), "", "");
  const families = ["dew-point", "surface-gap", "warm-enough", "wants-filler"];
  for (let nth = 0; nth < LONG; nth += 1) seed.answer(families[nth % families.length], nth % 5 > 0);
  await seed.put(page);
  await home(page);
  await page.until("the first screen to be kept", async () => (await kept(page)) === LONG + 1);
}

testWith("before", "what is shown before the journal is read is what it tells, and a tap on it leads on", () =>
  journey("front", SIZES[0], async (page) => {
    await home(page);
    await long(page);
    const whole = await shown(page);
    const takeBack = await page.browser.before(HELD);
    await page.reload();
    await home(page);
    assert.equal(await shown(page), whole);
    assert(!(await marked(page, "read")), "the journal is still being read");
    await page.seen("front");
    await goTo(page, "#/record");
    await page.says(READING);
    await page.seenInEach("reading");
    await goTo(page, "#/");
    await page.press("button", /^(Start with|Go on)/);
    await page.says(READING);
    await letGo(page);
    // What was tapped comes as soon as the journal is there, and what is answered is the next in it.
    await answer(page);
    await handIn(page);
    await page.says("Saved on this tablet");
    assert.equal((await stored(page, "journal")).length, LONG + 1);
    await page.until("the first screen to be kept", async () => (await kept(page)) === LONG + 2);
    // Drawn again once the journal is there, it is the same and keeps what has the focus.
    await goTo(page, "#/");
    await home(page);
    const after = await shown(page);
    await page.reload();
    const [door] = await page.until("the doors", async () => {
      const doors = await page.all("link", "Bench");
      return doors.length > 0 && doors;
    });
    await page.driver.executeScript("arguments[0].focus()", door);
    assert(!(await marked(page, "read")));
    await letGo(page);
    await page.until("the journal", () => marked(page, "read"));
    assert.equal(await shown(page), after);
    assert(await page.driver.executeScript("return document.activeElement === arguments[0]", door));
    await takeBack();
  }));

testWith("before", "a first screen of another person, of a journal that went on, or of what was erased is not shown", () =>
  journey("front-stale", SIZES[0], async (page) => {
    await home(page);
    await long(page);
    const takeBack = await page.browser.before(HELD);
    // Another window, or a program from before, has added an answer.
    const more = new Seed(await deviceOf(page), "", "", Date.now(), LONG);
    await more.answer("dew-point", false).put(page);
    await page.says(READING);
    assert(!(await page.has("button", /^(Start with|Go on)/)));
    await letGo(page);
    await home(page);
    await page.until("the first screen to be kept", async () => (await kept(page)) === LONG + 2);
    // It was kept of nobody by name; somebody else is at work now.
    await takeIn(page, "a-07", "Ilya Roth");
    await handOver(page, "Ilya Roth");
    await goTo(page, "#/");
    await home(page);
    await page.until("their first screen", async () => JSON.parse(await stored(page, "state", "front")).person === "a-07");
    const state = JSON.parse(await stored(page, "state", "settings"));
    await page.driver.executeAsyncScript((settings, done) => {
      const opening = indexedDB.open("stepboard");
      opening.onsuccess = () => {
        const work = opening.result.transaction("state", "readwrite");
        work.objectStore("state").put(JSON.stringify(settings), "settings");
        work.oncomplete = () => { opening.result.close(); done(); };
      };
    }, { ...state, person: "" });
    await page.reload();
    await page.says(READING);
    await letGo(page);
    await home(page);
    await takeBack();
    // Nothing of somebody who was erased is kept.
    await handOver(page, "Ilya Roth");
    await goTo(page, "#/");
    await begin(page);
    await answer(page);
    await handIn(page);
    await page.until("their first screen", async () => (await kept(page)) === LONG + 3);
    await goTo(page, "#/people/a-07");
    await page.press("button", "Erase");
    await page.press("checkbox", "erase Ilya Roth");
    await page.press("button", "Erase");
    await page.until("them to be erased", async () => (await stored(page, "journal")).some((event) => event.includes('"erased"')));
    assert(!((await stored(page, "state", "front")) ?? "").includes("a-07"));
  }));
