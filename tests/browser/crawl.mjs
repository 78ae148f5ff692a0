// Every kind of screen that links lead to: a few of those whose addresses begin alike.

/** Screens of one kind that are looked at: their addresses differ by what they are about. */
const ALIKE = 3;

/** Addresses of the app on the page. */
const LINKS = `return [...document.querySelectorAll('a[href^="#/"]')].map((link) => link.getAttribute("href"))`;

/** The kind of a screen: its address without what it is about. */
const kind = (address) => address.split("/").slice(0, 2).join("/");

/** Goes to every screen that links lead to from where the page is, a few of each kind, and gives their addresses. */
export async function everyScreen(page, visit) {
  const waiting = ["#/", "#/menu"];
  const seen = new Map();
  const kinds = new Map();
  while (waiting.length > 0) {
    const address = waiting.shift();
    if (seen.has(address) || (kinds.get(kind(address)) ?? 0) >= ALIKE) continue;
    kinds.set(kind(address), (kinds.get(kind(address)) ?? 0) + 1);
    seen.set(address, true);
    await page.driver.executeScript("location.hash = arguments[0]", address);
    await page.one("heading");
    await visit(address);
    waiting.push(...(await page.driver.executeScript(LINKS)));
  }
  return [...seen.keys()];
}
