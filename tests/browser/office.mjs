// People, keys and the sign-off book, as they are set up through the screens.
import { By, Key } from "selenium-webdriver";

/** Made up for these tests. */
export const SHOP = {
  name: "Lindmoor Lutherie",
  root: "copper heron under seven roofs",
  first: { number: "i-01", name: "Ruth Abel", passphrase: "plane tree beside the slow canal" },
};

/** Types into the field with that id, once the screen on which it stays is drawn; a new line is a key, as some engines know no other. */
export async function fill(page, id, text) {
  const field = await page.until(`the field ${id}`, async () => {
    const found = await page.driver.findElement(By.id(id));
    await page.driver.executeScript("arguments[0].scrollIntoView({ block: 'center' })", found);
    await found.clear();
    return found;
  });
  await field.sendKeys(text.replaceAll("\n", Key.ENTER));
}

/** Goes to a screen by its address. */
export function goTo(page, route) {
  return page.driver.executeScript("location.hash = arguments[0]", route);
}

/** Takes an apprentice in. */
export async function takeIn(page, number, name) {
  await goTo(page, "#/people");
  await fill(page, "new-number", number);
  await fill(page, "new-name", name);
  await page.press("button", "Take in");
  await page.says(`${name} is taken in.`);
}

/** Begins the sign-off book with the first instructor; `then` is the shop whose book is there afterwards. */
export async function beginBook(page, shop = SHOP, then = shop.name) {
  await goTo(page, "#/people");
  await fill(page, "begin-shop", shop.name);
  await fill(page, "begin-number", shop.first.number);
  await fill(page, "begin-name", shop.first.name);
  for (const id of ["begin-own", "begin-own-again"]) await fill(page, id, shop.first.passphrase);
  for (const id of ["begin-root", "begin-root-again"]) await fill(page, id, shop.root);
  await page.press("button", "Begin the book");
  await page.says(`Who may sign: ${then}`);
}

/** Opens a key on a screen that asks for it; `who` is part of what stands beside its choice. */
export async function unlock(page, passphrase = SHOP.first.passphrase, who = "") {
  if (who) await page.press("radio", who);
  await fill(page, "unlock-passphrase", passphrase);
  await page.press("button", "Open my key");
  await page.says("is signed in");
}

/** Says who works now, on the screen that asks for it. */
export async function handOver(page, name, pin = "") {
  await goTo(page, "#/people");
  await page.press("button", "Hand the tablet over");
  await page.press("button", name);
  if (pin) {
    await fill(page, "who-pin", pin);
    await page.press("button", "That is me");
  }
  await page.until("the tablet to open", async () => !(await page.has("heading", "Who works now?")));
}

/** What is stored under a key of the app's database, or all of a store without one. */
export function stored(page, store, key) {
  return page.driver.executeAsyncScript((store, key, done) => {
    const opening = indexedDB.open("stepboard");
    opening.onsuccess = () => {
      const there = opening.result.transaction(store).objectStore(store);
      const asked = key === null ? there.getAll() : there.get(key);
      asked.onsuccess = () => {
        opening.result.close();
        done(asked.result);
      };
    };
  }, store, key ?? null);
}

/** The random name of the tablet. */
export const deviceOf = async (page) => JSON.parse(await stored(page, "state", "settings")).device;
