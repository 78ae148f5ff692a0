import { open } from "./harness.mjs";
import { lay } from "./desk.mjs";
import { mkdirSync, writeFileSync } from "node:fs";
mkdirSync("/tmp/shots", { recursive: true });
const SZ = { l: { width: 1024, height: 768 }, p: { width: 768, height: 1024 }, f: { width: 390, height: 844 } };
const [family, seed, sizes = "lpf", act = ""] = process.argv.slice(2);
const full = async (page, name) => {
  const { data } = await page.driver.sendAndGetDevToolsCommand("Page.captureScreenshot", { format: "png", captureBeyondViewport: act.includes("full") });
  writeFileSync(`/tmp/shots/${name}.png`, Buffer.from(data, "base64"));
};
for (const s of sizes) {
  const page = await open(SZ[s]);
  await lay(page, family, Number(seed));
  await page.driver.sleep(1500);
  await full(page, `${family}-${s}-0`);
  if (act.includes("test")) {
    const tests = await page.driver.findElements({ css: ".test button" });
    for (const [n, test] of tests.entries()) {
      await test.click();
      await page.driver.sleep(1500);
      await full(page, `${family}-${s}-${n + 1}`);
    }
  }
  if (act.includes("hand")) {
    for (const set of await page.driver.findElements({ css: ".answer .choices" })) { const [one] = await set.findElements({ css: "label" }); await one.click(); }
    const [sure] = await page.all("radio", "I would ask first"); await page.touch(sure);
    await page.press("button", "Hand it in"); await page.driver.sleep(2000); await full(page, `${family}-${s}-v`);
  }
  console.log(s, await page.driver.executeScript("return [document.documentElement.scrollHeight, innerHeight, document.documentElement.scrollWidth, innerWidth]"));
  await page.stop();
}
