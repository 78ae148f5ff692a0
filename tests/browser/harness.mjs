// A browser on the built app: starts the server and the browser, and says what was seen that should not be.
//
// ENGINE says which browser (engines/pick.mjs); a test names none. What not each can do is asked for with `testWith`.
import assert from "node:assert/strict";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { serve } from "../../tools/serve.mjs";
import { dist, root } from "../../tools/shell.mjs";
import { POWERS, engine } from "./engines/pick.mjs";

/** The screens that the app is made for, portrait tablet first. */
export const SIZES = [
  { name: "portrait", width: 768, height: 1024 },
  { name: "landscape", width: 1024, height: 768 },
  { name: "phone", width: 390, height: 844 },
];

/** Longest wait for anything on the page, in milliseconds: generous, since two cores may be busy. */
const WAIT = 20_000;
const SHOTS = join(root, "tests", "browser", "shots", engine.shots);
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** Findings that fail a test; slighter ones are left to the eye. */
const GRAVE = ["serious", "critical"];
const IN_VIEW = `const one = document.querySelector(arguments[0]).getBoundingClientRect();
  const middle = document.querySelector(".middle").getBoundingClientRect();
  return one.height > 0 && one.top >= Math.max(middle.top, 0) && one.bottom <= Math.min(middle.bottom, innerHeight);`;
/** How the name of a file ends that is still being saved. */
const PART = /\.(crdownload|part|wkdownload)$/;
/** Tests that this engine cannot do, told at the end. */
const untried = [];

/** A test that needs more of a browser than each can do (`POWERS`, words between spaces): where this one cannot, it is told and not run. */
export function testWith(powers, name, ...how) {
  const lacking = powers.split(" ").filter((power) => {
    assert(power in POWERS, `no power ${power}`);
    return !engine.can[power];
  });
  if (lacking.length === 0) test(name, ...how);
  else untried.push(`${name}: needs ${lacking.map((power) => POWERS[power]).join(", ")}`);
}

process.once("exit", () => {
  const unheard = ["errors", "requests"].filter((power) => !engine.can[power]).map((power) => POWERS[power]);
  if (unheard.length > 0) console.log(`not heard in ${engine.name}: ${unheard.join(", ")}`);
  if (untried.length > 0) console.log(`not run in ${engine.name}, ${untried.length}:\n  ${untried.join("\n  ")}`);
});

/** Opens the built app, fresh, on a screen of that size. Close it with `stop`. */
export async function open(size = SIZES[0], { path = "", reducedMotion = false, before } = {}) {
  assert(existsSync(join(dist, "index.html")), "dist/ is not built: run `make dist`");
  const folder = mkdtempSync(join(tmpdir(), "stepboard-"));
  const told = { size, reducedMotion, profile: join(folder, "profile"), downloads: join(folder, "saved") };
  for (const place of [told.profile, told.downloads]) mkdirSync(place);
  const browser = await engine.start(told);
  const { server, port } = await serve(dist, 0, before);
  const page = new Page(browser, told, server, `http://127.0.0.1:${port}/`);
  Object.assign(page, { path, folder });
  try {
    await page.load();
    return page;
  } catch (error) {
    await page.stop();
    throw error;
  }
}

/** Runs a journey on a fresh app and closes it, whatever happens; its end leaves a picture, and a failure one of its own. */
export async function journey(name, size, steps, options) {
  const page = await open(size, options);
  try {
    await steps(page);
    await page.assertClean();
    await page.shot(`${name}-end`);
  } catch (error) {
    await page.shot(`${name}-failed`).catch(() => {});
    throw error;
  } finally {
    await page.stop();
  }
}

export class Page {
  constructor(browser, told, server, address) {
    Object.assign(this, { browser, told, server, address, size: told.size });
    this.online = true;
    this.problems = [];
    this.elsewhere = [];
  }

  get driver() {
    return this.browser.driver;
  }

  load() {
    return this.driver.get(this.address + this.path);
  }

  /** Loads it anew as somebody does who pulls the page down: a service worker answers. */
  reload() {
    return this.browser.reload();
  }

  /** Ends the browser at once, as a tablet does that runs out of memory. What waits for something on the page waits no more. */
  async end() {
    this.ended = true;
    await this.browser.end();
  }

  /** Starts it again on what it had stored. */
  async again() {
    this.browser = await engine.start(this.told);
    this.ended = false;
    await this.load();
  }

  /** Presses a button that saves a file; gives the path of the file once it is whole. */
  async save(button) {
    const there = () => readdirSync(this.told.downloads);
    const before = there();
    await this.press("button", button);
    const whole = (name) => !PART.test(name) && statSync(join(this.told.downloads, name)).size > 0;
    const fresh = () => {
      const now = there().filter((name) => !before.includes(name));
      return !now.some((name) => PART.test(name)) && now.find(whole);
    };
    return join(this.told.downloads, await this.until(`a file of “${button}”`, fresh));
  }

  /** Waits until `check` gives something true and gives that; an error inside means "not yet". */
  async until(what, check, wait = WAIT) {
    let last;
    const end = Date.now() + wait;
    do {
      if (this.ended) throw new Error("the browser was ended");
      try {
        const value = await check();
        if (value) return value;
      } catch (error) {
        last = error;
      }
      await new Promise((done) => setTimeout(done, 50));
    } while (Date.now() < end);
    const text = await this.text().catch(() => "");
    throw new Error(`waited in vain for ${what}${last ? ` (${last.message})` : ""}; the page says: ${text.slice(0, 600)}`);
  }

  /** What a reader sees. */
  text() {
    return this.driver.executeScript("return document.body.innerText");
  }

  /** Shown elements of a role, by part of their accessible name or a pattern for it. */
  async all(role, name = "") {
    // What is not shown has no name in some browsers, and asking each element costs time.
    const drawn = await this.driver.executeScript(DRAWN, ROLES[role] ?? `[role="${role}"]`);
    const matching = [];
    for (const element of drawn) {
      const label = (await element.getAccessibleName()).replace(/\s+/g, " ").trim();
      const fits = name instanceof RegExp ? name.test(label) : label.includes(name);
      if (fits && (await (await this.target(element)).isDisplayed())) matching.push(element);
    }
    return matching;
  }

  /** The first of them, waited for. */
  one(role, name) {
    return this.until(`${role} ${name ?? ""}`, async () => (await this.all(role, name))[0]);
  }

  /** What a finger would touch: a small box or ring is drawn by its label. */
  target(element) {
    return this.driver.executeScript(`${TARGET} return target(arguments[0])`, element);
  }

  async press(role, name) {
    await this.touch(await this.one(role, name));
  }

  async touch(element) {
    const target = await this.target(element);
    await this.driver.executeScript("arguments[0].scrollIntoView({ block: 'center' })", target);
    await target.click();
  }

  /** Types into a field that is empty or not. */
  async type(name, text) {
    const field = await this.one("textbox", name);
    await field.clear();
    // WebKit takes no empty text.
    if (text !== "") await field.sendKeys(text);
  }

  /** Picks from a list by the words shown. */
  async choose(name, text) {
    const list = await this.one("combobox", name);
    await list.sendKeys(text);
  }

  /** Waits until the page says something; longer where it has to work something out first. */
  says(text, wait) {
    const fits = (now) => (text instanceof RegExp ? text.test(now) : now.includes(text));
    return this.until(`the words ${text}`, async () => fits(await this.text()), wait);
  }

  /** Sets the clock of the page to a local time, from which it goes on, and loads the page anew. */
  async setClock(local) {
    const shift = Date.parse(local) - Date.now();
    await this.takeClockBack?.();
    this.takeClockBack = await this.browser.before(`{ const Real = Date; globalThis.Date = class extends Real {
      constructor(...parts) { if (parts.length) super(...parts); else super(Real.now() + ${shift}); }
      static now() { return Real.now() + ${shift}; }
    }; }`);
    await this.reload();
  }

  async has(role, name) {
    return (await this.all(role, name)).length > 0;
  }

  /** Sends keys to whatever has the focus. */
  keys(...keys) {
    return this.driver.actions().sendKeys(...keys).perform();
  }

  async shot(name) {
    await this.driver.executeAsyncScript(PAINTED);
    this.keep(`${name}-${this.size.name}.png`, Buffer.from(await this.driver.takeScreenshot(), "base64"));
  }

  /** Keeps something that was seen, to be looked at. */
  keep(name, bytes) {
    mkdirSync(SHOTS, { recursive: true });
    writeFileSync(join(SHOTS, name), bytes);
  }

  /** Whether all of what a selector finds first can be seen without scrolling. */
  inView(selector) {
    return this.driver.executeScript(IN_VIEW, selector);
  }

  /** The page must not need sideways scrolling. */
  async assertFits(where) {
    const parts = await this.driver.executeScript(`
      // What hides what is too wide does not scroll sideways.
      const scrolls = (one) => getComputedStyle(one).overflowX !== "hidden";
      const parts = [document.documentElement, ...[...document.querySelectorAll(".middle")].filter(scrolls)];
      return parts.map((one) => [one.className || "page", one.clientWidth, one.scrollWidth]);`);
    for (const [part, has, needs] of parts) assert(needs <= has, `${where}: ${part} is ${needs} px wide on a screen of ${has}`);
  }

  /** No serious or critical finding of the accessibility check. */
  async assertAccessible(where) {
    if (!(await this.driver.executeScript("return typeof window.axe === 'object'"))) {
      await this.driver.executeScript(AXE);
    }
    const result = await this.driver.executeAsyncScript(
      "const done = arguments[arguments.length - 1];" +
        "axe.run(document, { resultTypes: ['violations'] }).then(done, (error) => done({ error: String(error) }));",
    );
    assert(!result.error, `${where}: ${result.error}`);
    const grave = result.violations.filter(({ impact }) => GRAVE.includes(impact));
    const told = grave.map(({ id, help, nodes }) => `${id}: ${help}\n  ${nodes.map(({ html }) => html).join("\n  ")}`);
    assert.equal(grave.length, 0, `${where}:\n${told.join("\n")}`);
  }

  /** A screen as it should be: it fits, is accessible, and a picture is taken of it. */
  async seen(name) {
    await this.assertFits(name);
    await this.assertAccessible(name);
    await this.shot(name);
  }

  /** The same in each size of screen, one after another. */
  async seenInEach(name) {
    const own = this.size;
    for (const size of SIZES) {
      await this.browser.size(size);
      this.size = size;
      await this.seen(name);
    }
    await this.browser.size(own);
    this.size = own;
  }

  /** Waits until all that works without a network is kept here; the worker keeps it last. */
  kept() {
    const kept = "return document.documentElement.dataset.offline === 'ready'";
    return this.until("the files to be kept", () => this.driver.executeScript(kept));
  }

  /** Takes the network away: the server stops. */
  async goOffline() {
    this.online = false;
    await new Promise((done) => {
      this.server.close(done);
      this.server.closeAllConnections();
    });
  }

  /** Gives the network back: the server starts again at the same address. */
  async goOnline(before) {
    ({ server: this.server } = await serve(dist, Number(new URL(this.address).port), before));
    this.online = true;
  }

  /** Reads what the browser noted, which is gone once read. */
  async listen() {
    const { errors, requests } = await this.browser.heard();
    this.problems.push(...errors);
    this.elsewhere.push(...requests.filter((url) => /^https?:/.test(url) && !url.startsWith(this.address)));
  }

  /** Nothing went wrong in the console and nothing was asked of another host. */
  async assertClean() {
    await this.listen();
    assert.deepEqual(this.elsewhere, [], "asked of other hosts");
    assert.deepEqual(this.problems, [], "errors in the console");
  }

  async stop() {
    await this.browser.stop();
    if (this.online) {
      this.server.closeAllConnections();
      this.server.close();
    }
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Waits for the frame after the next, in which stands what was said last; a page that is not seen has no frames. */
const PAINTED = "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(done)); setTimeout(done, 500)";
const TARGET = "const target = (e) => (e.matches('[type=radio], [type=checkbox]') ? e.closest('label') ?? e : e);";
/** Elements of a selector that take room on the page. */
const DRAWN = `${TARGET} return [...document.querySelectorAll(arguments[0])].filter((e) => target(e).getClientRects().length > 0)`;

/** Elements that have a role without saying so. */
const ROLES = {
  button: 'button, [role="button"], summary',
  checkbox: 'input[type="checkbox"], [role="checkbox"]',
  combobox: 'select, [role="combobox"]',
  img: 'img, [role="img"]',
  heading: 'h1, h2, h3, h4, [role="heading"]',
  link: "a[href]",
  radio: 'input[type="radio"], [role="radio"]',
  textbox: 'input:not([type]), input[type="text"], input[type="number"], textarea, [role="textbox"], [role="spinbutton"]',
};
