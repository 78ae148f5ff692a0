// Each screen by itself: the calculator, units, cautions, the keyboard, and the accessibility check everywhere.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Key } from "selenium-webdriver";
import { HAND_IN, answer, begin, home, read, recorded, verdict } from "./apprentice.mjs";
import { SIZES, journey } from "./harness.mjs";

/** Most steps of the Tab key from the top of a screen to its next step. */
const TABS = 60;

async function dewPoint(page, air, humidity) {
  await page.press("link", "Bench");
  await page.press("link", "Dew point of the air");
  await page.type(/^Air/, air);
  await page.type(/^Humidity/, humidity);
}

test("the bench computes: air of 25 °C and 50 %", () =>
  journey("bench", SIZES[0], async (page) => {
    await home(page);
    await dewPoint(page, "25", "50");
    // tests/data/psychrometrics.csv, row 25 °C, 50 %, sea level: 13.864 °C.
    await page.says(/13\.(86|9)\s*°C/);
    await page.says("The rule");
    await page.shot("bench");
  }));

test("units switch: the same air in Fahrenheit", () =>
  journey("units", SIZES[0], async (page) => {
    await home(page);
    await page.press("link", "Menu");
    await page.press("radio", "°F");
    await page.press("link", "Back");
    await dewPoint(page, "77", "50");
    // 13.864 °C is 57.0 °F.
    await page.says(/(57(\.0)?|56\.9\d?)\s*°F/);
    await page.reload();
    await page.says("°F");
  }));

test("the cautions are at the foot of every screen, and open in full", () =>
  journey("cautions", SIZES[0], async (page) => {
    await home(page);
    await page.says("If unsure, stop and ask");
    await begin(page);
    await page.says("If unsure, stop and ask");
    await page.press("button", /^\d+ more cautions?$/);
    await page.one("heading", "Cautions");
    await page.assertAccessible("open cautions");
    await page.shot("cautions");
    await page.press("button", "Close");
    await page.until("the list to close", async () => !(await page.has("heading", "Cautions")));
  }));

test("the button that tells what an answer wants still leads to it", () =>
  journey("wanted", SIZES[2], async (page) => {
    const leadsTo = async (button, id) => {
      await page.press("button", button);
      const at = await page.driver.executeScript(`const at = document.activeElement, { top } = at.getBoundingClientRect();
        const middle = document.querySelector("main").getBoundingClientRect();
        return { id: at.id, seen: top >= middle.top - 1 && top < middle.bottom }`);
      assert.deepEqual(at, { id, seen: true });
      await page.driver.executeScript("document.querySelector('main').scrollTop = 0");
    };
    await home(page);
    await begin(page);
    await leadsTo(HAND_IN, "card-answer");
    await answer(page);
    await leadsTo(/^Say how far you would go/, "certainty");
    await page.shot("wanted-certainty");
  }));

test("a card can be answered with nothing but the keyboard", () =>
  journey("keyboard", SIZES[1], async (page) => {
    await home(page);
    const focused = () => page.driver.executeScript("return document.activeElement.innerText");
    let tabs = 0;
    while (!/^(Start with|Go on)/.test(await focused())) {
      assert(tabs < TABS, "the next step is not reached by Tab");
      await page.keys(Key.TAB);
      tabs += 1;
    }
    const outline = await page.driver.executeScript("return getComputedStyle(document.activeElement).outlineStyle");
    assert.notEqual(outline, "none", "the focus is not seen");
    await page.keys(Key.ENTER);
    await page.one("button", "Not enough is told");
    await page.keys("?", "x", Key.ENTER);
    await verdict(page);
    await read(page);
    await page.keys(Key.ENTER);
    await page.one("button", "Not enough is told");
    await page.keys(Key.ESCAPE);
    await home(page);
    await page.press("link", "My record");
    assert.equal(await recorded(page), 1);
  }));

test("a card can be answered by Tab and Space alone", () =>
  journey("tab", SIZES[0], async (page) => {
    await begin(page);
    const reach = async (pattern) => {
      for (let tabs = 0; tabs < TABS; tabs += 1) {
        const name = await (await page.driver.switchTo().activeElement()).getAccessibleName();
        if (pattern.test(name)) return;
        await page.keys(Key.TAB);
      }
      assert.fail(`${pattern} is not reached by Tab`);
    };
    // In the order of the screen: past its end lie the browser's own buttons, and some browsers leave the page there.
    await reach(/right .* times in/);
    await page.keys(Key.SPACE);
    await reach(/^Not enough is told/);
    await page.keys(Key.SPACE);
    await reach(/^Hand it in/);
    await page.keys(Key.SPACE);
    await verdict(page);
  }));

for (const size of SIZES) {
  test(`every screen fits and passes the accessibility check (${size.name})`, () =>
    journey("screens", size, async (page) => {
      await home(page);
      const check = async (where) => {
        await page.assertFits(where);
        await page.assertAccessible(where);
        await page.shot(where);
      };
      await check("home");
      for (const [where, path] of [["menu", "menu"], ["bench-list", "bench"], ["band", "band/fill"], ["record-empty", "record"]]) {
        await page.driver.get(`${page.address}#/${path}`);
        await page.one("link", "Back");
        await check(where);
      }
      await page.driver.get(`${page.address}#/menu`);
      await page.press("radio", "Dim workshop");
      await check("menu-dim");
      await page.press("link", "Back");
      await home(page);
      await check("home-dim");
    }));
}

test("nothing moves for those who ask for stillness", () =>
  journey("still", SIZES[0], async (page) => {
    await begin(page);
    const moving = await page.driver.executeScript("return document.getAnimations().length");
    assert.equal(moving, 0);
  }, { reducedMotion: true }));
