// Results of many people as files, made by `tests/made` when they are wanted and taken away after.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { By } from "selenium-webdriver";
import { root } from "../../tools/shell.mjs";

/** Result files of so many people with so many answers each, ten people a tablet. */
export function crowd(people, answers) {
  const folder = mkdtempSync(join(tmpdir(), "stepboard-crowd-"));
  const wanted = ["crowd", folder, String(people), String(answers)];
  execFileSync("cargo", ["run", "--locked", "--quiet", "--example", "made", "--", ...wanted], { cwd: root, stdio: ["ignore", "inherit", "inherit"] });
  const files = readdirSync(folder).sort().map((name) => join(folder, name));
  return { files, folder, done: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Picks several files at once in the field of the crew page. */
export async function readIn(page, files) {
  const field = await page.until("the field for results", () => page.driver.findElement(By.id("results")));
  await field.sendKeys(files.join("\n"));
}
