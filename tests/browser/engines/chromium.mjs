// Chromium: CHROME and CHROMEDRIVER name its programs where they are not found by themselves.
import { readlinkSync, rmSync } from "node:fs";
import { join } from "node:path";
import { Browser, Builder, logging } from "selenium-webdriver";
import { Options, ServiceBuilder } from "selenium-webdriver/chrome.js";
import { program } from "./program.mjs";

export class Chromium {
  static can = {
    end: true, errors: true, requests: true, before: true, zone: true, size: true, spoken: true, finger: true, slower: true, media: true, paper: true, manifest: true, seen: true,
  };

  async begin(told) {
    this.profile = told.profile;
    const service = new ServiceBuilder(program("CHROMEDRIVER", ["chromedriver"]));
    this.driver = await new Builder().forBrowser(Browser.CHROME).setChromeOptions(optionsOf(told)).setChromeService(service).build();
    // The window includes no frame when headless, yet older browsers count one: the page's own size is what is set.
    await this.size(told.size);
    await this.tell("Browser.setDownloadBehavior", { behavior: "allow", downloadPath: told.downloads });
  }

  tell(command, how = {}) {
    return this.driver.sendAndGetDevToolsCommand(command, how);
  }

  /** Runs a script before each page that is loaded from now on; gives what takes it back. */
  async before(source) {
    const { identifier } = await this.tell("Page.addScriptToEvaluateOnNewDocument", { source });
    return () => this.tell("Page.removeScriptToEvaluateOnNewDocument", { identifier });
  }

  /** Lives in a time zone of the IANA's names. */
  zone(timezoneId) {
    return this.tell("Emulation.setTimezoneOverride", { timezoneId });
  }

  /** A screen that is touched, or none. */
  touched(enabled) {
    return this.tell("Emulation.setTouchEmulationEnabled", { enabled });
  }

  /** What fingers do at a moment, in seconds of their own clock where one is given. */
  finger(type, touchPoints, timestamp) {
    return this.tell("Input.dispatchTouchEvent", { type, touchPoints, ...(timestamp === undefined ? {} : { timestamp }) });
  }

  /** Works so many times slower than this machine. */
  slower(rate) {
    return this.tell("Emulation.setCPUThrottlingRate", { rate });
  }

  /** Makes the page that large. */
  size({ width, height }) {
    return this.tell("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: false });
  }

  /** Shows the page as on a medium of that name, with those features; none is the screen. */
  media(media, features = []) {
    return this.tell("Emulation.setEmulatedMedia", { media, features });
  }

  /** The tree of what a screen reader is given. */
  async spoken() {
    await this.tell("Accessibility.enable");
    return (await this.tell("Accessibility.getFullAXTree")).nodes;
  }

  /** Puts the focus on something of that tree. */
  async focus(backendNodeId) {
    await this.tell("DOM.enable");
    await this.tell("DOM.focus", { backendNodeId });
  }

  /** The page on paper, as a PDF. */
  async paper(how) {
    return Buffer.from((await this.tell("Page.printToPDF", how)).data, "base64");
  }

  /** What the browser reads out of the manifest, and what keeps it from installing the app. */
  async manifest() {
    const { installabilityErrors } = await this.tell("Page.getInstallabilityErrors");
    return { ...(await this.tell("Page.getAppManifest")), installabilityErrors };
  }

  /** Errors in the console and addresses that were asked for, since they were read last. */
  async heard() {
    const logs = this.driver.manage().logs();
    const console = await logs.get(logging.Type.BROWSER);
    const network = (await logs.get(logging.Type.PERFORMANCE)).map(({ message }) => JSON.parse(message).message);
    return {
      errors: console.filter(({ level }) => level.value >= logging.Level.SEVERE.value).map(({ message }) => message),
      requests: network.filter(({ method }) => method === "Network.requestWillBeSent").map(({ params }) => params.request.url),
    };
  }

  /** Ends it at once. */
  async end() {
    // The browser tells in its profile which process it is.
    const lock = join(this.profile, "SingletonLock");
    const [, pid] = readlinkSync(lock).match(/-(\d+)$/);
    process.kill(Number(pid), "SIGKILL");
    await this.driver.quit().catch(() => {});
    rmSync(lock, { force: true });
  }

  reload() {
    return this.driver.navigate().refresh();
  }

  async stop() {
    await this.driver?.quit().catch(() => {});
  }
}

function optionsOf({ size, profile, reducedMotion }) {
  const options = new Options();
  options.setChromeBinaryPath(program("CHROME", ["chromium", "chromium-browser", "google-chrome"]));
  options.addArguments(
    "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run",
    "--no-default-browser-check", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--disable-extensions", "--metrics-recording-only", "--force-device-scale-factor=1", "--lang=en-GB",
    `--user-data-dir=${profile}`, `--window-size=${size.width},${size.height}`,
    ...(reducedMotion ? ["--force-prefers-reduced-motion"] : []),
  );
  const log = new logging.Preferences();
  log.setLevel(logging.Type.BROWSER, logging.Level.ALL);
  log.setLevel(logging.Type.PERFORMANCE, logging.Level.ALL);
  options.setLoggingPrefs(log);
  return options;
}
