// The program comes in two parts (`tools/split.mjs`): what the first screen needs, and the rest, which is fetched as soon as that
// screen is drawn or another one is asked for. Where something of the rest is called sooner the page waits for it.

const REST = new URL("./rest.wasm", import.meta.url);
/** Tells a browser to leave the bytes as they are, one a character. */
const BYTES_AS_TEXT = "text/plain; charset=x-user-defined";
const BYTE = 0xff;
/** What a window notes when it begins anew because it missed the rest, and for how long it does not do so again. */
const ANEW = "stepboard-anew";
const ANEW_MS = 60_000;
/** Longer than a network that works takes; one that does not must not keep a touch unanswered. */
const LONGEST_MS = 10_000;

/** Ends the waiting for the rest. */
let settle;

const rest = {
  /** What the first part exports, once it has started. */
  first: null,
  /** Over once the rest came, is known not to come now, or nobody waits for it any more; at the latest after `LONGEST_MS`. */
  settled: new Promise((done) => {
    settle = done;
    setTimeout(done, LONGEST_MS);
  }),

  /** Whether the rest is there, once that is known: nobody waits longer for it. */
  there() {
    // Also where it came after nobody waited any more.
    if (this.first.ready.value) return Promise.resolve(true);
    this.waited ??= Promise.race([this.comes(), new Promise((over) => setTimeout(over, LONGEST_MS))]);
    this.waited.finally(settle);
    return this.waited;
  },

  /** Whether the rest came, however long that takes. */
  comes() {
    this.coming ??= this.fetched();
    return this.coming;
  },

  async fetched() {
    try {
      await WebAssembly.instantiateStreaming(answered(), { first: this.first }).catch(async (error) => {
        // A host that calls it something else.
        if (!(error instanceof TypeError)) throw error;
        await WebAssembly.instantiate(await (await answered()).arrayBuffer(), { first: this.first });
      });
      this.first.ready.value = 1;
      return true;
    } catch (error) {
      // As without a network: the next one who asks tries again.
      this.coming = null;
      this.waited = null;
      console.info("the rest of the program:", error.message);
      return false;
    }
  },

  /** Called by the first part where it needs the rest and that is not there yet. */
  bring() {
    performance.mark("rest-missed");
    settle();
    try {
      new WebAssembly.Instance(new WebAssembly.Module(atOnce(REST)), { first: this.first });
      this.first.ready.value = 1;
    } catch (error) {
      // Some browsers get nothing at once from the worker: what is on its way may still come.
      this.comes().then((there) => there && anew());
      stopped("Part of Stepboard could not be loaded. What was told as saved is kept; load the page anew once there is a network.", error);
    }
  },
};

/** Loads the page anew where it stood, unless it just did. */
function anew() {
  const before = Number(sessionStorage.getItem(ANEW));
  if (Date.now() - before < ANEW_MS) return;
  sessionStorage.setItem(ANEW, Date.now());
  location.reload();
}

async function answered() {
  const response = await fetch(REST);
  if (!response.ok) throw new Error(`${REST}: ${response.status}`);
  return response;
}

/** A file, while nothing else goes on. */
function atOnce(address) {
  const request = new XMLHttpRequest();
  request.open("GET", address, false);
  request.overrideMimeType(BYTES_AS_TEXT);
  request.send();
  if (request.status !== 200) throw new Error(`${address}: ${request.status}`);
  return Uint8Array.from(request.response, (letter) => letter.charCodeAt(0) & BYTE);
}
