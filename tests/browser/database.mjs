// What is in the browser's own database, read past the page.

/** Everything in the browser's database: `{ store: [[key, value]] }`. */
export const stored = (page) =>
  page.evaluate(async () => {
    const open = indexedDB.open("wallwise");
    // Where the room has not opened it yet there is none, and none is made here: an empty one would be
    // taken for the room's own.
    open.onupgradeneeded = () => open.transaction.abort();
    const db = await new Promise((resolve, reject) => {
      open.onsuccess = () => resolve(open.result);
      open.onerror = () => (open.error.name === "AbortError" ? resolve(undefined) : reject(open.error));
    });
    if (!db) return { attempts: [], events: [] };
    const all = {};
    for (const name of db.objectStoreNames) {
      const store = db.transaction(name).objectStore(name);
      const ask = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
      const [keys, values] = [await ask(store.getAllKeys()), await ask(store.getAll())];
      all[name] = keys.map((key, place) => [key, values[place]]);
    }
    db.close();
    return all;
  });
