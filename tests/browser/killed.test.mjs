// A browser that is ended at once, again and again, at moments that nobody picked: whatever was told as saved is there
// afterwards, and everything opens. STEPBOARD_KILLS sets how often, STEPBOARD_SEED the moments.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { START, answer, handIn, next, recorded } from "./apprentice.mjs";
import { command } from "./checks.mjs";
import { crowd, readIn } from "./crowd.mjs";
import { putCard } from "./desk.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { beginBook, deviceOf, fill, goTo, stored, takeIn, unlock } from "./office.mjs";
import { Seed } from "./seed.mjs";
import { BY, MARA, signIt, toSign } from "./signing.mjs";
import { stroke } from "./sprayer.mjs";
import { begin, decide, right, shown, stored as walks } from "./walker.mjs";

const KILLS = Number(process.env.STEPBOARD_KILLS ?? 25);
const SEED = Number(process.env.STEPBOARD_SEED ?? 1);
/** It is ended at the latest after so many times the time that one piece of work took: all steps of one are met. */
const PIECES = 2.5;
/** And at once where a piece takes longer than this, milliseconds. */
const PIECE_MOST = 20_000;
/** A round of kills takes so long at the most, milliseconds. */
const EACH = 60_000;
/** People on one tablet of the crowd, so that there is a file for each end. */
const FILE_FROM = 10;
const JOB = "A plain plate";
/** The cards that are sprayed, told from others by their seeds, and the stroke. */
const SPRAYED = "spray-sealer";
const FIRST_SEED = 1_000_000;
const STROKE = { line: [[-50, 20], [50, 20]], speed: 0.5 };
/** What lies there in the place of such a card where any is answered. */
const OTHER = "dew-point";
/** What is signed, again and again; each time it is shown anew before, so many days ago. */
const SIGNED = "air-read";
const SHOWN = [6, 5, 4];

/** Numbers from 0 to 1 by a seed: mulberry32. */
function dice(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** To the card that lies on the desk or its verdict, else to a new card. */
async function toCards(page) {
  await goTo(page, "#/");
  await page.press("button", START);
}

const saved = (page) => page.says("Saved on this tablet");

/** What is done until the end comes, once the screen for it has `begun`; `told` counts what the screen said is saved. */
const WORK = {
  answers: async (page, told, begun) => {
    await toCards(page);
    // One that was to be sprayed and lies there still would count as that.
    const lies = JSON.parse((await stored(page, "state", "draft")) ?? "null");
    if (lies?.card.family === SPRAYED && lies.handed === null) await putCard(page, OTHER, told.answers);
    begun();
    for (;;) {
      if (await page.has("button", "Next card")) await next(page);
      await answer(page);
      await handIn(page);
      await saved(page);
      told.answers += 1;
    }
  },
  decisions: async (page, told, begun) => {
    await goTo(page, "#/walk");
    await page.one("link", JOB);
    if (await page.has("link", `Go on: ${JOB}`)) await page.press("link", `Go on: ${JOB}`);
    else await begin(page, JOB, "On your own");
    await page.until("the floor", () => shown(page, ".walk-ops"));
    begun();
    for (;;) {
      const [walk] = await walks(page);
      const [decision] = right(walk);
      if (decision === undefined) {
        await begin(page, JOB, "On your own");
        continue;
      }
      await decide(page, decision);
      await saved(page);
      told.decisions += 1;
    }
  },
  sprayed: async (page, told, begun) => {
    await toCards(page);
    begun();
    for (;;) {
      if (await page.has("button", "Next card")) await next(page);
      await putCard(page, SPRAYED, FIRST_SEED + told.sprayed);
      await page.press("button", "Go to the stand");
      await page.one("button", "Take this run");
      await stroke(page, STROKE);
      await page.press("button", "Take this run");
      await handIn(page);
      await saved(page);
      told.sprayed += 1;
    }
  },
  signed: async (page, told, begun) => {
    for (let times = 0; ; times += 1) {
      const events = await stored(page, "journal");
      const after = JSON.parse(events.at(-1)).sequence;
      await new Seed(await deviceOf(page), MARA.number, BY, Date.now(), after).watched(SIGNED, SHOWN).put(page);
      await toSign(page, SIGNED);
      if (times === 0) begun();
      await unlock(page);
      await fill(page, "reason", "Seen at work for a week.");
      await signIt(page);
      told.signed += 1;
    }
  },
  people: async (page, told, begun) => {
    begun();
    for (;;) {
      const number = `a-${100 + told.people}`;
      await takeIn(page, number, `Hand ${number}`);
      told.people += 1;
    }
  },
  results: async (page, told, begun) => {
    await goTo(page, "#/crew");
    begun();
    for (;;) {
      await readIn(page, [told.files[told.results]]);
      await page.says(/new answers/);
      told.results += 1;
      await page.reload();
    }
  },
};

/** How much of each is stored. */
async function there(page) {
  const events = (await stored(page, "journal")).map((text) => JSON.parse(text));
  const answered = events.filter(({ event }) => event === "answered");
  const sprayed = answered.filter(({ family, seed }) => family === SPRAYED && seed >= FIRST_SEED && seed < FIRST_SEED + answered.length);
  const crew = JSON.parse((await stored(page, "state", "crew")) ?? '{"members":[]}');
  return {
    answers: answered.length - sprayed.length,
    sprayed: sprayed.length,
    // The book begins with its trust list.
    signed: (await stored(page, "book")).length - 1,
    decisions: (await walks(page)).reduce((sum, { decisions }) => sum + decisions.length, 0),
    people: crew.members.length,
    results: (await stored(page, "results")).length,
  };
}

/** Works at something until a moment that nobody picked, and ends the browser then. */
async function interrupt(page, kind, told, took, roll) {
  const was = told[kind];
  let ended = false;
  let work;
  const moment = new Promise((come) => {
    const begun = async () => {
      const start = Date.now();
      if (took[kind] === undefined) await page.until("a piece of work", () => told[kind] > was, PIECE_MOST).catch(() => {});
      took[kind] ??= Date.now() - start;
      setTimeout(come, roll() * PIECES * took[kind]);
    };
    work = WORK[kind](page, told, begun).catch((error) => {
      if (!ended) throw error;
    });
  });
  await Promise.race([moment, work.then(() => moment)]);
  ended = true;
  await page.end();
  await work;
  await page.again();
}

testWith("end", `ended ${KILLS} times at moments that nobody picked, the tablet has all that it told as saved`, { timeout: KILLS * EACH }, () => {
  const made = crowd(KILLS * FILE_FROM, 2);
  const roll = dice(SEED);
  const kinds = Object.keys(WORK);
  return journey("killed", SIZES[0], async (page) => {
    await takeIn(page, MARA.number, MARA.name);
    await beginBook(page);
    const told = { answers: 0, decisions: 0, sprayed: 0, signed: 0, people: 1, results: 0, files: made.files };
    /** How long a piece of work of each kind takes here, milliseconds. */
    const took = {};
    let untold = 0;
    for (let nth = 0; nth < KILLS; nth += 1) {
      const kind = kinds[nth % kinds.length];
      await interrupt(page, kind, told, took, roll);
      const now = await there(page);
      const where = `after ${nth + 1}, in the middle of ${kind}`;
      for (const kept of kinds) assert(now[kept] >= told[kept], `${where}: ${now[kept]} ${kept} of ${told[kept]}`);
      // What was on its way may have come through, and no more than one of it.
      assert(now[kind] <= told[kind] + 1, `${where}: ${now[kind]} ${kind}, told ${told[kind]}`);
      untold += now[kind] - told[kind];
      for (const kept of kinds) told[kept] = now[kept];
      await goTo(page, "#/record");
      assert.equal(await recorded(page), now.answers + now.sprayed, where);
      assert.doesNotMatch(await page.text(), /cannot be read/, where);
      await goTo(page, "#/book");
      await page.says(`Record ${now.signed + 1}`);
    }
    await goTo(page, "#/record");
    execFileSync(command, ["check", await page.save("Save a copy")], { stdio: ["ignore", "ignore", "inherit"] });
    for (const kind of kinds) assert(told[kind] > 0, `no ${kind}`);
    const counts = kinds.map((kind) => `${told[kind]} ${kind}`);
    console.log(`${counts.join(", ")}; ${untold} came through untold`);
  }).finally(made.done);
});
