// The app in Spanish: chosen for whoever works, on every kind of screen that a link leads to, with its figures and dates; and what is longer
// than in English fits.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { root } from "../../tools/shell.mjs";
import { everyScreen } from "./crawl.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { fill, goTo } from "./office.mjs";

/** Words that a message must have to be known for English: single ones are names, signs or the same in both. */
const WORDS_LEAST = 3;

/** Messages of a language as they are written, those that take something in left out. */
function messages(language) {
  const folder = join(root, "content", "text", language);
  const lines = readdirSync(folder).flatMap((name) => readFileSync(join(folder, name), "utf8").split("\n"));
  const texts = lines.map((line) => line.match(/= (".*")$/)?.[1]).filter(Boolean).map((text) => JSON.parse(text));
  return new Set(texts.filter((text) => !text.includes("{") && text.split(" ").length >= WORDS_LEAST));
}

const SHOWN = `const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const texts = [];
  while (walker.nextNode()) texts.push(walker.currentNode.data.trim());
  return texts.filter(Boolean);`;

async function inSpanish(page) {
  await goTo(page, "#/menu");
  await page.press("radio", "Español");
  await page.one("heading", "Menú");
}

for (const size of [SIZES[0], SIZES[2]]) {
  test(`screens of each kind in Spanish, with no whole English message left on them (${size.name})`, () =>
    journey("spanish", size, async (page) => {
      await page.one("heading");
      await inSpanish(page);
      assert.equal(await page.driver.executeScript("return document.documentElement.lang"), "es");
      const spanish = messages("es");
      const english = [...messages("en")].filter((text) => !spanish.has(text));
      assert(english.length > 1000, "the messages are read");
      const known = new Set(english);
      const found = [];
      await everyScreen(page, async (address) => {
        const left = (await page.driver.executeScript(SHOWN)).filter((text) => known.has(text));
        if (left.length > 0) found.push(`${address}: ${left.join(" | ")}`);
        await page.assertFits(address).catch((error) => found.push(error.message));
        await page.assertAccessible(address).catch((error) => found.push(error.message));
        await page.shot(`spanish${address.replace(/[^a-z0-9]+/gi, "-")}`);
      });
      assert.deepEqual(found, []);
    }));
}

/** Widths of a phone, px: a usual one and the narrowest. */
const WIDTHS = [390, 320];
/** Screens with short titles and long ones. All have the same line below them. */
const SCREENS = ["#/", "#/menu", "#/programs", "#/verify", "#/walk", "#/book", "#/sets"];
const BARS = `return [".top", ".rail"].map((bar) => Math.ceil(document.querySelector(bar).getBoundingClientRect().height))`;

const WITHIN = `const middle = document.querySelector(".middle");
  return middle.scrollWidth <= middle.clientWidth`;

/** How high the bars above and below each screen are at each width, px. */
async function bars(page) {
  const found = new Map();
  for (const width of WIDTHS) {
    await page.browser.size({ width, height: 844 });
    for (const address of SCREENS) {
      await goTo(page, address);
      await page.until(`the screen ${address}`, () => page.driver.executeScript("return !document.querySelector('.top-title')?.textContent.startsWith('Stepboard')"));
      await page.assertFits(`${address} at ${width} px`);
      assert(await page.driver.executeScript(WITHIN), `${address} at ${width} px: something is cut off`);
      found.set(`${address} at ${width} px`, await page.driver.executeScript(BARS));
    }
  }
  return found;
}

testWith("size", "the bars above and below a screen are as low in Spanish as in English, on a phone and at 320 px", () =>
  journey("spanish-bars", SIZES[2], async (page) => {
    await page.one("heading");
    const english = await bars(page);
    await inSpanish(page);
    const spanish = await bars(page);
    const higher = [...spanish].filter(([where, heights]) => heights.some((height, bar) => height > english.get(where)[bar]));
    assert.deepEqual(higher, []);
    await goTo(page, "#/");
    await page.shot("spanish-bars");
  }));

test("each person has their own language, and the tablet keeps its own", () =>
  journey("languages", SIZES[1], async (page) => {
    await page.one("heading");
    await goTo(page, "#/menu");
    await page.type("Name", "Ines");
    await page.press("button", "Use it");
    await inSpanish(page);
    await goTo(page, "#/bench/dew-point");
    await page.one("heading", /rocío/i);
    await page.type(/^Aire/, "25,5");
    await page.type(/^Humedad/, "50");
    // tests/data/psychrometrics.csv has 13.864 °C for 25 °C and 50 %: half a degree warmer, with the comma of the language.
    await page.says(/14,\d+ °C/);
    await page.shot("spanish-dew-point");
    await page.reload();
    await page.one("heading", /rocío/i);
    await goTo(page, "#/menu");
    await page.type("Nombre", "Tom");
    await page.press("button", "Usarlo");
    await page.one("heading", "Menu");
  }));

test("programmed passes are typed and told with the decimal comma of Spanish", () =>
  journey("spanish-passes", SIZES[0], async (page) => {
    await page.one("heading");
    await inSpanish(page);
    await goTo(page, "#/spray/clear-panel");
    await page.press("button", "Programar pasadas");
    const speed = await page.until("the field", () => page.driver.findElement(By.id("spray-speed_m_s")));
    assert.equal(await speed.getAttribute("value"), "0,5");
    await fill(page, "spray-speed_m_s", "0,65");
    await page.press("button", "Añadir esta tanda");
    await page.says("0,65 m/s");
    await page.shot("spanish-passes");
  }));
