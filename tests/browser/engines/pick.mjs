// Which engine the journeys run in: ENGINE, Chromium unless set.
import { Chromium } from "./chromium.mjs";
import { Firefox } from "./firefox.mjs";
import { start } from "./start.mjs";
import { WebKit } from "./webkit.mjs";

const ENGINES = { chromium: Chromium, firefox: Firefox, webkit: WebKit };
const USUAL = "chromium";
const asked = process.env.ENGINE || USUAL;

/** What else than WebDriver asks a journey may need of a browser, and what that is. */
export const POWERS = {
  end: "ended at once and started again on what it stored",
  errors: "what the console says",
  requests: "what is asked of other hosts",
  before: "a script before the page's own",
  zone: "another time zone",
  finger: "fingers with a clock of their own",
  slower: "a slower machine",
  size: "another size of the page",
  spoken: "what a screen reader is given",
  media: "a medium other than the screen",
  paper: "pages on paper",
  seen: "being told when a window is seen again",
  manifest: "the manifest as the browser reads it",
};

if (!Object.hasOwn(ENGINES, asked)) throw new Error(`ENGINE is ${Object.keys(ENGINES).join(", ")}, not ${asked}`);

const Browser = ENGINES[asked];

/** Its name, what it can do, how it starts, and a folder for its pictures beside those of the usual one. */
export const engine = { name: asked, can: Browser.can, start: (told) => start(Browser, told), shots: asked === USUAL ? "" : asked };
