// Spraying a panel: by finger, a good run and three that fail for the reason that was sprayed; by programmed passes.
import assert from "node:assert/strict";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { SIZES, journey, testWith } from "./harness.mjs";
import { fill, goTo } from "./office.mjs";
import { good, held, look, pulled, spray, stand, told } from "./sprayer.mjs";

const PANEL = "sealer-panel";
/** Passes of a good run as strokes of a hand, changed. */
const strokes = (change = {}) => good(PANEL).map((pass) => ({ line: pulled(pass), speed: pass.speed_m_s * (change.speed ?? 1) }));

testWith("finger", "a run as a hand makes it that knows the work passes", () =>
  journey("spray-good", SIZES[1], async (page) => {
    await stand(page, PANEL);
    await page.press("button", "Hold the gun nearer");
    await page.press("button", "Hold the gun farther off");
    await page.assertFits("the stand");
    await page.assertAccessible("the stand");
    await held(page, good(PANEL)[0].distance_mm);
    await spray(page, strokes());
    await page.shot("spray-wet");
    const text = await look(page);
    assert.match(text, /It passes\./);
    await page.one("img", "Film map");
    await page.until("the good run beside it", async () => (await page.all("img", "Film map")).length === 2);
    await page.seenInEach("spray-passes");
    await page.press("button", "Play both runs");
    await page.until("both guns on the map", async () => (await page.driver.findElements(By.css(".spray-spot"))).length === 2);
    await page.shot("spray-played");
    const at = () => page.driver.findElement(By.css(".spray-replay > span")).getText();
    const before = await at();
    await page.until("the runs to go on", async () => (await at()) !== before);
    await page.press("button", "Stop");
    const stopped = await at();
    await page.driver.sleep(500);
    assert.equal(await at(), stopped);
    await page.press("button", "Spray it again");
    await page.one("button", "Look at the film");
  }));

/** Runs with a mistake: what is sprayed otherwise, what the screen says, which place of the map tells it. */
const WRONG = [
  { name: "gaps", sprayed: () => strokes().filter((_, nth) => nth % 2 === 0), says: "Places were missed.", better: /closer|Leave no part/ },
  { name: "slow", sprayed: () => strokes({ speed: 0.25 }), says: "The film runs.", better: /Move faster/ },
  { name: "far", distance: 320, sprayed: () => strokes(), says: "Too much landed dry", better: /Hold the gun nearer/ },
];

for (const { name, distance, sprayed, says, better } of WRONG) {
  testWith("finger", `a run that is wrong fails for what was wrong: ${name}`, () =>
    journey(`spray-${name}`, SIZES[0], async (page) => {
      await stand(page, PANEL);
      await held(page, distance ?? good(PANEL)[0].distance_mm);
      await spray(page, sprayed());
      const text = await look(page);
      assert.match(text, /It does not pass yet\./);
      // The first of what is told is what was sprayed wrongly.
      const told = text.slice(text.indexOf("It does not pass yet.") + "It does not pass yet.".length).trim();
      assert(told.startsWith(says), `${says} is not the first of: ${told.slice(0, 300)}`);
      assert.match(text.slice(text.indexOf("One thing to do better")), better);
      await page.assertFits(name);
      await page.shot(`spray-${name}`);
    }));
}

for (const size of SIZES) {
  test(`passes programmed by keys are the same passes and the same film (${size.name})`, () =>
    journey("spray-keys", size, async (page) => {
      await goTo(page, `#/spray/${PANEL}`);
      await page.one("button", "Look at the film");
      await page.assertFits("the stand");
      await page.shot("spray-stand");
      await page.press("button", "Program passes");
      const [first, ...others] = good(PANEL);
      const last = others.at(-1) ?? first;
      const [[ax, ay], [bx, by]] = first.line_mm;
      const set = { ...first, overlap: 0.5, wide_mm: last.line_mm[0][1] - ay };
      const fields = { from_x_mm: ax, from_y_mm: ay, to_x_mm: bx, to_y_mm: by, ...set, overlap: set.overlap * 100 };
      for (const [key, value] of Object.entries(fields)) if (key !== "line_mm") await fill(page, `spray-${key}`, String(value));
      await page.press("button", "Add this set");
      await page.says("Set 1");
      await page.assertFits("programmed passes");
      await page.assertAccessible("programmed passes");
      await page.shot("spray-program");
      await page.press("button", "Run the passes");
      await page.says(/It passes\.|It does not pass yet\./);
      const { film, passes } = told(PANEL, [set]);
      const text = await page.text();
      assert.equal(/It passes\./.test(text), passes);
      assert.match(text, new RegExp(`Wet film, mean\\s+${film.mean_um.toFixed(0)} µm`));
      assert.match(text, new RegExp(`Share as wanted\\s+${(film.in_window * 100).toFixed(0)} %`));
      await page.assertFits("what came of it");
      await page.assertAccessible("what came of it");
      await page.shot("spray-outcome");
    }));
}

/** Sets of passes as they are typed, by which a good run of a task is programmed. */
const TYPED = {
  "stain-panel": straight,
  "clear-panel": straight,
  "colour-crossed": straight,
  "horned-body": straight,
  "cutaway-body": straight,
  "shaded-edge": alongEdge,
  "repaired-place": straight,
};

/** Tasks that ask for a colour by zone, where no share of the film is wanted. */
const SHADED = ["shaded-edge"];

/** Each pass as a set of its own. */
function straight(passes) {
  return passes.map(({ line_mm: [[ax, ay], [bx, by]], overlap, ...set }) =>
    ({ from_x_mm: ax, from_y_mm: ay, to_x_mm: bx, to_y_mm: by, ...set, overlap: overlap * 100 }));
}

/** Passes along the edge on both sides, those equally far inwards as one set. */
function alongEdge(passes) {
  const edge = passes[0].line_mm[0][1];
  const inwards = passes.map((pass) => edge - pass.line_mm[0][1]);
  return [...new Set(inwards)].map((inward) => {
    const { distance_mm, speed_m_s, lead_mm, lag_mm } = passes[inwards.indexOf(inward)];
    const times = inwards.filter((one) => one === inward).length / 2;
    return { inward_mm: inward, times, distance_mm, speed_m_s, lead_mm, lag_mm };
  });
}

for (const [task, typed] of Object.entries(TYPED)) {
  testWith("size", `typed in figures a good run of ${task} passes, with the figures that the command has for it`, () =>
    journey(`spray-typed-${task}`, SIZES[1], async (page) => {
      await goTo(page, `#/spray/${task}`);
      await page.press("button", "Program passes");
      const stands = {};
      for (const [nth, set] of typed(good(task)).entries()) {
        for (const [key, value] of Object.entries(set)) {
          if (stands[key] !== value) await fill(page, `spray-${key}`, String(value));
          stands[key] = value;
        }
        await page.press("button", "Add this set");
        await page.says(`Set ${nth + 1}`);
      }
      await page.shot(`spray-typed-${task}`);
      await page.press("button", "Run the passes");
      await page.says(/It passes\.|It does not pass yet\./);
      const text = await page.text();
      assert.match(text, /It passes\./);
      const { film } = told(task, good(task));
      assert.match(text, new RegExp(`Wet film, mean\\s+${film.mean_um.toFixed(0)} µm`));
      if (!SHADED.includes(task)) assert.match(text, new RegExp(`Share as wanted\\s+${(film.in_window * 100).toFixed(0)} %`));
      await page.seenInEach(`spray-typed-${task}-outcome`);
    }));
}

test("a number that no pass may have is refused beside its field, and nothing is added", () =>
  journey("spray-refused", SIZES[2], async (page) => {
    await goTo(page, `#/spray/${PANEL}`);
    await page.press("button", "Program passes");
    await fill(page, "spray-speed_m_s", "9");
    await page.press("button", "Add this set");
    await page.says("A number from 0.02 to 3.");
    assert(!(await page.text()).includes("Set 1"));
    await page.press("button", "Run the passes");
    await page.says("No set is added yet.");
  }));

test("tasks are offered with what they ask, and say what this is not", () =>
  journey("spray-tasks", SIZES[2], async (page) => {
    await goTo(page, "#/spray");
    await page.says("This trains judgement, not the hand.");
    assert.equal((await page.all("link", /layer|fading|repaired place/)).length, 8);
    await page.assertFits("the tasks");
    await page.assertAccessible("the tasks");
    await page.shot("spray-tasks");
  }));
