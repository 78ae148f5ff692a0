// The program comes in two parts: whatever happens to the rest on its way, what needs it works or the page says why not.
import assert from "node:assert/strict";
import { test } from "node:test";
import { START } from "./apprentice.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { Seed } from "./seed.mjs";

const REST = /\/rest-\w+\.wasm$/;
/** Has the rest come when the test calls `letCome`, as late as on a slow tablet, and be waited for as long as that takes. */
const LATE = `const soon = setTimeout;
  globalThis.setTimeout = (does, after, ...how) => soon(does, after === 10_000 ? 1_000_000 : after, ...how);
  const first = WebAssembly.instantiateStreaming;
  WebAssembly.instantiateStreaming = (...how) => {
    WebAssembly.instantiateStreaming = async (...rest) => {
      await new Promise((come) => { globalThis.letCome = come; });
      return first.apply(WebAssembly, rest);
    };
    return first.apply(WebAssembly, how);
  };`;
const WHOLE = "return stepboard.rest.first.ready.value === 1";
const comesLate = (page) => page.until("the rest to be asked for", () => page.driver.executeScript("return globalThis.letCome && (letCome(), true)"));
const marked = (page, name) => page.driver.executeScript("return performance.getEntriesByName(arguments[0]).length", name);

test("a host that calls the rest something else", () => {
  let asked = 0;
  const before = (request, response) => {
    if (!REST.test(request.url) || asked++ > 0) return false;
    response.writeHead(200, { "Content-Type": "text/plain" }).end("not what was asked for");
    return true;
  };
  return journey("rest-late", SIZES[0], async (page) => {
    await page.until("the first screen", () => marked(page, "usable"));
    await page.press("link", "Bench");
    await page.says("Dew point");
    assert.equal(await marked(page, "rest-missed"), 0);
    assert(asked > 1);
  }, { before });
});

testWith("before", "where the rest comes only when it is called, the page waits for it, without a network too", () =>
  journey("rest-called", SIZES[0], async (page) => {
    await page.kept();
    await page.browser.before(`const first = WebAssembly.instantiateStreaming;
      WebAssembly.instantiateStreaming = (...how) => {
        WebAssembly.instantiateStreaming = () => Promise.reject(new Error("tried"));
        return first.apply(WebAssembly, how);
      };`);
    await page.goOffline();
    await page.reload();
    await page.press("link", "Bench");
    await page.says("Dew point");
    assert.equal(await marked(page, "rest-missed"), 1, "it was missed once, and then there");
  }));

test("where the rest cannot be had the page says so, and goes on once it can", () => {
  let gone = true;
  const before = (request, response) => {
    if (!REST.test(request.url) || !gone) return false;
    response.writeHead(503).end();
    return true;
  };
  return journey("rest-gone", SIZES[0], async (page) => {
    await page.says("Part of Stepboard could not be loaded");
    await page.shot("rest-gone");
    gone = false;
    await page.press("button", "Load the page anew");
    await page.press("link", "Bench");
    await page.says("Dew point");
    await page.listen();
    // A program of which a part is missing stops wherever it was: that is what was tried.
    page.problems = page.problems.filter((problem) => !/503|could not be loaded|panicked|unreachable/.test(problem));
  }, { before });
});

test("the first screen of a tablet that is in use needs nothing of the rest either", () =>
  journey("rest-not-missed", SIZES[0], async (page) => {
    const seed = new Seed("0123456789abcdef", "", "");
    for (let nth = 0; nth < 30; nth += 1) seed.answer(["dew-point", "surface-gap", "warm-enough"][nth % 3], nth % 5 > 0);
    await seed.put(page);
    await page.reload();
    await page.until("the first screen", () => marked(page, "usable"));
    await page.driver.executeAsyncScript("stepboard.there().then(arguments[arguments.length - 1])");
    assert.equal(await marked(page, "rest-missed"), 0, "see tools/later.mjs");
  }));

const COMING = "One moment: this screen is on its way.";

/** What somebody may do on the first screen, what is there once the rest is, and whether that is another screen. */
const DONE_EARLY = [
  [(page) => page.press("link", "Bench"), (page) => page.says("Work a figure out"), true],
  [(page) => page.press("button", /more cautions?$/), (page) => page.one("button", "Close")],
  [async (page) => {
    await page.type(/^Your name/, "Ines");
    await page.press("button", "Use it");
  }, (page) => page.says("Ines works now: answers are kept under this name.")],
  // Last: with a card on the desk the first screen waits for the rest.
  [(page) => page.press("button", START), (page) => page.one("button", /^(Hand it in|Not enough is told)/), true],
];

testWith("before", "what is done on the first screen while the rest is on its way needs nothing of it", { timeout: 240_000 }, () =>
  journey("rest-early", SIZES[0], async (page) => {
    await page.browser.before(LATE);
    for (const [does, comes, other = false] of DONE_EARLY) {
      await page.driver.get("about:blank");
      await page.load();
      await page.until("the first screen", () => marked(page, "usable"));
      await does(page);
      if (other) {
        await page.says(COMING);
        await page.shot("rest-coming");
      }
      await comesLate(page);
      await comes(page);
      assert(!(await page.text()).includes(COMING), "it is there");
      assert.equal(await marked(page, "rest-missed"), 0, `see tools/later.mjs: ${does}`);
    }
  }));

testWith("before", "where nothing can be had at once, the page begins anew with what was on its way, and only once", () =>
  journey("rest-anew", SIZES[0], async (page) => {
    await page.browser.before(`${LATE}
      const send = XMLHttpRequest.prototype.send;
      XMLHttpRequest.prototype.send = function () { if (/rest-/.test(this.asked)) throw new Error("nothing at once"); return send.apply(this, arguments); };
      const open = XMLHttpRequest.prototype.open;
      XMLHttpRequest.prototype.open = function (way, address, later) { this.asked = address; return open.call(this, way, address, later); };`);
    const missed = "try { stepboard.rest.bring() } catch {}";
    await page.reload();
    await page.until("the first screen", () => marked(page, "usable"));
    await page.driver.executeScript(missed);
    await page.says("Part of Stepboard could not be loaded");
    await comesLate(page);
    await page.one("button", START);
    await page.driver.executeScript(`window.same = true; ${missed}`);
    await page.says("Part of Stepboard could not be loaded");
    await comesLate(page);
    await page.until("the rest", () => page.driver.executeScript(WHOLE));
    await page.kept();
    assert(await page.driver.executeScript("return window.same"), "it began anew again");
    await page.one("button", "Load the page anew");
  }));
