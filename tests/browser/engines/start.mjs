// Starts a browser, and starts it again where that did not go well.

/** How often it is started before it counts as one that does not start, and how long each start may take, ms. */
const STARTS = 4;
const START_MOST = 60_000;

/** What comes in so many milliseconds, or an error. */
export async function inTime(work, most) {
  let late;
  const over = new Promise((_, failed) => {
    late = setTimeout(() => failed(new Error(`not there within ${most} ms`)), most);
  });
  return Promise.race([work, over]).finally(() => clearTimeout(late));
}

/** Starts a browser of that class. A port that was free a moment ago may be taken by what starts beside it. */
export async function start(Browser, told) {
  for (let tries = 1; ; tries += 1) {
    const browser = new Browser();
    const begun = browser.begin(told);
    try {
      await inTime(begun, START_MOST);
      return browser;
    } catch (error) {
      await browser.stop();
      // What came too late is stopped as well.
      begun.then(() => browser.stop(), () => {});
      if (tries === STARTS) throw error;
    }
  }
}
