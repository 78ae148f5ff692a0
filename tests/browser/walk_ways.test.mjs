// What happens beside the straight way through a job: what is refused, a step taken back, a fault mended, another day offered,
// another try, and somebody else's walk with its mistakes; and the screens of a walk in each size.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey } from "./harness.mjs";
import { ask, asked, begin, decide, followGuide, right, shown, stored } from "./walker.mjs";

/** Looks at a screen: it needs no sideways scrolling, is accessible, and its picture is kept. */
async function look(page, name) {
  await page.assertFits(name);
  await page.assertAccessible(name);
  await page.shot(name);
}

const decided = async (page) => (await stored(page))[0].decisions;

/** Stands on the time line after some decisions, as it is scrubbed there. */
async function scrub(page, turns) {
  await page.driver.executeScript(`
    const range = document.querySelector(".walk-range input");
    range.value = arguments[0];
    range.dispatchEvent(new InputEvent("input", { bubbles: true }));`, String(turns));
  await page.until(`decision ${turns}`, () => page.driver.executeScript("return document.querySelector('.walk-range input').getAttribute('aria-valuetext').includes(arguments[0])", String(turns)));
}

const LEVEL = { work: { operation: "level-film", parts: [0], numbers: { "last-grit": 2000 }, picks: { ladder: "every-grit", lubricant: "dry", depth: "within-last-coat" } } };

test("what cannot be done is refused with what, why and what now, nothing is changed, and a touch begins what comes first", () =>
  journey("walk-refused", SIZES[0], async (page) => {
    await begin(page, "A plain plate", "On your own");
    await ask(page, LEVEL);
    await page.says("Not possible now: Level");
    const parts = await page.driver.executeScript("return [...document.querySelectorAll('.walk-told .kraft > :is(h2, p)')].filter((one) => !one.hidden).map((one) => one.innerText.trim())");
    assert.equal(parts.length, 3, parts.join(" | "));
    assert.match(parts[0], /^Not possible now: /);
    assert.match(parts[1], /No coat is there yet\.$/);
    assert.equal(parts[2], "Lay a coat first.");
    assert.deepEqual(await decided(page), []);
    await look(page, "walk-refused");
    await page.press("button", "Seal coat");
    await page.until("the seal coat", () => shown(page, "#walk-choice-sealer"));
  }));

test("with a guide one step is taken back, and decided anew", () =>
  journey("walk-back", SIZES[2], async (page) => {
    await begin(page, "A plain plate", "Guided");
    await followGuide(page);
    await followGuide(page);
    const [first] = await decided(page);
    await page.press("button", "One step back");
    await page.until("one decision", async () => (await decided(page)).length === 1);
    assert.deepEqual(await decided(page), [first]);
    assert.deepEqual(right((await stored(page))[0])[0], right({ ...(await stored(page))[0], decisions: [first] })[0]);
    await followGuide(page);
    assert.equal((await decided(page)).length, 2);
  }));

/** A run in the first clear coat: as wet as a coat that sags (2 x the sheet), on work that stands. */
const RUN = (work) => ({ work: { ...work, numbers: { ...work.numbers, coats: 1, "wet-film": 200 }, picks: { ...work.picks, held: "standing" } } });

test("a fault that shows is mended by the operations that its row names, and is told as mended", () =>
  journey("walk-mended", SIZES[1], async (page) => {
    await begin(page, "A lyre with open pores", "On your own");
    const way = right((await stored(page))[0]);
    const clear = way.findIndex(({ work }) => work?.operation === "clear-coats");
    for (const decision of way.slice(0, clear)) await decide(page, decision);
    await decide(page, RUN(way[clear].work));
    await page.says("It shows now");
    await look(page, "walk-run");
    await page.press("button", "Go on as it is");
    await decide(page, { room: ["gun-cleaned"] });
    await decide(page, { wait: "morning" });
    await decide(page, { wait: { hours: 8 } });
    await page.driver.executeScript("document.querySelector('.walk-open-faults').open = true");
    await look(page, "walk-to-mend");
    await page.driver.executeScript("document.querySelector('.walk-open-faults button').click()");
    await page.until("the rework at hand", () => shown(page, ".walk-do:not(.not-yet)"));
    await page.driver.executeScript("document.querySelector('.walk-do').click()");
    await page.until("the place to be worked", async () => (await decided(page)).at(-1).work?.operation === "rework-place");
    const { wear } = way.findLast((one, nth) => one.wear && nth < clear);
    await decide(page, [{ wear }, { room: ["fan-on", "gauge-read", "sources-out", "air-read"] }]);
    const coat = way[clear].work;
    await decide(page, { work: { ...coat, picks: { ...coat.picks, mix: "retarder" } } });
    await page.says("Mended: ");
    const told = asked((await stored(page))[0]);
    assert.equal(told.faults.length, 1);
    assert.equal(typeof told.faults[0].mended_in_turn, "number");
  }));

test("an order that cannot be met is met by saying so; its report is scrubbed, and tried again from there", () =>
  journey("walk-offer", SIZES[0], async (page) => {
    await begin(page, "A box in a hurry", "On your own");
    const [sand] = right((await stored(page))[0]).filter(({ wear }) => !wear);
    const { day_asked, day_earliest } = asked((await stored(page))[0]);
    assert(day_earliest > day_asked, "it can be met");
    await decide(page, { offer: { day: day_earliest } });
    await page.says(new RegExp(`day ${day_earliest}`, "i"));
    await decide(page, sand);
    await decide(page, "hand-over");
    await page.one("heading", "What it came to");
    assert.equal(asked((await stored(page))[0]).day_offered, day_earliest);
    await look(page, "walk-offered");
    await scrub(page, 1);
    const line = await page.driver.executeScript("return document.querySelector('.walk-scrubbed').innerText");
    assert.match(line, new RegExp(`Offer day ${day_earliest}`));
    await look(page, "walk-scrubbed");
    const [first] = await stored(page);
    await page.press("button", "Try again from here");
    await page.until("the floor", () => shown(page, ".walk-ops"));
    const [anew] = await stored(page);
    assert.notEqual(anew.id, first.id);
    assert.deepEqual(anew.decisions, first.decisions.slice(0, 1));
  }));

for (const size of SIZES) {
  test(`somebody else's walk: each mistake is named where it was made, with its rule (${size.name})`, () =>
    journey("walk-inspect", size, async (page) => {
      await page.driver.executeScript("location.hash = '#/walk'");
      await page.press("link", "A plain plate");
      await look(page, "walk-start");
      await page.press("radio", "Inspect");
      await page.driver.sleep(450);
      await page.press("button", "Begin");
      await page.until("the time line", () => shown(page, ".walk-range"));
      const told = asked((await stored(page))[0]);
      const all = [...told.faults.map(({ rule, made_in_turn: turn }) => ({ rule, turn })), ...told.lapses.map(({ rule, turn }) => ({ rule, turn }))];
      // Each coat of an operation may make a fault of its own.
      const mistakes = [...new Map(all.map((one) => [`${one.rule} ${one.turn}`, one])).values()];
      assert(mistakes.length >= 2, JSON.stringify(mistakes));
      for (const [nth, { rule, turn }] of mistakes.entries()) {
        await scrub(page, turn + 1);
        const named = await page.driver.executeAsyncScript(`
          const [rule, done] = arguments;
          (async () => {
            for (const kind of document.querySelectorAll('input[name="walk-kind"]')) {
              kind.click();
              await new Promise((next) => setTimeout(next, 60));
              const list = document.querySelector("#walk-rule");
              if (![...list.options].some(({ value }) => value === rule)) continue;
              list.value = rule;
              list.dispatchEvent(new Event("change", { bubbles: true }));
              await new Promise((next) => setTimeout(next, 60));
              return done(true);
            }
            done(false);
          })();`, rule);
        assert(named, `no kind of mistake has ${rule}`);
        if (nth === 0) await look(page, "walk-naming");
        await page.press("button", "Name it");
      }
      await page.press("button", "That is all");
      await page.says(`${mistakes.length} of ${mistakes.length} mistakes were named with their rule.`);
      await look(page, "walk-named");
    }));

  test(`the screens of a walk stand in ${size.name}`, () =>
    journey("walk-sizes", size, async (page) => {
      await page.driver.executeScript("location.hash = '#/walk'");
      await page.says("A plain plate");
      await look(page, "walk-choose");
      await begin(page, "A dyed lute with a shaded edge", "Guided");
      await look(page, "walk-floor");
      for (const spot of ["booth", "rack", "wheel", "room"]) {
        await page.driver.executeScript("document.querySelector(`.walk-spots input[value='${arguments[0]}']`).click()", spot);
        await page.until(spot, () => page.driver.executeScript("return document.querySelector('.walk-spots input:checked').value === arguments[0]", spot));
        await look(page, `walk-${spot}`);
      }
      await ask(page, LEVEL_ON_THREE);
      await page.says("Not possible now: Level");
      await look(page, "walk-refused");
      await page.driver.executeScript("document.querySelector('.walk-do')?.scrollIntoView()");
      await decide(page, { offer: { day: 40 } });
      await decide(page, "hand-over");
      await page.one("heading", "What it came to");
      await look(page, "walk-report-empty");
    }));
}

const LEVEL_ON_THREE = { work: { ...LEVEL.work, parts: [0, 1, 2] } };
