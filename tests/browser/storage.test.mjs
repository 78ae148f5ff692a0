// A tablet that does not store: refused, given up, taken over by a newer program, or with something in it that nobody can read.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answer, begin, handIn, next, recorded, verdict } from "./apprentice.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { deviceOf, fill, goTo, stored, takeIn } from "./office.mjs";
import { ask, begin as beginWalk, right, stored as walks } from "./walker.mjs";

const NOT_SAVED = "The answer is still here, but this tablet did not store it.";

/** Widest bar to scroll by of the engines, px. */
const SCROLLBAR = 20;

/** As a browser does whose storage is full: the whole transaction is given up, after each part of it went well. */
const FULL = `const { add, put } = IDBObjectStore.prototype;
  window.room = () => Object.assign(IDBObjectStore.prototype, { add, put });
  for (const [name, how] of Object.entries({ add, put })) {
    IDBObjectStore.prototype[name] = function (...what) {
      const request = how.apply(this, what);
      request.addEventListener("success", () => this.transaction.abort());
      return request;
    };
  }`;

/** What else was asked in a transaction that was given up is answered to nobody, and the browser says so. */
async function dropped(page) {
  await page.listen();
  page.problems = page.problems.filter((problem) => !problem.includes("after being dropped"));
}

/** Answers the card on the desk. */
async function answerOne(page) {
  await answer(page);
  return handIn(page);
}

testWith("before", "where storage is refused it opens, says that nothing is saved, and offers a copy", () =>
  journey("storage-refused", SIZES[0], async (page) => {
    await page.browser.before("IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); };");
    await page.reload();
    await begin(page);
    await answerOne(page);
    await page.says(NOT_SAVED);
    assert(await page.has("button", "Save a copy"));
    await page.seen("not-saved");
    const wide = await page.driver.executeScript("return [document.querySelector('main').clientWidth, innerWidth]");
    assert(wide[0] > wide[1] - SCROLLBAR, `what is told above a screen leaves it ${wide[0]} of ${wide[1]} px`);
  }));

test("where the browser gives up storing it the answer stays on the screen, and is stored once there is room", () =>
  journey("storage-full", SIZES[0], async (page) => {
    await begin(page);
    await answerOne(page);
    await page.says("Saved on this tablet");
    await next(page);
    await page.driver.executeScript(FULL);
    const heading = await answerOne(page);
    await page.says(NOT_SAVED);
    assert.equal(await verdict(page), heading);
    assert.equal((await stored(page, "journal")).length, 1);
    await page.press("button", "Try again");
    await page.says(NOT_SAVED);
    await page.driver.executeScript("window.room()");
    await page.press("button", "Try again");
    await page.says("Saved on this tablet");
    assert.equal((await stored(page, "journal")).length, 2);
    await page.reload();
    assert.equal(await verdict(page), heading);
    await dropped(page);
  }));

test("a decision of a walk that finds no room is told as not saved, and is stored once there is", () =>
  journey("storage-full-walk", SIZES[0], async (page) => {
    await beginWalk(page, "A plain plate", "Guided");
    const [decision] = right((await walks(page))[0]);
    await page.driver.executeScript(FULL);
    await ask(page, decision);
    await page.says("Not saved. The walk is still here");
    assert.deepEqual((await walks(page))[0].decisions, []);
    await page.press("button", "Try again");
    await page.says("Not saved. The walk is still here");
    await page.driver.executeScript("window.room()");
    await page.press("button", "Try again");
    await page.until("the decision to be stored", async () => (await walks(page))[0].decisions.length === 1);
    assert.deepEqual((await walks(page))[0].decisions, [decision]);
    await dropped(page);
  }));

test("a person for whom there is no room is not taken in, and that is said", () =>
  journey("storage-full-person", SIZES[0], async (page) => {
    await takeIn(page, "a-01", "Nora Ilse");
    await page.driver.executeScript(FULL);
    await fill(page, "new-number", "a-02");
    await fill(page, "new-name", "Tom Ruiz");
    await page.press("button", "Take in");
    await page.says("Not saved: this tablet did not store it");
    assert(!(await page.text()).includes("Tom Ruiz is taken in"));
    await page.driver.executeScript("window.room()");
    await page.reload();
    await page.says("Nora Ilse");
    assert(!(await page.text()).includes("Tom Ruiz"), "somebody is there who was not stored");
    await takeIn(page, "a-02", "Tom Ruiz");
    await dropped(page);
  }));

test("what is stored is asked to be on the disk before it counts as stored", () =>
  journey("storage-strict", SIZES[0], async (page) => {
    await page.driver.executeScript(`window.asked = [];
      const { transaction } = IDBDatabase.prototype;
      IDBDatabase.prototype.transaction = function (...what) {
        const opened = transaction.apply(this, what);
        window.asked.push([opened.mode, opened.durability]);
        return opened;
      };`);
    await begin(page);
    await answerOne(page);
    await page.says("Saved on this tablet");
    const asked = await page.driver.executeScript("return window.asked");
    const written = asked.filter(([mode]) => mode === "readwrite").map(([, durability]) => durability);
    assert(written.length > 0);
    assert.deepEqual(written.filter((durability) => durability !== "strict"), []);
  }));

test("a newer program in another window is not kept waiting, and this one says that it stores no more", () =>
  journey("storage-newer", SIZES[0], async (page) => {
    await begin(page);
    const opened = await page.driver.executeAsyncScript(`const done = arguments[0];
      indexedDB.databases().then(([{ name, version }]) => {
        const asked = indexedDB.open(name, version + 1);
        asked.onblocked = () => done("kept waiting");
        asked.onerror = () => done(String(asked.error));
        asked.onsuccess = () => { asked.result.close(); done("opened"); };
      });`);
    assert.equal(opened, "opened");
    await answerOne(page);
    await page.says(NOT_SAVED);
  }));

test("an entry that cannot be read is set aside and told, and the rest is there", () =>
  journey("storage-spoilt", SIZES[0], async (page) => {
    await begin(page);
    for (let done = 0; done < 3; done += 1) {
      await answerOne(page);
      await page.says("Saved on this tablet");
      await next(page);
    }
    await page.driver.executeAsyncScript(`const done = arguments[0];
      const asked = indexedDB.open("stepboard");
      asked.onsuccess = () => {
        const work = asked.result.transaction(["journal", "state"], "readwrite");
        work.objectStore("journal").put('{"event":"answered","sequence":2', 2);
        work.objectStore("state").put("{", "draft");
        work.oncomplete = () => { asked.result.close(); done(); };
      };`);
    await goTo(page, "#/record");
    await page.reload();
    assert.equal(await recorded(page), 2);
    await page.says("1 stored entry cannot be read by this version of the program. Nothing is lost");
    await page.assertAccessible("the record with an entry that cannot be read");
    await page.shot("set-aside");
    // What comes next gets a number of its own, and what cannot be read stays as it is.
    await goTo(page, "#/");
    await begin(page);
    await answerOne(page);
    await page.says("Saved on this tablet");
    const entries = await stored(page, "journal");
    assert.equal(entries.length, 4);
    assert.equal(entries[1], '{"event":"answered","sequence":2');
  }));

/** Puts a value into the state as another program would have left it. */
const LEAVE = `const [key, text, done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const work = asked.result.transaction("state", "readwrite");
    work.objectStore("state").put(text, key);
    work.oncomplete = () => { asked.result.close(); done(); };
  };`;

test("settings of a later program keep the tablet's name", () =>
  journey("storage-later-settings", SIZES[0], async (page) => {
    await begin(page);
    const before = JSON.parse(await stored(page, "state", "settings"));
    await page.driver.executeAsyncScript(LEAVE, "settings", JSON.stringify({ ...before, light: "candle", units: { later: true }, left_hand: true }));
    await page.reload();
    await answerOne(page);
    await page.says("Saved on this tablet");
    const [answered] = (await stored(page, "journal")).map((text) => JSON.parse(text));
    assert.equal(answered.device, before.device);
    assert.equal(await deviceOf(page), before.device);
  }));

testWith("before", "what cannot be read is not taken for nothing: nothing is stored over it", () =>
  journey("storage-unread", SIZES[0], async (page) => {
    await begin(page);
    await answerOne(page);
    await page.says("Saved on this tablet");
    await next(page);
    const before = [await stored(page, "state", "settings"), await stored(page, "journal")];
    // As a database does that is damaged on the disk.
    await page.browser.before("const get = IDBObjectStore.prototype.get; IDBObjectStore.prototype.get = function (key) { if (key === 'settings' && !window.mended) throw new DOMException('damaged', 'UnknownError'); return get.call(this, key); };");
    await page.reload();
    await answerOne(page);
    await page.says(NOT_SAVED);
    await page.driver.executeScript("window.mended = true");
    assert.deepEqual([await stored(page, "state", "settings"), await stored(page, "journal")], before);
  }));

test("a walk, a set and a sheet that cannot be read are told, and stay", () =>
  journey("storage-spoilt-files", SIZES[0], async (page) => {
    await page.one("heading");
    await page.driver.executeAsyncScript(`const done = arguments[0];
      const asked = indexedDB.open("stepboard");
      asked.onsuccess = () => {
        const shelves = ["walks", "sets", "sheets"];
        const work = asked.result.transaction(shelves, "readwrite");
        for (const shelf of shelves) work.objectStore(shelf).put("{", "spoilt");
        work.oncomplete = () => { asked.result.close(); done(); };
      };`);
    await page.reload();
    for (const [screen, shelf] of [["#/walk", "walks"], ["#/sets", "sets"], ["#/sheet", "sheets"]]) {
      await goTo(page, screen);
      await page.says("1 stored file cannot be read by this version of the program. It stays where it is");
      await page.assertAccessible(`${shelf} with a file that cannot be read`);
      assert.equal((await stored(page, shelf)).length, 1);
    }
    await page.shot("spoilt-files");
  }));

for (const [answer, told] of [[true, "This browser keeps the answers until they are deleted."], [false, "This browser may delete the answers when space runs short."]]) {
  testWith("before", `the browser is asked to keep what is stored once something is, and what it says is shown: ${answer}`, () =>
    journey(`storage-kept-${answer}`, SIZES[0], async (page) => {
      await page.browser.before(`window.asked = 0; navigator.storage.persist = () => { window.asked += 1; return Promise.resolve(${answer}); };`);
      await page.reload();
      const asked = () => page.driver.executeScript("return window.asked");
      await begin(page);
      assert.equal(await asked(), 0, "before anything is stored");
      await answerOne(page);
      await page.says("Saved on this tablet");
      await page.until("the question", async () => (await asked()) === 1);
      await goTo(page, "#/menu");
      await page.says(told);
    }));
}
