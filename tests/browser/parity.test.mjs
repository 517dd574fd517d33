// The same numbers natively, on the page and in the worker.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import test from "node:test";
import { nativeParity, visit } from "./harness.mjs";

/** What the page itself computes. */
function onPage(page, range) {
  return page.evaluate(async ([first, count]) => {
    // The module that the page runs: importing it again gives the same instance.
    const module = await import(document.querySelector("link[rel=modulepreload][href*=app]").href);
    return module.parity(first, count);
  }, range);
}

/** What the worker answers to a call. */
function inWorker(page, call, given) {
  return page.evaluate(([call, given]) =>
    new Promise((resolve, reject) => {
      const worker = new Worker(document.documentElement.dataset.worker, { type: "module" });
      worker.onerror = (event) => reject(new Error(event.message));
      worker.onmessage = ({ data }) => {
        worker.terminate();
        resolve(data);
      };
      worker.postMessage({ id: 7, call, with: given });
    }), [call, given]);
}

/** Milliseconds that something takes, added up under a name. */
async function timed(spent, name, what) {
  const begin = performance.now();
  const value = await what();
  spent[name] = (spent[name] ?? 0) + performance.now() - begin;
  return value;
}

test("native build, page and worker agree to the last bit", (t) =>
  visit(async ({ page }) => {
    const spent = {};
    // In parts, so that a difference names the part that it lies in; the last runs over the end.
    const parts = Array.from({ length: 10 }, (_, part) => [part * 250, 250]);
    for (const range of [[0, 1], ...parts, [4_294_967_290, 12]]) {
      const ask = () => execFileSync(nativeParity, range.map(String), { encoding: "utf8" }).trim();
      const native = await timed(spent, "native", ask);
      assert.match(native, /^[0-9a-f]{16}$/);
      const here = await timed(spent, "page", () => onPage(page, range));
      assert.equal(here, native, `page, range ${range}`);
      const beside = await timed(spent, "worker", () => inWorker(page, "parity", range));
      assert.deepEqual(beside, { id: 7, value: native });
    }
    const ratio = (name) => `${name} ${(spent[name] / spent.native).toFixed(2)} times`;
    t.diagnostic(`2,513 cases and debriefs, beside the native build: ${ratio("page")}, ${ratio("worker")}`);
  }));

test("the worker answers an unknown call with a sentence", () =>
  visit(async ({ page }) => {
    const { id, fault } = await inWorker(page, "nonsense", []);
    assert.equal(id, 7);
    assert.match(fault, /found the call nonsense, expected a function that the module exports/);
  }));
