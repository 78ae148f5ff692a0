// The sign-off, from the shop's first key to a stranger who checks the file: what bars it, what is signed, who sees it, how it
// runs out and is withdrawn. How much is asked of “room-safe” is what content/competencies.toml and src/learn/mastery say.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { data } from "../signed/support.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { SHOP, fill, goTo, handOver, unlock } from "./office.mjs";
import { day, fits, folder } from "./papers.mjs";
import { MARA, elsewhere, shop, signIt, toSign } from "./signing.mjs";

const [TABLET, LANDSCAPE, PHONE] = SIZES;
const LONG = { timeout: 400_000 };
/** Months until “room-safe” is shown anew, in days, and some. */
const RUN_OUT_DAYS = 380;
const DAY_MS = 24 * 3600 * 1000;

test("what bars a sign-off is told, and a safety competency takes no reason", LONG, () =>
  journey("sign-barred", TABLET, async (page) => {
    await shop(page);
    await toSign(page, "mask-worn");
    await page.says("Open your key first");
    await unlock(page);
    await page.one("heading", "It cannot be signed yet");
    for (const words of ["Still to be signed off:", "Safe in the finish room", "This is about safety", "Watch the work and write it down",
      "a medical clearance to wear a respirator"]) await page.says(words);
    assert(!(await page.has("button", /^Sign as/)), "a barred sign-off has a button");
    assert(!(await page.has("textbox", "Why it is signed all the same")), "a safety competency asks for a reason");
    await fits(page, "barred");
    await page.assertAccessible("barred");
    await page.shot("sign-barred");
    await toSign(page, "air-read");
    await fill(page, "reason", "Worked six years in another shop; seen today.");
    await page.says("Not sufficient: signed all the same, for the reason given");
    await page.says("Worked six years in another shop; seen today.");
    await page.one("button", /^Sign as/);
    await fits(page, "a reason");
    await page.assertAccessible("a reason");
    await page.shot("sign-reason");
  }));

/** Stores an event as another window does: the last answer once more, under the next number. */
const BESIDE = `const [done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const work = asked.result.transaction("journal", "readwrite");
    const journal = work.objectStore("journal");
    const all = journal.getAll();
    all.onsuccess = () => {
      const events = all.result.map((text) => JSON.parse(text));
      const [last, answer] = [events.at(-1).sequence, events.findLast(({ event }) => event === "answered")];
      journal.add(JSON.stringify({ ...answer, sequence: last + 1, mark: "wrong" }), last + 1);
    };
    work.oncomplete = () => { asked.result.close(); done(all.result.length); };
  };`;

test("what another window has stored since is looked at before it is signed", LONG, () =>
  journey("sign-beside", TABLET, async (page) => {
    await shop(page);
    await toSign(page, "room-safe");
    await unlock(page);
    await page.one("heading", "This will be signed, statement by statement");
    const before = await page.text();
    await page.driver.executeAsyncScript(BESIDE);
    await page.press("button", `Sign as ${SHOP.first.name}`);
    await page.says("Not signed: another window of this tablet has stored something since this was shown");
    await page.until("the evidence of now", async () => (await page.text()) !== before);
    await page.assertAccessible("something came beside");
    await page.shot("sign-beside");
    await signIt(page);
  }));

testWith("before", "signed, seen by the apprentice, checked by a stranger, run out, withdrawn", LONG, () =>
  journey("sign", LANDSCAPE, async (page) => {
    await shop(page);
    const own = folder();
    try {
      await toSign(page, "room-safe");
      await unlock(page);
      await page.one("heading", "This will be signed, statement by statement");
      for (const words of ["Safe in the finish room", `number ${MARA.number}`, "Ticket 204, back and sides", "Sufficient"]) await page.says(words);
      await fits(page, "to be signed");
      await page.assertAccessible("to be signed");
      await page.shot("sign-draft");
      await signIt(page);
      await page.assertAccessible("signed");
      await page.shot("sign-done");
      const signOff = await page.save("Save the file");
      await goTo(page, "#/book");
      await page.says(`Signed off: Safe in the finish room, number ${MARA.number}`);
      await page.says("Record 2");
      const list = await page.save("Save the trust list");
      await fits(page, "the book");
      await page.assertAccessible("the book");
      await page.shot("book");

      await handOver(page, MARA.name);
      await goTo(page, "#/record");
      await page.one("heading", "What I hold");
      await page.says("Held until");
      await page.assertAccessible("what I hold");
      await page.shot("record-held");

      await elsewhere({ signOff, list }, async (other) => {
        await other.one("heading", "Accepted");
        await day(other, new Date(Date.now() + RUN_OUT_DAYS * DAY_MS).toISOString().slice(0, 10));
        await other.says("It ran out on");
        await other.one("heading", "Not accepted");
      });
      const bytes = readFileSync(signOff);
      bytes[bytes.indexOf("Ticket")] ^= 1;
      await elsewhere({ signOff: own.put("changed.json", bytes), list }, (other) => other.says("The signature does not fit"));

      await later(page, RUN_OUT_DAYS);
      await goTo(page, "#/record");
      await page.says("Ran out on");
      await later(page, 0);

      await goTo(page, "#/book");
      await page.press("link", /^Safe in the finish room/);
      await page.one("heading", "Accepted");
      await page.shot("book-entry");
      await page.press("button", "Withdraw it");
      await unlock(page);
      await page.press("button", /^Withdraw$/);
      await page.says("Tick the box first.");
      await fill(page, "withdraw-reason", "The wrong room was shown.");
      await page.press("checkbox", "Yes, withdraw");
      await page.press("button", /^Withdraw$/);
      await page.says("It was withdrawn.");
      await page.assertAccessible("withdrawn");
      await page.shot("book-withdrawn");
      await goTo(page, "#/book");
      await page.says("1 withdrawal does not stand on the trust list yet");
      await fill(page, "renew-root", SHOP.root);
      await page.press("button", "Sign a new trust list");
      await page.says("The new trust list is signed");
      await page.shot("book-renewed");
      const newList = await page.save("Save the trust list");
      await elsewhere({ signOff, list: newList }, async (other) => {
        await other.one("heading", "Not accepted");
        await other.says("The wrong room was shown.");
      });
      // The older list cannot know.
      await elsewhere({ signOff, list }, (other) => other.one("heading", "Accepted"));
    } finally {
      own.done();
    }
  }));

test("a record that another window has added meanwhile is told, and nothing is lost", LONG, () =>
  journey("sign-two-windows", PHONE, async (page) => {
    await shop(page);
    await toSign(page, "room-safe");
    await unlock(page);
    await page.one("button", /^Sign as/);
    await page.shot("sign-draft-phone");
    const first = await page.driver.getWindowHandle();
    await page.driver.switchTo().newWindow("tab");
    await page.driver.get(page.address);
    await toSign(page, "air-read");
    await unlock(page);
    await fill(page, "reason", "Seen at work for a week.");
    await signIt(page);
    await page.driver.close();
    await page.driver.switchTo().window(first);
    await page.press("button", /^Sign as/);
    await page.says("another window has added to the book meanwhile");
    await page.says("sign again");
    await signIt(page);
    await goTo(page, "#/book");
    await page.says("Record 3");
    await page.says("Air and work read before spraying");
    await fits(page, "the book");
    await page.shot("book-phone");
  }));

testWith("before", "a band is stamped while everything of it is held", LONG, () =>
  journey("sign-stamp", PHONE, async (page) => {
    await page.one("link", "Menu");
    const book = readFileSync(data("book.jsonl"), "utf8").split("\n").slice(0, -1);
    const crew = { members: [{ number: "17", name: MARA.name, journal: "17" }] };
    await page.driver.executeAsyncScript(
      `const [book, crew, done] = arguments; const asked = indexedDB.open("stepboard");
       asked.onsuccess = () => {
         const work = asked.result.transaction(["book", "state"], "readwrite");
         book.forEach((record, nth) => work.objectStore("book").add(record, nth + 1));
         const state = work.objectStore("state");
         state.put(JSON.stringify(crew), "crew");
         const got = state.get("settings");
         got.onsuccess = () => state.put(JSON.stringify({ ...JSON.parse(got.result), person: "17", name_asked: true }), "settings");
         work.oncomplete = () => { asked.result.close(); done(); };
       };`,
      book, crew,
    );
    const now = Date.now();
    await later(page, (Date.parse("2027-06-01") - now) / DAY_MS);
    await page.one("link", /^Room, .*Signed off/);
    assert(!(await page.has("link", /^Sand, .*Signed off/)), "a band of which nothing is signed");
    await page.assertFits("a stamp");
    await page.assertAccessible("a stamp");
    await page.shot("home-stamped");
    // The first of them runs out a year after it was signed.
    await later(page, (Date.parse("2028-03-01") - now) / DAY_MS);
    await page.one("link", /^Room, /);
    assert(!(await page.has("link", /Signed off/)), "what has run out is no longer stamped");
  }));

/** Loads the page anew with a clock so many days ahead. */
async function later(page, days) {
  await page.setClock(new Date(Date.now() + days * DAY_MS).toISOString());
  await page.one("link", "Menu");
}
