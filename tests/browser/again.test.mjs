// A card that was wrong and would have been done on the job is worked once more before anything else, also where it was left.
import assert from "node:assert/strict";
import { test } from "node:test";
import { By } from "selenium-webdriver";
import { START, begin, read } from "./apprentice.mjs";
import { dealt, give } from "./checks.mjs";
import { onDesk, putCard } from "./desk.mjs";
import { SIZES, journey } from "./harness.mjs";

/** A family of which one answer is picked. */
const FAMILY = "residue-place";
const SEED = 5;

const options = (page) => page.driver.findElements(By.css(".rework .choices input"));
const optionsInView = (page) => page.until("the options in view", () => page.inView(".rework .choice"));

for (const size of SIZES) {
  test(`a card that is to be worked once more is asked for on home, and its options come into view (${size.name})`, () =>
    journey("again", size, async (page) => {
      await begin(page);
      await putCard(page, FAMILY, SEED);
      await page.until("the card", async () => (await page.driver.findElements(By.css(".choices input"))).length > 0);
      const card = dealt((await onDesk(page)).card);
      await give(page, card, { right: false, certainty: "job" });
      await page.one("heading", /you would have gone ahead/);
      await page.shot("again-told");
      await read(page);
      await page.press("button", "Work it once more");
      await optionsInView(page);
      await page.shot("again-options");

      await page.press("link", "Back");
      await page.says("was wrong and would have been done on the job");
      await page.assertFits("home with a card to be worked once more");
      await page.assertAccessible("home with a card to be worked once more");
      await page.shot("again-home");
      await page.reload();
      await page.press("button", "Work it once more");
      await optionsInView(page);

      const letter = card.solution.answer.pick;
      await page.touch((await options(page))["ABCDEF".indexOf(letter)]);
      // A tap so soon after the screen came up was meant for the one before.
      await read(page);
      await page.press("button", "Check it");
      await page.says("That is it. Go on.");
      await page.press("link", "Back");
      await page.one("button", START);
      assert.equal(await page.has("button", "Work it once more"), false, "once is enough");
    }));
}
