// Who works on a tablet and who may sign: taken in, kept apart by a PIN, erased; a shop's book begun, keys opened, ended.
//
// What is asked of a passphrase is NIST SP 800-63B-4 (2025) section 3.1.1.2: 15 characters at least, pasting allowed.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { SIZES, journey } from "./harness.mjs";
import { SHOP, beginBook, deviceOf, fill, goTo, handOver, stored, takeIn, unlock } from "./office.mjs";
import { pick } from "./papers.mjs";
import { Seed } from "./seed.mjs";

const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;

test("apprentices are taken in by number, one has a PIN, one is erased", { timeout: 240_000 }, () =>
  journey("people-crew", PHONE, async (page) => {
    await goTo(page, "#/");
    await page.until("the name that is asked for in view", () => page.inView("#name"));
    await page.shot("people-home");
    await goTo(page, "#/people");
    await fill(page, "new-number", "A 07");
    await fill(page, "new-name", "Mara Okafor");
    await page.press("button", "Take in");
    await page.says("1 to 16 characters; allowed are small letters");
    await takeIn(page, "a-07", "Mara Okafor");
    await fill(page, "new-number", "a-07");
    await fill(page, "new-name", "Jon Vetter");
    await page.press("button", "Take in");
    await page.says("Somebody here has this number already");
    await takeIn(page, "a-08", "Jon Vetter");
    await page.assertFits("people");
    await page.assertAccessible("people");
    await page.shot("people-crew");
    // However many are there already.
    await page.reload();
    await page.until("the name of a newcomer in view", () => page.inView("#new-name"));
    await page.says("What is signed for somebody names the number alone.");

    await page.press("link", "Mara Okafor");
    await fill(page, "person-pin", "12");
    await page.press("button", "Set the PIN");
    await page.says("A PIN has 4 to 8 digits");
    await fill(page, "person-pin", "4711");
    await page.press("button", "Set the PIN");
    await page.says("Saved on this tablet.");
    await page.assertAccessible("a person");
    await page.shot("people-person");

    await goTo(page, "#/people");
    await page.press("button", "Hand the tablet over");
    await page.press("button", "Mara Okafor");
    await fill(page, "who-pin", "4712");
    await page.press("button", "That is me");
    await page.says("That is not the PIN");
    await page.assertAccessible("who works");
    await page.shot("people-who");
    await fill(page, "who-pin", "4711");
    await page.press("button", "That is me");
    await page.until("the tablet to open", async () => !(await page.has("heading", "Who works now?")));
    await goTo(page, "#/");
    await page.says("Mara Okafor");
    // Loaded anew it asks for the PIN again: loading is no way round it.
    await page.reload();
    await page.one("heading", "Who works now?");
    // Neither is it one round the wait that wrong ones bring with them.
    await page.press("button", "Mara Okafor");
    for (let wrong = 1; wrong <= 4; wrong += 1) {
      await page.until("the next try", async () => (await page.one("button", "That is me")).isEnabled());
      await fill(page, "who-pin", "4712");
      await page.press("button", "That is me");
      await page.says("That is not the PIN");
    }
    await page.says("The next try waits");
    await page.reload();
    await page.press("button", "Mara Okafor");
    await page.says("The next try waits");
    assert(!(await (await page.one("button", "That is me")).isEnabled()), "loading the page anew ends the wait");
    await page.until("the wait to be over", async () => (await page.one("button", "That is me")).isEnabled());
    await page.press("button", "Jon Vetter");
    await page.says("Jon Vetter");

    await new Seed(await deviceOf(page), "a-07", { number: "i-01", name: "Ruth Abel" }).watched("air-read", [2, 1]).put(page);
    assert(JSON.stringify(await stored(page, "journal")).includes("a-07"), "nothing is there to be erased");
    await goTo(page, "#/people/a-07");
    await page.press("button", "Erase");
    await page.says("Tick the box first.");
    await page.press("checkbox", "erase Mara Okafor");
    await page.press("button", "Erase");
    await page.until("the list", async () => (await page.driver.getCurrentUrl()).endsWith("#/people"));
    assert(!(await page.text()).includes("Mara Okafor"), "an erased person is still shown");
    await page.reload();
    await page.says("Jon Vetter");
    assert(!(await page.text()).includes("Mara Okafor"), "an erased person is stored");
    const left = JSON.stringify([await stored(page, "journal"), await stored(page, "state")]);
    for (const word of ["a-07", "Mara"]) assert(!left.includes(word), `${word} is still stored`);
    assert(left.includes("erased"), "nothing says that something was erased");
  }));

test("a shop's book is begun, a key opened and locked, somebody added, a key replaced and one ended", { timeout: 300_000 }, () =>
  journey("people-book", LANDSCAPE, async (page) => {
    await goTo(page, "#/people");
    await fill(page, "begin-shop", SHOP.name);
    await fill(page, "begin-number", SHOP.first.number);
    await fill(page, "begin-name", SHOP.first.name);
    await fill(page, "begin-own", "short");
    await fill(page, "begin-own-again", "short");
    await page.press("button", "Begin the book");
    await page.says("The passphrase is too short");
    await page.shot("people-begin");
    await beginBook(page);
    await page.says("The book is begun and stored on this tablet");
    await page.assertAccessible("who may sign");
    await page.shot("people-signers");

    await fill(page, "unlock-passphrase", "not the passphrase at all");
    await page.press("button", "Open my key");
    await page.says("This passphrase does not open the key.");
    await unlock(page);
    await page.press("button", "Lock");
    await page.one("button", "Open my key");
    await unlock(page);
    // An open key is not stored: loaded anew it is locked, and the book is still there.
    await page.reload();
    await page.one("button", "Open my key");
    await page.says(`Who may sign: ${SHOP.name}`);

    await takeIn(page, "a-07", "Mara Okafor");
    await handOver(page, "Mara Okafor");
    await goTo(page, "#/people");
    await unlock(page);
    await goTo(page, "#/check");
    await page.press("checkbox", "Wood made ready");
    await page.press("checkbox", "Ruth Abel sits beside");
    await page.press("button", "Begin");
    await page.says("no verdict yet");
    await page.until("both events to be stored", async () => (await stored(page, "journal")).length === 2);
    const [opened, beside] = (await stored(page, "journal")).map((event) => JSON.parse(event).step);
    assert(opened.opened && beside.supervised.by.number === SHOP.first.number, JSON.stringify(beside));
    await goTo(page, "#/people");

    await page.press("button", "Add somebody who may sign");
    await fill(page, "signer-number", "s-02");
    await fill(page, "signer-name", "Theo Brandt");
    for (const id of ["signer-own", "signer-own-again"]) await fill(page, id, "eleven blue kettles on the sill");
    await fill(page, "signer-root", "the wrong root passphrase");
    await page.press("button", /^Add$/);
    await page.says("This passphrase does not open the key.");
    for (const id of ["signer-own", "signer-own-again"]) await fill(page, id, "eleven blue kettles on the sill");
    await fill(page, "signer-root", SHOP.root);
    await page.press("button", /^Add$/);
    await page.says("Theo Brandt (s-02)");
    await page.says("Trust list 2");

    const rows = async () => (await page.driver.findElements(By.css(".signer"))).length;
    assert.equal(await rows(), 2);
    await page.touch((await page.all("button", "New key"))[1]);
    await page.says("A new key for Theo Brandt (s-02)");
    for (const id of ["signer-own", "signer-own-again"]) await fill(page, id, "twelve red kettles on the sill");
    await fill(page, "signer-root", SHOP.root);
    await page.press("button", "Make the new key");
    await page.says("Trust list 3");
    assert.equal(await rows(), 3, "the key that ended stays on the list");
    await page.touch((await page.all("button", "End this key"))[1]);
    await page.says("End the key of Theo Brandt (s-02)");
    await page.shot("people-end");
    await fill(page, "signer-root", SHOP.root);
    await page.touch((await page.all("button", "End this key")).at(-1));
    await page.says("Trust list 4");
    assert.equal((await page.all("radio", "Theo Brandt")).length, 0, "a key that has ended can be opened to sign");
    await page.assertFits("who may sign");
  }));

test("two windows do not write two books", { timeout: 240_000 }, () =>
  journey("people-two", PORTRAIT, async (page) => {
    await takeIn(page, "a-07", "Mara Okafor");
    const first = await page.driver.getWindowHandle();
    await page.driver.switchTo().newWindow("tab");
    await page.driver.get(`${page.address}#/people`);
    const second = await page.driver.getWindowHandle();
    await page.one("heading", "Begin the sign-off book");
    await page.driver.switchTo().window(first);
    await beginBook(page);
    await page.driver.switchTo().window(second);
    await beginBook(page, { ...SHOP, name: "Another shop" }, SHOP.name);
    assert(!(await page.text()).includes("Another shop"), "a second book took the place of the first");
    await handOver(page, "Mara Okafor");
    await page.driver.close();
    await page.driver.switchTo().window(first);
    // The keys of the first window are still there, and open what they opened.
    await page.reload();
    await goTo(page, "#/people");
    await unlock(page);
    assert.equal(JSON.parse(await stored(page, "state", "keys")).length, 2);
  }));

test("a book and a key are brought to another tablet, and no other book takes their place", { timeout: 300_000 }, () =>
  journey("people-bring", PORTRAIT, async (page) => {
    const folder = mkdtempSync(join(tmpdir(), "stepboard-"));
    const file = (name, text) => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };
    await beginBook(page);
    const book = (await stored(page, "book")).map((record) => `${record}\n`).join("");
    const [own] = JSON.parse(await stored(page, "state", "keys"));
    const first = { book: file("book.jsonl", book), key: file("key.json", own) };
    const broken = file("broken.jsonl", book.replace(SHOP.name, "Lindmoor Lutherei"));

    await journey("people-brought", PHONE, async (other) => {
      await goTo(other, "#/people");
      await pick(other, "bring-book", broken);
      await other.says("Record 1:");
      await pick(other, "bring-book", first.key);
      await other.says("Record 1:");
      await pick(other, "bring-book", first.book);
      await other.says("every one of them fits");
      await other.assertAccessible("a book that is brought");
      await other.assertFits("a book that is brought");
      await other.shot("people-bring");
      await other.press("button", "Take this book");
      await other.says(`Who may sign: ${SHOP.name}`);
      await pick(other, "bring-key", first.book);
      await other.says("This is no key file");
      await pick(other, "bring-key", first.key);
      await other.says("is on this tablet now");
      await unlock(other);
      await other.reload();
      await other.says(`Who may sign: ${SHOP.name}`);
    });
    await journey("people-other", PHONE, async (other) => {
      await beginBook(other, { ...SHOP, name: "Another shop" });
      await pick(other, "bring-book", first.book);
      await other.says("This does not go on from the book on this tablet.");
      assert((await other.text()).includes("Who may sign: Another shop"), "the other book took the place of this one");
    });
    rmSync(folder, { recursive: true });
  }));
