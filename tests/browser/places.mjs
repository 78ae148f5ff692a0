// Where the words of a printed page stand, by `pdftotext -bbox` of Poppler: points from the top left of each page.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";

/** Words of the cards' ends: the first of a card's heading and of its line of certainty. */
const BEGINS = /^Card$/;
const ENDS = /^far\?$/;

/** The words of each page: text, left edge, top. */
export function places(bytes) {
  const html = execFileSync("pdftotext", ["-bbox", "-", "-"], { input: bytes, encoding: "utf8", maxBuffer: 1 << 28 });
  return html.split("<page ").slice(1).map((page) => ({
    wide: Number(page.match(/width="([\d.]+)"/)[1]),
    words: [...page.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)<\/word>/g)]
      .map(([, left, top, right, foot, text]) => ({ text, left: Number(left), right: Number(right), top: Number(top), foot: Number(foot) })),
  }));
}

/** No card of a worksheet is torn: in its column its heading is followed by its own last line, on the same page, before the next
 * heading; no word of a card reaches across the middle where cards run in two columns. Gives how many cards were seen. */
export function assertWhole(bytes, where) {
  let seen = 0;
  for (const [nth, { wide, words }] of places(bytes).entries()) {
    const page = `${where}, page ${nth + 1}`;
    if (!words.some(({ text }) => text === "Worksheet") || words.some(({ text }) => text === "INSTRUCTOR")) continue;
    const middle = wide / 2;
    const heads = words.filter(({ text }, at) => BEGINS.test(text) && /^\d+$/.test(words[at + 1]?.text ?? "") && words[at + 2]?.text === "of");
    const last = words.filter(({ text }) => ENDS.test(text));
    const columns = [heads, last].some((of) => of.some(({ left }) => left > middle)) ? [[0, middle], [middle, wide]] : [[0, wide]];
    for (const [from, to] of columns) {
      const inside = ({ left }) => left >= from && left < to;
      const order = [...heads.filter(inside).map((word) => ({ ...word, begins: true })), ...last.filter(inside)].sort((a, b) => a.top - b.top);
      order.forEach(({ begins, top }, at) => {
        assert.equal(Boolean(begins), at % 2 === 0, `${page}: a card is torn at ${top} points, column from ${from}`);
      });
      assert.equal(order.length % 2, 0, `${page}: a card has no end in its column`);
      seen += order.length / 2;
    }
    if (columns.length === 1 || !heads.length) continue;
    const top = Math.min(...heads.map(({ top }) => top));
    const foot = Math.max(...last.map(({ foot }) => foot));
    const across = words.filter((word) => word.top >= top && word.foot <= foot && word.left < middle && word.right > middle);
    assert.deepEqual(across.map(({ text }) => text), [], `${page}: words run through the rule between the columns`);
  }
  return seen;
}
