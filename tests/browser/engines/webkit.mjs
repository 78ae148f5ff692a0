// WebKitGTK by its small browser, on a screen in memory: MINIBROWSER, WEBKITDRIVER and XVFB name the programs where they are
// not found by themselves. What it stores in automation is gone when it ends.
import { spawn } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { Builder, Capabilities } from "selenium-webdriver";
import { findFreePort } from "selenium-webdriver/net/portprober.js";
import { DriverService } from "selenium-webdriver/remote/index.js";
import { below, program } from "./program.mjs";
import { inTime } from "./start.mjs";

/** Room for the frame of the window around the page, pixels. */
const AROUND = 400;
const HOST = "127.0.0.1";
/** The bar above the page makes no window wider than a telephone. */
const SMALL = "toolbar, toolbar *, headerbar, headerbar *, entry, button { font-size: 1px; min-width: 0; margin: 0; padding: 0; border: 0; }\n";
/** How long it may take to end by itself, and how often it is looked after, ms. */
const END_MOST = 3000;
const LOOK = 50;

export class WebKit {
  static can = { requests: true };

  async begin({ profile, size, downloads, reducedMotion }) {
    this.process = join(profile, "process");
    this.requests = [];
    await this.screen(size);
    const proxy = await this.proxy();
    const port = await findFreePort();
    this.service = new DriverService.Builder(program("WEBKITDRIVER", ["WebKitWebDriver"]))
      .setPort(port).addArguments(`--host=${HOST}`).setLoopback(true)
      .setEnvironment({ ...process.env, ...surroundings(profile, downloads, reducedMotion), DISPLAY: this.display }).build();
    this.driver = await new Builder().usingServer(await this.service.start()).withCapabilities(new Capabilities({
      browserName: "MiniBrowser",
      proxy: { proxyType: "manual", httpProxy: proxy, sslProxy: proxy, noProxy: [HOST] },
      "webkitgtk:browserOptions": {
        binary: known(profile, this.process), args: ["--automation"],
      },
    })).build();
    await this.fit(size);
  }

  /** Starts a screen with a number that is free. */
  async screen({ width, height }) {
    const whole = `${width + AROUND}x${height + AROUND}x24`;
    this.xvfb = spawn(program("XVFB", ["Xvfb"]), ["-displayfd", "3", "-screen", "0", whole, "-nolisten", "tcp"], {
      stdio: ["ignore", "ignore", "ignore", "pipe"],
    });
    const number = await new Promise((done, failed) => {
      this.xvfb.once("exit", (code) => failed(new Error(`Xvfb ended with ${code}`)));
      this.xvfb.stdio[3].once("data", (bytes) => done(String(bytes).trim()));
    });
    this.display = `:${number}`;
  }

  /** Whatever is asked of another host goes through here, is noted and is not answered. */
  async proxy() {
    const refuse = (request, response) => {
      this.requests.push(request.url);
      response.writeHead(502).end();
    };
    this.between = createServer(refuse).on("connect", (request, socket) => {
      this.requests.push(`https://${request.url}`);
      socket.end("HTTP/1.1 502 Bad Gateway\r\n\r\n");
    });
    await new Promise((done) => this.between.listen(0, HOST, done));
    return `${HOST}:${this.between.address().port}`;
  }

  /** Makes the window so large that the page has its size. */
  async fit({ width, height }) {
    const window = this.driver.manage().window();
    await window.setRect({ x: 0, y: 0, width, height });
    const [wide, high] = await this.driver.executeScript("return [innerWidth, innerHeight]");
    await window.setRect({ x: 0, y: 0, width: 2 * width - wide, height: 2 * height - high });
  }

  /** Addresses of other hosts that were asked for since they were read last; its console goes nowhere in automation. */
  async heard() {
    const requests = this.requests;
    this.requests = [];
    return { errors: [], requests };
  }

  reload() {
    return this.driver.navigate().refresh();
  }

  async stop() {
    if (this.driver) await inTime(this.driver.quit(), END_MOST).catch(() => {});
    await this.gone();
    await this.service?.kill();
    this.between?.close();
    this.between?.closeAllConnections();
    this.xvfb?.kill();
  }

  /** Waits until the browser has ended, or ends it: it writes into its folder until then. */
  async gone() {
    if (!this.process || !existsSync(this.process)) return;
    const number = Number(readFileSync(this.process, "utf8"));
    const runs = () => existsSync(`/proc/${number}/exe`);
    for (const end = Date.now() + END_MOST; runs() && Date.now() < end; ) await new Promise((done) => setTimeout(done, LOOK));
    if (runs()) process.kill(number, "SIGKILL");
  }
}

/** A folder of its own for whatever it keeps, where it saves files, and no effort for a graphics card that is not there. */
function surroundings(profile, downloads, reducedMotion) {
  const config = join(profile, "config");
  mkdirSync(join(config, "gtk-3.0"), { recursive: true });
  writeFileSync(join(config, "user-dirs.dirs"), `XDG_DOWNLOAD_DIR="${downloads}"\n`);
  writeFileSync(join(config, "gtk-3.0", "gtk.css"), SMALL);
  writeFileSync(join(config, "gtk-3.0", "settings.ini"), `[Settings]\ngtk-enable-animations=${reducedMotion ? 0 : 1}\n`);
  return {
    XDG_CONFIG_HOME: config,
    XDG_CACHE_HOME: join(profile, "cache"),
    XDG_DATA_HOME: join(profile, "data"),
    XDG_RUNTIME_DIR: profile,
    LANG: "en_GB.UTF-8",
    GDK_BACKEND: "x11",
    LIBGL_ALWAYS_SOFTWARE: "1",
    MESA_SHADER_CACHE_DISABLE: "true",
    NO_AT_BRIDGE: "1",
  };
}

/** The browser by a script that leaves word which process it is. */
function known(profile, process) {
  const found = program("MINIBROWSER", ["MiniBrowser"], below("/usr/lib").flatMap(below));
  const script = join(profile, "browser");
  writeFileSync(script, `#!/bin/sh\necho $$ >"${process}"\nexec "${found}" "$@"\n`);
  chmodSync(script, 0o700);
  return script;
}
