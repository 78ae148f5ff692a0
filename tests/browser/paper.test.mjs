// A set on paper: worksheets and marked keys as PDFs on A4 and letter, with set, seed and page number on every page; the answers
// typed in from a worksheet are graded and kept. ISO 216 and ANSI Y14.1 give the sizes; what stands on a page is read from the
// PDF by ISO 32000-1.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey } from "./harness.mjs";
import { fill, goTo, takeIn } from "./office.mjs";
import { PAPERS, fits, printed } from "./papers.mjs";
import { pages } from "./pdf.mjs";

const SET = "first-week";
const CARDS = 12;
const CODE = /[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}/g;
const TABLET = SIZES[0];
const CERTAINTY = /I would ask first|On a test board|On the job/;

const ready = (page) => page.says("Ready to print.");
/** The words of a page are read without their spaces. */
const close = (text) => text.replace(/\s+/g, "");

/** The codes of the worksheets that are shown, in order. */
async function codes(page) {
  const feet = await page.driver.executeScript(
    "return [...document.querySelectorAll('.worksheet .running')].map((foot) => foot.textContent)",
  );
  return [...new Set(feet.flatMap((foot) => foot.match(CODE) ?? []))];
}

test("worksheets and keys have set, seed and page number on every page", () =>
  journey("paper", TABLET, async (page) => {
    await page.driver.navigate().to(`${page.address}#/sets/${SET}/paper`);
    await page.one("heading", "On paper");
    await fill(page, "whom", "Bo\nIda (3)");
    await ready(page);
    await fits(page, "worksheets");
    await page.assertAccessible("worksheets");
    const shown = await codes(page);
    assert.equal(shown.length, 2, "a code for each person");
    for (const paper of PAPERS) {
      const { bytes } = await printed(page, paper);
      page.keep(`worksheets-${paper.name}.pdf`, bytes);
      const said = pages(bytes);
      assert(said.length >= 4, `${paper.name}: ${said.length} pages for two worksheets of ${CARDS} cards`);
      said.forEach((words, nth) => {
        const where = `${paper.name}, page ${nth + 1}: ${words.slice(-200)}`;
        assert(words.includes(close(SET)), where);
        assert(shown.some((code) => words.includes(code)), where);
        assert(words.includes(`${nth + 1}/${said.length}`), where);
      });
      const all = said.join("");
      for (let card = 1; card <= CARDS; card += 1) assert(all.includes(`Card${card}of${CARDS}`), `card ${card}`);
      assert(all.includes("Cautions") && all.includes(close("If unsure, stop and ask.")), "cautions stand at the end");
      assert(!/booth.{0,40}(instead of|replaces).{0,20}respirator/i.test(all));
      assert(!all.includes(close("Common practice")), "no answer stands on a worksheet");
    }
    await page.press("radio", "Marked keys");
    await ready(page);
    const { bytes } = await printed(page, PAPERS[0]);
    page.keep("keys-a4.pdf", bytes);
    for (const [nth, words] of pages(bytes).entries()) {
      assert(words.includes(close(SET)) && shown.some((code) => words.includes(code)), `key, page ${nth + 1}`);
    }
    assert((await page.text()).includes("For the worksheet of Ida (3)"));
  }));

/** Answers the card that is shown, somehow. */
async function answered(page) {
  const boxes = await page.all("checkbox");
  const radios = await page.all("radio");
  const names = await Promise.all(radios.map((radio) => radio.getAccessibleName()));
  if (boxes.length) await page.touch(boxes[0]);
  else if (await page.has("button", "Delete the last digit")) await page.press("button", /^1$/);
  else if (await page.has("button", /^A$/)) {
    await page.press("button", /^A$/);
    await page.press("button", /^1$/);
  } else if (!(await page.has("button", "Move up"))) {
    const first = radios.find((_, nth) => !CERTAINTY.test(names[nth]));
    await page.touch(first);
  }
  await page.press("radio", "On a test board");
}

test("answers of a worksheet are typed in, graded and kept under the name of who gave them", () =>
  journey("paper-enter", TABLET, async (page) => {
    await takeIn(page, "7", "Bo");
    await goTo(page, `#/sets/${SET}/paper`);
    await page.press("button", "Everybody of this tablet");
    await ready(page);
    const [code] = await codes(page);
    await page.press("link", "Type in answers from paper");
    await page.says("never count as evidence");
    await fill(page, "code", `${code.slice(0, -1)}${code.endsWith("2") ? "3" : "2"}`);
    await page.press("button", "Type the answers in");
    await page.says("one character is wrong");
    await fill(page, "code", code.toLowerCase());
    // The code tells whose worksheet it is.
    await page.press("button", "Type the answers in");
    await page.says(`Bo: card 1 of ${CARDS}`);
    await page.assertAccessible("a card from paper");
    await answered(page);
    await page.press("button", "Grade it");
    await page.says(/Right|Partly right|Wrong/);
    await page.shot("paper-graded");
    await page.press("button", "Next card");
    for (let card = 2; card <= CARDS; card += 1) {
      await page.says(`Bo: card ${card} of ${CARDS}`);
      await page.press("button", "Nothing was answered");
    }
    await page.says(new RegExp(`Bo: [01] of ${CARDS} right`));
    const stored = await page.driver.executeAsyncScript(
      "const done = arguments[arguments.length - 1]; const open = indexedDB.open('stepboard'); open.onsuccess = () => {" +
        "const all = open.result.transaction('journal').objectStore('journal').getAll(); all.onsuccess = () => done(all.result) }",
    );
    const answers = stored.map((text) => JSON.parse(text)).filter(({ event }) => event === "answered");
    assert.equal(answers.length, 1);
    const [{ person, within, help, active_seconds: seconds }] = answers;
    assert.deepEqual({ person, within, help, seconds }, {
      person: "7", within: { paper: { set: SET, code } }, help: "none", seconds: undefined,
    });
  }));
