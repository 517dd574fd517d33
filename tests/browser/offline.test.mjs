// The room without a network, and a newer version of it: never half old, half new.

import assert from "node:assert/strict";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { axe, mounted, serve, settle, site, soon, start, visit, watch } from "./harness.mjs";
import { agrees, begin, byMouse, sound } from "./play.mjs";
import { built, named, renewable, renewed, versionOf, withSection } from "./renewed.mjs";

const SEED = 1;
const RULE = "gap-too-narrow";
const PAIR = "1.1.2024.0.facial-loss.45";

/** Waits until the room is kept on this device. */
const kept = (page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
/** The version that a page runs, and those that are kept. */
const running = (page) => page.evaluate(() => document.documentElement.dataset.version);
const versions = (page) => page.evaluate(async () => (await caches.keys()).map((name) => name.split(" ").at(-1)));
/** Has the browser look for a newer version, as it does by itself whenever a page is opened; waits until it has seen it through. */
const update = (page) => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration.update().catch(() => {});
  const coming = registration.installing;
  await new Promise((resolve) => {
    if (!coming || coming.state !== "installing") resolve();
    else coming.addEventListener("statechange", resolve, { once: true });
  });
});
const message = (page) => page.locator(".newer", { hasText: "A newer version of the room is ready" });
const changeOver = (page) => page.getByRole("button", { name: "Change over now" }).click();
const toCase = async (page, which) => {
  await page.evaluate((hash) => { location.hash = hash; }, `#/case/${which}`);
  await page.locator(".sheet .decision").first().waitFor();
};
/** Waits until the judge is there; answers which file it came in, and whether out of what is kept. */
async function judge(page, act) {
  const asked = page.waitForResponse(/split_judging/);
  await act();
  const response = await asked;
  await page.locator(".room-foot").waitFor();
  await page.locator(".plates, .known, .glossary").first().waitFor();
  return { file: new URL(response.url()).pathname.slice(1), fromWorker: response.fromServiceWorker() };
}

/** What a rule says in full, with its long texts, and what the page of a pair says. */
async function inWords(page) {
  const said = [];
  for (const [hash, last] of [[`#/protocol/${RULE}`, ".rule ul li"], [`#/pair/${PAIR}`, ".pair-page .sides"]]) {
    await page.evaluate((to) => { location.hash = to; }, hash);
    await page.locator(last).first().waitFor();
    said.push(await page.locator("main").innerText());
  }
  assert.ok(said.every((text) => text.length > 1000), said.join("\n"));
  return said;
}

/** A renewable server and a visit to it, with the room kept. */
async function visitKept(look, options = {}) {
  const served = await renewable();
  try {
    await visit(async (all) => {
      await begin(all.page);
      await kept(all.page);
      await look({ ...all, ...served });
    }, { address: served.address, ...options });
  } finally {
    await served.end();
  }
}

test("once visited, the room works from a cold start with neither network nor server, to the debrief and beyond", async (t) => {
  const profile = mkdtempSync(join(tmpdir(), "wallwise-"));
  let context;
  try {
    const served = await serve();
    context = await settle(profile);
    const page = await context.newPage();
    await page.goto(served.address);
    await mounted(page);
    const since = performance.now();
    await kept(page);
    t.diagnostic(`kept ${Math.round(performance.now() - since)} ms after the room stood`);
    await begin(page);
    const told = await inWords(page);
    await context.close();
    await served.end();

    // The browser itself has ended, and begins anew.
    context = await settle(profile);
    await context.setOffline(true);
    const { faults, requests } = await watch(context, served.address);
    const cold = await context.newPage();
    await assert.rejects(fetch(served.address));
    const opened = performance.now();
    await cold.goto(served.address);
    await mounted(cold);
    t.diagnostic(`cold start offline: ${Math.round(performance.now() - opened)} ms`);
    const steps = sound(SEED);
    await toCase(cold, SEED);
    await byMouse(cold, steps);
    await agrees(cold, SEED, steps);
    assert.deepEqual(await inWords(cold), told);
    // What computes beside the page comes out of the same store.
    const parity = await cold.evaluate(() => new Promise((resolve, reject) => {
      const worker = new Worker(document.documentElement.dataset.worker, { type: "module" });
      worker.onmessage = ({ data }) => resolve(data);
      worker.onerror = reject;
      worker.postMessage({ id: 1, call: "no such call" });
    }));
    assert.match(parity.fault, /no such call/);
    assert.ok(requests.length > 10);
    assert.deepEqual(faults, []);
  } finally {
    await context?.close();
    rmSync(profile, { recursive: true, force: true });
  }
});

test("every file of the page is kept, under any path, and rooms on one host do not disturb each other", async () => {
  const root = mkdtempSync(join(tmpdir(), "wallwise-"));
  for (const path of [["a", "b"], ["a"]]) cpSync(site, join(root, ...path), { recursive: true });
  const args = ["-u", "-m", "http.server", "0", "--bind", "127.0.0.1", "--directory", root];
  const { match, end } = await start("python3", args, /port (\d+)/);
  const home = `http://127.0.0.1:${match[1]}/a/`;
  try {
    await visit(async ({ page, context }) => {
      await kept(page);
      const inner = await context.newPage();
      await inner.goto(`${home}b/`);
      await mounted(inner);
      await kept(inner);
      const stored = () => page.evaluate(async () => Promise.all((await caches.keys()).map(async (name) => {
        const scope = name.split(" ")[1];
        const requests = await (await caches.open(name)).keys();
        return [scope, requests.map(({ url }) => url.slice(scope.length)).sort()];
      })));
      const all = [...built().keys()].filter((path) => path !== "sw.js").sort();
      await soon(async () => assert.deepEqual(await stored(), [[home, all], [`${home}b/`, all]]));
      await end();
      for (const address of [`${home}b/`, `${home}b/index.html?from=somewhere#/limits`, home]) {
        await inner.goto("about:blank");
        await inner.goto(address);
        await mounted(inner);
      }
    }, { address: home, planted: /sw\.js.*ERR_CONNECTION_REFUSED/ });
  } finally {
    await end();
    rmSync(root, { recursive: true });
  }
});

test("a newer version waits while the old one goes on wholly old, and is whole once the reader changes over", () =>
  visitKept(async ({ page, renew }) => {
    const [before, after] = [built(), renewed("split_judging", withSection)];
    renew(after);
    await update(page);
    await message(page).waitFor();
    // Nothing takes over by itself, not even when the page is loaded anew.
    await page.reload();
    await mounted(page);
    assert.equal(await running(page), versionOf(before));
    await message(page).waitFor();
    // The server has the old rules no more.
    const old = await judge(page, () => toCase(page, SEED));
    assert.deepEqual(old, { file: named(before, "split_judging"), fromWorker: true });
    const steps = sound(SEED);
    const [first, second] = Object.keys(steps);
    await byMouse(page, steps, second);
    assert.ok((await page.locator(".steps .done").count()) >= 1, `${first} is done`);
    assert.deepEqual((await versions(page)).sort(), [versionOf(before), versionOf(after)].sort());
    const anew = await judge(page, async () => {
      await changeOver(page);
      await page.waitForFunction((version) => document.documentElement.dataset.version === version, versionOf(after));
      await mounted(page);
    });
    assert.deepEqual(anew, { file: named(after, "split_judging"), fromWorker: true });
    await soon(async () => assert.deepEqual(await versions(page), [versionOf(after)]));
    assert.equal(await message(page).count(), 0);
  }));

test("an update that fails half way leaves the old version whole, and succeeds once the server is", async () => {
  const [before, after] = [built(), renewed("prose", (bytes) => Buffer.concat([bytes, Buffer.from("\n")]))];
  const missing = new Map([...after].filter(([path]) => !path.startsWith("prose")));
  // The worker has arrived on the server, the entry not yet.
  const mixed = new Map([...after, ["index.html", before.get("index.html")]]);
  await visitKept(async ({ page, context, address, renew }) => {
    for (const half of [missing, mixed]) {
      renew(half);
      await update(page);
      assert.deepEqual(await versions(page), [versionOf(before)]);
      assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).waiting), null);
      await context.setOffline(true);
      await page.goto("about:blank");
      await page.goto(`${address}#/protocol`);
      // The entry, the rules and their texts: all of the old version.
      await page.locator(".facts ul").first().waitFor();
      assert.equal(await running(page), versionOf(before));
      await kept(page);
      await context.setOffline(false);
    }
    renew(after);
    await update(page);
    await message(page).waitFor();
    await changeOver(page);
    await soon(async () => assert.deepEqual([await running(page), ...(await versions(page))], [versionOf(after), versionOf(after)]));
  });
});

test("in another tab a case goes on wholly old until its own reader changes over", () =>
  visitKept(async ({ page, context, address, renew }) => {
    const other = await context.newPage();
    await other.goto(address);
    await mounted(other);
    await kept(other);
    await other.evaluate(() => { globalThis.untouched = true; });
    const [before, after] = [built(), renewed("split_judging", withSection)];
    renew(after);
    await update(page);
    for (const tab of [page, other]) await message(tab).waitFor();
    await changeOver(page);
    await soon(async () => assert.equal(await running(page), versionOf(after)));
    await mounted(page);
    // The newer worker serves both by now, and the tab that has changed over has asked it to tidy up.
    await page.evaluate(async () => {
      while ((await navigator.locks.query()).held.length < 2) await new Promise((resolve) => setTimeout(resolve, 100));
    });
    await other.waitForTimeout(500);
    assert.ok(await other.evaluate(() => globalThis.untouched));
    assert.equal(await running(other), versionOf(before));
    assert.deepEqual((await versions(other)).sort(), [versionOf(before), versionOf(after)].sort());
    const old = await judge(other, () => toCase(other, SEED));
    assert.deepEqual(old, { file: named(before, "split_judging"), fromWorker: true });
    await message(other).waitFor();
    await changeOver(other);
    await soon(async () => assert.equal(await running(other), versionOf(after)));
    await mounted(other);
    await soon(async () => assert.deepEqual(await versions(other), [versionOf(after)]));
  }));

test("a first visit that meets a newer server is told so, and the case goes on meanwhile", async () => {
  const served = await renewable();
  try {
    await visit(async ({ page }) => {
      const after = renewed("split_judging", withSection);
      served.renew(after);
      await page.evaluate(() => { delete document.documentElement.dataset.kept; });
      await begin(page);
      await toCase(page, "1.1.2024.0");
      await page.getByRole("alert").filter({ hasText: "load the page again" }).waitFor();
      assert.ok(await page.locator(".sheet .decision").first().isVisible());
      await message(page).waitFor();
      // Nothing is promised that is not so.
      assert.match(await message(page).innerText(), /A case that is open would begin anew\./);
      await changeOver(page);
      await soon(async () => assert.equal(await running(page), versionOf(after)));
    }, { address: served.address, planted: /split_judging|status of 404|status code is not ok|offline-/ });
  } finally {
    await served.end();
  }
});

test("where workers are forbidden the room goes on without a word", () =>
  visit(async ({ page, context }) => {
    await context.addInitScript(() => Object.defineProperty(navigator, "serviceWorker", {
      get() { throw new DOMException("forbidden here", "SecurityError"); },
    }));
    await page.reload();
    await mounted(page);
    await page.waitForRequest(/offline-/);
    await page.waitForTimeout(500);
    await begin(page);
    await toCase(page, SEED);
    assert.deepEqual(await page.evaluate(() => caches.keys()), []);
  }));

test("the room can be installed", async () => {
  const [profile, root] = ["profile", "root"].map((name) => mkdtempSync(join(tmpdir(), `wallwise-${name}-`)));
  cpSync(site, join(root, "a"), { recursive: true });
  const args = ["-u", "-m", "http.server", "0", "--bind", "127.0.0.1", "--directory", root];
  const { match, end } = await start("python3", args, /port (\d+)/);
  // A browser that forgets everything installs nothing.
  const context = await settle(profile);
  try {
    const home = `http://127.0.0.1:${match[1]}/a/`;
    const { faults } = await watch(context, home);
    const page = await context.newPage();
    await page.goto(home);
    await mounted(page);
    await kept(page);
    const wire = await context.newCDPSession(page);
    const { url, errors, manifest } = await wire.send("Page.getAppManifest");
    const name = [...built().keys()].find((path) => path.endsWith(".webmanifest"));
    assert.deepEqual([url, errors], [`${home}${name}`, []]);
    assert.deepEqual([manifest.startUrl, manifest.scope, manifest.display], [home, home, "kStandalone"]);
    assert.deepEqual((await wire.send("Page.getInstallabilityErrors")).installabilityErrors, []);
    // Another path of the same host may hold another room: each is an application of its own.
    assert.equal((await wire.send("Page.getAppId")).appId, home);
    for (const { url: icon, sizes } of manifest.icons) {
      const drawn = await page.evaluate(async (src) => {
        const image = Object.assign(new Image(), { src });
        await image.decode();
        return `${image.naturalWidth}x${image.naturalHeight}`;
      }, icon);
      assert.ok(icon.endsWith(".svg") || drawn === sizes, `${icon} is ${drawn}, says ${sizes}`);
    }
    assert.deepEqual(faults, []);
  } finally {
    await context.close();
    await end();
    for (const folder of [profile, root]) rmSync(folder, { recursive: true, force: true });
  }
});

test("the message is accessible, in light and in dark, and is not printed", () =>
  visitKept(async ({ page, renew }) => {
    // As the room says where this browser lets it keep what was done.
    await page.evaluate(() => { document.documentElement.dataset.kept = ""; });
    renew(renewed("prose", (bytes) => Buffer.concat([bytes, Buffer.from("\n")])));
    await update(page);
    await message(page).waitFor();
    assert.equal(await page.getByRole("status").first().innerText(), "A newer version of the room is ready. What you have done is kept.");
    for (const colorScheme of ["light", "dark"]) {
      // Without the moment in which one tone becomes the other.
      await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
      assert.deepEqual(await axe(page), []);
    }
    const [above, below] = await Promise.all([message(page).boundingBox(), page.locator(".room-head").boundingBox()]);
    assert.ok(above.y + above.height <= below.y, "it covers nothing");
    await page.emulateMedia({ media: "print" });
    assert.ok(!(await message(page).isVisible()));
  }));
