// Clocks that are set, zones that change and the hour that comes twice: order, days and what is signed stay right.
//
// Days are held against Intl of Node, which has the IANA time zone database. The hour that came twice: Directive 2000/84/EC, on
// the last Sunday of October at 01:00 universal time.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { answer, begin, handIn, home, next, recorded, verdict } from "./apprentice.mjs";
import { command } from "./checks.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { fill, goTo, stored, unlock } from "./office.mjs";
import { shop, signIt, toSign } from "./signing.mjs";

const LONG = { timeout: 240_000 };
/** The day of a moment where the clocks of a zone stand. */
const dayIn = (timeZone, moment) => new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short" }).format(new Date(moment));

/** Answers a card each at these moments, in the zones told with them; gives the answers as they are stored. */
async function answerAt(page, moments) {
  await home(page);
  for (const [nth, { at, zone }] of moments.entries()) {
    if (zone) await page.browser.zone(zone);
    await page.setClock(at);
    if (nth === 0) await begin(page);
    else {
      await verdict(page);
      await next(page);
    }
    await answer(page);
    await handIn(page);
    await page.says("Saved on this tablet");
  }
  await goTo(page, "#/record");
  assert.equal(await recorded(page), moments.length);
  const all = (await stored(page, "journal")).map((text) => JSON.parse(text));
  return all.filter(({ event }) => event === "answered");
}

/** What is stored is in the order in which it was done, and each moment and day is what the clock said then. */
function inOrder(events, moments) {
  const rising = events.every(({ sequence }, nth) => nth === 0 || sequence > events[nth - 1].sequence);
  assert(rising, events.map(({ sequence }) => sequence).join(", "));
  events.forEach(({ at, date }, nth) => {
    const { at: wanted, zone = "UTC" } = moments[nth];
    const late = Date.parse(at) - Date.parse(wanted);
    assert(late >= 0 && late < LONG.timeout, `${at} instead of ${wanted}`);
    assert.equal(date, dayIn(zone, at));
  });
}

/** A copy of the record is one that the native command accepts. */
async function copyHolds(page) {
  const copy = await page.save("Save a copy");
  execFileSync(command, ["check", copy], { stdio: ["ignore", "ignore", "inherit"] });
}

testWith("before", "a clock that is set back and forward changes no order, and each answer keeps the day of its clock", LONG, () =>
  journey("clock-set", SIZES[0], async (page) => {
    const moments = ["2027-03-10T10:00:00Z", "2027-03-08T09:00:00Z", "2029-01-01T12:00:00Z", "2027-03-10T10:30:00Z"].map((at) => ({ at }));
    inOrder(await answerAt(page, moments), moments);
    await page.shot("clock-set");
    await copyHolds(page);
  }));

testWith("before zone", "a tablet that travels writes down the day that it was where it was", LONG, () =>
  journey("clock-zones", SIZES[0], async (page) => {
    const moments = [
      { at: "2027-03-12T04:30:00Z", zone: "America/New_York" },
      { at: "2027-03-12T04:50:00Z", zone: "Asia/Tokyo" },
      { at: "2027-03-12T10:30:00Z", zone: "Pacific/Kiritimati" },
      { at: "2027-03-12T10:50:00Z", zone: "Pacific/Pago_Pago" },
    ];
    const events = await answerAt(page, moments);
    inOrder(events, moments);
    assert.deepEqual(events.map(({ date }) => date), ["2027-03-11", "2027-03-12", "2027-03-13", "2027-03-11"]);
    await copyHolds(page);
  }));

testWith("before zone", "in the hour that comes twice what was done later comes later", LONG, () =>
  journey("clock-twice", SIZES[0], async (page) => {
    // 02:40 by summer time, then 02:10 by winter time.
    const moments = ["2026-10-25T00:40:00Z", "2026-10-25T01:10:00Z"].map((at) => ({ at, zone: "Europe/Berlin" }));
    inOrder(await answerAt(page, moments), moments);
    await copyHolds(page);
  }));

/** Opens what is to be signed, with the key, when the clock says that. */
async function ready(page, slug, at) {
  await page.setClock(at);
  await toSign(page, slug);
  await page.one("heading", /^Sign off: /);
  await unlock(page);
}

testWith("before zone", "a book goes by universal time in the hour that comes twice, and nothing is signed while the clock is set back", LONG, () =>
  journey("clock-signed", SIZES[1], async (page) => {
    const begun = "2026-10-25T00:40:00Z";
    // 02:50 by summer time; a clock set back; 02:10 by winter time.
    const [first, back, second] = ["2026-10-25T00:50:00Z", "2026-10-25T00:45:00Z", "2026-10-25T01:10:00Z"];
    const reason = "Seen at work for a week.";
    await home(page);
    await page.browser.zone("Europe/Berlin");
    await page.setClock(begun);
    await shop(page, Date.parse(begun));
    await ready(page, "room-safe", first);
    await signIt(page);
    const files = [await page.save("Save the file")];
    await ready(page, "air-read", back);
    await fill(page, "reason", reason);
    await page.press("button", /^Sign as/);
    await page.says("Not signed. It is dated before the record before it.");
    await page.shot("clock-back");
    await ready(page, "air-read", second);
    await fill(page, "reason", reason);
    await signIt(page);
    files.push(await page.save("Save the file"));
    await goTo(page, "#/book");
    await page.says("Record 3");
    await page.shot("clock-book");
    const list = await page.save("Save the trust list");
    for (const [nth, at] of [first, second].entries()) {
      const { validFrom } = JSON.parse(readFileSync(files[nth], "utf8"));
      const late = Date.parse(validFrom) - Date.parse(at);
      assert(late >= 0 && late < LONG.timeout, `${validFrom} instead of ${at}`);
      execFileSync(command, ["verify", files[nth], "--trust", list, "--on", "2026-10-26"], { stdio: ["ignore", "ignore", "inherit"] });
    }
  }));
