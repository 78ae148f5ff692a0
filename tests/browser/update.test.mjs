// A new version of the app: told, never swapped in by itself; one that came by half or broken leaves the old one whole.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, name, solution, stored } from "./checks.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { goTo } from "./office.mjs";
import { Host, NEXT, below } from "./versions.mjs";

const OLD = "Stepboard";
const title = (page) => page.driver.getTitle();

/** Asks the worker for what is new, and says how that ended: `waiting`, or why nothing waits. */
function lookForNew(page) {
  return page.driver.executeAsyncScript(`
    const done = arguments[arguments.length - 1];
    navigator.serviceWorker.getRegistration().then(async (registration) => {
      const found = new Promise((tell) => registration.addEventListener("updatefound", () => tell(registration.installing)));
      await registration.update();
      const worker = registration.waiting ?? await found;
      if (worker.state === "installing") await new Promise((tell) => worker.addEventListener("statechange", tell, { once: true }));
      done(registration.waiting ? "waiting" : worker.state);
    }).catch((error) => done(String(error)));`);
}

test("a new version is told of and loaded when that is asked for, not before", () => {
  const host = new Host();
  return journey("update", SIZES[0], async (page) => {
    await page.kept();
    await page.driver.executeScript("window.same = true");
    host.state = "new";
    assert.equal(await lookForNew(page), "waiting");
    await page.says("A new version is ready. Nothing changes until it is loaded.");
    assert(await page.driver.executeScript("return window.same"), "the page was loaded anew by itself");
    await page.assertAccessible("home with a new version");
    await page.shot("new-version");
    await page.reload();
    await page.says("A new version is ready.");
    assert.equal(await title(page), OLD, "a page that is loaded anew while nobody asked");
    await page.press("button", "Load it now");
    await page.until("the new version", async () => (await title(page)) === NEXT);
    await page.kept();
    await page.goOffline();
    await page.reload();
    assert.equal(await title(page), NEXT, "without a network");
  }, { before: host.before });
});

test("a new version that comes while a check is open swaps nothing: the same card lies there, and home tells of the version", () => {
  const host = new Host();
  return journey("update-check", SIZES[0], async (page) => {
    await page.kept();
    await name(page, "Ana");
    await begin(page, "Gun set up, tested and cleaned");
    await solution(page);
    const { draft, events } = await stored(page);
    await page.driver.executeScript("window.same = true");
    host.state = "new";
    assert.equal(await lookForNew(page), "waiting");
    await page.says("no verdict yet");
    assert(await page.driver.executeScript("return window.same"), "the page was loaded anew by itself");
    const after = await stored(page);
    assert.deepEqual([after.draft.card, after.events], [draft.card, events]);
    await goTo(page, "#/");
    await page.says("A new version is ready.");
    await page.press("button", "Load it now");
    await page.until("the new version", async () => (await title(page)) === NEXT);
    await goTo(page, "#/check");
    await page.press("link", "Go on");
    await page.says("no verdict yet");
    assert.deepEqual((await stored(page)).draft.card, draft.card);
  }, { before: host.before });
});

for (const [state, what] of [["half", "whose page is still the old one"], ["gone", "of which a file is missing"], ["cut", "that breaks off"]]) {
  test(`an update ${what} leaves the old version whole, and the next visit tries again`, () => {
    const host = new Host();
    return journey(`update-${state}`, SIZES[0], async (page) => {
      await page.kept();
      host.state = state;
      assert.equal(await lookForNew(page), "redundant");
      await page.goOffline();
      await page.reload();
      await page.says("Step board");
      assert.equal(await title(page), OLD);
      await page.kept();
      await page.goOnline(host.before);
      host.state = "new";
      assert.equal(await lookForNew(page), "waiting");
      await page.says("A new version is ready.");
      await page.listen();
      // The browser itself says that a file was missing, and that the network was gone: that is what was tried.
      page.problems = page.problems.filter((problem) => !/404|ERR_|Failed to fetch|is not of this build/.test(problem));
    }, { before: host.before });
  });
}

test("a host that goes back to the version that runs, by half, takes nothing of it away", () => {
  const host = new Host();
  return journey("update-back", SIZES[0], async (page) => {
    await page.kept();
    host.state = "new";
    assert.equal(await lookForNew(page), "waiting");
    host.state = "back";
    const refused = await page.driver.executeAsyncScript(`
      const done = arguments[arguments.length - 1];
      navigator.serviceWorker.getRegistration().then(async (registration) => {
        const found = new Promise((tell) => registration.addEventListener("updatefound", () => tell(registration.installing), { once: true }));
        await registration.update();
        const worker = await found;
        while (worker.state === "installing") await new Promise((tell) => setTimeout(tell, 20));
        done(worker.state);
      }).catch((error) => done(String(error)));`);
    assert.equal(refused, "redundant", "the old version once more");
    await page.goOffline();
    await page.reload();
    await page.says("Step board");
    assert.equal(await title(page), OLD);
    await page.listen();
    page.problems = page.problems.filter((problem) => !/404|ERR_|Failed to fetch/.test(problem));
  }, { before: host.before });
});

test("it works from any folder of a host, without a network too", () =>
  journey("folder-of-host", SIZES[0], async (page) => {
    await page.kept();
    await page.reload();
    await page.goOffline();
    await page.driver.get(`${page.address}finish/room/#/bench`);
    await page.reload();
    await page.says("Dew point");
    const { pathname } = new URL(await page.driver.getCurrentUrl());
    assert.equal(pathname, "/finish/room/");
  }, { path: "finish/room/", before: below("finish/room") }));

testWith("manifest", "a home screen can hold it: its manifest, its icons", () =>
  journey("manifest", SIZES[0], async (page) => {
    const { errors, data, installabilityErrors } = await page.browser.manifest();
    assert.deepEqual(errors, []);
    const manifest = JSON.parse(data);
    assert.equal(manifest.display, "standalone");
    for (const { src, sizes } of manifest.icons) {
      const side = await page.driver.executeAsyncScript(
        "const done = arguments[1]; const image = new Image();" +
          "image.onload = () => done(image.naturalWidth); image.onerror = () => done(0); image.src = arguments[0];", src);
      assert(side > 0, `${src} is no picture`);
      if (sizes !== "any") assert.equal(`${side}x${side}`, sizes, src);
    }
    assert.deepEqual(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== "in-incognito"), []);
  }));
