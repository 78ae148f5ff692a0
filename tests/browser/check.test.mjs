// Checks: begun, left, taken up after the page was killed, closed; what is told when; evidence that grows over days.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answer, begin, name, solution, stored, workDay } from "./checks.mjs";
import { goTo } from "./office.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";

const PLAIN = "Gun set up, tested and cleaned";
const SAFE = "Safe in the finish room";
const TOLD = /Right\b|Wrong|The rule|Working/;

const steps = async (page) => {
  const { events } = await stored(page);
  const turns = events.filter(({ event }) => event === "attempt");
  return turns.map(({ step }) => (typeof step === "string" ? step : Object.keys(step)[0]));
};

/** How far the bar of a competency is filled, in hundredths. */
async function bar(page) {
  const element = await page.one("img", /^Evidence: /);
  return Number((await element.getAccessibleName()).match(/(\d+) of 100/)[1]);
}

for (const size of SIZES) {
  test(`a check is begun, left, taken up after the page was killed, and closed (${size.name})`, () =>
    journey("check", size, async (page) => {
      await goTo(page, "#/check");
      await page.says("A check needs a name");
      assert.equal(await page.has("button", "Begin"), false, "nobody's check cannot be begun");
      await name(page, "Ana");
      await page.says("Ana works now: answers are kept under this name.");
      await page.assertFits("choosing");
      await page.assertAccessible("choosing");
      await page.shot("check-choose");
      await begin(page, PLAIN);
      await page.assertFits("a card of a check");
      await page.assertAccessible("a card of a check");
      await page.shot("check-card");

      await answer(page);
      await page.says("Card 2 today");
      assert.doesNotMatch(await page.text(), TOLD, "nothing is told of the answer");
      const lies = (await stored(page)).draft;

      await page.driver.get("about:blank");
      await page.driver.get(page.address);
      await goTo(page, "#/record");
      await page.one("heading", "My record");
      assert.doesNotMatch(await page.text(), /Right\./, "no verdict while cards of the day are left");
      await goTo(page, "#/check");
      await page.one("link", "Go on");
      await page.shot("check-open");
      await goTo(page, "#/");
      await page.one("heading", "A check is open");
      await page.says(`Begun and not done for today: ${PLAIN}.`);
      await page.assertFits("home with a check that is open");
      await page.shot("check-home");
      await page.press("button", "Go on at card 2");
      await page.says("Card 2 today");
      assert.deepEqual((await stored(page)).draft.card, lies.card, "the same card lies there");
      assert.deepEqual(await steps(page), ["opened", "resumed"]);

      await answer(page, { right: false, certainty: "job" });
      await page.says("Card 3 today");
      await page.press("link", "Back");
      await page.until("the check to be left", async () => (await steps(page)).at(-1) === "left");
      await page.press("link", "How it stands");
      await page.says("2 answers of today are not told yet");
      await page.press("button", "Close this check");
      await page.press("button", "Close it");
      await page.one("heading", "This check is over");
      assert.deepEqual(await steps(page), ["opened", "resumed", "left", "closed"]);
      await page.assertFits("the answers of a check");
      await page.assertAccessible("the answers of a check");
      await page.shot("check-answers");

      const [first] = (await page.all("link", /Wrong|Right/));
      assert.match(await first.getText(), /Wrong|Partly/, "sure and wrong first");
      await page.touch(first);
      await page.one("heading", /you would have gone ahead/);
      await page.says("The rule");
      await page.press("link", "Next answer");
      await page.one("heading", /^Right/);
      await page.press("link", "Back");
      await page.one("heading", "This check is over");
    }));
}

test("a card of practice and one of a check lie beside each other", () =>
  journey("check-desk", SIZES[0], async (page) => {
    await name(page, "Ana");
    await goTo(page, "#/");
    await page.press("button", /^Start with/);
    const asked = await page.until("a card", async () => (await page.driver.executeScript("return document.querySelector('h2.asked')?.innerText")));
    await begin(page, PLAIN);
    await solution(page);
    await goTo(page, "#/");
    await page.press("button", /^Go on at card 1/);
    await page.says(asked);
  }));

test("sure and wrong about safety blocks, and says how it is passed again", () =>
  journey("check-safety", SIZES[0], async (page) => {
    await name(page, "Ana");
    await begin(page, SAFE);
    await answer(page, { right: false, certainty: "job" });
    // Wrong at first and held to the standard of safety: back to study at once.
    await page.one("heading", "This check is decided");
    await page.shot("check-decided");
    await page.press("button", "Close it");
    await page.one("heading", "This check is over");
    await page.says("Blocked");
    await goTo(page, "#/record");
    await page.one("heading", "Errors about safety that are open");
    await page.says("your instructor's initials are wanted");
    await page.says("It can be tried again in a check from");
    const text = await page.text();
    assert(text.indexOf("Sure and wrong") < text.indexOf("What is missing"), "sure and wrong stands first");
    await page.assertFits("my record");
    await page.assertAccessible("my record");
    await page.shot("record-blocked");
    await page.press("link", /^Safe in the finish room/);
    await page.one("heading", "What your instructor wants to see");
    await page.assertAccessible("a competency");
    await page.shot("competency-blocked");
  }));

testWith("before", "right answers on three days, the last a week after the first, suffice; the bar grows", { timeout: 180_000 }, () =>
  journey("check-suffices", SIZES[1], async (page) => {
    const bars = [];
    await page.setClock("2027-03-01T09:00:00");
    await name(page, "Ana");
    await begin(page, PLAIN);
    for (const [nth, day] of ["2027-03-01", "2027-03-04", "2027-03-08"].entries()) {
      if (nth > 0) {
        await page.setClock(`${day}T09:00:00`);
        await goTo(page, "#/check");
        await page.press("link", "Go on");
      }
      assert((await workDay(page)) >= 5, day);
      await page.says(nth < 2 ? "Today's cards are done" : "This check is decided");
      bars.push(await bar(page));
      await page.shot(`check-day-${nth}`);
    }
    assert(bars[0] > 0 && bars[1] > bars[0] && bars[2] === 100, bars.join(", "));
    await page.says("Evidence suffices");
    await page.press("button", "Close it");
    await page.one("heading", "This check is over");
    await goTo(page, "#/record");
    await page.says("Evidence suffices");
    await page.one("heading", "How well you judge yourself");
    await page.assertFits("my record");
    await page.assertAccessible("my record");
    await page.shot("record-suffices");
    await page.press("link", new RegExp(`^${PLAIN}`));
    await page.says("The evidence has sufficed since");
    await page.says("at least");
    await page.shot("competency-suffices");
  }));
