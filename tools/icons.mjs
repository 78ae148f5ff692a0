// Draws the icons that home screens ask for as PNG from tools/icon.svg, with the Chromium of the browser tests.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root, run } from "./shell.mjs";

/** Sides in pixels: what tablets of two makes ask for. */
const SIDES = [180, 512];

for (const side of SIDES) {
  const work = mkdtempSync(join(tmpdir(), "stepboard-icon-"));
  const drawing = pathToFileURL(join(root, "tools", "icon.svg"));
  const page = join(work, "icon.html");
  writeFileSync(page, `<body style="margin:0"><img src="${drawing}" width="${side}" height="${side}" style="display:block">`);
  run(process.env.CHROME ?? "chromium", [
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--hide-scrollbars", "--force-device-scale-factor=1",
    `--user-data-dir=${join(work, "profile")}`, `--window-size=${side},${side}`,
    `--screenshot=${join(root, "styles", `icon-${side}.png`)}`, page,
  ]);
  rmSync(work, { recursive: true, force: true });
}
