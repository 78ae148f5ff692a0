// What holds whatever the screens are: the app starts at every size, asks nothing of other hosts, passes the
// accessibility check and opens again without a network.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SIZES, journey } from "./harness.mjs";

for (const size of SIZES) {
  test(`the app starts on a ${size.name} screen`, () =>
    journey("start", size, async (page) => {
      assert.equal(await page.driver.getTitle(), "Stepboard");
      await page.assertFits("home");
      await page.assertAccessible("home");
      await page.shot("start");
    }));
}

test("after one visit the app opens without a network", () =>
  journey("offline", SIZES[0], async (page) => {
    await page.kept();
    await page.goOffline();
    await page.reload();
    assert.equal(await page.driver.getTitle(), "Stepboard");
    await page.kept();
  }));
