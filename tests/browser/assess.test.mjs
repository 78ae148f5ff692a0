// An assessor watches work at the booth: criterion by criterion, struck out when entered wrongly, with a second assessor, from
// paper. Demonstrations, days and critical points are those of `content/competencies.toml`.
import assert from "node:assert/strict";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { SIZES, journey } from "./harness.mjs";
import { SHOP, beginBook, fill, goTo, stored, takeIn, unlock } from "./office.mjs";

const [PORTRAIT, LANDSCAPE, PHONE] = SIZES;
const SECOND = { number: "s-02", name: "Theo Brandt", passphrase: "eleven blue kettles on the sill" };
const APPRENTICE = { number: "a-07", name: "Mara Okafor" };
/** Six points, four of them critical; the second and the sixth are not. Four demonstrations on three days. */
const LEVELLED = `#/assess/${APPRENTICE.number}/levelled`;
const DAY_MS = 24 * 3600 * 1000;
/** What is pressed with gloves on is this high at least, in pixels. */
const GLOVED = 64;

/** The shop with its book, the apprentice, and the first assessor with an open key at a screen. */
async function atTheBooth(page, route = LEVELLED) {
  await takeIn(page, APPRENTICE.number, APPRENTICE.name);
  await beginBook(page);
  await goTo(page, route);
  await page.says("Open your key");
  await unlock(page);
}

/** Judges points by their place, from 1: `yes`, `not yet`, `not seen`. */
async function judge(page, places, word) {
  const fields = await page.until("the points", async () => {
    const found = await page.driver.findElements(By.css(".criteria .criterion"));
    return found.length > 0 && found;
  });
  for (const place of places) {
    const classes = { yes: "met", "not yet": "not-yet", "not seen": "not-seen" };
    await page.touch(await fields[place - 1].findElement(By.css(`.judged-${classes[word]} input`)));
  }
}

/** Sets a date, whatever the browser's way to type one. */
async function day(page, id, text) {
  const field = await page.until(`the field ${id}`, () => page.driver.findElement(By.id(id)));
  await page.driver.executeScript(
    "const [field, text] = arguments; field.value = text; field.dispatchEvent(new InputEvent('input', { bubbles: true }))",
    field, text,
  );
}

/** The day so many days ago, by the browser's clock and zone. */
function ago(page, days) {
  return page.driver.executeScript(
    "const d = new Date(Date.now() - arguments[0]); const two = (n) => String(n).padStart(2, '0');" +
      "return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`",
    days * DAY_MS,
  );
}

/** Watches a demonstration at which all but the named points are met. */
async function watch(page, work, { notYet = [], button = "Watch it now" } = {}) {
  await page.press("button", button);
  await fill(page, "watch-work", work);
  await judge(page, [1, 2, 3, 4, 5, 6].filter((place) => !notYet.includes(place)), "yes");
  await judge(page, notYet, "not yet");
  await page.press("radio", /^Alone$/);
  await writeDown(page);
}

async function writeDown(page) {
  await page.press("button", "Write it down");
  await page.says("Written down. It cannot be changed");
}

/** What the journal in the browser's database holds. */
const journalOf = async (page) => (await stored(page, "journal")).map((text) => JSON.parse(text));

/** Lets the first assessor lock, and another open theirs. */
async function changeOver(page, who) {
  await page.press("button", "Lock");
  await unlock(page, who.passphrase, who.name);
}

for (const size of SIZES) {
  test(`a demonstration is watched with gloves on, survives a reload, is written down and struck out (${size.name})`, { timeout: 300_000 }, () =>
    journey("assess-watch", size, async (page) => {
      await atTheBooth(page, "#/assess");
      await page.shot("assess-crew");
      await page.press("link", APPRENTICE.name);
      await page.says("Cards do not suffice yet");
      await page.shot("assess-person");
      await page.press("link", "Film levelled without cutting through");
      await page.says("0 of 4 demonstrations that count, on 0 of 3 days.");
      await page.assertAccessible("before it is watched");
      await page.shot("assess-before");
      await page.press("button", "Watch it now");
      await judge(page, [1, 3], "yes");
      await judge(page, [2], "not yet");
      await page.shot("assess-judged");
      await fill(page, "watch-note", "Blocks kept flat");
      await page.assertFits("watching");
      await page.assertAccessible("watching");
      await page.shot("assess-watching");
      const heights = await page.driver.executeScript(
        "return [...document.querySelectorAll('.judge, .stopwatch .control, .write button')].map((e) => e.getBoundingClientRect().height)",
      );
      assert(heights.length > 18 && heights.every((height) => height >= GLOVED - 4), `heights ${heights}`);
      const judged = await page.driver.executeScript("return [...document.querySelectorAll('.judge')].map((e) => e.getBoundingClientRect().height)");
      assert(judged.every((height) => height >= GLOVED), `heights ${judged}`);
      assert.equal((await page.driver.findElements(By.css(".criterion.critical .critical-mark"))).length, 4);
      await page.press("button", "Start");
      // It is on its way to the disk for some milliseconds.
      await page.until("the stopwatch to be stored", async () => JSON.parse(await stored(page, "state", "begun"))[0].stopwatch.since);

      await page.reload();
      await unlock(page);
      await page.says("3 of 6 points seen.");
      assert.equal(await page.driver.findElement(By.id("watch-note")).getAttribute("value"), "Blocks kept flat");
      await page.press("button", "Stop");
      await page.press("button", "Write it down");
      await page.says("Say which work it was");
      await page.says("Say whether it was done alone");
      await page.says("Not written down yet");
      await page.shot("assess-refused");
      assert.equal((await journalOf(page)).length, 0, "written down though refused");
      await fill(page, "watch-work", "Ticket 204, back");
      await page.press("radio", /^Alone$/);
      await writeDown(page);
      await page.says("1 of 4 demonstrations that count, on 1 of 3 days.");
      await page.says(/Counts/);
      const [event] = await journalOf(page);
      assert.deepEqual(
        { ...event.judged, subject: event.subject, by: event.by.number, work: event.work, paper: event.paper },
        {
          "levelled-1": "met", "levelled-2": "not-yet", "levelled-3": "met", "levelled-4": "not-seen", "levelled-5": "not-seen",
          "levelled-6": "not-seen", subject: "a-07", by: "i-01", work: "Ticket 204, back", paper: undefined,
        },
      );
      await page.assertAccessible("after it was written down");
      await page.shot("assess-after");

      await page.press("button", "Strike out");
      await page.press("button", "Strike it out");
      await page.says("Say why.");
      const reason = await page.driver.findElement(By.css(".strike input"));
      await reason.sendKeys("Watched another apprentice");
      await page.press("button", "Strike it out");
      await page.says("0 of 4 demonstrations that count");
      await page.says("Struck out by Ruth Abel: Watched another apprentice");
      await page.assertFits("struck out");
      await page.shot("assess-struck");
      assert.equal((await journalOf(page)).length, 2, "what is struck out stays stored");
    }));
}

test("two assessors watch the same, disagree on a critical point, talk it over, and their agreement is told", { timeout: 400_000 }, () =>
  journey("assess-two", LANDSCAPE, async (page) => {
    await takeIn(page, APPRENTICE.number, APPRENTICE.name);
    await beginBook(page);
    await page.press("button", "Add somebody who may sign");
    await fill(page, "signer-number", SECOND.number);
    await fill(page, "signer-name", SECOND.name);
    for (const id of ["signer-own", "signer-own-again"]) await fill(page, id, SECOND.passphrase);
    await fill(page, "signer-root", SHOP.root);
    await page.press("button", /^Add$/);
    await page.says("Trust list 2");
    await goTo(page, LEVELLED);
    await unlock(page, SHOP.first.passphrase, SHOP.first.name);
    await watch(page, "Ticket 204, back", { notYet: [2] });
    await changeOver(page, SECOND);
    await page.press("button", "Somebody else watches it too");
    await page.press("button", "watched by Ruth Abel");
    await page.says("What was written down before is hidden");
    assert(!(await page.text()).includes("Yes 5, not yet 1"), "the other's judgement is shown before one's own");
    await judge(page, [1, 2, 4, 5, 6], "yes");
    await judge(page, [3], "not yet");
    await page.press("radio", /^Alone$/);
    await writeDown(page);
    await page.says("A disagreement on a critical point must be talked over first.");
    await page.says("To be talked over");
    await page.says("6 points seen by two; 67 % judged alike.");
    await page.assertFits("a disagreement");
    await page.assertAccessible("a disagreement");
    await page.shot("assess-dispute");
    // Nobody strikes out what the other one said.
    assert.equal((await page.all("button", "Strike out")).length, 1);

    await page.press("button", "Judge it again, after talking");
    await judge(page, [3], "yes");
    await writeDown(page);
    await page.says("1 of 4 demonstrations that count");
    assert(!(await page.text()).includes("To be talked over"));
    await page.says("67 % judged alike");
    await page.shot("assess-settled");
  }));

test("paper is typed in, a paper on file is written down, and nobody assesses themselves", { timeout: 300_000 }, () =>
  journey("assess-paper", PHONE, async (page) => {
    await atTheBooth(page);
    await page.press("button", "Type it in from paper");
    await fill(page, "watch-work", "Ticket 188, top");
    await judge(page, [1, 2, 3, 4, 5, 6], "yes");
    await page.press("radio", /^Alone$/);
    await page.press("button", "Write it down");
    await page.says("A day of the calendar, please.");
    await day(page, "watch-day", await ago(page, -2));
    await page.press("button", "Write it down");
    await page.says("This day is still to come.");
    await day(page, "watch-day", await ago(page, 400));
    await page.press("button", "Write it down");
    await page.says("Paper is typed in within a year.");
    const worked = await ago(page, 20);
    await day(page, "watch-day", worked);
    await writeDown(page);
    await page.says("1 of 4 demonstrations that count");
    await page.says("Typed in later.");
    const [event] = await journalOf(page);
    assert.deepEqual([event.on, event.paper], [worked, true]);
    await page.shot("assess-paper");

    await goTo(page, `#/assess/${APPRENTICE.number}/mask-worn`);
    await page.says("To be on file, and in force:");
    await page.press("button", "Write down a paper that I have seen");
    await page.press("radio", "fit");
    await day(page, "file-on", await ago(page, 30));
    await day(page, "file-until", await ago(page, 40));
    await page.touch((await page.all("button", "Write it down")).at(-1));
    await page.says("The last day must come after the first.");
    await day(page, "file-until", await ago(page, -300));
    await page.touch((await page.all("button", "Write it down")).at(-1));
    await page.says("In force.");
    await page.assertAccessible("on file");
    await page.shot("assess-on-file");

    await takeIn(page, SHOP.first.number, SHOP.first.name);
    await goTo(page, `#/assess/${SHOP.first.number}/levelled`);
    await page.says("Nobody assesses themselves.");
    assert.equal((await page.all("button", "Watch it now")).length, 0);
  }));

/** Events as a check leaves them in the journal: a wrong answer about safety that would have been done on the job. */
const ERROR = [
  { event: "attempt", attempt: "one", step: { opened: { set: "room", competencies: ["mask-worn"] } } },
  {
    event: "answered", family: "mask-wants", version: 1, seed: 1, sheet: { slug: "nitrocellulose", hash: "00" },
    answer: { term: "dust-mask" }, certainty: "on-the-job", mark: "wrong", guess: 0.25, help: "none",
    within: { check: { attempt: "one", set: "room" } },
  },
];

test("a hazard that was got wrong is taught again, and the instructor's name is put to it", { timeout: 240_000 }, () =>
  journey("assess-taught", PORTRAIT, async (page) => {
    await atTheBooth(page, `#/assess/${APPRENTICE.number}`);
    assert(!(await page.text()).includes("To be taught again"), "nothing was got wrong yet");
    const at = await page.driver.executeScript("return new Date().toISOString()");
    const common = { format: 3, device: "5f0c1e9a", at, date: at.slice(0, 10), person: APPRENTICE.number };
    const events = ERROR.map((event, nth) => ({ ...common, sequence: nth + 1, ...event }));
    await page.driver.executeAsyncScript(
      `const [events, done] = arguments; const asked = indexedDB.open("stepboard");
      asked.onsuccess = () => {
        const write = asked.result.transaction("journal", "readwrite");
        for (const event of events) write.objectStore("journal").add(JSON.stringify(event), event.sequence);
        write.oncomplete = () => { asked.result.close(); done(); };
      };`,
      events,
    );
    await page.reload();
    await unlock(page);
    await page.one("heading", "To be taught again");
    await page.press("button", "I have taught it");
    await page.says("Ruth Abel has taught Mara Okafor this again");
    await page.assertFits("taught again");
    await page.assertAccessible("taught again");
    await page.shot("assess-taught");
    await page.press("button", "Put my name to it");
    await page.says("The cards must be passed again too.");
    assert(!(await page.has("button", "I have taught it")), "it is asked for once");
    const last = (await journalOf(page)).at(-1);
    assert.deepEqual(
      [last.event, last.family, last.by, last.person, last.sequence],
      ["taught", "mask-wants", "Ruth Abel (i-01)", APPRENTICE.number, 3],
    );
  }));
