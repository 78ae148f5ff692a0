// Cards that are sprayed: by finger and by programmed passes, handed in, told of, kept and seen again.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { test } from "node:test";
import { begin, handIn } from "./apprentice.mjs";
import { begin as beginCheck, command, name } from "./checks.mjs";
import { putCard } from "./desk.mjs";
import { SIZES, journey, testWith } from "./harness.mjs";
import { fill } from "./office.mjs";
import { held, pulled, spray } from "./sprayer.mjs";

const FAMILY = "spray-sealer";
const SEED = 2;
/** Half an overlap, as an air-board refinish tip sheet has it. */
const OVERLAP = 0.5;

/** The face of the card, as the native command deals it. */
function face() {
  const dealt = execFileSync(command, ["deal", FAMILY, `seed=${SEED}`], { encoding: "utf8" });
  return JSON.parse(dealt).cards[0].face;
}

/**
 * Passes over a panel as a handbook has them, without the model's own: the gun in the middle of its distances, the first pass
 * on the upper edge and the last on the lower, the speed from the volume that lands, Q e = v s h.
 */
function byTheBook({ film, gun, near_mm, far_mm, outline_mm }) {
  const [xs, ys] = [0, 1].map((axis) => outline_mm.map((place) => place[axis]));
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const distance = (near_mm + far_mm) / 2;
  const fan = (gun.fan_mm * distance) / gun.at_mm;
  const wide = bottom - top;
  const pitch = wide / Math.ceil(wide / (fan * (1 - OVERLAP)));
  const wet = (film.from_um + film.to_um) / 2 / 1000;
  const speed = ((gun.flow_ml_min / 60) * 1000 * gun.landing) / (pitch * wet) / 1000;
  const lead = (gun.thin_mm / 2) * (distance / gun.at_mm) + speed * 1000 * gun.opens_s;
  return { line_mm: [[left, top], [right, top]], wide_mm: wide, distance_mm: distance, speed_m_s: speed, overlap: 1 - pitch / fan, lead_mm: lead, lag_mm: lead, wait_s: 0, pitch };
}

/** The same passes as strokes of a hand, each back along the one before; some may be left out. */
function strokes(set, kept = () => true) {
  const count = Math.round(set.wide_mm / set.pitch) + 1;
  const [[left, top], [right]] = set.line_mm;
  const pass = (nth) => {
    const [from, to] = nth % 2 ? [right, left] : [left, right];
    const y = top + nth * set.pitch;
    return { line: pulled({ ...set, line_mm: [[from, y], [to, y]] }), speed: set.speed_m_s };
  };
  return Array.from({ length: count }, (_, nth) => nth).filter(kept).map(pass);
}

/** The card with its stand open. */
async function stand(page) {
  await page.driver.get(page.address);
  await begin(page);
  await putCard(page, FAMILY, SEED);
  await page.one("button", "Go to the stand");
}

/** The run is laid down as the answer and handed in; gives the verdict. */
async function answered(page, certainty) {
  await page.press("button", "Take this run");
  await page.says("Sprayed:");
  return handIn(page, certainty);
}

/** The only answer of the record, opened. */
async function opened(page) {
  await page.press("link", "Back");
  await page.press("link", "My record");
  await page.press("link", /Sealer on a panel/);
  await page.one("img", "Film map");
}

testWith("finger", "a face that a hand sprays as it should be is right, is kept, and is seen again in the record", () =>
  journey("spray-card-hand", SIZES[1], async (page) => {
    await stand(page);
    await page.says("This trains judgement, not the hand.");
    await page.assertFits("a card that is sprayed");
    await page.assertAccessible("a card that is sprayed");
    await page.shot("spray-card");
    await page.press("button", "Go to the stand");
    await page.browser.touched(true);
    const set = byTheBook(face());
    await held(page, set.distance_mm);
    await page.assertFits("the stand of a card");
    await spray(page, strokes(set));
    await page.shot("spray-card-stand");
    assert.match(await answered(page), /^Right/);
    await page.until("the good run beside it", async () => (await page.all("img", "Film map")).length === 2);
    await page.assertFits("what came of it");
    await page.assertAccessible("what came of it");
    await page.shot("spray-card-right");
    await page.says("Saved on this tablet");
    await opened(page);
    await page.says(/Right/);
    await page.shot("spray-card-seen");
  }));

testWith("finger", "a face with gaps is wrong for its gaps, and is told what follows", () =>
  journey("spray-card-gaps", SIZES[0], async (page) => {
    await stand(page);
    await page.press("button", "Go to the stand");
    await page.browser.touched(true);
    const set = byTheBook(face());
    await held(page, set.distance_mm);
    await spray(page, strokes(set, (nth) => nth % 2 === 0));
    assert.match(await answered(page), /^Wrong/);
    const text = await page.text();
    assert.match(text, /Places were missed\.|Too much of the face is thin\.|The film lies in stripes\./);
    assert.match(text, /Each pass is thin at its sides|A face is done when its last corner is/);
    await page.assertFits("a run that is wrong");
    await page.shot("spray-card-gaps");
  }));

test("passes programmed by keys are an answer as good as a hand's", () =>
  journey("spray-card-keys", SIZES[2], async (page) => {
    await stand(page);
    await page.press("button", "Go to the stand");
    await page.one("button", "Take this run");
    await page.assertFits("the stand of a card");
    await page.press("button", "Program passes");
    const set = byTheBook(face());
    const [[ax, ay], [bx, by]] = set.line_mm;
    const fields = { from_x_mm: ax, from_y_mm: ay, to_x_mm: bx, to_y_mm: by, ...set, overlap: set.overlap * 100 };
    const typed = Object.entries(fields).filter(([key]) => key !== "line_mm" && key !== "pitch");
    for (const [key, value] of typed) await fill(page, `spray-${key}`, value.toFixed(3));
    await page.press("button", "Add this set");
    await page.says("Set 1");
    await page.press("button", "Take these passes");
    await page.says("1 set of programmed passes");
    await page.assertFits("a card that was sprayed");
    assert.match(await handIn(page), /^Right/);
    await page.one("img", "Film map");
    await page.assertFits("what came of it");
    await page.shot("spray-card-keys");
    await opened(page);
  }));

test("a card can be left at its stand as it was, and a run is kept while the page is loaded anew", () =>
  journey("spray-card-left", SIZES[1], async (page) => {
    await stand(page);
    await page.press("button", "Go to the stand");
    await page.press("button", "Back to the card");
    await page.says("Nothing is sprayed yet.");
    await page.press("button", "Go to the stand");
    await page.press("button", "Program passes");
    await page.press("button", "Add this set");
    await page.press("button", "Take these passes");
    await page.says("1 set of programmed passes");
    await page.driver.sleep(500);
    await page.reload();
    await page.one("button", "Spray it anew");
    await page.says("1 set of programmed passes");
  }));

/** What the rail at the foot of the screen warns of, opened. */
async function warned(page) {
  await page.press("button", /more cautions?$/);
  return page.driver.executeScript("return [...document.querySelectorAll('.rail li')].map((one) => one.innerText)");
}

test("in a check no caution at the stand answers another card, as none below the card does", () =>
  journey("spray-card-check", SIZES[1], async (page) => {
    await name(page, "Ines");
    await beginCheck(page, "Seal coat laid and sanded");
    await putCard(page, FAMILY, SEED, "check-draft");
    const below = await warned(page);
    await page.press("button", "Go to the stand");
    await page.one("button", "Take this run");
    await page.shot("spray-card-check");
    assert.deepEqual(await warned(page), below);
    assert(below.some((caution) => caution.startsWith("Never point a gun at skin")), below.join("\n"));
    assert(!below.some((caution) => caution.startsWith("Fan first")), below.join("\n"));
  }));
