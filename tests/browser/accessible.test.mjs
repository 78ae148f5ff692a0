// Every kind of screen that a link or a button leads to, as those meet it who need more than the eye and finger of most: at 320 px (WCAG 2.2, 1.4.10), with
// the page twice as large (1.4.4), in the colours of the system, with what is touched as large as a gloved finger needs.
import assert from "node:assert/strict";
import { answer, begin, handIn, home } from "./apprentice.mjs";
import { begin as beginCheck, name } from "./checks.mjs";
import { everyScreen } from "./crawl.mjs";
import { putCard } from "./desk.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { beginBook, takeIn } from "./office.mjs";
import { begin as beginWalk } from "./walker.mjs";

/** The narrowest screen on which nothing may be lost, and a tablet of 1024 by 768 with its page twice as large. */
const NARROW = { width: 320, height: 640 };
const DOUBLED = { width: 512, height: 384 };
/** Least height of what is touched, CSS pixels: our own, twice what WCAG 2.2, 2.5.8 asks. */
const TOUCH = 48;
/** Fewest screens that are reached: with fewer the links are not found any more. */
const SCREENS = 40;

/** What is shown, can be touched, and is lower than it may be; a link within a text is as high as its line. */
const SMALL = `return [...document.querySelectorAll("button, summary, select, textarea, a[href], input:not([type=hidden])")]
  .map((element) => [element, element.matches("[type=radio], [type=checkbox], [type=file]") ? element.labels[0] ?? element : element])
  .filter(([element, target]) => element.checkVisibility({ visibilityProperty: true }) && target.getClientRects().length > 0)
  .filter(([element]) => !element.matches("p a, li p a, .skip"))
  .map(([element, target]) => [element.outerHTML.slice(0, 120), target.getBoundingClientRect()])
  .filter(([, box]) => box.height > 0 && box.height + 0.5 < arguments[0])
  .map(([html, box]) => Math.round(box.height) + " px: " + html);`;

function forcedColours(page, active) {
  const features = [{ name: "forced-colors", value: active ? "active" : "none" }];
  return page.browser.media("", features);
}

/** Looks at the screen that is shown, and gives what is wrong with it. */
async function looked(page, where) {
  const found = [];
  const note = (how, check) => check().catch((error) => found.push(`${how}: ${error.message}`));
  await page.browser.size(DOUBLED);
  await note(`${where} twice as large`, () => page.assertFits(where));
  await page.browser.size(NARROW);
  await note(`${where} at 320 px`, () => page.assertFits(where));
  await note(where, () => page.assertAccessible(where));
  const small = await page.driver.executeScript(SMALL, TOUCH);
  if (small.length > 0) found.push(`${where}: lower than ${TOUCH} px:\n  ${small.join("\n  ")}`);
  // Contrast is not asked here: the colours are the system's own.
  await forcedColours(page, true);
  await note(`${where} in forced colours`, () => page.assertFits(where));
  await page.shot(`accessible${where.replace(/[^a-z0-9]+/gi, "-")}`);
  await forcedColours(page, false);
  return found;
}

testWith("size media", "screens of each kind at 320 px, twice as large and in the system's colours: nothing is lost, all has its name, all can be touched", () =>
  journey("accessible", SIZES[0], async (page) => {
    await home(page);
    await beginBook(page);
    await takeIn(page, "a-01", "Nora Ilse");
    const found = [];
    const seen = await everyScreen(page, async (address) => found.push(...(await looked(page, address))));
    assert.deepEqual(found, []);
    assert(seen.length >= SCREENS, `${seen.length} screens: ${seen.join(" ")}`);
  }));

/** What buttons lead to, each from where the one before left the page. */
const LED_TO = {
  "-card": begin,
  "-verdict": async (page) => {
    await answer(page);
    await handIn(page);
  },
  "-stand": async (page) => {
    await page.driver.get(page.address);
    await page.reload();
    await home(page);
    await begin(page);
    await putCard(page, "spray-sealer", 2);
    await page.press("button", "Go to the stand");
    await page.one("button", "Take this run");
  },
  "-walk": (page) => beginWalk(page, "A plain plate", "Guided"),
  "-check": async (page) => {
    await name(page, "Bo");
    await beginCheck(page, "Gun set up, tested and cleaned");
  },
};

testWith("size media", "a card, its verdict, the spray stand, a walk and a check, looked at in the same ways", () =>
  journey("accessible-led-to", SIZES[0], async (page) => {
    await home(page);
    const found = [];
    for (const [where, go] of Object.entries(LED_TO)) {
      await go(page);
      found.push(...(await looked(page, where)));
      await page.browser.size(page.size);
    }
    assert.deepEqual(found, []);
  }));
