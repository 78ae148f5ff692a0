// A decision of a walk, done on the screen by touch: what is picked has the names that the model writes.
import { execFileSync } from "node:child_process";
import { By } from "selenium-webdriver";
import { command } from "./checks.mjs";

/** What the command says of a walk as it is stored. */
export const asked = ({ walk, mode, seed, sheet, decisions }, ...words) =>
  JSON.parse(execFileSync(command, ["walk", ...words], { input: JSON.stringify({ walk, mode, seed, sheet, decisions }), encoding: "utf8" }));
/** The decisions of a right way from where a walk stands. */
export const right = (walk) => asked(walk, "--right").decisions.slice(walk.decisions.length);
/** Whether something of a selector is on the screen. */
export const shown = (page, css) => page.driver.findElements(By.css(css)).then((found) => found.length > 0);

/** Longest wait for a piece of the screen, milliseconds. */
const WAIT = 10_000;

/** Runs on the page: touches what has a selector once it is there; types a number. Says how often it touched. */
const TOUCH = `
  const [steps, wait, done] = arguments;
  const seen = (selector) => [...document.querySelectorAll(selector)].find((one) => one.offsetParent || one.closest("label")?.offsetParent);
  let taps = 0;
  const soon = () => new Promise((next) => setTimeout(next, 15));
  (async () => {
    for (const [selector, value] of steps) {
      const end = Date.now() + wait;
      let found = seen(selector);
      while (!found && Date.now() < end) { await soon(); found = seen(selector); }
      if (!found) return done({ wrong: "not there: " + selector });
      found.scrollIntoView({ block: "nearest" });
      if (typeof value === "string") {
        if (found.value === value) continue;
        // The field is touched, and each of its figures.
        taps += 1 + value.length;
        found.value = value;
        found.dispatchEvent(new InputEvent("input", { bubbles: true }));
      } else {
        const wanted = value ?? true;
        if (found.checked !== wanted) { taps += 1; found.click(); }
        // A mark of tape says that it was taken.
        const taken = () => !("checked" in found && found.labels?.length) || !found.isConnected || found.labels[0].classList.contains("picked") === wanted;
        while (!taken() && Date.now() < end) await soon();
        if (!taken()) return done({ wrong: "not taken: " + selector });
      }
      await soon();
    }
    done({ taps });
  })();`;

async function touch(page, steps) {
  if (page.finger) return page.finger.takes(steps);
  const { wrong, taps } = await page.driver.executeAsyncScript(TOUCH, steps, WAIT);
  page.taps = (page.taps ?? 0) + (taps ?? 0);
  if (wrong) throw new Error(`${wrong}; the page says: ${(await page.text()).slice(0, 800)}`);
}

/** Where each operation is done and whether it has values to be set: asked of the lists of the screen, once, and not counted. */
export async function places(page) {
  if (page.places) return page.places;
  page.places = {};
  const before = page.taps ?? 0;
  for (const spot of ["bench", "booth", "rack", "wheel"]) {
    await touch(page, [[`.walk-spots input[value="${spot}"]`]]);
    await page.until(`the list of the ${spot}`, () => page.driver.executeScript(
      "return document.querySelector('.walk-spots input:checked')?.value === arguments[0] && !!document.querySelector('.walk-ops')", spot));
    const names = await page.driver.executeScript(
      "return [...document.querySelectorAll('.walk-hand .walk-ops button')].map((one) => [one.value, one.classList.contains('walk-once')])");
    for (const [name, plain] of names) page.places[name] ??= { at: spot, plain };
  }
  page.taps = before;
  return page.places;
}

const spot = (name) => [`.walk-spots input[value="${name}"]`];
const row = (name) => [`.walk-hand .walk-ops .walk-op[value="${name}"]`];
const once = (name) => [`.walk-hand .walk-once[value="${name}"]`];
const DO = [".walk-do"];

/** A number as it is typed: a share in per cent. */
const figure = (ask, value) => String(ask === "overlap" ? Math.round(value * 100) : value);

/** What is touched for a decision, as the model writes it. */
async function steps(page, decision) {
  // What is put on and seen to in one visit is done in one.
  if (Array.isArray(decision)) return [...(await Promise.all(decision.map((one) => steps(page, one)))).flatMap((one) => one.slice(0, -1)), DO];
  if (decision === "hand-over") return [spot("rack"), row("hand-over"), DO];
  if (decision.work) {
    const { operation, parts, numbers = {}, picks = {} } = decision.work;
    const { at, plain } = (await places(page))[operation];
    const all = await page.driver.executeScript("return document.querySelectorAll('.walk-part').length");
    const picked = Array.from({ length: all }, (_, part) => [`.walk-part:nth-of-type(${part + 1}) input`, parts.includes(part)]);
    if (plain) return [spot(at), ...picked, once(operation)];
    return [
      spot(at), row(operation), ...picked,
      ...Object.entries(numbers).map(([ask, value]) => [`#walk-${ask}`, figure(ask, value)]),
      ...Object.entries(picks).map(([key, slug]) => [`#walk-choice-${key} input[value="${slug}"]`]),
      DO,
    ];
  }
  if (decision.wait === "morning") return [spot("rack"), once("wait-morning")];
  if (decision.wait?.until) return [spot("rack"), once(decision.wait.until)];
  if (decision.wait) return [spot("rack"), row("wait-hours"), ["#walk-wait", String(decision.wait.hours)], DO];
  if (decision.offer) {
    const { day_asked } = asked((await stored(page))[0]);
    // The day after the one that is asked for stands there first.
    const later = Array.from({ length: decision.offer.day - day_asked - 1 }, () => [".walk-hand .stepper button:last-of-type"]);
    return [spot("rack"), row("offer"), ...later, DO];
  }
  if (decision.wear) {
    const { respirator, sealed, suit, gloves, eyes } = decision.wear;
    return [
      spot("room"), [`input[name="mask"][value="${respirator ?? "nothing"}"]`], [`input[name="suit"][value="${suit}"]`],
      ["input[value=sealed]", sealed], ["input[value=gloves]", gloves], ["input[value=eyes]", eyes], DO,
    ];
  }
  if (decision.room) return [spot("room"), ...decision.room.map((duty) => [`.walk-room input[value="${duty}"]`, true]), DO];
  throw new Error(`no way to do ${JSON.stringify(decision)}`);
}

/** How many decisions the tablet has stored of the walk that was worked on last. */
export const stored = (page) => page.driver.executeAsyncScript(`
  const done = arguments[0];
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const all = asked.result.transaction("walks").objectStore("walks").getAll();
    all.onsuccess = () => {
      asked.result.close();
      const kept = all.result.map((text) => JSON.parse(text)).sort((a, b) => a.changed < b.changed ? 1 : -1);
      done(kept.map(({ id, person, saved }) => ({ id, person, ...saved })));
    };
  };`);

/** Changes what is kept of a walk behind the screen. */
export const store = (page, id, change) => page.driver.executeAsyncScript(`
  const [id, change, done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const transaction = asked.result.transaction("walks", "readwrite");
    const walks = transaction.objectStore("walks");
    walks.get(id).onsuccess = ({ target }) => {
      const kept = JSON.parse(target.result);
      Object.assign(kept.saved, change);
      walks.put(JSON.stringify(kept), id);
    };
    transaction.oncomplete = () => { asked.result.close(); done(); };
  };`, id, change);

/** Waits that are offered at one touch, hours, the longest first; a long one is made up of them by touch. */
const LONG_WAITS = [336, 168, 72, 24];

/** Does a decision and waits until it is stored. */
export async function decide(page, decision) {
  const long = page.finger && LONG_WAITS.find((hours) => decision.wait?.hours >= hours + 4);
  if (long) {
    await decide(page, { wait: { hours: long } });
    return decide(page, { wait: { hours: decision.wait.hours - long } });
  }
  const before = (await stored(page))[0]?.decisions.length ?? 0;
  await touch(page, await steps(page, decision));
  await page.until(`${JSON.stringify(decision)} to be stored`, async () => (await stored(page))[0].decisions.length > before);
}

/** Touches a button that does something at once, if it is there; says whether it was. */
async function atOnce(page, selector) {
  const there = await page.driver.executeScript("return !!document.querySelector(arguments[0])?.offsetParent", selector);
  if (!there) return false;
  const before = (await stored(page))[0]?.decisions.length ?? 0;
  await touch(page, [[selector]]);
  await page.until(`${selector} to be stored`, async () => (await stored(page))[0].decisions.length > before);
  return true;
}

/** Makes ready for a place as before it, where that is offered there. */
export async function readyAsBefore(page, operation) {
  await touch(page, [spot((await places(page))[operation].at)]);
  return atOnce(page, '.walk-hand .walk-once[value="ready"]');
}

/** Does the last work of its kind once more at one touch, where that is offered; says whether it was. */
export async function again(page, operation) {
  if (await atOnce(page, `.walk-hand .walk-before .walk-once[value="${operation}"]`)) return true;
  await touch(page, [spot((await places(page))[operation].at)]);
  return atOnce(page, `.walk-hand .walk-ops .walk-op + .walk-once[value="${operation}"]`);
}

/** Asks for work as it was done last, at one touch, where it is not carried out at once. */
export async function askAgain(page, operation) {
  await touch(page, [spot((await places(page))[operation].at), [`.walk-hand .walk-ops .walk-op + .walk-once[value="${operation}"]`]]);
}

/** Opens what the guide says and does it; nothing is chosen otherwise. */
export async function followGuide(page) {
  const before = (await stored(page))[0]?.decisions.length ?? 0;
  await touch(page, [[".walk-guide .control"]]);
  const opened = await page.driver.executeScript("return !document.querySelector('.walk-do')?.classList.contains('not-yet')");
  const after = (await stored(page))[0]?.decisions.length ?? 0;
  if (opened && after === before) await touch(page, [DO]);
  await page.until("what the guide said to be stored", async () => (await stored(page))[0].decisions.length > before);
}

/** Walks on one's own in a right way, with what was done before done again at one touch. */
export async function walkAlone(page) {
  const done = [];
  const all = right((await stored(page))[0]);
  const same = ({ operation, numbers, picks }) => JSON.stringify([operation, numbers, picks]);
  while (all.length > 0) {
    const room = all.findIndex((one) => !one.wear && !one.room);
    if (room > 0) {
      const ready = all.splice(0, room);
      // What is seen to before work is what was seen to before it the last time; else it is picked.
      if (!(all[0].work && (await readyAsBefore(page, all[0].work.operation)))) await decide(page, room > 1 ? ready : ready[0]);
      continue;
    }
    const next = all.shift();
    const before = next.work && done.includes(same(next.work));
    if (!(before && (await again(page, next.work.operation)))) await decide(page, next);
    if (next.work) done.push(same(next.work));
  }
}

/** Does a decision that is not carried out. */
export const ask = async (page, decision) => touch(page, await steps(page, decision));

/** Begins a walk. */
export async function begin(page, name, way) {
  await page.driver.executeScript("location.hash = '#/walk'");
  await page.press("link", name);
  await page.press("radio", way);
  await page.driver.sleep(450);
  await page.press("button", "Begin");
  await page.until("the floor", async () => (await page.driver.findElements(By.css(".walk-ops"))).length > 0);
}
