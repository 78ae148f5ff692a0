// An apprentice's day, short enough for every engine: cards, a panel, a face sprayed by hand, the first steps of a walk, and the
// same without a network.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answer, begin, handIn, home, next, recorded, verdict } from "./apprentice.mjs";
import { lay } from "./desk.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { goTo, handOver, takeIn } from "./office.mjs";
import { fine, picture, run } from "./pictures.mjs";
import { good, look, pulled, stroke } from "./sprayer.mjs";
import { begin as beginWalk, decide, followGuide, right, shown, stored } from "./walker.mjs";

const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;
const CARDS = 2;
const STEPS = 3;
const PANEL = "sealer-panel";
const JOB = "A plain plate";
/** What one journey may take where two cores are busy, milliseconds. */
const LONG = { timeout: 180_000 };

const saved = (page) => page.says("Saved on this tablet");

/** Answers the card on the desk and sees that it is kept. */
async function one(page) {
  await answer(page);
  await handIn(page);
  await saved(page);
}

/** Waits until the app is kept, and stops the server. */
async function leaveNetwork(page) {
  await page.kept();
  await page.goOffline();
  await page.reload();
}

test("somebody signs in, answers cards, sets units and light, and goes on without a network", LONG, () =>
  journey("short-cards", PORTRAIT, async (page) => {
    await home(page);
    await page.seen("short-home");
    await takeIn(page, "a-07", "Mara Okafor");
    await page.seen("short-people");
    await handOver(page, "Mara Okafor");
    await goTo(page, "#/menu");
    await page.press("radio", "°F");
    await page.press("radio", "Dim workshop");
    await page.seen("short-menu");
    await goTo(page, "#/");
    await page.says("Mara Okafor");
    await begin(page);
    await page.seen("short-card");
    await one(page);
    await page.seen("short-verdict");
    for (let done = 1; done < CARDS; done += 1) {
      await next(page);
      await one(page);
    }
    await leaveNetwork(page);
    await verdict(page);
    await next(page);
    await one(page);
    await goTo(page, "#/record");
    assert.equal(await recorded(page), CARDS + 1);
    await page.seen("short-record");
    await goTo(page, "#/bench/dew-point");
    await page.one("heading", "Dew point of the air");
    await page.seen("short-bench");
  }));

testWith("end", "a browser that is ended has its answers when it starts again, without a network too", LONG, () =>
  journey("short-ended", PORTRAIT, async (page) => {
    await begin(page);
    await one(page);
    await leaveNetwork(page);
    await page.end();
    await page.again();
    await goTo(page, "#/record");
    assert.equal(await recorded(page), 1);
    await page.shot("short-ended");
  }));

test("a panel is drawn and looked at", LONG, () =>
  journey("short-panel", LANDSCAPE, async (page) => {
    await lay(page, "panel-point", 7);
    await fine(page);
    const drawn = await picture(page);
    const lamp = await page.one("slider", "Lamp, from left");
    await page.seen("short-panel");
    await page.driver.actions().move({ origin: lamp }).press().move({ origin: lamp, x: 60 }).release().perform();
    await page.until("another light", async () => (await picture(page)) !== drawn);
  }));

test("a stroke is sprayed by hand and the film read", LONG, () =>
  journey("short-spray", LANDSCAPE, async (page) => {
    await goTo(page, `#/spray/${PANEL}`);
    await page.one("button", "Look at the film");
    const [pass] = good(PANEL);
    await stroke(page, { line: pulled(pass), speed: pass.speed_m_s });
    await page.seen("short-stand");
    const text = await look(page);
    assert.match(text, /It does not pass yet\./);
    assert.match(text, /Wet film, mean\s+[1-9]\d* µm/);
    await page.seen("short-film");
  }));

test("a walk is begun, led and decided, and goes on without a network", LONG, () =>
  journey("short-walk", PHONE, async (page) => {
    await beginWalk(page, JOB, "Guided");
    for (let step = 0; step < STEPS; step += 1) await followGuide(page);
    await page.seen("short-walk");
    await leaveNetwork(page);
    await page.until("the floor", () => shown(page, ".walk-ops"));
    const [walk] = await stored(page);
    assert.equal(walk.decisions.length, STEPS);
    await decide(page, right(walk)[0]);
    await page.shot("short-walk-on");
  }));
