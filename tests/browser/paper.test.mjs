// A set on paper: worksheets and marked keys as PDFs on A4 and letter, with set, seed and page number on every page; the answers
// typed in from a worksheet are graded and kept. ISO 216 and ANSI Y14.1 give the sizes; what stands on a page is read from the
// PDF by ISO 32000-1.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey, testWith } from "./harness.mjs";
import { fill, goTo, takeIn } from "./office.mjs";
import { PAPERS, fits, printed } from "./papers.mjs";
import { pages } from "./pdf.mjs";
import { assertWhole } from "./places.mjs";
import { close, codes, numbered } from "./worksheets.mjs";

const SET = "first-week";
const CARDS = 12;
/** Our own limit: five sheets printed on one side, for twelve cards with cautions and the values of the sheet. */
const PAGES_MOST = 5;
const TABLET = SIZES[0];
const CERTAINTY = /I would ask first|On a test board|On the job/;

const ready = (page) => page.says("Ready to print.");

/** Name and number as they are written on each worksheet. */
const written = (page) => page.driver.executeScript(
  "return [...document.querySelectorAll('.lines-to-fill')].map((lines) => [...lines.querySelectorAll('.on-line')].slice(0, 2).map((line) => line.textContent))",
);

testWith("paper", "worksheets and keys have set, seed and page number on every page, each counted for itself", () =>
  journey("paper", TABLET, async (page) => {
    await page.driver.navigate().to(`${page.address}#/sets/${SET}/paper`);
    await page.one("heading", "On paper");
    await fill(page, "whom", "Bo\nIda (3)");
    await ready(page);
    await fits(page, "worksheets");
    await page.assertAccessible("worksheets");
    const shown = await codes(page);
    assert.equal(shown.length, 2, "a code for each person");
    assert.deepEqual(await written(page), [["Bo", ""], ["Ida", "3"]]);
    await page.press("radio", "Both");
    await ready(page);
    for (const paper of PAPERS) {
      const { bytes } = await printed(page, paper);
      page.keep(`both-${paper.name}.pdf`, bytes);
      assert.equal(assertWhole(bytes, paper.name), 2 * CARDS, "each card of both worksheets stands whole in a column");
      const papers = numbered(pages(bytes), shown, paper.name, { id: SET, cards: CARDS, most: PAGES_MOST });
      assert.deepEqual(papers.map(({ sort }) => sort), ["worksheet", "worksheet", "key", "key"]);
      assert.deepEqual(papers.map(({ code }) => code), [...shown, ...shown]);
      for (const { sort, pages: of } of papers) {
        const all = of.join("");
        for (let card = 1; card <= CARDS; card += 1) assert(all.includes(`Card${card}of${CARDS}`), `${sort}, card ${card}`);
        if (sort === "key") continue;
        assert(all.includes("Cautions") && all.includes(close("If unsure, stop and ask.")), "cautions stand at the end");
        assert(!/booth.{0,40}(instead of|replaces).{0,20}respirator/i.test(all));
        assert(!all.includes(close("Common practice")), "no answer stands on a worksheet");
      }
    }
    assert((await page.text()).includes("For the worksheet of Ida (3)"));
    const [size, border, formulas, bare] = await page.driver.executeScript(
      "const only = document.querySelector('.instructor-only'); const rows = [...document.querySelectorAll('.key-on-paper .working th')];" +
        "const put = (row) => row.querySelector('.put-in').textContent; const formula = (row) => row.querySelector('small').textContent;" +
        "const style = (of, what) => parseFloat(getComputedStyle(of)[what]);" +
        "return [style(only.querySelector('b'), 'fontSize'), style(only, 'borderTopWidth')," +
        "rows.filter((row) => / = -?\\d/.test(put(row))).length, rows.filter((row) => /[×/^]/.test(formula(row)) && !put(row)).map(formula)]",
    );
    assert(size >= 24 && border >= 3, `the mark of a key: letters of ${size} px, a frame of ${border} px`);
    assert(formulas > 0, "the numbers put into a formula stand under it");
    // What a fault is likely to be is summed over all faults, which no line holds.
    assert.deepEqual(bare.filter((words) => !/weight|fitting|beforehand/.test(words)), []);
  }));

test("worksheets without a name each have cards of their own, found again by their code", () =>
  journey("paper-nameless", TABLET, async (page) => {
    await goTo(page, `#/sets/${SET}/paper`);
    await page.one("heading", "On paper");
    await ready(page);
    const one = await codes(page);
    assert.equal(one.length, 1, "one while nobody is named");
    await fill(page, "nameless", "40");
    await page.says("Write a whole number from 1 to 12.");
    await fill(page, "nameless", "3");
    await page.until("three worksheets", async () => (await codes(page)).length === 3);
    await ready(page);
    const three = await codes(page);
    assert.equal(three[0], one[0], "a longer stack begins with the same");
    const first = await page.driver.executeScript(
      "return [...document.querySelectorAll('.worksheet')].map((one) => one.querySelector('.ask').firstChild.textContent)",
    );
    assert(new Set(first).size > 1, `other cards on another worksheet: ${first}`);
    await page.assertAccessible("nameless worksheets");
    await page.shot("paper-nameless");
    await page.press("button", "Deal other cards");
    await page.until("others", async () => (await codes(page)).every((code) => !three.includes(code)));
    // Another day, another stack; the one from before is printed again, or its keys, by its codes.
    await page.reload();
    await page.one("heading", "On paper");
    const [another] = await codes(page);
    assert(!three.includes(another), "a stack repeats");
    await fill(page, "whom", `${three[2]}\nIda`);
    assert.deepEqual((await written(page)).at(-1), ["Ida", ""]);
    await page.until("the one from before", async () => (await codes(page))[0] === three[2]);
    await page.press("radio", "Marked keys");
    await page.says("Ready to print.");
    const key = await page.driver.executeScript("return document.querySelector('.key-on-paper .ask').textContent");
    assert.equal(key.trim(), first[2].trim());
    await goTo(page, `#/sets/${SET}/paper/enter`);
    await fill(page, "code", three[2]);
    await fill(page, "whose", "Ada");
    await page.press("button", "Type the answers in");
    await page.says(`Ada: card 1 of ${CARDS}`);
    await page.says(first[2].trim());
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
    // A number stands for whoever has it, and stands where numbers are written.
    await fill(page, "whom", "7\n17");
    await page.until("two worksheets", async () => (await codes(page)).length === 2);
    assert.deepEqual(await written(page), [["Bo", "7"], ["", "17"]]);
    const [code] = await codes(page);
    await page.press("button", "Everybody of this tablet");
    await page.until("the worksheet of Bo alone", async () => (await codes(page)).join() === code);
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
