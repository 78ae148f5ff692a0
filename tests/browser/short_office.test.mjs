// An instructor's day, short enough for every engine: a set made, handed out as a link and opened on another tablet; a book
// opened, a sign-off signed, saved, and checked by a stranger.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answer, handIn } from "./apprentice.mjs";
import { SIZES, journey } from "./harness.mjs";
import { read } from "./link.mjs";
import { goTo, handOver, takeIn, unlock } from "./office.mjs";
import { elsewhere, shop, signIt, toSign } from "./signing.mjs";

const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;
const TITLE = "Monday, filling";
const KIND = "Filler to seal coat";
/** What one journey may take where two cores are busy, milliseconds. */
const LONG = { timeout: 240_000 };

test("a set is made, handed out as a link and begun on another tablet", LONG, async () => {
  let code;
  await journey("short-set", LANDSCAPE, async (page) => {
    await takeIn(page, "4", "Ines");
    await handOver(page, "Ines");
    await goTo(page, "#/sets/new");
    await page.one("button", "Save the set");
    await page.driver.executeScript("document.querySelectorAll('.build-part details').forEach((one) => { one.open = true; })");
    await page.press("checkbox", KIND);
    await page.press("button", /^6/);
    await page.press("radio", "So many right");
    await page.says("6 cards, about");
    await page.type("What the set is called", TITLE);
    await page.seen("short-set-built");
    await page.press("button", "Save the set");
    await page.one("heading", TITLE);
    const link = await page.until("the link", () => page.driver.executeScript("return document.getElementById('hand-out-link').value"));
    await page.one("img", "Square code of the link");
    await page.seen("short-set-handed-out");
    [, code] = link.split("#/take/");
    assert.equal(JSON.parse(read(code)).title, TITLE);
  });
  await journey("short-taken", PHONE, async (page) => {
    await takeIn(page, "17", "Bo");
    await handOver(page, "Bo");
    await goTo(page, `#/take/${code}`);
    await page.says(TITLE);
    await page.press("button", "Take it");
    await page.press("link", "Go to the set");
    await page.press("button", "Begin");
    await answer(page);
    await handIn(page);
    await page.seen("short-set-begun");
  });
});

test("a book is begun, a sign-off signed and saved, and a stranger checks the file", LONG, () =>
  journey("short-signed", PORTRAIT, async (page) => {
    await shop(page);
    await toSign(page, "room-safe");
    await unlock(page);
    await page.one("heading", "This will be signed, statement by statement");
    await page.seen("short-to-be-signed");
    await signIt(page);
    const signOff = await page.save("Save the file");
    await goTo(page, "#/book");
    await page.says("Signed off: Safe in the finish room");
    await page.seen("short-book");
    const list = await page.save("Save the trust list");
    await elsewhere({ signOff, list }, async (other) => {
      await other.one("heading", "Accepted");
      await other.seen("short-checked");
    });
  }));
