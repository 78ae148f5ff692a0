// Worksheets and keys on the screen and as printed pages.
import assert from "node:assert/strict";

const CODE = /[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}/g;

/** The words of a page are read without their spaces. */
export const close = (text) => text.replace(/\s+/g, "");

/** The codes of the worksheets that are shown, in order. */
export async function codes(page) {
  const feet = await page.driver.executeScript(
    "return [...document.querySelectorAll('.worksheet .running')].map((foot) => foot.textContent)",
  );
  return [...new Set(feet.flatMap((foot) => foot.match(CODE) ?? []))];
}

/** What each page is of and its number there: every worksheet and every key counts its own pages. */
export function numbered(said, shown, where, { id, cards, most }) {
  const papers = [];
  for (const words of said) {
    const code = shown.find((one) => words.includes(one));
    assert(code && words.includes(close(id)), `${where}: ${words.slice(-200)}`);
    const sort = words.includes("Markedkey·") ? "key" : "worksheet";
    const last = papers.at(-1);
    if (last?.code === code && last.sort === sort) last.pages.push(words);
    else papers.push({ code, sort, pages: [words] });
  }
  for (const { code, sort, pages: of } of papers) {
    of.forEach((words, nth) => {
      const page = `${where}, ${sort} ${code}, page ${nth + 1} of ${of.length}`;
      assert(words.startsWith(String(nth + 1)), `${page}: ${words.slice(0, 60)}`);
      assert.equal(words.includes(`Endofthis${sort}`), nth + 1 === of.length, page);
      assert.equal(words.includes("INSTRUCTORONLY"), sort === "key", page);
      if (sort === "key") assert.match(words, /Card\d+of/, `${page}: no card stands on it`);
      if (sort === "worksheet") {
        // No card is broken: its first line and its last stand on the same page.
        const first = words.match(new RegExp(`Card\\d+of${cards}`, "g")) ?? [];
        assert.equal(first.length, (words.match(/Howfar\?/g) ?? []).length, page);
      }
    });
    assert(of.length <= most, `${where}: ${of.length} pages for a ${sort} of ${cards} cards`);
  }
  return papers;
}
