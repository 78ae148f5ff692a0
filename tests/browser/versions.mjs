// A host that has the next version of the app, or half of it: what is asked of it is answered in the place of dist/.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { dist } from "../../tools/shell.mjs";

/** What the page of the next version is called, by which a test knows it. */
export const NEXT = "Stepboard, next";

const digest = (bytes) => createHash("sha256").update(bytes).digest("hex");

/** The next version: another page and the worker that lists it. */
function next() {
  const page = readFileSync(join(dist, "index.html"), "utf8").replace("<title>Stepboard</title>", `<title>${NEXT}</title>`);
  const old = digest(readFileSync(join(dist, "index.html")));
  const worker = readFileSync(join(dist, "sw.js"), "utf8");
  const renamed = worker.replace(old, digest(page)).replace(/const build = "[^"]+"/, 'const build = "next"');
  if (renamed === worker || !renamed.includes(digest(page))) throw new Error("the worker lists no page");
  return { page, worker: renamed };
}

/** Answers as a host does in some state of an update, or that goes back to the old version by half; `state` is set by the test. */
export class Host {
  constructor() {
    Object.assign(this, next(), { state: "old" });
  }

  before = (request, response) => {
    const path = new URL(request.url, "http://x").pathname;
    const give = (type, bytes) => response.writeHead(200, { "Content-Type": type, "Cache-Control": "no-cache" }).end(bytes);
    if (this.state === "old") return false;
    if (this.state === "back") {
      if (path.endsWith(".wasm")) return response.writeHead(404).end(), true;
      return false;
    }
    if (path === "/sw.js") return give("text/javascript", this.worker), true;
    if (path === "/" || path === "/index.html") {
      if (this.state === "half") return false;
      return give("text/html", this.page), true;
    }
    if (!path.endsWith(".wasm")) return false;
    if (this.state === "gone") return response.writeHead(404).end(), true;
    if (this.state === "cut") return cut(response, path), true;
    return false;
  };
}

/** A connection that breaks in the middle of a file. */
function cut(response, path) {
  const bytes = readFileSync(join(dist, path));
  response.writeHead(200, { "Content-Type": "application/wasm", "Content-Length": bytes.length, "Cache-Control": "no-cache" });
  response.write(bytes.subarray(0, bytes.length / 2), () => response.destroy());
}

/** The same app in a folder of a host, and nothing beside it. */
export function below(folder) {
  return (request, response) => {
    const path = new URL(request.url, "http://x").pathname;
    if (!path.startsWith(`/${folder}/`)) return response.writeHead(404).end(), true;
    request.url = path.slice(folder.length + 1);
    return false;
  };
}
