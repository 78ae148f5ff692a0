// The instructor's shop sheet: three values changed, one refused, what changes, saved and in use, taken on another tablet;
// and today's air, entered once and used by Bench.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { test } from "node:test";
import { SIZES, journey, testWith } from "./harness.mjs";
import { goTo } from "./office.mjs";
import { folder, pick } from "./papers.mjs";

/** Sets what stands in a field, by its id. */
async function put(page, id, text) {
  const field = await page.until(`field ${id}`, () => page.driver.findElement({ id }));
  await page.driver.executeScript("arguments[0].closest('details').open = true; arguments[0].scrollIntoView({ block: 'center' })", field);
  await field.clear();
  await field.sendKeys(text);
}

test("an instructor changes three values, sees what changes, saves them and hands them on", { timeout: 240_000 }, async () => {
  const files = folder();
  let file;
  let link;
  await journey("sheet", SIZES[0], async (page) => {
    await goTo(page, "#/menu");
    await page.press("link", "Shop sheets");
    await page.says("Nitrocellulose lacquer");
    await page.assertFits("the sheets");
    await page.assertAccessible("the sheets");
    await page.press("link", "Open it");
    await page.press("button", "Edit: make a sheet of our own");
    await page.says("0 values differ from Nitrocellulose lacquer.");
    await put(page, "value-clear-wait", "0.2");
    await page.says("Not under 0.5 h. The limit comes from: published instrument schedules");
    await page.assertAccessible("a value that is refused");
    await page.press("button", "What changes");
    const here = () => page.driver.executeScript("return document.activeElement.id");
    assert.equal(await here(), "value-clear-wait", "a refused value is gone to and goes no further");
    await page.says("1 value is not allowed yet.");
    await put(page, "value-clear-wait", "4");
    await put(page, "value-humidity-limit", "55");
    await put(page, "value-last-grit", "320");
    await page.says("3 values differ from Nitrocellulose lacquer.");
    // What was typed stays when the page is loaded anew.
    await page.reload();
    await page.says("3 values differ from Nitrocellulose lacquer.");
    await page.press("button", "What changes");
    await page.says(/\d+ of \d+ kinds of cards now answer differently/);
    for (const title of ["Clear coats allowed today", "The recoat window", "Spray or wait", "The next sanding grit"]) await page.says(title);
    assert(!(await page.text()).includes("Reading the pores"), "none of the three changes how wood is read");
    await page.assertFits("what changes");
    await page.assertAccessible("what changes");
    await page.press("button", "Save and take into use");
    await page.says("A sheet needs a name");
    assert.equal(await here(), "sheet-name");
    await page.type("What the shop calls it", "Winter");
    await page.press("button", "Save and take into use");
    await page.says("This sheet is in use on this tablet.");
    await page.assertAccessible("an edition");
    // It is handed out as sets are: as a link, as a square code and as a file.
    link = await page.driver.executeScript("return document.getElementById('hand-out-link').value");
    assert.match(link, /#\/take\/./);
    await page.one("img", "Square code of the link");
    await page.assertFits("an edition");
    await page.shot("sheet-one");
    const saved = await page.save("Save the file");
    assert.match(basename(saved), /^stepboard-sheet-[0-9a-f]{32}\.json$/);
    const text = readFileSync(saved, "utf8");
    file = files.put(basename(saved), text);
    assert.deepEqual(JSON.parse(text).values, { "clear-wait": 4, "humidity-limit": 55, "last-grit": 320 });
    // Cards and bench go by it.
    await goTo(page, "#/practise/sheet");
    await page.says("Winter, edition 1");
    await page.reload();
    await page.says("Winter, edition 1");
  });
  await journey("sheet-taken", SIZES[2], async (page) => {
    await goTo(page, "#/sheet");
    await pick(page, "sheet-file", file);
    await page.says("Winter, edition 1");
    await page.says("4 h");
    await page.assertFits("a sheet that came");
    await page.press("button", "Take it onto this tablet");
    await page.press("button", "Take into use");
    await page.says("This sheet is in use on this tablet.");
    await page.says("It stays: it is in use.");
  });
  // The link alone brings the same edition.
  await journey("sheet-by-link", SIZES[1], async (page) => {
    await goTo(page, new URL(link).hash);
    await page.says("Winter, edition 1");
    await page.says("4 h");
    await page.press("button", "Take it onto this tablet");
    await page.press("button", "Take into use");
    await page.says("This sheet is in use on this tablet.");
  });
  files.done();
});

testWith("before", "today's air is entered once, judged, used by Bench and old after some hours", { timeout: 180_000 }, () =>
  journey("air", SIZES[0], async (page) => {
    await goTo(page, "#/bench");
    await page.press("link", "Today's air");
    await page.type("Air", "72");
    await page.type("Humidity", "45");
    await page.type("Work surface", "20");
    await page.press("button", "Save with the time of now");
    await page.says("hardly ever so in a workshop");
    await page.press("button", "Save with the time of now");
    await page.says("Measured just now");
    await page.type("Work surface", "20");
    await page.type("Air", "21");
    await page.type("Humidity", "140");
    await page.type("Work surface", "20");
    await page.press("button", "Save with the time of now");
    await page.says("1 % to 100 %");
    await page.assertAccessible("a wrong figure");
    await page.type("Humidity", "72");
    await page.press("button", "Save with the time of now");
    await page.says("Measured just now");
    await page.says("Today's air is not fit for spraying");
    await page.assertFits("today's air");
    await page.assertAccessible("today's air");
    await goTo(page, "#/bench/dew-point");
    await page.says("From today's air");
    assert.equal(await (await page.one("textbox", "Humidity")).getAttribute("value"), "72");
    // Dew point of air at 21 °C and 72 %: 15.76 °C by the Magnus formula of the sheet (17.625, 243.04).
    await page.says("15.8");
    await page.type("Humidity", "40");
    await page.reload();
    assert.equal(await (await page.one("textbox", "Humidity")).getAttribute("value"), "72", "air is not overwritten");
    await page.setClock(new Date(Date.now() + 5 * 3_600_000).toISOString());
    await page.says("Today's air is old");
    assert.equal(await (await page.one("textbox", "Humidity")).getAttribute("value"), "", "old air is not taken over");
    await goTo(page, "#/air");
    await page.press("button", "Erase it");
    await page.says("Enter what you measured");
  }));
