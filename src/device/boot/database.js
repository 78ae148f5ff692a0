// Opens the database while the program is still on its way; the program takes it from here (`Store::open`). Its stores and the
// version of their list are told here alone.

const DATABASE = "stepboard";
/** 1: journal and state. 2: the sign-off book too. 3: the shelves. 4: that of the walks. */
const DATABASE_VERSION = 4;
const STORES = ["journal", "state", "book", "sheets", "sets", "results", "outbox", "offered", "walks"];

// What is told as saved must be on the disk and not only on its way there: browsers wait for it when asked to (Indexed
// Database API 3.0, section 2.7.2), which the library that we use cannot say.
const database = globalThis.IDBDatabase?.prototype;
const transaction = database?.transaction;
if (database) {
  database.transaction = function (stores, mode) {
    return transaction.call(this, stores, mode, { durability: mode === "readwrite" ? "strict" : "default" });
  };
}

/** The open database; the program hears where it is refused. */
function openDatabase() {
  const opened = new Promise((done, failed) => {
    const request = indexedDB.open(DATABASE, DATABASE_VERSION);
    request.onupgradeneeded = () => {
      const there = request.result.objectStoreNames;
      for (const name of STORES) if (!there.contains(name)) request.result.createObjectStore(name);
    };
    request.onsuccess = () => {
      // A newer version of the program in another window waits until this one lets go. What would be stored here from then on
      // is told as not saved.
      request.result.onversionchange = () => request.result.close();
      done(request.result);
    };
    request.onerror = () => failed(request.error);
  });
  // No fault of the page.
  opened.catch(() => {});
  return opened;
}
