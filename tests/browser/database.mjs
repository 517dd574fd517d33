// What is in the browser's own database, read past the page.

/** Everything in the browser's database: `{ store: [[key, value]] }`. */
export const stored = (page) =>
  page.evaluate(async () => {
    const open = indexedDB.open("wallwise");
    const db = await new Promise((resolve, reject) => {
      open.onsuccess = () => resolve(open.result);
      open.onerror = () => reject(open.error);
    });
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
