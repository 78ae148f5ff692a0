// The instructor's crew: results of two tablets read in, again without doubling, one that is not allowed refused by its place;
// the grid, who is stuck on what, an answer as the card that was seen, what answers say of the cards, a voiding, tables.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { crowd, readIn } from "./crowd.mjs";
import { SIZES, journey } from "./harness.mjs";
import { read } from "./link.mjs";
import { deviceOf, fill, goTo } from "./office.mjs";
import { Seed } from "./seed.mjs";

const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;
const count = (page, css) => page.driver.executeScript("return document.querySelectorAll(arguments[0]).length", css);
const press = (page, css) => page.driver.executeScript("document.querySelector(arguments[0]).click()", css);

const resultsOf = (code) => JSON.parse(read(code));

/** Keeps what the page would save, by its name. */
const CATCH = `window.saved = {}; const made = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (blob) => { blob.text().then((text) => { window.last = text; }); return made(blob); };`;

test("an older file never takes the place of what another window has taken in, nor one file that of another", { timeout: 240_000 }, () =>
  journey("crew-windows", LANDSCAPE, async (page) => {
    const made = crowd(1, 200);
    try {
      const events = JSON.parse(readFileSync(made.files[0], "utf8"));
      const part = (name, from, to) => {
        const path = join(made.folder, name);
        writeFileSync(path, JSON.stringify(events.slice(from, to)));
        return path;
      };
      const answers = (upTo) => events.slice(0, upTo).filter(({ event }) => event === "answered").length;
      const has = (upTo) => page.until(`the answers among ${upTo} events`, async () =>
        (await page.driver.executeScript("return document.querySelector('.import .tablets')?.textContent ?? ''")).includes(`${answers(upTo)} answers`));
      await goTo(page, "#/crew");
      const [first, second] = [part("first.json", 0, 50), part("second.json", 50, 100)];
      await readIn(page, [first]);
      await readIn(page, [second]);
      await has(100);
      await page.reload();
      await has(100);

      const one = await page.driver.getWindowHandle();
      await page.driver.switchTo().newWindow("tab");
      await page.driver.get(`${page.address}#/crew`);
      await has(100);
      await page.driver.switchTo().window(one);
      await readIn(page, [part("whole.json", 0, 200)]);
      await has(200);
      const [other] = (await page.driver.getAllWindowHandles()).filter((handle) => handle !== one);
      await page.driver.switchTo().window(other);
      await readIn(page, [part("more.json", 80, 120)]);
      await page.says("more.json");
      await page.reload();
      await has(200);
    } finally {
      made.done();
    }
  }));

test("two tablets are read in once, and everybody is seen", { timeout: 240_000 }, () =>
  journey("crew", LANDSCAPE, async (page) => {
    const made = crowd(12, 120);
    try {
      await goTo(page, "#/menu");
      await page.press("link", /^Crew/);
      await page.says("Nothing here yet");
      await page.assertAccessible("the empty crew");
      await readIn(page, made.files);
      await page.until("twelve people", async () => (await count(page, ".glances tbody tr")) === 12);
      await page.says("1200 new answers");
      await page.until("what people are stuck on", () => count(page, ".stuck > .rows > li"));
      await page.assertFits("the crew");
      await page.assertAccessible("the crew");
      await page.shot("crew-grid");

      // Again, and nothing is doubled; after the page is loaded anew it is there.
      await readIn(page, made.files);
      await page.says("4 files taken in, with 1440 new answers");
      await page.reload();
      await page.until("twelve people", async () => (await count(page, ".glances tbody tr")) === 12);
      const answers = await page.driver.executeScript("return document.querySelector('.import .tablets').textContent");
      assert.match(answers, /1200 answers.*240 answers/s);

      // A file that is not allowed is told by its place, and one that went on elsewhere by its number.
      const bad = JSON.parse(readFileSync(made.files[0], "utf8"));
      bad[5].mark = "almost";
      writeFileSync(join(made.folder, "bad.json"), JSON.stringify(bad));
      const copied = JSON.parse(readFileSync(made.files[1], "utf8"));
      copied[7].at = "2027-05-01T10:00:00.000Z";
      writeFileSync(join(made.folder, "copied.json"), JSON.stringify(copied));
      await readIn(page, [join(made.folder, "bad.json"), join(made.folder, "copied.json")]);
      await page.says("events.6");
      await page.says("number 8 of the tablet t0001");
      await page.shot("crew-refused");
      assert.equal(await count(page, ".glances tbody tr"), 12);

      // The table as CSV.
      await page.driver.executeScript(CATCH);
      await page.press("button", "Save as a table");
      const csv = await page.until("the table", () => page.driver.executeScript("return window.last"));
      assert.match(csv, /^Number,Name,Answers,Right/);
      assert.equal(csv.split("\r\n").filter((line) => line.startsWith(",a-0")).length, 12);

      // A person, and an answer as the card that was seen.
      await press(page, ".glances .who a");
      await page.until("the chart", () => count(page, ".day-chart .axis"));
      await page.assertAccessible("a person of the crew");
      await page.assertFits("a person of the crew");
      await page.shot("crew-person");
      await page.driver.executeScript("document.querySelector('main a[href*=\"#/crew/answer/\"]').click()");
      await page.until("the card", () => count(page, ".handed .ticket, .handed .verdict"));
      await page.shot("crew-answer");
      assert(!(await page.text()).includes("cannot be shown"));
    } finally {
      made.done();
    }
  }));

test("what is found wrong is voided and told", { timeout: 240_000 }, () =>
  journey("crew-void", PHONE, async (page) => {
    const made = crowd(12, 60);
    try {
      await goTo(page, "#/crew");
      await readIn(page, made.files);
      await page.until("people", async () => (await count(page, ".glances tbody tr")) === 12);
      await goTo(page, "#/crew/cards");
      await page.until("families", () => count(page, ".item-rows > li"));
      await page.assertAccessible("what answers say of the cards");
      await page.assertFits("what answers say of the cards");
      await page.shot("crew-cards");
      const counted = () => page.driver.executeScript("return Number.parseInt(document.querySelector('.crew .lead').textContent, 10)");
      const before = await counted();
      await press(page, ".item-rows summary");
      await press(page, ".item-rows .void-form summary");
      await page.press("button", "Let it no longer count");
      await page.says("Say why");
      const id = await page.driver.executeScript("return document.querySelector('.item-rows .void-form input').id");
      await fill(page, id, "The card takes the wrong edge");
      await page.press("button", "Let it no longer count");
      // It is said where it was asked for: the card stays open in its place, and what is said of it has the focus.
      const said = () => page.driver.executeScript("return document.activeElement.matches('.item-rows [open] [role=status]') && document.activeElement.textContent");
      assert.match(await page.until("what came of it", said), /This no longer counts.*The card takes the wrong edge/s);
      await page.until("fewer answers to count", async () => (await counted()) < before);
      assert.match(await said(), /This no longer counts/, "nothing has moved");
      await page.says("No longer counts: found wrong");
      await page.says("Found wrong");
      await page.assertAccessible("what was found wrong");
      await page.assertFits("what was found wrong");
      await page.shot("crew-voided");
      // What other tablets need is a file of that one finding.
      await page.press("button", "Hand it out");
      const link = await page.until("the link", () => page.driver.executeScript("return document.querySelector('.item-rows textarea[id$=hand-link]')?.value"));
      const { format, people, events } = resultsOf(link.split("#/take/")[1]);
      assert.deepEqual([format, people.length, events.length, events[0].reason], ["stepboard-results", 0, 1, "The card takes the wrong edge"]);
      await page.shot("crew-hand-out");
      await takenOver(link.split("#/take/")[1]);
      await toldInRecord(link.split("#/take/")[1], events[0].wrong.cards);
      // Taken back it counts again, and is voided once more for what follows.
      await page.press("button", "Take it back");
      await page.says("Taken back: it counts again.");
      assert.match(await said(), /Taken back: it counts again/, "what is said of it has the focus");
      await page.until("all answers count", async () => (await counted()) === before);
      await press(page, ".item-rows .void-form summary");
      await fill(page, id, "The card takes the wrong edge");
      await page.press("button", "Let it no longer count");
      await page.until("fewer answers to count", async () => (await counted()) < before);
      // The column of the table says whose answers it touched.
      await goTo(page, "#/crew");
      await page.until("people", async () => (await count(page, ".glances tbody tr")) === 12);
      await page.driver.executeScript(CATCH);
      await page.until("answers that no longer count", async () => {
        await page.press("button", "Save as a table");
        const csv = await page.until("the table", () => page.driver.executeScript("return window.last"));
        const void_ = csv.split("\r\n").filter((line) => line.startsWith(",a-")).map((line) => Number(line.split(",")[5]));
        return void_.length === 12 && void_.some((n) => n > 0);
      });
      // Their page says which, and the answer itself says it.
      const csv = await page.driver.executeScript("return window.last");
      const whose = csv.split("\r\n").find((line) => line.startsWith(",a-") && Number(line.split(",")[5]) > 0).split(",")[1];
      await goTo(page, `#/crew/person/${whose}`);
      await page.one("heading", "No longer counts");
      await press(page, ".void-of summary");
      await page.shot("crew-void-person");
      await press(page, ".void-of a[href*='#/crew/answer/']");
      await page.says("This answer no longer counts.");
    } finally {
      made.done();
    }
  }));

/** Another tablet opens what was handed out, takes it in, and takes it over where it stands. */
async function takenOver(code) {
  await journey("crew-taken-over", PORTRAIT, async (page) => {
    await goTo(page, `#/take/${code}`);
    await page.says("What was found wrong");
    await page.one("heading", "Something was found wrong after it had counted");
    assert(!(await page.text()).includes("Results of a tablet"));
    await page.assertFits("a finding that is handed out");
    await page.shot("crew-finding");
    await page.press("button", "Take it in");
    await page.one("heading", "Found wrong");
    await page.says("The card takes the wrong edge");
    await page.press("button", "Take over");
    await page.one("button", "Take it back");
    await page.shot("crew-taken-over");
    assert(!(await page.has("button", "Take over")));
    // The button that was pressed is gone: what came of it is said, and has the focus.
    const said = () => page.driver.executeScript("return document.activeElement.matches('.voidings [role=status]') && document.activeElement.textContent");
    assert.match(await page.until("what came of it", said), /Taken over: it no longer counts on this tablet/);
    await page.press("button", "Take it back");
    await page.until("that it is taken back", async () => /Taken back: it counts again/.test(await said()));
    await page.assertAccessible("a finding that is taken over");
    await page.assertFits("a finding that is taken over");
  });
}

/** On the tablet of an apprentice who answered such cards it is taken over, and their record tells them. */
async function toldInRecord(code, { family, version }) {
  await journey("crew-told", PORTRAIT, async (page) => {
    await goTo(page, "#/record");
    await page.says("Nothing here yet");
    await new Seed(await deviceOf(page), "").answer(family, true, version).answer("wants-filler", true, version + 1).put(page);
    await goTo(page, "#/record");
    await page.one("button", "Save a copy");
    assert(!(await page.has("heading", "No longer counts")), "nothing was found wrong yet");
    await goTo(page, `#/take/${code}`);
    await page.press("button", "Take it in");
    await page.press("button", "Take over");
    await page.one("button", "Take it back");
    // Whose answer it was reads so in their record.
    await goTo(page, "#/record");
    await page.one("heading", "No longer counts");
    await page.says("The card takes the wrong edge");
    await page.says("1 of your answers");
    await page.says("You did nothing wrong.");
    await page.assertAccessible("the record with a void answer");
    await page.assertFits("the record with a void answer");
    await page.shot("crew-record-void");
  });
}

test("a tablet saves its results as a file that another reads", { timeout: 240_000 }, () =>
  journey("crew-copy", PORTRAIT, async (page) => {
    const made = crowd(1, 5);
    try {
      const one = JSON.parse(readFileSync(made.files[0], "utf8"));
      await goTo(page, "#/record");
      await page.says("Nothing here yet");
      await page.driver.executeAsyncScript(
        `const [events, done] = arguments; const asked = indexedDB.open("stepboard");
         asked.onsuccess = () => {
           const work = asked.result.transaction("journal", "readwrite");
           for (const event of events) work.objectStore("journal").add(JSON.stringify({ ...event, person: "" }), event.sequence);
           work.oncomplete = () => { asked.result.close(); done(true); };
         };`,
        one,
      );
      await page.reload();
      await goTo(page, "#/record");
      await page.until("answers", () => page.has("button", "Save a copy"));
      await page.driver.executeScript(CATCH);
      await page.press("button", "Save a copy");
      const text = await page.until("the copy", () => page.driver.executeScript("return window.last"));
      const copy = JSON.parse(text);
      assert.deepEqual([copy.format, copy.version, copy.events.length], ["stepboard-results", 1, one.length]);
      const file = join(made.folder, "copy.json");
      writeFileSync(file, text);
      await goTo(page, "#/crew");
      await readIn(page, [file]);
      await page.says(/Nothing new|new answers/);
      await page.says("Without a name");
    } finally {
      made.done();
    }
  }));
