// A signed file is checked without a network, says exactly what it says, and is printed. The files are those of
// tests/data/signoff, signed by published demo keys; what a stranger signs is signed by the library of another project.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, test } from "node:test";
import { canonical, data, signed, text } from "../signed/support.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { beginBook, goTo } from "./office.mjs";
import { PAPERS, day, fits, folder, pick, printed } from "./papers.mjs";

const DAY = "2026-06-01";
const ASSESSOR = new Uint8Array(32).fill(3);
/** Bytes that a sign-off may have: `BYTES_MOST` of src/signoff/canonical.rs. */
const BYTES_MOST = 256 * 1024;
const TABLET = SIZES[0];
const files = folder();
after(files.done);

const file = JSON.parse(text("sign-off.json"));
const check = { path: "#/verify" };

/** Picks both files and asks about the day. */
async function picked(page, signOff = data("sign-off.json")) {
  await page.one("heading", "Check a sign-off");
  await day(page, DAY);
  await pick(page, "list", data("trust.json"));
  await pick(page, "sign-off", signOff);
}

/** The sign-off with something changed, signed anew by its assessor with the other library. */
async function signedAnew(name, change) {
  const { proof, ...document } = structuredClone(file);
  change(document);
  return files.put(name, canonical(await signed(document, ASSESSOR, document.validFrom)));
}

for (const size of SIZES) {
  test(`a sign-off is accepted, and every word of it is shown (${size.name})`, () =>
    journey("verify", size, async (page) => {
      await page.says("Pick the sign-off and the trust list");
      await fits(page, "nothing picked");
      await page.assertAccessible("nothing picked");
      await page.shot("verify-empty");
      await picked(page);
      await page.one("heading", "Accepted");
      const said = await page.text();
      const subject = file.credentialSubject;
      const told = [
        file.name, subject.achievement.description, subject.achievement.criteria.narrative, file.validFrom, file.validUntil,
        file.issuer.name, subject.source.name, `number ${subject.identifier[0].identityHash}`,
        ...subject.achievement.resultDescription.slice(0, -1).map(({ name }) => name),
        ...file.evidence.flatMap(({ name, narrative }) => [name, narrative]),
      ];
      for (const words of told) assert(said.includes(words), `${words} is not shown`);
      await fits(page, "accepted");
      await page.assertAccessible("accepted");
      await page.shot("verify-accepted");
    }, check));
}

test("one changed byte is refused, and nothing of the file is shown", () =>
  journey("verify-changed", TABLET, async (page) => {
    const bytes = readFileSync(data("sign-off.json"));
    const at = bytes.indexOf("alone");
    bytes[at] ^= 1;
    await picked(page, files.put("changed.json", bytes));
    await page.one("heading", "Not accepted");
    await page.says("The signature does not fit");
    assert(!(await page.text()).includes(file.credentialSubject.source.name));
    await page.assertAccessible("refused");
    await page.shot("verify-refused");
  }, check));

test("before its day, and from its end on, it is not accepted", () =>
  journey("verify-days", TABLET, async (page) => {
    await picked(page);
    await page.one("heading", "Accepted");
    await day(page, file.validUntil.slice(0, 10));
    await page.says("It ran out on");
    await page.one("heading", "Not accepted");
    await day(page, "2026-03-01");
    await page.says("It is valid from");
    await day(page, DAY);
    await page.one("heading", /^Accepted/);
  }, check));

test("what a file says is text and never markup", () =>
  journey("verify-markup", TABLET, async (page) => {
    const markup = "<img src=x onerror=\"document.title='owned'\"><b>bold</b>";
    await picked(page, await signedAnew("markup.json", (one) => (one.evidence[0].narrative = markup)));
    await page.one("heading", "Accepted");
    await page.says(markup);
    assert.equal(await page.driver.executeScript("return document.querySelectorAll('img, .says b b').length"), 0);
    assert.equal(await page.driver.getTitle(), "Stepboard");
  }, check));

test("files that are none are named, and the other one stays picked", () =>
  journey("verify-wrong", TABLET, async (page) => {
    await picked(page, files.put("big.json", Buffer.alloc(BYTES_MOST + 1, 0x20)));
    await page.says("big.json is too large");
    await page.says("One of the two files could not be read");
    await pick(page, "sign-off", files.put("full.json", Buffer.alloc(BYTES_MOST, 0x20)));
    await page.says("The file is no JSON");
    await pick(page, "sign-off", data("trust.json"));
    await page.one("heading", "Not accepted");
    await pick(page, "sign-off", data("sign-off.json"));
    await page.one("heading", /^Accepted/);
    await pick(page, "list", data("sign-off.json"));
    await page.one("heading", "This is no trust list");
    await fits(page, "no trust list");
    await page.shot("verify-no-list");
  }, check));

test("it works without a network", () =>
  journey("verify-offline", TABLET, async (page) => {
    await page.kept();
    await page.goOffline();
    await page.reload();
    await picked(page);
    await page.one("heading", "Accepted");
  }, check));

testWith("paper media", "a certificate and a checklist are printed on both papers, and the code on them is that of the file", () =>
  journey("verify-paper", SIZES[1], async (page) => {
    await picked(page);
    await page.press("link", "Certificate");
    await page.one("button", "Print");
    const code = await page.driver.executeScript("return document.querySelector('.printed .code').textContent");
    await page.shot("certificate");
    for (const paper of PAPERS) {
      const { bytes, pages } = await printed(page, paper);
      assert.equal(pages, 1, `a certificate on ${paper.name}`);
      page.keep(`certificate-${paper.name}.pdf`, bytes);
    }
    await page.press("link", "Back");
    await page.press("link", "Checklist");
    await page.one("button", "Print");
    await page.shot("checklist");
    for (const paper of PAPERS) {
      const { bytes, pages } = await printed(page, paper);
      assert(pages >= 1 && pages <= 3, `${pages} pages of a checklist on ${paper.name}`);
      page.keep(`checklist-${paper.name}.pdf`, bytes);
    }
    await onPaper(page);
    await page.press("link", "Back");
    await page.type("Code printed on the paper", code.toUpperCase().replaceAll(" ", "-"));
    await page.says("this is the code of this file");
    await page.type("Code printed on the paper", code.replace(/.$/, (last) => (last === "0" ? "1" : "0")));
    await page.says("this is not the code of this file");
  }, check));

/** Nothing but the paper is printed, black on white, and nothing is wider than the sheet. */
async function onPaper(page) {
  await page.browser.media("print");
  const found = await page.driver.executeScript(`
    const shown = (query) => [...document.querySelectorAll(query)].some((one) => one.getClientRects().length > 0);
    const paper = document.querySelector(".printed");
    const colours = new Set([...paper.querySelectorAll("*")].map((one) => getComputedStyle(one).color));
    const wide = [...paper.querySelectorAll("*")].filter((one) => one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0);
    return {
      around: shown(".top, .rail, .action > *"), ink: [...colours], ground: getComputedStyle(document.body).backgroundColor,
      wide: wide.map((one) => one.outerHTML.slice(0, 80)),
    }`);
  await page.browser.media("");
  assert.deepEqual(found, { around: false, ink: ["rgb(0, 0, 0)"], ground: "rgb(255, 255, 255)", wide: [] });
}

test("the list of this tablet's own book is asked without a file", { timeout: 240_000 }, () =>
  journey("verify-own", TABLET, async (page) => {
    await beginBook(page);
    await goTo(page, "#/verify");
    await page.press("checkbox", "this tablet's own book");
    await page.says("Now pick the sign-off.");
    await pick(page, "sign-off", data("sign-off.json"));
    await page.one("heading", "Not accepted");
    await page.says("Whoever signed is not on the trust list");
    await page.says("This is the list of this tablet's own book");
    await pick(page, "list", data("trust.json"));
    await day(page, DAY);
    await page.one("heading", /^Accepted/);
    await fits(page, "the own list");
  }));

test("what a signature proves is told, and what to do when a key is lost", () =>
  journey("verify-about", SIZES[2], async (page) => {
    await page.press("link", "What a signature proves");
    await page.one("heading", "It does not prove");
    await page.says("cannot be got back by anybody");
    await fits(page, "about signatures");
    await page.assertAccessible("about signatures");
    await page.shot("verify-about");
    await page.press("link", "Back");
    await page.one("heading", "Check a sign-off");
  }, check));
