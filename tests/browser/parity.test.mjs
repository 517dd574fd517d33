// The same numbers natively, on the page and in the worker.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import test from "node:test";
import { nativeParity, visit } from "./harness.mjs";

/** What the page itself computes. */
function onPage(page, range) {
  return page.evaluate(async ([first, count]) => {
    // The module that the page runs: importing it again gives the same instance.
    const module = await import(document.querySelector("link[rel=modulepreload]").href);
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

test("native build, page and worker agree to the last bit", () =>
  visit(async ({ page }) => {
    // In parts, so that a difference names the part that it lies in; the last runs over the end.
    const parts = Array.from({ length: 10 }, (_, part) => [part * 250, 250]);
    for (const range of [[0, 1], ...parts, [4_294_967_290, 12]]) {
      const native = execFileSync(nativeParity, range.map(String), { encoding: "utf8" }).trim();
      assert.match(native, /^[0-9a-f]{16}$/);
      assert.equal(await onPage(page, range), native, `page, range ${range}`);
      assert.deepEqual(await inWorker(page, "parity", range), { id: 7, value: native });
    }
  }));

test("the worker answers an unknown call with a sentence", () =>
  visit(async ({ page }) => {
    const { id, fault } = await inWorker(page, "nonsense", []);
    assert.equal(id, 7);
    assert.match(fault, /found the call nonsense, expected a function that the module exports/);
  }));
