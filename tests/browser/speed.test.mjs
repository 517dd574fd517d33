// The first visit on a slow line and a slow machine.

import assert from "node:assert/strict";
import test from "node:test";
import { browse, mounted, serve } from "./harness.mjs";

const TARGET_MS = 2500;
// 1.6 Mbit/s with 150 ms until an answer begins, and a quarter of this machine's speed.
const LINE = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 93_750 };
const SLOWER = 4;

/** Milliseconds until the room stands, with an empty cache. */
async function firstVisit(browser, address) {
  const context = await browser.newContext();
  const page = await context.newPage();
  const wire = await context.newCDPSession(page);
  await wire.send("Network.enable");
  await wire.send("Network.emulateNetworkConditions", LINE);
  await wire.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  const begin = performance.now();
  await page.goto(address);
  await mounted(page);
  const took = performance.now() - begin;
  await context.close();
  return took;
}

test("a first visit on a slow line and a slow machine is usable in 2.5 seconds", async (t) => {
  const served = await serve();
  const browser = await browse();
  try {
    const took = [];
    // What else the machine does can only make a visit slower, so the quickest is the truest.
    while (took.length < 5 && !(Math.min(...took) <= TARGET_MS)) {
      took.push(await firstVisit(browser, served.address));
    }
    t.diagnostic(`first visit: ${took.map(Math.round).join(", ")} ms`);
    assert.ok(Math.min(...took) <= TARGET_MS, `${took.map(Math.round)} ms, expected ${TARGET_MS}`);
  } finally {
    await browser.close();
    await served.end();
  }
});
