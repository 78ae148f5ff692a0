// A file handed out without a server: picked, shown, taken; as a link and a square code; the link opened on a fresh profile,
// without a network too. What is damaged or is none of ours is refused with its reason.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, test } from "node:test";
import { home } from "./apprentice.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { read } from "./link.mjs";
import { goTo } from "./office.mjs";
import { fits, folder, pick } from "./papers.mjs";

const TABLET = SIZES[0];
const files = folder();
after(files.done);

/** A set as a file, on a sheet of that hash. */
const set = (hash) => JSON.stringify({
  format: "stepboard-set", version: 1, title: "Monday, spray side", note: "Ask if the gun spits.", by: "Ines 12",
  at: "2026-03-12T08:00:00Z", sheet: { ships: { slug: "nitrocellulose", hash } },
  task: { count: 3, stages: ["clear"], purpose: "practise" },
});

/** An answer of Bo, and its number on his tablet. */
const answered = (sequence) => ({
  event: "answered", format: 4, sequence, device: "t-bo", at: "2026-03-12T08:00:00Z", date: "2026-03-12", person: "17",
  family: "wants-filler", version: 2, seed: sequence, sheet: { slug: "nitrocellulose", hash: "00" },
  answer: { terms: ["koa"] }, certainty: "test-board", mark: "wrong", guess: 0.25, active_seconds: 31, help: "none",
});

/** Picks the set, whose sheet is named by a wrong hash first: the refusal tells the right one. */
async function pickSet(page) {
  await pick(page, "file", files.put("other-sheet.json", set("00")));
  await page.says("This cannot be taken");
  const said = await page.text();
  const [, hash] = said.match(/has the values ([0-9a-f]+) here/) ?? assert.fail(said);
  await pick(page, "file", files.put("set.json", set(hash)));
  await page.says("Monday, spray side");
  return hash;
}

const link = (page) => page.driver.executeScript("return document.getElementById('hand-out-link').value");

for (const size of SIZES) {
  test(`a file is shown before it is taken, and handed on as a link (${size.name})`, () =>
    journey("open", size, async (page) => {
      await page.one("heading", "Open a file or link");
      await page.shot("open-empty");
      await pickSet(page);
      await page.says("Ask if the gun spits.");
      await fits(page, "a set that is shown");
      await page.assertAccessible("a set that is shown");
      await page.shot("open-set");
      await page.press("button", "Take it");
      await page.says("Taken.");
      await page.driver.executeScript("document.querySelector('.hand-on').open = true");
      await page.one("img", "Square code of the link");
      await fits(page, "a set that is handed on");
      await page.assertAccessible("a set that is handed on");
      await page.shot("hand-on");
      assert.match(await link(page), /^http:.*#\/take\/[\w-]+$/);
    }, { path: "#/open" }));
}

test("a link that was handed out is opened on a fresh profile without a network, shown, taken and begun", async () => {
  let handed;
  await journey("hand-out", TABLET, async (page) => {
    await pickSet(page);
    await page.driver.executeScript("document.querySelector('.hand-on').open = true");
    handed = await link(page);
    const saved = await page.save("Save the file");
    assert.equal(JSON.parse(readFileSync(saved, "utf8")).title, "Monday, spray side");
  }, { path: "#/open" });
  const code = handed.split("#/take/")[1];
  assert.equal(JSON.parse(read(code)).note, "Ask if the gun spits.");
  await journey("hand-out-taken", TABLET, async (page) => {
    await home(page);
    await page.until("the app is kept for later", () =>
      page.driver.executeScript("return navigator.serviceWorker.ready.then(() => Boolean(navigator.serviceWorker.controller))"),
    );
    await page.goOffline();
    await goTo(page, `#/take/${code}`);
    await page.says("Monday, spray side");
    assert(!(await page.text()).includes("Taken."), "nothing is taken before one says so");
    await page.press("button", "Take it");
    await page.says("Taken.");
    await goTo(page, "#/");
    await page.one("heading", "Step board");
    await goTo(page, `#/take/${code}`);
    await page.says("This one is here already.");
    await page.press("button", "Take it");
    await page.says("You have this one already.");
    await page.press("link", "Go to the set");
    await page.says("Monday, spray side");
  });
});

/** How often something lies on a shelf of the database. */
const shelved = (page, shelf) => page.driver.executeAsyncScript(
  "const [shelf, done] = arguments; const open = indexedDB.open('stepboard'); open.onsuccess = () => {" +
    "const all = open.result.transaction(shelf).objectStore(shelf).getAll(); all.onsuccess = () => done(all.result.length) }",
  shelf,
);

/** Words of readers of JSON, base64 and packed text: nothing of theirs is told. */
const DECODER = /EOF|expected ident|base64|checksum|UTF-8|byte offset|deflate/;

async function refused(page, reason) {
  await page.says("This cannot be taken");
  await page.says(reason);
  assert(!DECODER.test(await page.text()), await page.text());
}

test("what is damaged or none of ours is refused in plain words, and nothing changes", () =>
  journey("refused", TABLET, async (page) => {
    await pickSet(page);
    await page.driver.executeScript("document.querySelector('.hand-on').open = true");
    const whole = await link(page);
    const code = whole.split("#/take/")[1];
    const damaged = `${code.slice(0, 20)}${code[20] === "A" ? "B" : "A"}${code.slice(21)}`;
    const changed = /not as it was handed out|cut short/;
    for (const [address, reason] of [[damaged, changed], [code.slice(0, -5), "cut short"], ["*A", "character 1"]]) {
      await goTo(page, `#/take/${address}`);
      await refused(page, reason);
    }
    await page.shot("open-refused");
    await page.press("link", "Paste another link, or pick a file");
    const pasted = [
      ["", "no link yet"],
      ["https://shop.example/prices?list=3", "leads somewhere else"],
      ["Bring the gun on Monday", "no link of this app"],
      [whole.slice(0, -9), "cut short"],
      [whole.replace(code, `${code.slice(0, 9)}+${code.slice(9)}`), "character 10"],
    ];
    for (const [text, reason] of pasted) {
      await page.type("Or paste a link", text);
      await page.press("button", "Look at it");
      await refused(page, reason);
    }
    await page.shot("open-refused-pasted");
    // A message with a link in it will do.
    await page.type("Or paste a link", `For Monday: ${whole}. Ask if the gun spits.`);
    await page.press("button", "Look at it");
    await page.one("button", "Take it");
    const others = [
      ['{"format":"holiday","version":1}', "holiday"],
      ["not json", "none of the files that can be opened here"],
      [set("00").slice(0, 80), "cut short"],
      [set("00").replace(":", ";"), "damaged from here on"],
      ['{"format":"stepboard-set","version":9}', "version 9"],
      [set("00").replace("Monday", "Mon\\u202eday"), "title"],
    ];
    for (const [text, reason] of others) {
      await pick(page, "file", files.put("other.json", text));
      await refused(page, reason);
    }
    for (const shelf of ["sheets", "sets", "results"]) assert.equal(await shelved(page, shelf), 0, shelf);
  }, { path: "#/open" }));

/** Results of one tablet: Bo, who took the tablet over. */
const results = (events = 1) => JSON.stringify({
  format: "stepboard-results", version: 1, device: "t-bo", at: "2026-03-12T08:00:00Z",
  people: [{ journal: "17", number: "17", name: "Bo" }], sheets: [], sets: [],
  events: Array.from({ length: events }, (_, nth) => answered(nth + 1)),
});

for (const size of SIZES) {
  test(`results are taken in where they are opened, and stand on the crew page (${size.name})`, () =>
    journey("open-results", size, async (page) => {
      await pick(page, "file", files.put("results.json", results()));
      await page.says("From a tablet with 1 person: Bo (17).");
      await page.says("1 entry: answers");
      assert.equal(await shelved(page, "results"), 0, "nothing is taken before one says so");
      await fits(page, "results that are shown");
      await page.assertAccessible("results that are shown");
      await page.shot("open-results");
      await page.press("button", "Take them in");
      await page.says("1 new answer");
      assert.equal(await shelved(page, "results"), 1);
      await page.shot("open-results-taken");
      // Picked again it is asked about anew, and counts once; what cannot be read is told by its place.
      await pick(page, "file", files.put("results-again.json", results(2)));
      await page.press("button", "Take them in");
      await page.says("1 new answer and 0 other entries taken in; 1 was known.");
      await pick(page, "file", files.put("bad.json", results(3).replace('"sequence":3', '"sequence":2')));
      await page.press("button", "Take them in");
      await page.says("events.3.sequence");
      assert(!(await page.has("link", "To the crew")), "nothing of it was taken");
      await pick(page, "file", files.put("results-again.json", results(2)));
      await page.press("button", "Take them in");
      await page.says("Nothing new");
      await page.press("link", "To the crew");
      await page.touch(await page.one("link", /^Bo\s*17$/));
      await page.says("2 answers");
    }, { path: "#/open" }));
}

/** The sheet of a device, as a stub: it takes links and plain text, keeps what it got, and refuses by name where it is told to. */
const SHEET = `
  window.shared = [];
  const stub = (name, value) => Object.defineProperty(Navigator.prototype, name, { configurable: true, value });
  stub("canShare", ({ files = [] }) => files.every(({ name, type }) => name.endsWith(".txt") && type === "text/plain"));
  stub("share", async ({ title, url, files = [] }) => {
    if (window.refuse) throw new DOMException("", window.refuse);
    const read = async (file) => ({ name: file.name, type: file.type, text: await file.text() });
    window.shared.push({ title, url, files: await Promise.all(files.map(read)) });
  });`;

testWith("before", "the sheet of the device gets the link or the file as it is saved, and is not offered where there is none", () =>
  journey("share", TABLET, async (page) => {
    const open = async () => {
      await pickSet(page);
      await page.driver.executeScript("document.querySelector('.hand-on').open = true");
      await page.one("button", "Save the file");
    };
    await open();
    assert(!(await page.has("button", /^Share/)), "no sheet, no button");
    await page.browser.before(SHEET);
    await page.reload();
    await open();
    const saved = await page.save("Save the file");
    const text = readFileSync(saved, "utf8");
    const shared = () => page.driver.executeScript("return window.shared");
    const sharedAfter = (count) => page.until(`${count} shared`, async () => {
      const all = await shared();
      return all.length === count && all.at(-1);
    });
    await page.press("button", "Share the link");
    assert.deepEqual(await sharedAfter(1), { title: "Monday, spray side", url: await link(page), files: [] });
    await page.press("button", "Share the file");
    const { title, files: [file] } = await sharedAfter(2);
    assert.deepEqual([title, file.type, file.text], ["Monday, spray side", "text/plain", text]);
    assert.equal(file.name, "stepboard-set-Monday-spray-side.json.txt");
    assert(saved.endsWith(`/${file.name.replace(/\.txt$/, "")}`), saved);
    // A file that came so is taken again.
    const accepted = await page.driver.executeScript("return document.getElementById('file').accept");
    assert(accepted.split(",").includes(".txt"));
    await pick(page, "file", files.put(file.name, file.text));
    await page.says(file.name);
    await page.one("button", "Take it");
    await page.driver.executeScript("document.querySelector('.hand-on').open = true");

    const told = () => page.driver.executeScript("return document.querySelector('.hand-out [role=status]').textContent");
    const refuse = (name) => page.driver.executeScript("window.refuse = arguments[0]", name);
    for (const [what, instead] of [["link", "Copy the link instead"], ["file", "Save the file instead"]]) {
      await refuse("NotAllowedError");
      await page.press("button", `Share the ${what}`);
      await page.says(instead);
      await page.shot(`share-${what}-refused`);
      // Closing the sheet is no mistake: what was said before goes, and nothing is said of it.
      await refuse("AbortError");
      await page.press("button", `Share the ${what}`);
      await page.until("nothing to be said", async () => (await told()) === "");
    }
    assert.equal((await shared()).length, 2);
  }, { path: "#/open" }));
