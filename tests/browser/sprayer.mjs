// A hand that sprays the panel on the screen: fingers that go where they are told, in mm and m/s of the work.
import { execFileSync } from "node:child_process";
import { By } from "selenium-webdriver";
import { command } from "./checks.mjs";
import { goTo } from "./office.mjs";

/** Rest between two strokes, ms. */
const REST_MS = 400;
/** A finger is told of so often, ms. */
const STEP_MS = 32;
/** So much before its moments come, ms: the screen lays what a finger does that holds still, and a busy machine is late. */
const AHEAD_MS = 600_000;
const MM_A_METRE = 1000;

/** A good run of a task by the native command: straight passes. */
export const good = (task) => JSON.parse(execFileSync(command, ["spray", "--good", task], { encoding: "utf8" })).passes;

/** What the native command says of passes. */
export const told = (task, passes) =>
  JSON.parse(execFileSync(command, ["spray"], { input: JSON.stringify({ task, passes }), encoding: "utf8" }));

/** Opens the stand of a task. */
export async function stand(page, task) {
  await goTo(page, `#/spray/${task}`);
  await page.one("button", "Look at the film");
  await page.browser.touched(true);
}

/** The line that the trigger is pulled along: from the lead before a pass to the lag behind it. */
export function pulled({ line_mm: [[ax, ay], [bx, by]], lead_mm, lag_mm }) {
  const long = Math.hypot(bx - ax, by - ay);
  const [dx, dy] = [(bx - ax) / long, (by - ay) / long];
  return [[ax - dx * lead_mm, ay - dy * lead_mm], [bx + dx * lag_mm, by + dy * lag_mm]];
}

/** Where lines on the work are on the screen. */
const onScreen = (page, lines) =>
  page.driver.executeScript(`const turned = document.querySelector(".spray-over g").getScreenCTM();
    return arguments[0].map((line) => line.map(([x, y]) => { const { x: left, y: top } = new DOMPoint(x, y).matrixTransform(turned); return [left, top]; }))`,
  lines);

/** How long a stroke takes, ms. */
const takes = ({ line: [from, to], speed }) => (Math.hypot(to[0] - from[0], to[1] - from[1]) / (speed * MM_A_METRE)) * 1000;

/** Draws strokes of a finger, each from place to place at a speed. */
export async function spray(page, strokes) {
  const places = await onScreen(page, strokes.map(({ line }) => line));
  let at = Date.now() + AHEAD_MS;
  for (const [nth, one] of strokes.entries()) {
    const took = takes(one);
    await finger(page, places[nth], at, took);
    at += took + REST_MS;
  }
}

/** Draws one stroke with the pointer that the machine has, as fast as it comes: no clock is its own. */
export async function stroke(page, one) {
  const [[from, to]] = await onScreen(page, [one.line]);
  const steps = Math.ceil(takes(one) / STEP_MS);
  const at = (step) => ({ x: Math.round(from[0] + ((to[0] - from[0]) * step) / steps), y: Math.round(from[1] + ((to[1] - from[1]) * step) / steps) });
  let pointer = page.driver.actions().move(at(0)).press();
  for (let step = 1; step <= steps; step += 1) pointer = pointer.move({ ...at(step), duration: STEP_MS });
  await pointer.release().perform();
}

/** A finger that is told of with the moments of its own clock: a busy machine does not make it stand still. */
async function finger(page, [from, to], at, took) {
  const send = (type, gone, place) => page.browser.finger(type, place ? [{ x: place[0], y: place[1] }] : [], (at + gone) / 1000);
  const on = (share) => from.map((start, axis) => start + (to[axis] - start) * share);
  const steps = Math.ceil(took / STEP_MS);
  await send("touchStart", 0, from);
  for (let step = 1; step <= steps; step += 1) await send("touchMove", (took * step) / steps, on(step / steps));
  await send("touchEnd", took, null);
}

/** Has the film measured and waits for the verdict; gives the words of the page. */
export async function look(page) {
  await page.press("button", "Look at the film");
  await page.until("the verdict", async () => (await page.driver.findElements(By.id("spray-verdict"))).length > 0);
  return page.text();
}

/** Holds the gun at a distance, as near as its steps come. */
export async function held(page, distance) {
  const now = () => page.driver.executeScript("return parseInt(document.querySelector('.spray-step output').innerText, 10)");
  const STEP = 20;
  for (;;) {
    const off = distance - (await now());
    if (Math.abs(off) <= STEP / 2) return;
    await page.press("button", off > 0 ? "Hold the gun farther off" : "Hold the gun nearer");
  }
}

/** Figures of a report: mean film (µm), its spread and the share as wanted (%), and the mean lead-in of the strokes (mm). */
export async function figures(page) {
  await page.until("the strokes", async () => (await page.driver.findElements(By.css(".spray-strokes"))).length > 0);
  return page.driver.executeScript(`const number = (cell) => parseFloat(cell.textContent.replace("\\u2212", "-"));
    const rows = [...document.querySelectorAll(".spray-outcome .spray-table tbody tr")];
    const of = (name) => number(rows.find((row) => row.cells[0].textContent.startsWith(name)).cells[1]);
    const table = document.querySelector(".spray-strokes table");
    const at = [...table.tHead.rows[0].cells].findIndex((cell) => cell.textContent === "Lead-in");
    const leads = [...table.tBodies[0].rows].map((row) => number(row.cells[at]));
    return { mean: of("Wet film, mean"), spread: of("Spread of the film"), inWindow: of("Share as wanted"),
      lead: leads.reduce((sum, lead) => sum + lead, 0) / leads.length }`);
}

/** A mouse of Chromium, pressed from the first place of each stroke to its last. */
export async function mouse(page, strokes) {
  const lines = await onScreen(page, strokes.map(({ line }) => line));
  let at = Date.now() + AHEAD_MS;
  for (const [nth, one] of strokes.entries()) {
    const [from, to] = lines[nth];
    const took = takes(one);
    const send = (type, share) => page.browser.tell("Input.dispatchMouseEvent", {
      type, timestamp: (at + took * share) / 1000, button: "left", buttons: type === "mouseReleased" ? 0 : 1, clickCount: 1,
      x: from[0] + (to[0] - from[0]) * share, y: from[1] + (to[1] - from[1]) * share,
    });
    const steps = Math.ceil(took / STEP_MS);
    await send("mousePressed", 0);
    for (let step = 1; step <= steps; step += 1) await send("mouseMoved", step / steps);
    await send("mouseReleased", 1);
    at += took + REST_MS;
  }
}

/**
 * A pen that is told of four places at a time, as a page is that a fine pen goes over: the events are made on the page, each
 * at the moment at which the pen is there. Gives how many there were.
 */
export async function pen(page, strokes) {
  const lines = await onScreen(page, strokes.map(({ line }) => line));
  const told = lines.map((line, nth) => ({ line, took: takes(strokes[nth]) }));
  return page.driver.executeAsyncScript(`const [strokes, rest, done] = arguments;
    const film = document.querySelector(".spray-film");
    const wait = (ms) => new Promise((then) => setTimeout(then, ms));
    const made = (type, { line: [from, to] }, share, more) => new PointerEvent(type, {
      pointerId: 7, pointerType: "pen", isPrimary: true, bubbles: true, button: type === "pointermove" ? -1 : 0,
      buttons: type === "pointerup" ? 0 : 1, clientX: from[0] + (to[0] - from[0]) * share, clientY: from[1] + (to[1] - from[1]) * share, ...more,
    });
    (async () => {
      let count = 0;
      for (const one of strokes) {
        const begun = performance.now();
        const gone = () => Math.min((performance.now() - begun) / one.took, 1);
        film.dispatchEvent(made("pointerdown", one, 0));
        let together = [];
        while (gone() < 1) {
          await wait(4);
          together.push(made("pointermove", one, gone()));
          if (together.length < 4 && gone() < 1) continue;
          count += together.length;
          film.dispatchEvent(made("pointermove", one, gone(), { coalescedEvents: together }));
          together = [];
        }
        film.dispatchEvent(made("pointerup", one, 1));
        await wait(rest);
      }
      done(count);
    })();`, told, REST_MS);
}
