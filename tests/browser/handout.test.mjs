// A file handed out without a server: picked, shown, taken; as a link and a square code; the link opened on a fresh profile,
// without a network too. What is damaged or is none of ours is refused with its reason.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, test } from "node:test";
import { SIZES, journey } from "./harness.mjs";
import { read } from "./link.mjs";
import { goTo } from "./office.mjs";
import { fits, folder, pick, saver } from "./papers.mjs";

const TABLET = SIZES[0];
const files = folder();
after(files.done);

/** A set as a file, on a sheet of that hash. */
const set = (hash) => JSON.stringify({
  format: "stepboard-set", version: 1, title: "Monday, spray side", note: "Ask if the gun spits.", by: "Ines 12",
  at: "2026-03-12T08:00:00Z", sheet: { ships: { slug: "nitrocellulose", hash } },
  task: { count: 3, stages: ["clear"], purpose: "practise" },
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
    const saving = await saver(page);
    const saved = await saving.save("Save the file");
    assert.equal(JSON.parse(readFileSync(saved, "utf8")).title, "Monday, spray side");
    saving.done();
  }, { path: "#/open" });
  const code = handed.split("#/take/")[1];
  assert.equal(JSON.parse(read(code)).note, "Ask if the gun spits.");
  await journey("hand-out-taken", TABLET, async (page) => {
    await page.one("button", /^(Start with|Go on at card)/);
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
    await goTo(page, `#/take/${code}`);
    await page.says("This one is here already.");
    await page.press("button", "Take it");
    await page.says("You have this one already.");
    await page.press("link", "Go to the set");
    await page.says("Monday, spray side");
  });
});

test("what is damaged or none of ours is refused with its reason, and nothing changes", () =>
  journey("refused", TABLET, async (page) => {
    await pickSet(page);
    await page.driver.executeScript("document.querySelector('.hand-on').open = true");
    const code = (await link(page)).split("#/take/")[1];
    const damaged = `${code.slice(0, 20)}${code[20] === "A" ? "B" : "A"}${code.slice(21)}`;
    for (const [address, reason] of [[damaged, "checksum"], [code.slice(0, -5), /checksum|copy the whole link once more/], ["!!", "character 1"]]) {
      await goTo(page, `#/take/${address}`);
      await page.says("This cannot be taken");
      await page.says(reason);
    }
    await page.shot("open-refused");
    await goTo(page, "#/open");
    const others = [
      ['{"format":"holiday","version":1}', "holiday"],
      ["not json", "Line 1"],
      ['{"format":"stepboard-set","version":9}', "version 9"],
      [set("00").replace("Monday", "Mon\\u202eday"), "title"],
    ];
    for (const [text, reason] of others) {
      await pick(page, "file", files.put("other.json", text));
      await page.says("This cannot be taken");
      await page.says(reason);
    }
    const shelved = await page.driver.executeAsyncScript(
      "const done = arguments[arguments.length - 1]; const open = indexedDB.open('stepboard'); open.onsuccess = () => {" +
        "const all = open.result.transaction('sets').objectStore('sets').getAll(); all.onsuccess = () => done(all.result.length) }",
    );
    assert.equal(shelved, 0);
  }, { path: "#/open" }));
