// Tests that are done on a panel, and places that are pointed at by keys: what is seen goes with what is said.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { Key } from "selenium-webdriver";
import { root } from "../../tools/shell.mjs";
import { verdict } from "./apprentice.mjs";
import { lay } from "./desk.mjs";
import { SIZES, journey } from "./harness.mjs";
import { fine, other, picture, run } from "./pictures.mjs";

/** Where the lamp hangs before it is moved, where a thumbnail and where a cloth are pressed on: mm from the left and from the far edge. */
const FIRST = [66, 45];
const NAIL = [74, 36];
const CLOTH = [43, 56];
/** A wiped band begins and ends so far from the edges, mm. */
const BAND = [13, 77];
/** Tabs from one end of a card to the other, at most. */
const TABS = 80;

/** How each test is seen on a panel, by the words of its button. */
const VIEWS = views();

function views() {
  const texts = readdirSync(join(root, "content/text/en")).map((name) => readFileSync(join(root, "content/text/en", name), "utf8")).join("\n");
  const facts = readFileSync(join(root, "content/facts/fault.toml"), "utf8").split("[[fact]]").filter((fact) => fact.includes("probe ="));
  const names = (key) => [...texts.matchAll(new RegExp(`^"?${key}"? = "(.+)"$`, "gm"))].map(([, name]) => name);
  return new Map(facts.flatMap((fact) => {
    const view = fact.match(/^view = "(.+)"$/m)?.[1] ?? "";
    return names(fact.match(/^key = "(.+)"$/m)[1]).map((name) => [name, view]);
  }));
}

const lamp = (page) => run(page, `return {
  kind: document.querySelector(".panel-lamps .picked").innerText.trim(),
  at: [...document.querySelectorAll(".lamp-rail")].map((rail) => Number(rail.getAttribute("aria-valuenow"))),
  closer: !document.querySelector(".panel-glass").hidden,
}`);

/** The tests at hand: those that are seen alike one after the other. */
const tests = (page) => run(page, `return [...document.querySelectorAll(".test")].map((test) => test.querySelector(".words").innerText)`)
  .then((names) => names.map((name) => ({ name, view: VIEWS.get(name) })).sort((a, b) => (a.view > b.view ? 1 : -1)));

const said = (page, name) => run(page, `const test = [...document.querySelectorAll(".test")].find((one) => one.innerText.includes(arguments[0]));
  return test.querySelector(".shows").hidden ? "" : test.querySelector(".shows").innerText`, name);

/** What a test has to have done with lamp, loupe and picture. */
async function assertSeen(page, { name, view }, before) {
  await page.until(`words of ${name}`, () => said(page, name));
  const is = async (what, wanted) => page.until(`${name}: ${what}`, async () => wanted(await lamp(page)));
  await is("the loupe", ({ closer }) => closer === (view === "loupe"));
  if (view === "raking") await is("low", ({ kind }) => kind === "Raking");
  if (view === "moved-lamp") await is("a small lamp", ({ kind }) => kind === "Small lamp");
  if (view === "pressed") await is("over the nail", ({ kind, at }) => kind === "Overhead" && `${at}` === `${NAIL}`);
  if (view === "wiped") await is("over the band", ({ kind, at }) => kind === "Small lamp" && at[1] >= BAND[0] && at[1] <= BAND[1]);
  if (view === "cloth") await is("over the cloth", ({ kind, at }) => kind === "Overhead" && `${at}` === `${CLOTH}`);
  if (["wetted", "aged", "loupe"].includes(view)) await is("as it was", ({ kind, at }) => kind === "Overhead" && `${at}` === `${FIRST}`);
  if (["raking", "moved-lamp", "pressed", "wiped"].includes(view)) await other(page, before);
}

test("each test that is done lays lamp and loupe as it needs them, whatever was left open before", () =>
  journey("tried", SIZES[1], async (page) => {
    // Which card has which tests at hand is up to the model: on and on, until each way to see one was met.
    const SEEDS = 40;
    const ways = ["raking", "loupe", "moved-lamp", "pressed", "cloth", "wiped", "aged"];
    const seen = new Set();
    let again = 0;
    for (let seed = 1; seed <= SEEDS && (again === 0 || ways.some((way) => !seen.has(way))); seed += 1) {
      await lay(page, "panel-diagnosis", seed);
      await fine(page);
      const before = await picture(page);
      let last = "";
      for (const one of await tests(page)) {
        assert.notEqual(one.view, undefined, `${one.name} is among the facts`);
        await page.press("button", one.name);
        await assertSeen(page, one, before);
        again += one.view !== "" && one.view === last ? 1 : 0;
        last = one.view;
        seen.add(one.view);
        // Left as no test leaves it.
        if ((await lamp(page)).closer) await page.press("button", "Closer");
        await page.press("radio", ["moved-lamp", "wiped"].includes(one.view) ? "Raking" : "Small lamp");
      }
      const words = await run(page, "return [...document.querySelectorAll('.shows')].every((words) => words.innerText !== '')");
      assert(words, "all that was found out stays in words");
    }
    for (const way of ways) assert(seen.has(way), `no test is seen ${way}`);
    assert(again > 0, "two tests that are seen alike came one after the other");
  }));

for (const size of SIZES) {
  test(`the panel is in view while its tests are done (${size.name})`, () =>
    journey("tried-in-view", size, async (page) => {
      await lay(page, "panel-diagnosis", 2);
      await fine(page);
      for (const { name } of await tests(page)) {
        await page.press("button", name);
        const shown = await run(page, `const bench = document.querySelector(".panel-face").getBoundingClientRect();
          const middle = document.querySelector(".middle").getBoundingClientRect();
          return (Math.min(bench.bottom, middle.bottom) - Math.max(bench.top, middle.top)) / bench.height`);
        assert(shown > 0.9, `${name}: ${Math.round(100 * shown)} of a hundred of the panel are in view`);
        const button = await run(page, `const at = document.activeElement.getBoundingClientRect();
          const on = document.elementFromPoint(at.x + at.width / 2, at.y + at.height / 2);
          return document.activeElement.contains(on)`);
        assert(button, `${name} is not hidden by the panel`);
      }
      await page.assertFits("a panel under test");
      await page.shot("tried");
    }));
}

test("a place is marked and handed in by keys alone", () =>
  journey("pointed-by-keys", SIZES[1], async (page) => {
    await lay(page, "panel-point", 3);
    await fine(page);
    const tabTo = async (what, there) => {
      for (let tab = 0; tab < TABS; tab += 1) {
        if (await run(page, `return ${there}`)) return;
        await page.keys(Key.TAB);
      }
      assert.fail(`no way to ${what} by Tab`);
    };
    await tabTo("the parts of the panel", "document.activeElement.matches('[role=gridcell]')");
    const at = () => run(page, "const at = document.querySelector('.panel-mark .at'); return at.closest('[hidden]') ? '' : at.getAttribute('x') + at.getAttribute('y')");
    assert.equal(await at(), "");
    await page.keys(Key.ARROW_RIGHT, Key.ENTER);
    const first = await page.until("a mark", at);
    await page.says("Or walk there with the arrow keys and press Enter.");
    await page.keys("z");
    // Enter in the panel marks and hands nothing in, even where all else is told.
    await page.keys(Key.ARROW_DOWN, Key.ENTER);
    await page.until("another mark", async () => (await at()) !== first);
    await tabTo("Hand it in", "document.activeElement.matches('.hand-in .next-step')");
    await page.keys(Key.ENTER);
    assert.match(await verdict(page), /^(Right|Wrong)/);
    await page.says(/mm from the left, \d+ mm from the top/);
  }));

test("a fault that is not shown on the panel at hand says what it changed", () =>
  journey("panel-moved-on", SIZES[0], async (page) => {
    await page.driver.get(`${page.address}#/panel`);
    await fine(page);
    await page.choose("Fault", "Raised grain");
    await page.says(/Finish.* changed: Raised grain does not show on what was chosen before\./);
    await page.choose("How much", "Severe");
    await page.until("nothing more is said", async () => !/changed: /.test(await page.text()));
  }));
