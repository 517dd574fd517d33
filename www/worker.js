// The same module once more, beside the page, for long computations. There is no window here, so
// it mounts nothing. It answers { id, call, with } with { id, value } or { id, fault }, where
// `call` is the name of a function that the module exports and `with` its arguments.

import start, * as module from "./app.js";
import { share } from "./shared.js";
import { laid } from "./strands.js";

const module_or_path = laid(fetch(new URL("./app_bg.wasm", import.meta.url)));
const ready = start({ module_or_path }).then(share);

self.addEventListener("message", async ({ data: { id, call, with: given = [] } }) => {
  try {
    await ready;
    if (typeof module[call] !== "function") {
      throw new Error(`found the call ${call}, expected a function that the module exports`);
    }
    self.postMessage({ id, value: await module[call](...given) });
  } catch (error) {
    self.postMessage({ id, fault: String(error) });
  }
});
