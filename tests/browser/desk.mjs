// Lays a certain card on the desk: which card comes next is up to the app, and tests of one family cannot wait for it.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../tools/shell.mjs";
import { begin } from "./apprentice.mjs";

/** The version of a family that ships: a card of another one is not dealt again. */
function version(family) {
  const folder = join(root, "content", "families");
  const told = readdirSync(folder).flatMap((name) => readFileSync(join(folder, name), "utf8").split("[[family]]"));
  const one = told.find((text) => text.includes(`id = "${family}"`));
  return Number(one?.match(/^version = (\d+)$/m)?.[1]);
}

/** Begins a card, then puts another family's in its place and loads the page anew. */
export async function lay(page, family, seed) {
  await page.driver.get(page.address);
  await begin(page);
  await putCard(page, family, seed);
  await page.until(`a panel of ${family}`, () => page.driver.executeScript("return document.querySelector('.card-panels') !== null"));
}

/** Puts a family's card in the place of the one that lies there, of practice or of a check, and loads the page anew. */
export async function putCard(page, family, seed, kept = "draft") {
  await page.until("the card on the desk", () => page.driver.executeAsyncScript(SWAP, family, seed, version(family), kept));
  await page.reload();
}

/** The card of practice on the desk, as it is stored. */
export const onDesk = (page) => page.driver.executeAsyncScript(READ);

const READ = `const [done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const got = asked.result.transaction("state").objectStore("state").get("draft");
    got.onsuccess = () => { asked.result.close(); done(JSON.parse(got.result ?? "null")); };
  };`;

const SWAP = `const [family, seed, version, kept, done] = arguments;
  const asked = indexedDB.open("stepboard");
  asked.onsuccess = () => {
    const database = asked.result;
    const state = database.transaction("state", "readwrite");
    const store = state.objectStore("state");
    const got = store.get(kept);
    got.onsuccess = () => {
      if (!got.result) return;
      const draft = JSON.parse(got.result);
      Object.assign(draft, { card: { ...draft.card, family, seed, version }, certainty: null, handed: null, reworked: false });
      draft.slate = { marks: [], figure: "", unit: null, not_enough: false };
      store.put(JSON.stringify(draft), kept);
    };
    state.oncomplete = () => { database.close(); done(Boolean(got.result)); };
  };
  asked.onerror = () => done(false);`;
