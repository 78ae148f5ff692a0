// A check as an apprentice takes it, and what the model answers to the card that lies there.
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { By } from "selenium-webdriver";
import { root } from "../../tools/shell.mjs";
import { goTo } from "./office.mjs";

/** The native command, whose answers the screens are held against. */
export const command = join(process.env.CARGO_TARGET_DIR ?? join(root, "target"), "debug", "stepboard");
const CERTAINTY = { asks: "I would ask first", board: "On a test board", job: "On the job" };
const DONE = /^(Today's cards are done|This check is decided)$/;

/** Says whose evidence it is. */
export async function name(page, person) {
  await goTo(page, "#/check");
  await page.type("Name", person);
  await page.press("button", "Use it");
  await page.one("heading", "A new check");
}

/** Begins a check of competencies. */
export async function begin(page, ...competencies) {
  await goTo(page, "#/check");
  for (const competency of competencies) await page.press("checkbox", competency);
  await page.press("button", "Begin");
  await page.says("no verdict yet");
}

/** What is stored: the journal's events by their numbers, and the card of the check. */
export const stored = (page) => page.driver.executeAsyncScript(STORED);

/** What the model answers to the card of the check. */
export async function solution(page) {
  const { card } = await page.until("a card of the check", async () => (await stored(page)).draft);
  return dealt(card);
}

/** The card of that name as the native command deals it, with its key. */
export function dealt({ family, seed, sheet }) {
  const words = ["deal", family, `seed=${seed}`, `sheet=${sheet.slug}`, "--key"];
  return JSON.parse(execFileSync(command, words, { encoding: "utf8" })).cards[0];
}

/** Answers the card of the check, rightly or not, and hands it in; gives its family. */
export async function answer(page, how = {}) {
  const card = await solution(page);
  await give(page, card, how);
  return card.family;
}

/** Answers a card that the native command dealt with its key, rightly or not, and hands it in. */
export async function give(page, card, { right = true, certainty = "job" } = {}) {
  const before = (await stored(page)).events.length;
  const given = right ? card.solution.answer : wrong(card);
  if (given === "not-enough") await page.press("button", "Not enough is told");
  else if (given.pick) await touch(page, given.pick);
  else if (given.picks) for (const letter of given.picks) await touch(page, letter);
  else if (given.order) await order(page, card.options.map(({ letter }) => letter), given.order);
  else if (given.passes || given.hand) await sprayed(page, given);
  else await number(page, given);
  await page.press("radio", CERTAINTY[certainty]);
  await page.press("button", "Hand it in");
  await page.until("the answer to be stored", async () => (await stored(page)).events.length > before);
}

/** Answers what the day wants, rightly; gives how many cards it took. */
export async function workDay(page, most = 40) {
  for (let cards = 0; cards <= most; cards += 1) {
    const open = await page.until("a card or the end", async () => {
      if ((await page.all("heading", DONE)).length > 0) return "done";
      return (await stored(page)).draft && (await page.text()).includes("no verdict yet") && "card";
    });
    if (open === "done") return cards;
    await answer(page);
  }
  throw new Error(`more than ${most} cards on one day`);
}

function wrong({ options, solution, kind }) {
  const other = (letters) => options.map(({ letter }) => letter).find((letter) => !letters.includes(letter));
  const { answer } = solution;
  if (kind === "choose-one") return { pick: other([answer.pick ?? ""]) };
  if (kind === "choose-all") {
    const all = options.map(({ letter }) => letter);
    return { picks: answer.picks?.length === all.length ? all.slice(1) : all };
  }
  // One pass over the face leaves the most of it bare.
  if (kind === "spray") return { passes: (answer.passes ?? [ONE_PASS]).slice(0, 1) };
  if (kind === "order") return { order: [...(answer.order ?? options.map(({ letter }) => letter))].reverse() };
  return { value: 1_234_567, unit: answer.unit };
}

const ONE_PASS = { line_mm: [[-50, 20], [50, 20]], wide_mm: 0, distance_mm: 200, speed_m_s: 1, overlap: 0.5, lead_mm: 0, lag_mm: 0, wait_s: 0 };

/** Lays a run down as the answer, as if it had been sprayed before the page was loaded: spray_card.test.mjs sprays at the stand. */
async function sprayed(page, run) {
  await page.driver.executeAsyncScript(`const [run, done] = arguments;
    const asked = indexedDB.open("stepboard");
    asked.onsuccess = () => {
      const work = asked.result.transaction("state", "readwrite");
      const state = work.objectStore("state");
      state.get("check-draft").onsuccess = ({ target }) => {
        const draft = JSON.parse(target.result);
        draft.slate.run = run;
        state.put(JSON.stringify(draft), "check-draft");
      };
      work.oncomplete = () => { asked.result.close(); done(); };
    };`, run);
  await page.reload();
  await page.one("button", /^Spray it anew/);
}

/** The row of an option. */
async function touch(page, letter) {
  const rows = await page.driver.findElements(By.css(".choices input"));
  await page.touch(rows["ABCDEF".indexOf(letter)]);
}

async function order(page, now, wanted) {
  for (let place = 0; place < wanted.length; place += 1) {
    for (let at = now.indexOf(wanted[place]); at > place; at -= 1) {
      const up = await page.all("button", /^Move up/);
      // The first row cannot be moved up.
      await page.touch(up[up.length === now.length ? at : at - 1]);
      [now[at - 1], now[at]] = [now[at], now[at - 1]];
    }
  }
}

/** Types a figure in the unit that the model answers in. */
async function number(page, { value, unit }) {
  const units = await page.driver.findElements(By.css(".units input"));
  for (const one of units) {
    const label = await page.driver.executeScript("return arguments[0].closest('label').innerText", one);
    if (label.trim() === unit || label.trim().startsWith(`${unit},`)) await page.touch(one);
  }
  const figure = String(Number(value.toPrecision(6))).slice(0, 8);
  for (const [nth, digit] of [...figure].entries()) {
    await page.keys(digit);
    // As fast as somebody types and sees what came: never the next key before the last one stands there.
    await page.until(`the figure ${figure}`, async () => (await typed(page)) === figure.slice(0, nth + 1));
  }
}

const typed = (page) => page.driver.executeScript("return document.querySelector('.figure .typed')?.textContent");

const STORED = `const done = arguments[arguments.length - 1];
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const database = asked.result;
    const read = database.transaction(["journal", "state"], "readonly");
    const events = read.objectStore("journal").getAll();
    const draft = read.objectStore("state").get("check-draft");
    read.oncomplete = () => {
      database.close();
      done({ events: events.result.map((one) => JSON.parse(one)), draft: JSON.parse(draft.result ?? "null") });
    };
  };
  asked.onerror = () => done({ events: [], draft: null });`;
