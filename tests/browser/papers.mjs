// Signed files for the screens that check them, and paper made of a screen.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { By } from "selenium-webdriver";

/** Paper sizes in inches, as the browser is told: ISO 216 A4, ANSI Y14.1 letter. */
export const PAPERS = [
  { name: "a4", paperWidth: 8.27, paperHeight: 11.69 },
  { name: "letter", paperWidth: 8.5, paperHeight: 11 },
];

/** A folder for files of one test, taken away by `done`. */
export function folder() {
  const path = mkdtempSync(join(tmpdir(), "stepboard-files-"));
  return {
    put(name, content) {
      const file = join(path, name);
      writeFileSync(file, content);
      return file;
    },
    done: () => rmSync(path, { recursive: true, force: true }),
  };
}

/** Picks a file in the field with that id. */
export async function pick(page, id, path) {
  const field = await page.until(`the field ${id}`, () => page.driver.findElement(By.id(id)));
  await field.sendKeys(path);
}

/** Sets the day that is asked about. */
export const day = (page, value) =>
  page.driver.executeScript(
    "const field = document.getElementById('day'); field.value = arguments[0];" +
      "field.dispatchEvent(new Event('change', { bubbles: true }))",
    value,
  );

/** The screen on paper: the bytes of a PDF and how many pages it has. */
export async function printed(page, paper) {
  const bytes = await page.browser.paper({
    paperWidth: paper.paperWidth, paperHeight: paper.paperHeight, preferCSSPageSize: false, printBackground: false,
    marginTop: 0.59, marginBottom: 0.59, marginLeft: 0.59, marginRight: 0.59,
  });
  // ISO 32000-1, 7.7.3.3: a page object says `/Type /Page`; the tree above it says `/Pages`.
  const pages = bytes.toString("latin1").match(/\/Type\s*\/Page(?![s\w])/g) ?? [];
  return { bytes, pages: pages.length };
}

/** Neither the page nor its middle, which scrolls by itself, needs sideways scrolling. */
export async function fits(page, where) {
  await page.assertFits(where);
  const [has, needs] = await page.driver.executeScript(
    "const middle = document.querySelector('.middle'); return [middle.clientWidth, middle.scrollWidth]",
  );
  assert(needs <= has, `${where}: ${needs} px wide in a middle of ${has}`);
}
