// A panel sprayed without any pointer: by Tab, Enter and figures that are typed, from the first screen to the report; it comes
// to what a finger's run comes to.
import assert from "node:assert/strict";
import { By, Key } from "selenium-webdriver";
import { SIZES, journey, testWith } from "./harness.mjs";
import { figures, good, held, look, pulled, spray, stand } from "./sprayer.mjs";

const PANEL = "sealer-panel";
/** Most stops on the way to anything on a screen. */
const STOPS = 60;
/**
 * How far both may be apart: the film in µm that a finger's passes and typed ones leave, a finger being told of every 32 ms; per
 * cent as they are shown, rounded; the lead, mm, by the pixels of the screen.
 */
const NEAR = { mean: 2, spread: 2, inWindow: 2, lead: 4 };

/** What has the focus, by its id or its name. */
const focused = (page) =>
  page.driver.executeScript(`const at = document.activeElement;
    if (!at.matches("a, button, input, summary, h2")) return { id: at.id, name: "" };
    return { id: at.id, name: (at.getAttribute("aria-label") ?? at.innerText ?? "").replace(/\\s+/g, " ").trim() }`);

/** Goes on with Tab until something has the focus. */
async function tab(page, what, fits) {
  for (let stop = 0; stop < STOPS; stop += 1) {
    await page.keys(Key.TAB);
    if (fits(await focused(page))) return;
  }
  throw new Error(`${what} is not reached with Tab`);
}

/** Goes to something by its name and presses Enter. */
async function enter(page, name) {
  await page.says(name);
  await tab(page, name, (at) => at.name.includes(name));
  await page.keys(Key.ENTER);
}

/** Goes to a field and types in the place of what stands there. */
async function type(page, id, text) {
  await tab(page, id, (at) => at.id === id);
  await page.driver.actions().keyDown(Key.CONTROL).sendKeys("a").keyUp(Key.CONTROL).sendKeys(text).perform();
  assert.equal(await page.driver.findElement(By.id(id)).getAttribute("value"), text);
}

/** What a run of a finger comes to, and how far it held the gun. */
async function byFinger(page, passes) {
  await stand(page, PANEL);
  await held(page, passes[0].distance_mm);
  const distance = await page.driver.executeScript("return parseInt(document.querySelector('.spray-step output').innerText, 10)");
  await spray(page, passes.map((pass) => ({ line: pulled(pass), speed: pass.speed_m_s })));
  const text = await look(page);
  assert.match(text, /It passes\./);
  return { distance, ...(await figures(page)) };
}

testWith("finger", "by keys alone the same passes come to what a finger's come to", () =>
  journey("spray-keys-alone", SIZES[1], async (page) => {
    const passes = good(PANEL);
    const finger = await byFinger(page, passes);
    await page.driver.get("about:blank");
    await page.load();
    await enter(page, "Spray a panel");
    await enter(page, "An even sealer coat on a panel");
    await enter(page, "Program passes");
    const [first] = passes;
    const [[ax, ay], [bx, by]] = first.line_mm;
    await page.says("Another set of passes");
    // The fields come in this order; the rest is as the task has it.
    const fields = {
      from_x_mm: ax, from_y_mm: ay, to_x_mm: bx, to_y_mm: by, wide_mm: passes.at(-1).line_mm[0][1] - ay,
      distance_mm: finger.distance, speed_m_s: first.speed_m_s.toFixed(4), overlap: 50, lead_mm: first.lead_mm.toFixed(1),
      lag_mm: first.lag_mm.toFixed(1),
    };
    for (const [key, value] of Object.entries(fields)) await type(page, `spray-${key}`, String(value));
    await enter(page, "Add this set");
    await page.says("Set 1");
    await enter(page, "Run the passes");
    await page.says(/It passes\.|It does not pass yet\./);
    assert.match(await page.text(), /It passes\./);
    assert.equal((await focused(page)).id, "spray-verdict");
    const keys = await figures(page);
    for (const [what, near] of Object.entries(NEAR)) {
      assert(Math.abs(keys[what] - finger[what]) <= near, `${what}: ${keys[what]} by keys, ${finger[what]} by finger`);
    }
    await page.shot("spray-keys-alone");
  }));
