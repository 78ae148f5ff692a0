// One set from the instructor's sheet to the crew page and onto paper: three values changed, what changes seen, a set built on them
// and handed out by link, opened and done on another tablet, its results read in, and the same set printed with its key.
//
// Everybody gets the same cards, so that the native command, given the file out of the link, tells which ones and their answers.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { after } from "node:test";
import { By } from "selenium-webdriver";
import { command, give } from "./checks.mjs";
import { readIn } from "./crowd.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { read } from "./link.mjs";
import { fill, goTo, handOver, takeIn } from "./office.mjs";
import { PAPERS, folder, printed } from "./papers.mjs";
import { pages } from "./pdf.mjs";

/** What an instructor may take to build a set, milliseconds. */
const THREE_MINUTES = 180_000;
/** A second tap that comes at once is taken for a slip of the finger. */
const READING = 800;
/** What asking all kinds of cards on both sheets may take, milliseconds: some seconds where it is optimised. */
const ASKING = 120_000;
const CARDS = 6;
const TITLE = "Winter, filling";
const VALUES = { "filler-oil-wait": 72, "clear-wait": 4, "humidity-limit": 55 };
/** The verb of an answer: the ADL's vocabulary for xAPI. */
const ANSWERED = "http://adlnet.gov/expapi/verbs/answered";
const HOME = "https://finishing.example";
/** One kind of card for each of the three values. */
const KINDS = ["Filler to seal coat", "Clear coats allowed today", "Spray or wait"];
/** Sets built until one has a card that another sheet answers otherwise; nine in ten have one. */
const BUILT_AT_MOST = 6;
const CODE = /[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}/;
const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;

const files = folder();
after(files.done);

const now = (page) => page.driver.executeScript("return performance.now()");
const reading = (page) => page.driver.sleep(READING);
/** The words of a printed page are read without their spaces. */
const close = (text) => text.replace(/\s+/g, "");

/** Three values otherwise than the sheet that ships; what they change; in use from then on. */
async function changeThree(page) {
  await goTo(page, "#/sheet");
  await page.press("link", "Open it");
  await page.press("button", "Edit: make a sheet of our own");
  for (const [id, value] of Object.entries(VALUES)) {
    const field = await page.until(`the field of ${id}`, () => page.driver.findElement(By.id(`value-${id}`)));
    await page.driver.executeScript("arguments[0].closest('details').open = true", field);
    await fill(page, `value-${id}`, String(value));
  }
  await page.says("3 values differ");
  await page.shot("instructor-values");
  await page.press("button", "What changes");
  await page.says(/\d+ of \d+ kinds of cards now answer differently/, ASKING);
  // None of the three changes how wood is read.
  for (const title of KINDS) await page.says(title);
  assert(!(await page.text()).includes("Reading the pores"));
  await page.shot("instructor-changes");
  await page.type("What the shop calls it", "Winter");
  await page.press("button", "Save and take into use");
  await page.says("This sheet is in use on this tablet.");
}

/** A set on the sheet in use; gives its id and how long it took. */
async function build(page) {
  await goTo(page, "#/sets/new");
  const began = await now(page);
  await page.driver.executeScript("document.querySelectorAll('.build-part details').forEach((one) => { one.open = true; })");
  for (const kind of KINDS) await page.press("checkbox", kind);
  await page.press("button", /^6/);
  await page.press("radio", "So many right");
  await page.press("radio", "The same for all");
  await page.says(`${CARDS} cards, about`);
  await page.press("button", /^1\. /);
  await page.says("The computed answer");
  await page.shot("instructor-build");
  await page.type("What the set is called", TITLE);
  await page.press("button", "Save the set");
  await page.one("heading", TITLE);
  const address = await page.driver.executeScript("return location.hash");
  return { took: (await now(page)) - began, id: address.split("/").at(-1) };
}

/** The cards of a set file as the native command deals and answers them, on its own sheet or on another one. */
const dealt = (file, ...on) =>
  JSON.parse(execFileSync(command, ["deal", `set=${file}`, "--key", ...on], { encoding: "utf8" })).cards;

/** Builds sets until a card of one is answered otherwise on the sheet that ships; the set, its file and its cards. */
async function buildOnTheThree(page) {
  for (let nth = 0; nth < BUILT_AT_MOST; nth += 1) {
    const { took, id } = await build(page);
    assert(took < THREE_MINUTES, `${took} ms`);
    const link = await page.until("the link", () => page.driver.executeScript("return document.getElementById('hand-out-link').value"));
    const [, code] = link.split("#/take/");
    const set = read(code);
    const file = files.put(`set-${nth}.json`, set);
    const [cards, before] = [dealt(file), dealt(file, "sheet=nitrocellulose")];
    assert.equal(cards.length, CARDS);
    if (cards.some((card, place) => card.solution.text !== before[place].solution.text)) return { id, code, set, cards };
  }
  assert.fail(`no card of ${BUILT_AT_MOST} sets depends on the three values`);
}

/** Does the set of a link on a tablet that has nothing yet, one card wrong and sure of it; gives the file of results to `then`. */
async function apprentice(code, cards, wrong, then) {
  await journey("instructor-apprentice", PHONE, async (page) => {
    await takeIn(page, "17", "Bo");
    await handOver(page, "Bo");
    await goTo(page, `#/take/${code}`);
    await page.says("Winter, edition 1");
    await page.assertFits("a set that came by link");
    await page.shot("instructor-came");
    await page.press("button", "Take it");
    await page.says("Taken.");
    await page.press("link", "Go to the set");
    await page.press("button", "Begin");
    for (const [nth, card] of cards.entries()) {
      await page.says(`Card ${nth + 1} of ${CARDS}`);
      await page.says(card.ask);
      if (nth === 0) await page.shot("instructor-card");
      await give(page, card, { right: card !== wrong });
      await page.one("heading", card === wrong ? /^(Wrong|Partly)/ : /^Right/);
      if (card === wrong) await page.shot("instructor-verdict");
      await reading(page);
      await page.press("button", nth + 1 < CARDS ? "Next card" : "See what it came to");
    }
    await page.one("heading", "Passed");
    await page.says(`${CARDS - 1} of ${CARDS} right`);
    await page.shot("instructor-done");
    await then(await page.save("Save the results as a file"));
  });
}

/** The crew page before and after the file: nobody, then Bo, the set he did, what he is stuck on, and the card that he saw. */
async function returned(page, id, file, wrong) {
  await goTo(page, "#/crew");
  await page.says("Nothing here yet");
  await readIn(page, [file]);
  await page.says(`${CARDS} new answers`);
  const person = await page.one("link", /^Bo\s*17$/);
  await page.shot("instructor-crew");
  await page.touch(person);
  await page.says(`${CARDS} answers, ${CARDS - 1} right, 1 sure and wrong.`);
  await page.one("heading", "Sets done");
  await page.says(`Practise. ${CARDS - 1} of ${CARDS} right.`);
  await page.assertFits("a person who did a set");
  await page.assertAccessible("a person who did a set");
  await page.shot("instructor-person");
  await page.driver.executeScript("document.querySelector('main a[href*=\"#/crew/answer/\"]').click()");
  await page.says(wrong.ask);
  await page.shot("instructor-answer");
  // The set itself says who did it, and whether it was passed.
  await goTo(page, `#/sets/${id}`);
  await page.one("link", new RegExp(`^Bo \\(17\\).*${CARDS - 1} of ${CARDS} right.*Passed`, "s"));
  await page.assertFits("who did a set");
  await page.assertAccessible("who did a set");
  await page.shot("instructor-who");
}

/** The same answers as statements, and the competency list, saved for other programs. */
async function forOthers(page) {
  await goTo(page, "#/programs");
  await page.press("button", "Save the statements");
  await page.says("An address that begins with");
  await page.type("Address of the shop", HOME);
  const statements = JSON.parse(readFileSync(await page.save("Save the statements"), "utf8"));
  await page.says(`Saved: ${statements.length} statements.`);
  for (const { actor, object } of statements) {
    assert.equal(actor.account.homePage, HOME);
    assert(object.id.startsWith(HOME), object.id);
  }
  // Beside the answers the set is begun and done.
  const answered = statements.filter(({ verb }) => verb.id === ANSWERED);
  assert.equal(answered.filter(({ result }) => result.success).length, CARDS - 1);
  assert.equal(answered.length, CARDS);
  const list = JSON.parse(readFileSync(await page.save("Save the list"), "utf8"));
  await page.says(`Saved: ${list.CFItems.length} competencies and criteria.`);
  assert(list.CFItems.length > 0 && list.CFItems.every(({ uri }) => uri.startsWith(HOME)));
  await page.assertFits("files for other programs");
  await page.assertAccessible("files for other programs");
  await page.shot("instructor-programs");
}

/** Set, seed, code and number stand on every page, and each card in its place; `also` is what stands beside a card. */
function onPaper(bytes, { id, seed, code, cards, also }) {
  const said = pages(bytes);
  said.forEach((words, nth) => {
    for (const mark of [id, `Seed${seed}`, code]) {
      assert(words.includes(mark), `${mark} on page ${nth + 1}: ${words.slice(-200)}`);
    }
    assert(words.startsWith(String(nth + 1)), `the number of page ${nth + 1}: ${words.slice(0, 60)}`);
  });
  const all = said.join("");
  let from = 0;
  cards.forEach((card, nth) => {
    for (const words of [`Card${nth + 1}of${CARDS}`, close(card.ask), ...also(card).map(close)]) {
      const at = all.indexOf(words, from);
      assert(at >= 0, `${words} after ${all.slice(from, from + 200)}`);
      from = at;
    }
  });
  return all;
}

/** What the key says of a card: each right option behind its letter, or the words of the answer. */
function marked({ options, solution: { answer, text } }) {
  const letters = answer.order ?? answer.picks ?? (answer.pick ? [answer.pick] : []);
  const words = letters.map((letter) => `${letter} ${options.find((one) => one.letter === letter).text}`);
  return letters.length ? words : [text];
}

/** The worksheet and the key of the set as PDFs, held against the cards and answers of the native command. */
async function print(page, id, seed, cards) {
  await goTo(page, `#/sets/${id}/paper`);
  await fill(page, "whom", "Bo (17)");
  await page.says("Ready to print.");
  await page.shot("instructor-paper");
  const foot = await page.driver.executeScript("return document.querySelector('.worksheet .running').textContent");
  const [code] = foot.match(CODE);
  const sheet = await printed(page, PAPERS[0]);
  page.keep("instructor-worksheet.pdf", sheet.bytes);
  const options = (card) => (card.kind === "number" ? [] : card.options.map(({ text }) => text));
  const asked = onPaper(sheet.bytes, { id, seed, code, cards, also: options });
  assert(!asked.includes("Markedkey"));
  await page.press("radio", "Marked keys");
  await page.says("Ready to print.");
  await page.until("the key alone", () => page.driver.executeScript("return document.querySelectorAll('.worksheet').length === 1"));
  const key = await printed(page, PAPERS[0]);
  page.keep("instructor-key.pdf", key.bytes);
  const told = onPaper(key.bytes, { id, seed, code, cards, also: marked });
  assert(told.includes("Markedkey") && told.includes(close("For the worksheet of Bo (17)")));
}

testWith("paper", "a set goes from the shop sheet by link to an apprentice and back to the crew page, and onto paper", { timeout: 400_000 }, () =>
  journey("instructor", LANDSCAPE, async (page) => {
    await takeIn(page, "4", "Ines");
    await handOver(page, "Ines");
    await changeThree(page);
    const { id, code, set, cards } = await buildOnTheThree(page);
    await page.shot("instructor-link");
    const { title, sheet, task } = JSON.parse(set);
    assert.deepEqual([title, sheet.own.values], [TITLE, VALUES]);
    // A mistake about safety that would be done on the job would fail the set.
    const wrong = cards.find(({ severity }) => severity !== "safety");

    await apprentice(code, cards, wrong, (results) => returned(page, id, results, wrong));
    await forOthers(page);
    await print(page, id, task.same_seed, cards);
  }));
