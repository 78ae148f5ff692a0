// Walks and job tickets that travel: handed out on one profile, opened on a fresh one, gone through or begun there.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, test } from "node:test";
import { By } from "selenium-webdriver";
import { SIZES, journey } from "./harness.mjs";
import { read } from "./link.mjs";
import { fill, goTo } from "./office.mjs";
import { fits, folder, pick } from "./papers.mjs";
import { begin, right, store, stored } from "./walker.mjs";

const files = folder();
after(files.done);

/** Decisions of a right way through a walk, with the wood sanded across its grain: row se-01 shows at the next coat. */
function across(walk) {
  const decisions = right(walk);
  const sanding = decisions.find((one) => one.work?.operation === "sand-wood");
  sanding.work.picks = { ...sanding.work.picks, strokes: "across-the-grain" };
  return decisions;
}

/** Walks so many decisions of it behind the screen, and hands the walk out as a file. */
async function handedOut(page, upTo) {
  await begin(page, "A plain plate", "On your own");
  const [walk] = await stored(page);
  const decisions = across(walk);
  await store(page, walk.id, { decisions: decisions.slice(0, upTo(decisions)) });
  await page.reload();
  await goTo(page, `#/walk/out/${walk.id}`);
  await page.says("Walked by");
  return readFileSync(await page.save("Save the file"), "utf8");
}

/** How much lies in a store of the database. */
const count = (page, name) => page.driver.executeAsyncScript(
  "const [name, done] = arguments; const open = indexedDB.open('stepboard'); open.onsuccess = () => {" +
    "const all = open.result.transaction(name).objectStore(name).count(); all.onsuccess = () => done(all.result) }",
  name,
);

const at = (page) => page.driver.findElement(By.css(".walk-range input")).getAttribute("value").then(Number);

let whole;
test("a walk is handed out from its report, and says what it is", () =>
  journey("walk-out", SIZES[0], async (page) => {
    whole = await handedOut(page, (all) => all.length);
    assert.deepEqual(JSON.parse(whole).format, "stepboard-walk");
    await page.says("Handed over on day");
    await fits(page, "a walk that is handed out");
    await page.assertAccessible("a walk that is handed out");
    await page.shot("walk-out");
    await goTo(page, "#/walk");
    await page.press("link", "A plain plate On your own");
    await page.press("link", "Hand it out");
    await page.one("button", "Save the file");
  }));

for (const size of SIZES) {
  test(`a walk of somebody is opened on a fresh profile and gone through to where its fault was made (${size.name})`, () =>
    journey("walk-looked", size, async (page) => {
      await pick(page, "file", files.put("walk.json", whole));
      await page.says("A walk of a job");
      await page.says("On your own");
      await fits(page, "a walk before it is gone through");
      await page.assertAccessible("a walk before it is gone through");
      await page.shot("walk-opened");
      await page.press("button", "Go through it");
      await page.one("heading", "A plain plate, gone through");
      await page.says("What it came to");
      const [made] = await page.all("button", /^Made at/);
      const turn = Number((await made.getAccessibleName()).match(/\d+/)[0]);
      await page.touch(made);
      await page.until("the time line to stand where it was made", async () => (await at(page)) === turn);
      await page.says("Sand the wood");
      await page.says("Across the grain");
      await page.says("Known by then:");
      const [showed] = await page.all("button", /^Showed at/);
      const later = Number((await showed.getAccessibleName()).match(/\d+/)[0]);
      await page.touch(showed);
      await page.until("the time line to stand where it showed", async () => (await at(page)) === later);
      assert(later > turn);
      await fits(page, "a walk that is gone through");
      await page.assertAccessible("a walk that is gone through");
      await page.shot("walk-looked");
      for (const name of ["walks", "journal", "results"]) assert.equal(await count(page, name), 0, name);
    }, { path: "#/open" }));
}

test("what lies hidden in a walk that is under way is told nowhere", () =>
  journey("walk-sealed", SIZES[0], async (page) => {
    // Up to behind the sanding: the fault is made and has not shown.
    const text = await handedOut(page, (all) => all.findIndex((one) => one.work?.operation === "sand-wood") + 1);
    assert.equal(JSON.parse(text).came.faults, 0);
    await page.says("What has not come to light");
    await goTo(page, "#/open");
    await pick(page, "file", files.put("walk.json", text));
    await page.press("button", "Go through it");
    await page.one("heading", "Time line");
    await page.says("What has not come to light");
    const said = await page.text();
    assert(!/Made at|Left undone at|What it came to|Sanding scratch/.test(said), said);
    await page.shot("walk-sealed");
    // Changed by hand to be over, or guided, it is not taken for what it was.
    for (const change of [(one) => one.decisions.push("hand-over"), (one) => { one.mode = "guided"; }]) {
      const other = JSON.parse(text);
      change(other);
      await goTo(page, "#/open");
      await pick(page, "file", files.put("other.json", JSON.stringify(other)));
      await page.says("come to something else");
      assert(!(await page.has("button", "Go through it")));
    }
  }));

test("a job ticket is handed out as a link, shown on a fresh profile and begun there", async () => {
  let link;
  await journey("ticket-give", SIZES[1], async (page) => {
    await goTo(page, "#/walk/new/plain-plate");
    await page.press("link", "Hand this job out");
    await page.press("radio", "On your own");
    await fill(page, "ticket-note", "Ask before you spray.");
    await page.driver.executeScript(
      "const field = document.getElementById('ticket-until'); field.value = '2099-12-31'; field.dispatchEvent(new InputEvent('input', { bubbles: true }))",
    );
    await page.one("img", "Square code of the link");
    await fits(page, "a ticket that is handed out");
    await page.assertAccessible("a ticket that is handed out");
    await page.shot("ticket-give");
    link = await page.driver.executeScript("return document.getElementById('hand-out-link').value");
  });
  const code = link.split("#/take/")[1];
  const ticket = JSON.parse(read(code));
  assert.deepEqual([ticket.walk, ticket.mode, ticket.until], ["plain-plate", "own", "2099-12-31"]);
  for (const size of SIZES) {
    await journey("ticket-taken", size, async (page) => {
      await page.says("Ask before you spray.");
      await page.says("Nothing is told before.");
      await fits(page, "a ticket that is shown");
      await page.assertAccessible("a ticket that is shown");
      await page.shot("ticket-taken");
      assert.equal(await count(page, "walks"), 0, "nothing is begun before one says so");
      await page.driver.sleep(450);
      await page.press("button", "Begin");
      await page.until("the floor", async () => (await page.driver.findElements(By.css(".walk-ops"))).length > 0);
      const [walk] = await stored(page);
      assert.deepEqual([walk.walk, walk.mode, walk.decisions], ["plain-plate", "own", []]);
    }, { path: `#/take/${code}` });
  }
});
