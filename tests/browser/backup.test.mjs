// Everything on a tablet as one file: saved, put back on a tablet that knows nothing, and refused where it is not what it was.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { begin, home, read, recorded, verdict } from "./apprentice.mjs";
import { SIZES, journey } from "./harness.mjs";
import { SHOP, beginBook, fill, goTo, takeIn } from "./office.mjs";

/** As long as a hand takes from one control to the next, milliseconds. */
const BETWEEN_PRESSES = 500;

const EVERYTHING = `const done = arguments[arguments.length - 1];
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = async () => {
    const db = asked.result;
    const all = {};
    for (const name of db.objectStoreNames) {
      const store = db.transaction(name).objectStore(name);
      const get = (request) => new Promise((got) => { request.onsuccess = () => got(request.result); });
      const keys = await get(store.getAllKeys());
      const values = await get(store.getAll());
      all[name] = keys.map((key, nth) => [key, values[nth]]);
    }
    db.close();
    done(all);
  };`;

/** All values, the name of the tablet taken out of its settings. */
function nameless(all) {
  const [settings] = all.state.filter(([key]) => key === "settings");
  const { device, ...others } = JSON.parse(settings[1]);
  settings[1] = others;
  return { device, all };
}

async function pick(page, text) {
  const file = join(tmpdir(), `stepboard-backup-${process.pid}.json`);
  writeFileSync(file, text);
  await (await page.until("the field for the file", () => page.driver.findElement(By.id("backup-file")))).sendKeys(file);
}

test("a tablet is saved as one file, and another goes on where it stood", async () => {
  let text;
  let before;
  await journey("backup-from", SIZES[0], async (page) => {
    await home(page);
    await beginBook(page);
    await takeIn(page, "a-01", "Nora Ilse");
    await goTo(page, "#/");
    await begin(page);
    await page.press("button", "Not enough is told");
    await page.press("radio", /right .* times in/);
    await page.press("button", "Hand it in");
    await verdict(page);
    await read(page);
    await goTo(page, "#/menu");
    text = readFileSync(await page.save("Save all as a file"), "utf8");
    await page.says("Saved as stepboard-backup-");
    await page.shot("backup-saved");
    before = await page.driver.executeAsyncScript(EVERYTHING);
  });
  await journey("backup-to", SIZES[1], async (page) => {
    await home(page);
    await goTo(page, "#/menu");
    await pick(page, text.replace("answered", "answerod"));
    await page.says("Not taken, nothing has changed.");
    await pick(page, text);
    await page.says("This tablet holds nothing yet that would be lost.");
    await page.says("1 entry of the journal, 1 person");
    await page.press("button", "Put it back");
    await page.says("Tick first that all on this tablet is to be replaced.");
    await page.shot("backup-seen");
    await page.press("checkbox", "Replace all that is on this tablet");
    await page.press("button", "Put it back");
    await page.says("Put back: all that stood in the file is on this tablet now.");
    await page.shot("backup-put-back");
    await goTo(page, "#/people");
    await page.says(`Who may sign: ${SHOP.name}`);
    await page.says("Nora Ilse");
    const [was, is] = [before, await page.driver.executeAsyncScript(EVERYTHING)].map(nameless);
    assert.deepEqual(is.all, was.all, "every value is as it was");
    assert.notEqual(is.device, was.device, "the tablet goes by another name");
    await goTo(page, "#/record");
    assert.equal(await recorded(page), 1);
  });
});

test("a tablet with answers says what would be replaced", () =>
  journey("backup-over", SIZES[2], async (page) => {
    await home(page);
    await beginBook(page);
    await takeIn(page, "a-02", "Otis Brand");
    await goTo(page, "#/menu");
    const text = readFileSync(await page.save("Save all as a file"), "utf8");
    await pick(page, text);
    await page.says("All of it would be replaced.");
    await page.seen("backup-over");
    await page.press("checkbox", "Replace all that is on this tablet");
    if (await page.has("button", "Open my key")) {
      await page.says("only whoever may sign replaces what is on it");
      await fill(page, "unlock-passphrase", SHOP.first.passphrase);
      await page.press("button", "Open my key");
      await page.until("the key to open", async () => !(await page.has("button", "Open my key")));
    }
    const before = nameless(await page.driver.executeAsyncScript(EVERYTHING));
    // No hand is as quick: of a press right after another one WebKitGTK's driver gives the page its beginning alone.
    await page.driver.sleep(BETWEEN_PRESSES);
    await page.press("button", "Put it back");
    const after = await page.until("another name", async () => {
      const now = nameless(await page.driver.executeAsyncScript(EVERYTHING));
      return now.device !== before.device && now;
    });
    assert.deepEqual(after.all, before.all);
    await page.one("heading");
  }));
