// Worksheets with pictures as PDFs on A4 and letter: pictures, tests and lists of a card stay on one page.
import assert from "node:assert/strict";
import { SIZES, journey, testWith } from "./harness.mjs";
import { goTo } from "./office.mjs";
import { PAPERS, folder, pick, printed } from "./papers.mjs";
import { pages } from "./pdf.mjs";
import { assertWhole, places } from "./places.mjs";
import { codes, numbered } from "./worksheets.mjs";

/** What drawing the pictures of a worksheet may take, milliseconds: seconds where it is optimised. */
const DRAWING = 120_000;

/** Long enough for the foot of a page to go over two lines. */
const TITLE = "Faults on panels and their causes, seen in a raking light";

/** A set of cards with pictures: one, two beside each other, one with tests and three lists; on a sheet of that hash. */
const pictures = (hash) => JSON.stringify({
  format: "stepboard-set", version: 1, title: TITLE, note: "", by: "Ines 12", at: "2026-03-12T08:00:00Z",
  sheet: { ships: { slug: "nitrocellulose", hash } },
  task: { count: 6, families: ["panel-diagnosis", "panel-pair", "panel-point", "panel-fault"], purpose: "practise", same_seed: 3 },
});

testWith("paper", "no card with pictures is broken, and no page stays empty before one", async () => {
  const files = folder();
  await journey("paper-pictures", SIZES[1], async (page) => {
    // The refusal of a wrong hash tells the right one.
    await pick(page, "file", files.put("other-sheet.json", pictures("00")));
    await page.says("This cannot be taken");
    const [, hash] = (await page.text()).match(/has the values ([0-9a-f]+) here/);
    await pick(page, "file", files.put("set.json", pictures(hash)));
    await page.press("button", "Take it");
    await page.press("link", "Go to the set");
    await page.one("heading", TITLE);
    const id = (await page.driver.executeScript("return location.hash")).split("/").at(-1);
    await goTo(page, `#/sets/${id}/paper`);
    await page.one("heading", "On paper");
    await page.says("Ready to print.", DRAWING);
    const shown = await codes(page);
    for (const paper of PAPERS) {
      const { bytes } = await printed(page, paper);
      page.keep(`pictures-${paper.name}.pdf`, bytes);
      assert.equal(assertWhole(bytes, paper.name), 6, "each card stands whole in a column");
      for (const { words } of places(bytes)) assert(words.some(({ text }) => text === id), `${paper.name}: the id of the set is broken`);
      const [{ pages: of }] = numbered(pages(bytes), shown, paper.name, { id, cards: 6, most: 4 });
      // Behind the last card cautions and values may take a page.
      for (const [nth, words] of of.slice(0, -1).entries()) assert.match(words, /Card\dof6/, `${paper.name}, page ${nth + 1}`);
    }
  }, { path: "#/open" });
  files.done();
});
