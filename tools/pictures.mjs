// Takes the pictures of the README from the built app: `node tools/pictures.mjs` after `make dist`.
import { execFileSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { answer, begin, handIn, home } from "../tests/browser/apprentice.mjs";
import { SIZES, open } from "../tests/browser/harness.mjs";
import { root } from "./shell.mjs";

const folder = join(root, "tools", "pictures");
const BANDS = ["room", "sand", "stain", "fill", "seal", "colour", "shade", "scrape", "clear", "cure", "buff"];
/** How many of ten families of a band hold in the picture, from the first band on. */
const HELD = [7, 10, 8, 6, 9, 5, 7, 4, 5, 3, 2];

/** Writes a record where the app looks for it. */
const WRITE = `
  const [entries, done] = [JSON.parse(arguments[0]), arguments[1]];
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const work = asked.result.transaction("journal", "readwrite");
    for (const entry of entries) work.objectStore("journal").put(JSON.stringify(entry), entry.sequence);
    work.oncomplete = () => { asked.result.close(); done(); };
  };`;

mkdirSync(folder, { recursive: true });
const list = JSON.parse(execFileSync(join(root, "target", "debug", "stepboard"), ["deal", "first-week", "count=92"]));
await take("home", SIZES[0], async (page) => {
  await home(page);
  await page.driver.executeAsyncScript(WRITE, JSON.stringify(record(list.cards)));
  await page.reload();
  await page.one("button", /./);
});
await take("card", SIZES[0], begin);
await take("verdict", SIZES[0], async (page) => {
  await begin(page);
  await answer(page);
  await handIn(page, "On a test board");
});
await take("bench", SIZES[0], async (page) => {
  await page.driver.get(`${page.address}#/bench/spray-gate`);
  const [air, humidity, work] = ["24", "58", "22"];
  const fields = await page.until("the fields", async () => {
    const found = await page.all("textbox");
    return found.length >= 3 && found;
  });
  for (const [place, text] of [air, humidity, work].entries()) await fields[place].sendKeys(text);
});

/** A made-up record in which the first families of each band hold. */
function record(cards) {
  const held = BANDS.flatMap((stage, place) => {
    const band = cards.filter((card) => card.stage === stage);
    return band.filter((_, n) => n * 10 < HELD[place] * band.length);
  });
  return held.map(({ family, version, seed, sheet, sheet_hash }, place) => ({
    sequence: place + 1, device: "pictures", at: "2026-11-24T09:00:00Z", person: "", family, version, seed,
    sheet: { slug: sheet, hash: sheet_hash }, answer: "not-enough", certainty: "test-board", mark: "right",
  }));
}

async function take(name, size, steps) {
  const page = await open(size);
  try {
    await steps(page);
    await page.driver.sleep(1500);
    writeFileSync(join(folder, `${name}.png`), await page.driver.takeScreenshot(), "base64");
    console.log(`tools/pictures/${name}.png`);
  } finally {
    await page.stop();
  }
}
