// What a shop asks for before it signs somebody off: more than what came with the program, never less.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey } from "./harness.mjs";
import { beginBook, fill, goTo, unlock } from "./office.mjs";

test("a shop asks for more, is refused less, and an apprentice cannot change it", { timeout: 180_000 }, () =>
  journey("asked", SIZES[0], async (page) => {
    await goTo(page, "#/asked");
    await page.says("Respirator worn right");
    await page.assertFits("what is asked");
    await page.assertAccessible("what is asked");
    await page.shot("asked");
    await page.press("link", "Respirator worn right");
    await fill(page, "asked-months", "24");
    await page.press("button", "Ask for this");
    await page.says("Months: a whole number from 1 to 12.");
    await fill(page, "asked-months", "6");
    await fill(page, "asked-demonstrations", "4");
    await fill(page, "own-criterion", "Signs the mask out of the locker");
    await page.press("checkbox", "Critical");
    await page.press("button", "Add this criterion");
    await page.press("button", "Ask for this");
    await page.says("Saved on this tablet.");
    await page.assertAccessible("one competency");
    await page.shot("asked-of");
    await page.reload();
    await page.says("Signs the mask out of the locker");
    await goTo(page, "#/asked");
    await page.says("4 demonstrations on 3 days, 8 criteria, shown anew after 6 months.");
    await page.says("This shop asks for more.");

    await beginBook(page);
    await goTo(page, "#/asked/mask-worn");
    await page.says("opens their key first");
    assert(!(await page.has("button", "Ask for this")), "whoever has no key changes what is asked");
    await unlock(page);
    await page.press("button", "Take away: Signs the mask");
    await page.press("button", "Ask for this");
    await page.says("Asked by Ruth Abel (i-01)");
    await goTo(page, "#/asked");
    await page.says("4 demonstrations on 3 days, 7 criteria, shown anew after 6 months.");
  }));
