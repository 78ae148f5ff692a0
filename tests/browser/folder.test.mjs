// The shop's folder: results go to a real WebDAV server that hangs behind the app's own, over a bad network, and another
// tablet takes them in.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { readIn } from "./crowd.mjs";
import { SIZES, open } from "./harness.mjs";
import { fill, goTo } from "./office.mjs";
import { Seed } from "./seed.mjs";
import { PASSWORD, Passing, USER, startShop } from "./shop_server.mjs";

const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;
const FILES = 50;
const FOLDER = "tablets";

/** Result files of tablets, by their names: each of one person, who answered one card. */
function results() {
  const text = (nth) => {
    const [device, id] = [String(nth).padStart(16, "0"), String(nth).padStart(2, "0")];
    const { events, number: journal } = new Seed(device, `a-${id}`).answer("wants-filler", nth % 3 > 0);
    const people = [{ journal, number: `p-${id}`, name: `Apprentice ${id}` }];
    const head = { format: "stepboard-results", version: 1, device, at: new Date().toISOString() };
    return `${JSON.stringify({ ...head, people, sheets: [], sets: [], events })}\n`;
  };
  return new Map(Array.from({ length: FILES }, (_, nth) => {
    const whole = text(nth);
    const hash = createHash("sha256").update(whole).digest("hex").slice(0, 32);
    return [`stepboard-results-${hash}.json`, whole];
  }));
}

/** Puts files on a shelf of the browser's database. */
const SHELVE = `const [shelf, files, done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const database = asked.result;
    const work = database.transaction(shelf, "readwrite");
    for (const [name, text] of files) work.objectStore(shelf).put(text, name);
    work.oncomplete = () => { database.close(); done(true); };
  };
  asked.onerror = () => done(false);`;

/** What lies on a shelf. */
const SHELF = `const [shelf, done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const database = asked.result;
    const store = database.transaction(shelf).objectStore(shelf);
    const [names, texts] = [store.getAllKeys(), store.getAll()];
    texts.onsuccess = () => { database.close(); done(names.result.map((name, nth) => [name, texts.result[nth]])); };
  };
  asked.onerror = () => done(null);`;

/** Takes every other file off the shelf of results, as a tablet that has lost some; how many. */
const LOSE = `const [done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const database = asked.result;
    const work = database.transaction("results", "readwrite");
    const names = work.objectStore("results").getAllKeys();
    let lost = [];
    names.onsuccess = () => {
      lost = names.result.filter((_, nth) => nth % 2 === 0);
      for (const name of lost) work.objectStore("results").delete(name);
    };
    work.oncomplete = () => { database.close(); done(lost.length); };
  };
  asked.onerror = () => done(0);`;

/** The crew page has everybody of the files, each with the one answer that they gave. */
async function assertCrew(page) {
  await goTo(page, "#/crew");
  const tablets = "return [...document.querySelectorAll('.import .tablets li .note')].map((one) => Number.parseInt(one.textContent, 10))";
  const answers = () => page.driver.executeScript(tablets);
  const sum = (counts) => counts.reduce((all, one) => all + one, 0);
  await page.until("an answer of every tablet", async () => sum(await answers()) >= FILES);
  assert.equal(sum(await answers()), FILES, "answers");
  await page.says(`1 to 12 of ${FILES}`);
  await page.says("Apprentice 00");
}

async function use(page, password = PASSWORD) {
  await fill(page, "folder-address", `/shop/${FOLDER}`);
  await fill(page, "folder-user", USER);
  await fill(page, "folder-password", password);
  await page.press("radio", "Until the window is closed");
}

/** Failed requests to the folder are what the test is about; anything else in the console is not. */
async function assertClean(page) {
  await page.listen();
  assert.deepEqual(page.elsewhere, [], "asked of other hosts");
  const other = page.problems.filter((problem) => !problem.includes("/shop/"));
  assert.deepEqual(other, [], "errors in the console");
}

const many = (page) => page.driver.executeAsyncScript(SHELF, "outbox").then((files) => files.length);

test("fifty files arrive once over a bad network, and another tablet takes them in", { timeout: 240_000 }, async () => {
  const shop = await startShop();
  const passing = new Passing(shop.port, ["lost", 423, "cut", 503, "lost", 403, 500, 429], 7);
  const files = results();
  const first = await open(PORTRAIT, { before: passing.before });
  let second;
  try {
    await first.one("heading");
    assert(await first.driver.executeAsyncScript(SHELVE, "outbox", [...files]), "laid into the outbox");
    await goTo(first, "#/folder");
    await first.reload();
    await first.says("Nothing is sent and nothing fetched.");
    await first.shot("folder-off");

    // What is wrong is said beside the field.
    await fill(first, "folder-address", "https://elsewhere.example/shop/");
    await first.press("button", "Use it and try the connection");
    await first.says("A path on the server of this app is allowed");
    await first.says("A user is needed");
    await first.assertAccessible("a folder with mistakes");
    await first.shot("folder-wrong");
    await use(first, "guessed");
    await first.press("button", "Use it and try the connection");
    await first.says("The server does not know this user or this password");
    await first.shot("folder-stopped");
    await use(first);
    await first.press("button", "Use it and try the connection");

    await first.until("some to arrive", async () => (await many(first)) < FILES - 12);
    await first.kept();
    await first.goOffline();
    await first.reload();
    await first.one("heading", "Shop folder");
    assert((await many(first)) > 0, "some are still to go");
    await first.goOnline(passing.before);
    await first.until("all to arrive", async () => {
      if (await first.has("button", "Try again")) await first.press("button", "Try again");
      return (await many(first)) === 0;
    }, 90_000);
    await first.says("All is there");
    await first.says(`${FILES} files arrived`);
    await first.assertFits("the folder");
    await first.assertAccessible("the folder");
    await first.shot("folder-done");

    const there = join(shop.folder, FOLDER);
    for (const [name, text] of files) assert.equal(readFileSync(join(there, name), "utf8"), text, name);
    assert.equal(readdirSync(there).filter((name) => name.endsWith(".json")).length, FILES + 1, "the files and the mark");
    assert(passing.made.size === FILES + 1 && [...passing.made.values()].every((times) => times === 1), "each was made once");
    assert.equal(passing.faults.length, 0, "all faults were done");
    await assertClean(first);

    second = await open(PHONE, { before: passing.before, path: "#/folder" });
    await second.says("Nothing is sent and nothing fetched.");
    await use(second);
    await second.press("checkbox", "Take in the results of other tablets");
    await second.press("button", "Use it and try the connection");
    await second.says(`${FILES} files of results of other tablets are here, 0 still to fetch`);
    assert.deepEqual(new Map(await second.driver.executeAsyncScript(SHELF, "results")), files);
    await second.assertFits("the folder on a phone");
    await second.assertAccessible("the folder on a phone");
    await second.shot("folder-came");
    await assertCrew(second);
    await second.assertFits("the crew of the folder");
    await second.shot("folder-crew");

    // What is fetched again, or read in by hand as well, is not doubled.
    assert.equal(await second.driver.executeAsyncScript(LOSE), FILES / 2);
    await goTo(second, "#/folder");
    await second.reload();
    await second.says(`${FILES / 2} files of results of other tablets are here`);
    await second.press("button", "Send and look now");
    await second.says(`${FILES} files of results of other tablets are here, 0 still to fetch`);
    assert.deepEqual(new Map(await second.driver.executeAsyncScript(SHELF, "results")), files);
    await assertCrew(second);
    await readIn(second, [...files.keys()].map((name) => join(there, name)));
    await second.says(`${FILES} files taken in, with 0 new answers`);
    await assertCrew(second);
    await assertClean(second);
  } catch (error) {
    await (second ?? first).shot("folder-failed").catch(() => {});
    throw error;
  } finally {
    await first.stop();
    await second?.stop();
    shop.stop();
  }
});
