// What an apprentice does, in the words of the screen: the tests read as the work at the tablet.

/** What leads from home to the cards. */
export const START = /^(Start with|Go on at card)/;
export const HAND_IN = /^(Hand it in|Pick an answer|Type the figure|Mark the place|Name fault, cause and remedy|Spray the face|Say how far you would go)/;
/** Rings that are no answer: the lamps over a panel. */
const LAMP = /^(Overhead|Raking|Small lamp)$/;
const CERTAINTY = /right (less|about|more) .*times in/;
const READING = 800;
const VERDICT = /^(Right|Partly right|Wrong)/;

/** Waits for home to be drawn. */
export const home = (page) => page.one("button", START);

/** From home to a card: one tap. */
export async function begin(page) {
  await page.press("button", START);
  await page.one("button", HAND_IN);
}

/** The stage that the card on the screen belongs to: the title of the screen. */
export async function stage(page) {
  const [title] = await page.all("heading");
  return title.getText();
}

/** Gives some answer of the kind that the card asks for; gives the kind. */
export async function answer(page) {
  await page.one("button", HAND_IN);
  const [box] = await page.all("checkbox");
  if (box) {
    await page.touch(box);
    return "choose all";
  }
  const up = (await page.all("button", /^Move up/)).at(-1);
  if (up) {
    await page.touch(up);
    return "put in order";
  }
  if (await page.has("button", /^Delete the last digit/)) {
    await page.press("button", /^1$/);
    return "number";
  }
  if (await page.has("button", /^(Go to the stand|Spray it anew)/)) {
    await page.press("button", /^(Go to the stand|Spray it anew)/);
    await page.press("button", /^Program passes/);
    await page.press("button", "Add this set");
    await page.press("button", /^Take these passes/);
    await page.one("button", HAND_IN);
    return "spray";
  }
  const groups = await page.all("radiogroup", /^(Fault|Cause to look at first|Remedy)$/);
  if (groups.length === 3) {
    for (const group of groups) await page.touch(await group.findElement({ css: "label" }));
    return "diagnose";
  }
  for (const ring of await page.all("radio")) {
    const name = await ring.getAccessibleName();
    if (CERTAINTY.test(name) || LAMP.test(name)) continue;
    await page.touch(ring);
    return "choose one";
  }
  const [cell] = await page.all("gridcell");
  if (cell) {
    await page.touch(cell);
    return "point";
  }
  throw new Error(`no way to answer: ${(await page.text()).slice(0, 600)}`);
}

/** Says how far one would go, and hands in; gives the verdict's heading. */
export async function handIn(page, certainty = "I would ask first") {
  await page.press("radio", certainty);
  await page.press("button", "Hand it in");
  return verdict(page);
}

/** The heading of the verdict, waited for. */
export async function verdict(page) {
  const heading = await page.one("heading", VERDICT);
  return heading.getText();
}

export async function next(page) {
  await read(page);
  await page.press("button", "Next card");
}

/** Reads the verdict: a second tap that comes at once is taken for a slip of the finger and does nothing. */
export const read = (page) => page.driver.sleep(READING);

/** Answers told by the record, band by band. */
export async function recorded(page) {
  // Home has a link of that name; the heading is the screen's own.
  await page.one("heading", "My record");
  const [, bands = ""] = (await page.text()).split("By band");
  const told = [...bands.matchAll(/(\d+) answers?\b/g)];
  return told.reduce((sum, [, count]) => sum + Number(count), 0);
}
