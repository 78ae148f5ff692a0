// Starts the app, and the service worker that lets it work without a network.
//
// A new version is fetched beside the running one and never swapped in by itself. When one is ready the root element
// gets `data-new-version` and the document an event `stepboard:new-version`; the app says so where it does not
// disturb, and sends the event `stepboard:take-new-version` when the person asks for it.
import start from "./app.js";

// What is stored was replaced as a whole: no window goes on with what it holds.
const windows = globalThis.BroadcastChannel && new BroadcastChannel("stepboard");
windows?.addEventListener("message", () => location.reload());
document.addEventListener("stepboard:load-all-anew", () => {
  windows?.postMessage("anew");
  location.reload();
});

/** What the program takes from here. */
globalThis.stepboard = { rest, there: () => rest.there() };

const started = start({ module_or_path: new URL("./app.wasm", import.meta.url) });
// While that is on its way.
stepboard.opened = openDatabase();
// Last, since it fetches every file: not while the first screen and, unless that takes long, the rest are on their way. A version
// that fails to start must still be able to fetch the one that mends it: registered either way.
started.then(() => rest.settled).catch(refused).finally(register);

/** Says on the page why nothing else is on it: texts of the app are in the file that could not be started. */
function refused(error) {
  const old = error instanceof WebAssembly.CompileError;
  stopped(old
    ? "Stepboard could not start: it needs 128-bit vectors of WebAssembly, which browsers have since the spring of 2023."
    : `Stepboard could not start. ${error.message}`, error);
}

/** Nothing works from here on: says so, and what there is to do. */
function stopped(why, error) {
  const told = Object.assign(document.createElement("p"), { textContent: why });
  const again = Object.assign(document.createElement("button"), { type: "button", className: "control", textContent: "Load the page anew" });
  again.addEventListener("click", () => location.reload());
  const place = Object.assign(document.createElement("main"), { className: "stopped" });
  place.append(told, again);
  document.body.replaceChildren(place);
  throw error;
}

async function register() {
  const workers = navigator.serviceWorker;
  if (!workers) return;
  const running = workers.controller !== null;
  let asked = false;
  workers.addEventListener("message", ({ data }) => {
    if (data?.kind === "new-version") tell(data.build);
  });
  workers.addEventListener("controllerchange", () => {
    if (asked) location.reload();
  });
  try {
    // The worker stands beside index.html, whatever path that has.
    const registration = await workers.register(new URL("./sw.js", document.baseURI));
    document.addEventListener("stepboard:take-new-version", () => {
      asked = true;
      registration.waiting?.postMessage({ kind: "take-over" });
    });
    // One that became ready before this page was opened.
    if (running) registration.waiting?.postMessage({ kind: "which-version" });
    await workers.ready;
    document.documentElement.dataset.offline = "ready";
  } catch (error) {
    // Private windows and odd hosts refuse workers: the app works, only not without a network.
    console.info("no service worker:", error.message);
  }
}

function tell(build) {
  document.documentElement.dataset.newVersion = build;
  document.dispatchEvent(new CustomEvent("stepboard:new-version", { detail: build }));
}
