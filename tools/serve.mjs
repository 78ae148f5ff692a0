// Serves dist/ on 127.0.0.1: PORT (8080 unless set) or the next free one. Prints one line, the address, when ready.
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { dist } from "./shell.mjs";

const HOST = "127.0.0.1";
const FIRST_PORT = 8080;
const PORTS_TRIED = 100;
const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
};
/** A file whose name holds its content's hash never changes. */
const HASHED = /-[0-9a-f]{10}\.\w+$/;

/** The file a request asks for, or null where there is none to give: nothing outside the folder is given. */
function wanted(folder, url) {
  let path;
  try {
    path = decodeURIComponent(new URL(url, "http://x").pathname);
  } catch {
    return null;
  }
  if (path.includes("\0")) return null;
  const file = resolve(folder, `.${path.endsWith("/") ? `${path}index.html` : path}`);
  if (!file.startsWith(folder + sep)) return null;
  const stat = statSync(file, { throwIfNoEntry: false });
  return stat?.isFile() ? { file, size: stat.size } : null;
}

function answer(folder, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { Allow: "GET, HEAD" }).end();
    return;
  }
  const found = wanted(folder, request.url);
  if (found === null) {
    response.writeHead(404, { "Content-Type": TYPES[".txt"] }).end("not found\n");
    return;
  }
  response.writeHead(200, {
    "Content-Type": TYPES[extname(found.file)] ?? "application/octet-stream",
    "Content-Length": found.size,
    "Cache-Control": HASHED.test(found.file) ? "public, max-age=31536000, immutable" : "no-cache",
    "X-Content-Type-Options": "nosniff",
  });
  if (request.method === "HEAD") response.end();
  else createReadStream(found.file).on("error", () => response.destroy()).pipe(response);
}

/**
 * Serves a folder; gives the server and its port. Port 0 takes any free one. `before` answers what is none of the app's, and
 * says so with true.
 */
export async function serve(folder = dist, first = FIRST_PORT, before = () => false) {
  const server = createServer((request, response) => before(request, response) || answer(folder, request, response));
  for (let port = first; ; port += 1) {
    try {
      await new Promise((done, failed) => {
        server.once("error", failed);
        server.listen(port, HOST, () => server.off("error", failed) && done());
      });
      return { server, port: server.address().port };
    } catch (error) {
      if (error.code !== "EADDRINUSE" || port >= first + PORTS_TRIED) throw error;
    }
  }
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const asked = Number(process.env.PORT || FIRST_PORT);
  if (!Number.isInteger(asked) || asked < 0 || asked > 65535) {
    console.error(`PORT is a number from 0 to 65535, not ${process.env.PORT}`);
    process.exit(2);
  }
  const { server, port } = await serve(dist, asked);
  console.log(`Stepboard: http://${HOST}:${port}/`);
  for (const signal of ["SIGINT", "SIGTERM"]) {
    process.once(signal, () => {
      server.close();
      server.closeAllConnections();
    });
  }
}
