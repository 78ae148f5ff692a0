// A browser on the built app: starts the server and the browser, and says what was seen that should not be.
//
// CHROME and CHROMEDRIVER name the programs where they are not found by themselves.
import assert from "node:assert/strict";
import { accessSync, constants, existsSync, mkdirSync, mkdtempSync, readFileSync, readlinkSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { Browser, Builder, By, logging } from "selenium-webdriver";
import { Options, ServiceBuilder } from "selenium-webdriver/chrome.js";
import { serve } from "../../tools/serve.mjs";
import { dist, root } from "../../tools/shell.mjs";

/** The screens that the app is made for, portrait tablet first. */
export const SIZES = [
  { name: "portrait", width: 768, height: 1024 },
  { name: "landscape", width: 1024, height: 768 },
  { name: "phone", width: 390, height: 844 },
];

/** Longest wait for anything on the page, in milliseconds: generous, since two cores may be busy. */
const WAIT = 20_000;
/** How often a browser is started before it counts as one that does not start, and what a driver says that gave up. */
const STARTS = 5;
const GAVE_UP = /terminated early/;
const SHOTS = join(root, "tests", "browser", "shots");
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** Findings that fail a test; slighter ones are left to the eye. */
const GRAVE = ["serious", "critical"];

function program(variable, names) {
  if (process.env[variable]) return process.env[variable];
  for (const name of names) {
    for (const folder of (process.env.PATH ?? "").split(delimiter)) {
      try {
        accessSync(join(folder, name), constants.X_OK);
        return join(folder, name);
      } catch {
        // Not in this folder.
      }
    }
  }
  throw new Error(`none of ${names.join(", ")} found: run tools/setup.sh test, or set ${variable}`);
}

/** Opens the built app, fresh, on a screen of that size. Close it with `stop`. */
export async function open(size = SIZES[0], { path = "", reducedMotion = false, before } = {}) {
  assert(existsSync(join(dist, "index.html")), "dist/ is not built: run `make dist`");
  const profile = mkdtempSync(join(tmpdir(), "stepboard-"));
  const options = optionsOf(size, profile, reducedMotion);
  const driver = await start(options);
  const { server, port } = await serve(dist, 0, before);
  const page = new Page(driver, server, profile, `http://127.0.0.1:${port}/`, size);
  Object.assign(page, { options, path });
  try {
    await page.load();
    return page;
  } catch (error) {
    await page.stop();
    throw error;
  }
}

/** Starts a browser. Two drivers that start at once may pick the same port: the one that gave up starts again. */
async function start(options) {
  const service = () => new ServiceBuilder(program("CHROMEDRIVER", ["chromedriver"]));
  for (let tries = 1; ; tries += 1) {
    try {
      return await new Builder().forBrowser(Browser.CHROME).setChromeOptions(options).setChromeService(service()).build();
    } catch (error) {
      if (tries === STARTS || !GAVE_UP.test(error.message)) throw error;
    }
  }
}

function optionsOf(size, profile, reducedMotion) {
  const options = new Options();
  options.setChromeBinaryPath(program("CHROME", ["chromium", "chromium-browser", "google-chrome"]));
  options.addArguments(
    "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run",
    "--no-default-browser-check", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--disable-extensions", "--metrics-recording-only", "--force-device-scale-factor=1", "--lang=en-GB",
    `--user-data-dir=${profile}`, `--window-size=${size.width},${size.height}`,
    ...(reducedMotion ? ["--force-prefers-reduced-motion"] : []),
  );
  const log = new logging.Preferences();
  log.setLevel(logging.Type.BROWSER, logging.Level.ALL);
  log.setLevel(logging.Type.PERFORMANCE, logging.Level.ALL);
  options.setLoggingPrefs(log);
  return options;
}

/** Runs a journey on a fresh app and closes it, whatever happens; a failure leaves a picture. */
export async function journey(name, size, steps, options) {
  const page = await open(size, options);
  try {
    await steps(page);
    await page.assertClean();
  } catch (error) {
    await page.shot(`${name}-failed`).catch(() => {});
    throw error;
  } finally {
    await page.stop();
  }
}

export class Page {
  constructor(driver, server, profile, address, size) {
    Object.assign(this, { driver, server, profile, address, size });
    this.online = true;
    this.problems = [];
    this.elsewhere = [];
  }

  /** Loads the app in a browser that has just started. */
  async load() {
    const { width, height } = this.size;
    // The window includes no frame when headless, yet older browsers count one: the page's own size is what is set.
    await this.driver.sendDevToolsCommand("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: false });
    await this.driver.get(this.address + this.path);
  }

  /** Ends the browser at once, as a tablet does that runs out of memory. What waits for something on the page waits no more. */
  async end() {
    this.ended = true;
    // The browser tells in its profile which process it is.
    const lock = join(this.profile, "SingletonLock");
    const [, pid] = readlinkSync(lock).match(/-(\d+)$/);
    process.kill(Number(pid), "SIGKILL");
    await this.driver.quit().catch(() => {});
    rmSync(lock, { force: true });
  }

  /** Starts it again on what it had stored. */
  async again() {
    this.driver = await start(this.options);
    this.ended = false;
    await this.load();
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
    const found = await this.driver.findElements(By.css(ROLES[role] ?? `[role="${role}"]`));
    const matching = [];
    for (const element of found) {
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
    return this.driver.executeScript(
      "const e = arguments[0]; return e.matches('[type=radio], [type=checkbox]') ? e.closest('label') ?? e : e",
      element,
    );
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
    await field.sendKeys(text);
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
    if (this.clock) {
      await this.driver.sendDevToolsCommand("Page.removeScriptToEvaluateOnNewDocument", { identifier: this.clock });
    }
    const source = `{ const Real = Date; globalThis.Date = class extends Real {
      constructor(...parts) { if (parts.length) super(...parts); else super(Real.now() + ${shift}); }
      static now() { return Real.now() + ${shift}; }
    }; }`;
    const added = await this.driver.sendAndGetDevToolsCommand("Page.addScriptToEvaluateOnNewDocument", { source });
    this.clock = added.identifier;
    await this.driver.navigate().refresh();
  }

  async has(role, name) {
    return (await this.all(role, name)).length > 0;
  }

  /** Sends keys to whatever has the focus. */
  keys(...keys) {
    return this.driver.actions().sendKeys(...keys).perform();
  }

  async shot(name) {
    this.keep(`${name}-${this.size.name}.png`, Buffer.from(await this.driver.takeScreenshot(), "base64"));
  }

  /** Keeps something that was seen, to be looked at. */
  keep(name, bytes) {
    mkdirSync(SHOTS, { recursive: true });
    writeFileSync(join(SHOTS, name), bytes);
  }

  /** The page must not need sideways scrolling. */
  async assertFits(where) {
    const [has, needs] = await this.driver.executeScript(
      "return [document.documentElement.clientWidth, document.documentElement.scrollWidth]",
    );
    assert(needs <= has, `${where}: ${needs} px wide on a screen of ${has}`);
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

  /** Reads the browser's logs, which are gone once read. */
  async listen() {
    const logs = this.driver.manage().logs();
    for (const { level, message } of await logs.get(logging.Type.BROWSER)) {
      if (level.value >= logging.Level.SEVERE.value) this.problems.push(message);
    }
    for (const entry of await logs.get(logging.Type.PERFORMANCE)) {
      const { method, params } = JSON.parse(entry.message).message;
      if (method !== "Network.requestWillBeSent") continue;
      const { url } = params.request;
      if (/^https?:/.test(url) && !url.startsWith(this.address)) this.elsewhere.push(url);
    }
  }

  /** Nothing went wrong in the console and nothing was asked of another host. */
  async assertClean() {
    await this.listen();
    assert.deepEqual(this.elsewhere, [], "asked of other hosts");
    assert.deepEqual(this.problems, [], "errors in the console");
  }

  async stop() {
    await this.driver.quit().catch(() => {});
    if (this.online) {
      this.server.closeAllConnections();
      this.server.close();
    }
    rmSync(this.profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

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
