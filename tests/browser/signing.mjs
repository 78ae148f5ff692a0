// A shop that signs somebody off, as far as the screens are there for it.
import { SIZES, open } from "./harness.mjs";
import { SHOP, beginBook, deviceOf, goTo, takeIn } from "./office.mjs";
import { pick } from "./papers.mjs";
import { Seed } from "./seed.mjs";

/** Made up for these tests. */
export const MARA = { number: "a-07", name: "Mara Okafor" };
/** Whoever assesses and signs. */
export const BY = { number: SHOP.first.number, name: SHOP.first.name };

/** A shop with its book, an apprentice, and weeks of her work: cards and demonstrations for one competency, for another the
 * demonstrations alone. */
export async function shop(page, now = Date.now()) {
  await takeIn(page, MARA.number, MARA.name);
  await beginBook(page);
  await new Seed(await deviceOf(page), MARA.number, BY, now)
    .check("room-safe", [24, 16, 9, 3], 24)
    .watched("room-safe", [5, 2])
    .watched("air-read", [6, 5, 4])
    .put(page);
}

/** The screen on which a competency of hers is signed. */
export const toSign = (page, slug) => goTo(page, `#/assess/${MARA.number}/${slug}/sign`);

/** Signs what is on the screen. */
export async function signIt(page) {
  await page.press("button", `Sign as ${SHOP.first.name}`);
  await page.one("heading", "Signed and written into the book");
}

/** What somebody is told who has nothing but two files, on a device of their own. */
export async function elsewhere(files, steps) {
  const page = await open(SIZES[0], { path: "#/verify" });
  try {
    await pick(page, "list", files.list);
    await pick(page, "sign-off", files.signOff);
    await steps(page);
    await page.assertClean();
  } finally {
    await page.stop();
  }
}
