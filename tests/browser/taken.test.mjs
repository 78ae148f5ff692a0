// Scenario sets on a tablet that took them: begun by who is named there and then; a check with the same cards for all shows no
// answer before it is handed in, whatever address is typed, or before a key is open; what a set came to travels under a name that
// people know; a set whose file is gone can be closed.
import assert from "node:assert/strict";
import { basename } from "node:path";
import { test } from "node:test";
import { answer, stored } from "./checks.mjs";
import { SIZES, journey } from "./harness.mjs";
import { beginBook, goTo, takeIn, unlock } from "./office.mjs";

const TITLE = "Friday, filling";
const CARDS = 2;
const WHY = "before you have handed in its last card";
const FOLD = "Hand it on, paper, files for other programs";

/** Builds a check with the same cards for all; gives the code of its link. */
async function made() {
  let code;
  await journey("taken-made", SIZES[1], async (page) => {
    await goTo(page, "#/sets/new");
    await page.press("checkbox", /^Fill/);
    await page.press("checkbox", "With cards on pictures");
    await page.press("button", /^6/);
    for (let left = 6; left > CARDS; left -= 1) await page.press("button", "One card fewer");
    await page.press("radio", "Check");
    await page.press("radio", "The same for all");
    await page.type("Your name, as who makes the set", "Ines");
    await page.press("button", "Use it");
    await page.type("What the set is called", TITLE);
    await page.press("button", "Save the set");
    await page.one("heading", TITLE);
    // Whoever made it sees all of it.
    await page.one("button", "Save the cards");
    const link = await page.until("the link", () => page.driver.executeScript("return document.getElementById('hand-out-link').value"));
    [, code] = link.split("#/take/");
  });
  return code;
}

/** Takes the set of a link; gives its id. */
async function take(page, code) {
  await goTo(page, `#/take/${code}`);
  await page.press("button", "Take it");
  await page.says("Taken.");
  await page.press("link", "Go to the set");
  await page.one("heading", TITLE);
  return (await page.driver.executeScript("return location.hash")).split("/").at(-1);
}

/** Whether the screens of a set show its answers, or say why they do not. */
async function shows(page, id, wanted) {
  await goTo(page, `#/sets/${id}`);
  await page.one("heading", TITLE);
  await page.press("button", FOLD);
  if (wanted) await page.one("button", "Save the cards");
  else await page.says(WHY);
  assert.equal(await page.has("button", "Save the cards"), wanted);
  assert.equal(await page.has("button", "Build another from this one"), wanted);
  await goTo(page, `#/sets/${id}/paper`);
  await page.one("heading", "On paper");
  if (wanted) await page.says("Ready to print.");
  else await page.says(WHY);
  assert.equal(await page.has("radio", "Marked keys"), wanted);
  assert.equal((await page.text()).includes("Card 1"), wanted, "no card is read before it is asked");
  assert.equal((await page.text()).includes(WHY), !wanted);
  await goTo(page, `#/sets/${id}/paper/enter`);
  await page.one("heading", "Answers from paper");
  await page.until("the code is asked for or not", async () => (await page.has("textbox", "Code of the worksheet")) === wanted);
  assert.equal((await page.text()).includes(WHY), !wanted);
}

for (const size of SIZES) {
  test(`a check that was taken is begun under a name and shows no answer before it is handed in (${size.name})`, async () => {
    const code = await made();
    await journey("taken", size, async (page) => {
      const id = await take(page, code);
      assert.equal(await page.has("button", "Save the file"), false, "what an apprentice does not need is folded away");
      await page.press("button", "Use this name and begin");
      await page.says("Write a name or a shop number here first.");
      await page.assertFits("a set that was taken");
      await page.assertAccessible("a set that was taken");
      await page.shot("taken-set");
      await shows(page, id, false);
      await page.shot("taken-enter");
      await goTo(page, `#/sets/${id}/paper`);
      await page.says(WHY);
      await page.assertFits("paper of a set whose answers are kept back");
      await page.assertAccessible("paper of a set whose answers are kept back");
      await page.shot("taken-paper");
      await goTo(page, `#/sets/${id}`);
      await page.press("button", FOLD);
      await page.says(WHY);
      await page.shot("taken-folded-out");
      await page.type("Your name or shop number", "Bo");
      await page.press("button", "Use this name and begin");
      for (let card = 1; card <= CARDS; card += 1) {
        await page.says(`Card ${card} of ${CARDS}`);
        // Half-way it is not handed in.
        if (card === 2) {
          await shows(page, id, false);
          await goTo(page, "#/");
          await page.press("button", "Go on at card 2");
          await page.says(`Card 2 of ${CARDS}`);
        }
        await answer(page);
      }
      await page.one("heading", "All cards are done");
      const saved = basename(await page.save("Save the results as a file"));
      assert.match(saved, /^stepboard-results-Bo-\d{4}-\d\d-\d\d\.json$/);
      await page.says(`${saved} is in the downloads`);
      await page.assertFits("a set whose results are saved");
      await page.shot("taken-saved");
      await shows(page, id, true);
    });
  });
}

test("an open key shows the answers of a check that was taken, until it is locked", { timeout: 240_000 }, async () => {
  const code = await made();
  await journey("taken-key", SIZES[0], async (page) => {
    await beginBook(page);
    const id = await take(page, code);
    await page.press("button", FOLD);
    await page.says(WHY);
    await page.press("button", "The key of an instructor or assessor");
    await unlock(page);
    await page.says("the answers of this check can be seen here");
    await page.shot("taken-key");
    assert.equal(basename(await page.save("Save the cards")), "stepboard-cards-Friday-filling.zip");
    await page.says("Saved: ");
    await goTo(page, `#/sets/${id}/paper`);
    await page.press("radio", "Marked keys");
    await page.says("Answers stand here. Do not hand out.");
    await page.press("button", "The key of an instructor or assessor");
    await page.press("button", "Lock");
    await page.says(WHY);
    await page.until("no key on the screen", async () => !(await page.text()).includes("Answers stand here."));
  });
});

/** Changes the sheet of the set on the shelf, as if this program had another one of that name: the file cannot be used any more. */
const LOSE = `const done = arguments[arguments.length - 1];
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const database = asked.result;
    const change = database.transaction(["sets"], "readwrite");
    change.objectStore("sets").openCursor().onsuccess = ({ target }) => {
      const cursor = target.result;
      if (!cursor) return;
      cursor.update(cursor.value.replace(/"hash": "[0-9a-f]+"/, '"hash": "00"'));
      cursor.continue();
    };
    change.oncomplete = () => { database.close(); done(true); };
  };`;

test("a set under way whose sheet is another one here is told and closed, and what was answered stays", async () => {
  const code = await made();
  await journey("taken-lost", SIZES[2], async (page) => {
    await takeIn(page, "17", "Bo");
    const id = await take(page, code);
    // A number of the crew is whoever has it.
    await page.type("Your name or shop number", "17");
    await page.press("button", "Use this name and begin");
    await page.says(`Card 1 of ${CARDS}`);
    await answer(page);
    await page.says(`Card 2 of ${CARDS}`);
    await page.driver.executeAsyncScript(LOSE);
    await page.reload();
    await goTo(page, `#/sets/${id}`);
    await page.says("There is no set of that name on this tablet.");
    await goTo(page, "#/sets");
    await page.one("heading", "Begun, and its file is not here");
    await page.says("1 card is answered");
    await page.assertFits("a lost set");
    await page.assertAccessible("a lost set");
    await page.shot("taken-lost");
    await page.press("button", "Close it");
    await page.press("button", "Close it now");
    await page.until("nothing is lost any more", async () => !(await page.has("heading", "Begun, and its file is not here")));
    const { events } = await stored(page);
    assert.deepEqual(events.filter(({ event }) => event === "answered").map(({ person }) => person), ["17"]);
    assert.equal(events.filter(({ event }) => event === "attempt").at(-1).step, "closed");
  });
});
