// Firefox: FIREFOX and GECKODRIVER name its programs where they are not found by themselves. What WebDriver cannot do is asked
// of it by WebDriver BiDi.
import { join } from "node:path";
import { Browser, Builder } from "selenium-webdriver";
import { Options, ServiceBuilder } from "selenium-webdriver/firefox.js";
import { tools } from "../../../tools/shell.mjs";
import { program } from "./program.mjs";

/** What it asks of its maker by itself, the questions that it asks people, and what it does when it starts again. */
const PREFERENCES = {
  "app.normandy.enabled": false,
  "app.update.disabledForTesting": true,
  "browser.download.always_ask_before_handling_new_types": false,
  "browser.download.folderList": 2,
  "browser.download.manager.addToRecentDocs": false,
  "browser.sessionstore.resume_from_crash": false,
  "browser.shell.checkDefaultBrowser": false,
  "browser.startup.page": 0,
  "datareporting.policy.dataSubmissionEnabled": false,
  "intl.accept_languages": "en-GB, en",
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "toolkit.startup.max_resumed_crashes": -1,
  "toolkit.telemetry.reportingpolicy.firstRun": false,
  // Bars for scrolling lie over the page, as on tablets; its pictures leave out others and show a white strip there.
  "ui.useOverlayScrollbars": 1,
};

/** What it says of a page that is loaded anew while a file of it still comes, and for how long it says so, milliseconds. */
const LEFT = /^Failed to load .* A ServiceWorker intercepted the request and encountered an unexpected error\.$|^AbortError: The operation was aborted\. *$/;
const LEAVING_MS = 5_000;

export class Firefox {
  static can = { end: true, errors: true, requests: true, before: true, zone: true, size: true, seen: true };

  async begin(told) {
    const service = new ServiceBuilder(program("GECKODRIVER", ["geckodriver"], [join(tools, "bin")]));
    this.driver = await new Builder().forBrowser(Browser.FIREFOX).setFirefoxOptions(optionsOf(told)).setFirefoxService(service).build();
    this.process = (await this.driver.getCapabilities()).get("moz:processID");
    await this.hear();
    await this.size(told.size);
  }

  /** Makes the page that large. */
  async size({ width, height }) {
    await this.tell("browsingContext.setViewport", { context: await this.driver.getWindowHandle(), viewport: { width, height } });
  }

  async tell(method, params) {
    const { result, error, message } = await (await this.driver.getBidi()).send({ method, params });
    if (error) throw new Error(`${method}: ${error}: ${message}`);
    return result;
  }

  /** Notes what the console says and what is asked for. */
  async hear() {
    this.noted = { errors: [], requests: [] };
    const bidi = await this.driver.getBidi();
    bidi.on("log.entryAdded", ({ level, text }) => level === "error" && !this.leaves(text) && this.noted.errors.push(text));
    bidi.on("network.beforeRequestSent", ({ request }) => this.noted.requests.push(request.url));
    await this.tell("session.subscribe", { events: ["log.entryAdded", "network.beforeRequestSent"] });
  }

  /** Whether it says no more than that a page was left. */
  leaves(text) {
    return LEFT.test(text) && Date.now() - this.left < LEAVING_MS;
  }

  /** Runs a script before each page that is loaded from now on; gives what takes it back. */
  async before(source) {
    const { script } = await this.tell("script.addPreloadScript", { functionDeclaration: `() => { ${source} }` });
    return () => this.tell("script.removePreloadScript", { script });
  }

  /** Lives in a time zone of the IANA's names. */
  async zone(timezone) {
    await this.tell("emulation.setTimezoneOverride", { timezone, contexts: [await this.driver.getWindowHandle()] });
  }

  /** Errors in the console and addresses that were asked for, since they were read last. */
  async heard() {
    const noted = this.noted;
    this.noted = { errors: [], requests: [] };
    return noted;
  }

  /** Ends it at once. */
  async end() {
    process.kill(this.process, "SIGKILL");
    await this.stop();
  }

  /** As somebody loads it anew: WebDriver's own way goes past the service worker. */
  async reload() {
    this.left = Date.now();
    await this.tell("browsingContext.reload", { context: await this.driver.getWindowHandle(), wait: "complete" });
  }

  async stop() {
    await this.driver?.quit().catch(() => {});
  }
}

function optionsOf({ size, profile, downloads, reducedMotion }) {
  const options = new Options();
  options.setBinary(program("FIREFOX", ["firefox-esr", "firefox"]));
  options.addArguments("-headless", "-profile", profile, `--width=${size.width}`, `--height=${size.height}`);
  const all = { ...PREFERENCES, "browser.download.dir": downloads, "ui.prefersReducedMotion": Number(reducedMotion) };
  for (const [name, value] of Object.entries(all)) options.setPreference(name, value);
  options.enableBidi();
  return options;
}
