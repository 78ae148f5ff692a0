// Spraying on a slow tablet: the wet film follows the finger, and what came of a run is worked out while the page goes on.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey } from "./harness.mjs";
import { fill, goTo } from "./office.mjs";
import { good, pulled, stand } from "./sprayer.mjs";

/** So many times slower than this machine is a slow tablet, and the frames a second that are wanted there. */
const SLOWER = 4;
const FRAMES = 30;
/** Frames come with the clock of the screen, each second one where one takes longer than a sixtieth of a second: thirty is
 * what that gives, but for what the clocks of screen and page differ by. */
const CLOCK = 0.01;
const ENOUGH = FRAMES * (1 - CLOCK);
/** Cells of the film: as many as 320 by 240 at least. */
const CELLS = 320 * 240;
/** Others may be at work on this machine: the best of so many rounds counts. */
const ROUNDS = 5;
/** A stroke of a mouse, ms, and how many moves it is told in: more often than frames are wanted. */
const STROKE = 1500;
const STEPS = 75;
/** Longest task that a touch may wait for, ms. */
const BLOCKED = 50;
/** Browsers tell of such a task this much later at most, ms. */
const LATE = 300;

/** Notes each frame in which the film was drawn, and long tasks. */
const WATCH = `(() => {
  const seen = (window.seen = { drawn: [], tasks: [] });
  let put = 0;
  const show = CanvasRenderingContext2D.prototype.putImageData;
  CanvasRenderingContext2D.prototype.putImageData = function (...all) {
    if (this.canvas.className === "spray-film") put += 1;
    return show.apply(this, all);
  };
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (call) => ask((time) => {
    const before = put;
    const start = performance.now();
    call(time);
    if (put > before) seen.drawn.push({ at: start, took: performance.now() - start });
  });
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) seen.tasks.push({ at: startTime, took: duration });
  }).observe({ type: "longtask", buffered: true });
})()`;

/** Has the page watched. */
async function watch(page) {
  await page.browser.before(WATCH);
  await page.reload();
}

/** Where places of the work are seen, px. */
const seenAt = (page, places) =>
  page.driver.executeScript(`const turned = document.querySelector(".spray-over g").getScreenCTM();
    return arguments[0].map(([x, y]) => { const { x: left, y: top } = new DOMPoint(x, y).matrixTransform(turned); return [Math.round(left), Math.round(top)]; })`, places);

test("on a tablet four times as slow the film is drawn thirty times a second while it is sprayed", () =>
  journey("spray-slow", SIZES[1], async (page) => {
    await watch(page);
    await stand(page, "sealer-panel");
    const [columns, rows, wide, high] = await page.driver.executeScript(
      "const film = document.querySelector('.spray-film'); return [film.width, film.height, film.clientWidth, film.clientHeight]");
    assert(columns * rows >= CELLS, `the grid is ${columns} by ${rows}`);
    await page.browser.touched(false);
    await page.browser.slower(SLOWER);
    const [from, to] = await seenAt(page, pulled(good("sealer-panel")[1]));
    const rounds = [];
    while (rounds.length < ROUNDS && !(rounds.at(-1)?.rate >= ENOUGH)) {
      await page.driver.executeScript("seen.drawn.length = 0");
      const mouse = page.driver.actions().move({ x: from[0], y: from[1] }).press();
      for (let step = 1; step <= STEPS; step += 1) {
        const [x, y] = from.map((start, axis) => Math.round(start + ((to[axis] - start) * step) / STEPS));
        mouse.move({ x, y, duration: STROKE / STEPS });
      }
      await mouse.release().perform();
      const drawn = await page.driver.executeScript("return seen.drawn");
      assert(drawn.length > STEPS / 3, `only ${drawn.length} frames show the film while it is sprayed`);
      const took = drawn.map((frame) => frame.took).sort((a, b) => a - b);
      const rate = ((drawn.length - 1) * 1000) / (drawn.at(-1).at - drawn[0].at);
      rounds.push({ rate, work: took[Math.floor(took.length * 0.9)] });
    }
    const told = rounds.map(({ rate, work }) => `${rate.toFixed(1)} frames a second, the work of nine in ten under ${work.toFixed(1)} ms`);
    console.log(`${columns} by ${rows} cells on ${wide} by ${high} px: ${told.join("; ")}`);
    assert(Math.max(...rounds.map(({ rate }) => rate)) > ENOUGH, told.join("; "));
  }));

test("what came of a shaded edge is worked out while the page goes on", () =>
  journey("spray-worked", SIZES[1], async (page) => {
    await watch(page);
    await goTo(page, "#/spray/shaded-edge");
    await page.press("button", "Program passes");
    for (const [key, value] of Object.entries({ times: 6, distance_mm: 380, speed_m_s: 0.4 })) await fill(page, `spray-${key}`, String(value));
    await page.press("button", "Add this set");
    await page.says("Set 1");
    const longest = [];
    while (longest.length < ROUNDS && !(longest.at(-1) < BLOCKED)) {
      if (longest.length > 0) {
        await page.press("button", "Spray it again");
        await page.press("button", "Program passes");
        await page.press("button", "Add this set");
        await page.says("Set 1");
      }
      await page.driver.executeScript("seen.tasks.length = 0");
      await page.press("button", "Run the passes");
      await page.until("the good run beside it", async () => (await page.all("img", "Film map")).length === 2, 60_000);
      // The browser tells of a long task a little after it.
      await new Promise((done) => setTimeout(done, LATE));
      longest.push(Math.max(0, ...(await page.driver.executeScript("return seen.tasks")).map(({ took }) => took)));
    }
    const told = `longest tasks ${longest.map((took) => took.toFixed(0)).join(", ")} ms`;
    console.log(told);
    assert(Math.min(...longest) < BLOCKED, told);
  }));
