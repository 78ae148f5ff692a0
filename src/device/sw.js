// Keeps the whole app on the device: after the first visit it opens without a network. Building the app puts the
// build's name and its list of files in here, each with its SHA-256.
const build = "BUILD";
const files = ["FILES"];

// Other apps on the same host have caches too: the scope tells ours.
const begin = `stepboard ${self.registration.scope} `;
const cacheName = begin + build;
const ours = new Set(files.map(([file]) => new URL(file, self.registration.scope).href));

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  // Whatever else lies on the host, as a folder of the shop, is none of ours: neither answered nor kept.
  if (request.method === "GET" && (isPage(request) || ours.has(request.url))) event.respondWith(answer(request));
});
self.addEventListener("message", (event) => {
  if (event.data?.kind === "take-over") self.skipWaiting();
  if (event.data?.kind === "which-version") event.source.postMessage({ kind: "new-version", build });
});

async function install() {
  // A host that goes back to the version that runs here has it installed once more: what is kept of it is what the app opens with.
  const kept = await caches.has(cacheName);
  const cache = await caches.open(cacheName);
  try {
    await Promise.all(files.map(([file, digest]) => keep(cache, file, digest)));
  } catch (error) {
    // All of it or nothing: the version before stays, and the next visit tries again.
    if (!kept) await caches.delete(cacheName);
    throw error;
  }
  // Told, never swapped in: the pages that are open go on with the version that they were opened with.
  if (self.registration.active) {
    const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
    // Windows of other apps on the host, or of this one in another folder, have versions of their own.
    for (const page of pages.filter(({ url }) => url.startsWith(self.registration.scope))) page.postMessage({ kind: "new-version", build });
  }
}

/** Keeps a file that is what the build made: a host that is half updated, or a connection that broke, gives another. */
async function keep(cache, file, digest) {
  const response = await fetch(file, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${file}: ${response.status}`);
  const found = await crypto.subtle.digest("SHA-256", await response.clone().arrayBuffer());
  const hex = Array.from(new Uint8Array(found), (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (hex !== digest) throw new Error(`${file} is not of this build`);
  await cache.put(file, response);
}

async function activate() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(begin) && name !== cacheName);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** The page itself, by whatever it is asked; its screens stand behind the `#`. */
function isPage(request) {
  const { origin, pathname } = new URL(request.url);
  const places = ["", "index.html"].map((file) => self.registration.scope + file);
  return request.mode === "navigate" && places.includes(origin + pathname);
}

async function answer(request) {
  const cache = await caches.open(cacheName);
  const key = request.mode === "navigate" ? self.registration.scope : request;
  return (await cache.match(key)) ?? fetch(request);
}
