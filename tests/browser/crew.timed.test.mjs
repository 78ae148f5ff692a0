// Apprentices with 500 answers each, ten on a tablet: read in, everybody at a glance and who is stuck on what, while the page goes on. `make crowd` asks
// for 200 of them in the same time; on a busy machine a quarter of them shows whether the page stands still.
import assert from "node:assert/strict";
import { test } from "node:test";
import { crowd, readIn } from "./crowd.mjs";
import { SIZES, journey } from "./harness.mjs";
import { goTo } from "./office.mjs";

const PEOPLE = Number(process.env.STEPBOARD_CROWD ?? 50);

/** Milliseconds in which it is done, and that no task may take. */
const DONE_MS = 5000;
const TASK_MS = 100;

test("a large crew is read in without the page standing still", { timeout: 240_000 }, () =>
  journey("crew-large", SIZES[1], async (page) => {
    const made = crowd(PEOPLE, 500);
    try {
      await goTo(page, "#/crew");
      await page.says("Nothing here yet");
      await page.driver.executeScript(`
        window.tasks = []; window.at = {};
        new PerformanceObserver((list) => { for (const one of list.getEntries()) window.tasks.push(one.duration); }).observe({ entryTypes: ["longtask"] });
        document.getElementById("results").addEventListener("change", () => { window.at.begun ??= performance.now(); }, true);
        new MutationObserver(() => {
          const said = document.querySelector(".pages [role=status]")?.textContent;
          if (said?.endsWith("of ${PEOPLE}")) window.at.seen ??= performance.now();
          if (document.querySelector(".stuck > .rows > li")) window.at.done ??= performance.now();
        }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });`);
      await readIn(page, made.files);
      const at = await page.until(`${PEOPLE} people, and what they are stuck on`, async () => {
        const at = await page.driver.executeScript("return window.at");
        return at.seen && at.done && at;
      }, 120_000);
      const took = at.done - at.begun;
      const longest = Math.max(0, ...(await page.driver.executeScript("return window.tasks")));
      console.log(`${PEOPLE} people with 500 answers: everybody at a glance after ${(at.seen - at.begun).toFixed(0)} ms, who is stuck on what after ${took.toFixed(0)} ms, longest task ${longest.toFixed(0)} ms`);
      await page.shot("crew-large");
      assert(took < DONE_MS, `${took.toFixed(0)} ms`);
      assert(longest < TASK_MS, `a task of ${longest.toFixed(0)} ms`);
    } finally {
      made.done();
    }
  }));
