// A real WebDAV server behind the app's own: what is asked under /shop/ is passed on to it, and some of it goes wrong.
import { execFileSync, spawn } from "node:child_process";
import { chmodSync, chownSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer, request as ask } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../tools/shell.mjs";

export const USER = "shop";
export const PASSWORD = "spruce and maple";
const NOBODY = 65_534;
const BODY_MOST = 262_144;
const SHOP = "/shop/";
const BEHIND = "/dav/";

/** A port that is free now. */
function free() {
  return new Promise((done) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => done(port));
    });
  });
}

/** Starts Apache httpd with a folder of its own. Its place on the disk is `folder`; `stop` ends it. */
export async function startShop() {
  const home = mkdtempSync(join(tmpdir(), "stepboard-shop-"));
  const port = await free();
  const isRoot = process.getuid() === 0;
  mkdirSync(join(home, "root", "dav"), { recursive: true });
  for (const path of [home, join(home, "root"), join(home, "root", "dav")]) {
    chmodSync(path, 0o755);
    if (isRoot) chownSync(path, NOBODY, NOBODY);
  }
  const hash = execFileSync("openssl", ["passwd", "-apr1", PASSWORD], { encoding: "utf8" }).trim();
  writeFileSync(join(home, "users"), `${USER}:${hash}\n`);
  const filled = { home, port, user: isRoot ? `User #${NOBODY}\nGroup #${NOBODY}` : "", body: BODY_MOST };
  const form = readFileSync(join(root, "tests", "folder", "apache.conf"), "utf8");
  writeFileSync(join(home, "conf"), form.replace(/\{(home|port|user|body)\}/g, (_, key) => filled[key]));
  const child = spawn("/usr/sbin/apache2", ["-X", "-f", join(home, "conf")], { stdio: "ignore" });
  const failed = new Promise((_, no) => {
    child.once("error", (error) => no(new Error(`no Apache httpd (${error.message}): run tools/setup.sh test`)));
    child.once("exit", (code) => no(new Error(`Apache httpd ended with ${code}`)));
  });
  failed.catch(() => {});
  await Promise.race([failed, answers(port)]);
  const stop = () => {
    child.kill("SIGKILL");
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  };
  return { port, folder: join(home, "root", "dav"), stop };
}

async function answers(port) {
  for (let tries = 0; tries < 200; tries += 1) {
    const there = await new Promise((done) => {
      const socket = connect(port, "127.0.0.1", () => socket.end(() => done(true)));
      socket.once("error", () => done(false));
    });
    if (there) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error("Apache httpd does not answer");
}

/**
 * Passes /shop/ on. `faults` are done one after another, one at every `every`th request: a status to answer, "cut" before
 * the server hears of it, "lost" after it answered. `made` counts how often the server made each file.
 */
export class Passing {
  constructor(port, faults = [], every = 5) {
    Object.assign(this, { port, faults: [...faults], every, asked: 0, made: new Map() });
    this.before = (request, response) => {
      if (!request.url.startsWith(SHOP)) return false;
      this.pass(request, response);
      return true;
    };
  }

  pass(request, response) {
    this.asked += 1;
    const fault = this.asked % this.every === 0 ? this.faults.shift() : undefined;
    if (fault === "cut") return request.socket.destroy();
    if (typeof fault === "number") {
      request.resume();
      response.writeHead(fault, fault === 503 ? { "Retry-After": "1" } : {}).end();
      return undefined;
    }
    const path = BEHIND + request.url.slice(SHOP.length);
    const headers = { ...request.headers, host: `127.0.0.1:${this.port}` };
    const on = ask({ host: "127.0.0.1", port: this.port, method: request.method, path, headers }, (answer) => {
      if (request.method === "PUT" && answer.statusCode < 300) this.made.set(path, (this.made.get(path) ?? 0) + 1);
      if (fault === "lost") {
        answer.resume();
        return answer.once("end", () => request.socket.destroy());
      }
      response.writeHead(answer.statusCode, answer.headers);
      return answer.pipe(response);
    });
    on.once("error", () => response.destroy());
    return request.pipe(on);
  }
}
