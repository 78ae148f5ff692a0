// A finger on the screen: real touches at the place of what is touched, brought into view by swipes, each counted; and the
// words that a person has to read on the way.
import assert from "node:assert/strict";

/** Longest wait for something to touch, milliseconds. */
const WAIT = 15_000;
/** Swipes after which something counts as out of reach. */
const SWIPES_MOST = 40;
/** So long something stands where it is before it is touched, milliseconds. */
const STILL_MS = 40;
/** Steps of a swipe, and milliseconds between them. */
const [SWIPE_STEPS, SWIPE_STEP_MS] = [8, 16];
/** So long the finger rests at the end of a swipe before it is lifted, milliseconds: the page is not flung on then. */
const REST_MS = 100;

/** Half hours by which a wait is shortened by hand rather than lengthened from the next shorter one. */
const STEPS_DOWN = 8;

/** Runs on the page: where a finger would touch what has a selector; how far from there the screen has to be moved. */
const WHERE = `
  const [selector] = arguments;
  const found = [...document.querySelectorAll(selector)].map((one) => one.matches("[type=radio], [type=checkbox]") ? one.closest("label") ?? one : one).find((one) => one.offsetParent);
  if (!found) return null;
  const box = found.getBoundingClientRect();
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  const there = y > 0 && y < innerHeight ? document.elementFromPoint(x, y) : null;
  const free = !!there && (found === there || found.contains(there) || there.contains(found));
  return { x, y, free, height: innerHeight, width: innerWidth };`;

/** Runs on the page: its lines as they are shown. */
const LINES = "return document.body.innerText.split('\\n').map((line) => line.trim()).filter(Boolean)";

export class Finger {
  constructor(page) {
    Object.assign(this, { page, taps: 0, swipes: 0, words: 0, read: new Set() });
  }

  /** Lays the finger on the screen of a page: from now on it is a touch screen. */
  static async of(page) {
    await page.browser.touched(true);
    const finger = new Finger(page);
    await finger.reads();
    return finger;
  }

  send(type, points) {
    return this.page.browser.finger(type, points);
  }

  /** Reads what is new: a line that was read before is known, and of one with other figures than before those are read. */
  async reads() {
    for (const line of await this.page.driver.executeScript(LINES)) {
      if (this.read.has(line)) continue;
      const words = line.split(/\s+/);
      const alike = line.replace(/\d+/g, "#");
      this.words += words.filter((word) => !this.read.has(alike) || /\d/.test(word)).length;
      this.read.add(line).add(alike);
    }
  }

  /** Moves the page under the finger, upwards for a positive way. */
  async swipe({ width, height }, way) {
    const from = height / 2 + Math.sign(way) * Math.min(Math.abs(way), height * 0.6) / 2;
    const to = height - from;
    const x = width / 2;
    await this.send("touchStart", [{ x, y: from }]);
    for (let step = 1; step <= SWIPE_STEPS; step += 1) {
      await this.send("touchMove", [{ x, y: from + ((to - from) * step) / SWIPE_STEPS }]);
      await this.page.driver.sleep(SWIPE_STEP_MS);
    }
    await this.page.driver.sleep(REST_MS);
    await this.send("touchEnd", []);
    this.swipes += 1;
  }

  /** Touches the first shown element of a selector. */
  async tap(selector) {
    for (let tries = 0; tries < SWIPES_MOST; tries += 1) {
      const at = await this.page.until(selector, () => this.page.driver.executeScript(WHERE, selector), WAIT);
      // What is still on its way is waited for.
      await this.page.driver.sleep(STILL_MS);
      const then = await this.page.driver.executeScript(WHERE, selector);
      if (then?.x !== at.x || then.y !== at.y) continue;
      if (at.free) {
        await this.send("touchStart", [{ x: at.x, y: at.y }]);
        await this.send("touchEnd", []);
        this.taps += 1;
        return;
      }
      await this.swipe(at, at.y - at.height / 2);
    }
    assert.fail(`${selector} cannot be brought under the finger`);
  }

  /** Takes what is touched for a decision: a thing, whether it is to be picked, or a number to be set by the buttons beside it. */
  async takes(steps) {
    for (const [selector, value] of steps) {
      if (selector === "#walk-wait") {
        await this.waits(Number(value));
        continue;
      }
      if (typeof value === "string") {
        await this.sets(selector, Number(value));
        continue;
      }
      const wanted = value ?? true;
      const is = () => this.page.driver.executeScript("return document.querySelector(arguments[0])?.checked", selector);
      await this.page.until(selector, () => this.page.driver.executeScript(WHERE, selector), WAIT);
      if ((await is()) === wanted) continue;
      await this.tap(selector);
      if ((await is()) !== undefined && (await is()) !== null) await this.page.until(`${selector} to be taken`, async () => [wanted, undefined, null].includes(await is()), WAIT);
      await this.reads();
    }
  }

  /** Picks the shortest wait that is offered and lasts as long, and shortens it by its button. */
  async waits(hours) {
    const offered = await this.page.until("waits", () => this.page.driver.executeScript("return [...document.querySelectorAll('.walk-wait .people button')].map((one) => one.innerText)"), WAIT);
    const spans = offered.map((text) => { const [, figure, unit] = text.match(/([\d.,]+)\s*(\S+)/); return Number(figure) * { min: 1 / 60, h: 1 }[unit] || Number(figure) * 24; });
    const nth = spans.findIndex((span) => span >= hours - 1e-6);
    assert(nth >= 0, `no wait of ${hours} h`);
    const longer = spans[nth] - hours;
    const from = longer > STEPS_DOWN * 0.5 && nth > 0 ? nth - 1 : nth;
    await this.tap(`.walk-wait .people button:nth-of-type(${from + 1})`);
    const steps = from === nth ? Math.floor(longer / 0.5 + 1e-6) : Math.ceil((hours - spans[from]) / 0.5 - 1e-6);
    for (let step = 0; step < (spans[nth] < 0.5 ? 0 : steps); step += 1) await this.tap(`.walk-typed button:${from === nth ? "first" : "last"}-of-type`);
    await this.reads();
  }

  /** Sets a number as near as its buttons come. */
  async sets(selector, wanted) {
    const now = async () => Number((await this.page.driver.executeScript("return document.querySelector(arguments[0]).value", selector)).replace(",", "."));
    await this.page.until(selector, () => this.page.driver.executeScript(WHERE, selector), WAIT);
    for (let last = await now(); last !== wanted; ) {
      const up = wanted > last;
      await this.tap(`:is(.stepper, .walk-typed):has(${selector}) > button:${up ? "last" : "first"}-of-type`);
      const came = await this.page.until(`${selector} to change`, async () => { const is = await now(); return is !== last && { is }; }, WAIT);
      if (Math.abs(came.is - wanted) >= Math.abs(last - wanted)) return;
      if ((wanted > came.is) !== up) return;
      last = came.is;
    }
  }

  /** What somebody takes who knows no touch by heart, in minutes. */
  minutes() {
    const touches = this.taps + this.swipes;
    return (touches * (POINT_S + PRESS_S + THINK_S)) / 60 + this.words / WORDS_A_MINUTE;
  }

  told() {
    return `${this.taps} touches, ${this.swipes} swipes, ${this.words} words, ${this.minutes().toFixed(1)} min`;
  }
}

/**
 * Card, Moran and Newell, The Psychology of Human-Computer Interaction, 1983 (keystroke-level model; its figures were seen in a
 * table of the University of Hamburg's pages on evaluation): pointing 1.10 s, a press 0.20 s, making up one's mind 1.35 s, here
 * before each touch, which is more than the model asks. A tap on a tablet alone was measured at 0.57 s (Applied Ergonomics
 * 2016, doi 10.1016/j.apergo.2016.06.004; its abstract was seen), so that pointing is taken too long and not too short.
 */
const [POINT_S, PRESS_S, THINK_S] = [1.1, 0.2, 1.35];
/** Brysbaert 2019, doi 10.1016/j.jml.2019.104047 (its abstract was seen): silent reading of English non-fiction, average. */
const WORDS_A_MINUTE = 238;
