// What is done is kept as it happens: two tabs, no space, no storage, newer storage.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import test from "node:test";
import { stored } from "./database.mjs";
import { axe, mounted, soon, visit } from "./harness.mjs";
import { begin, byMouse, carry, choose, decide, sound } from "./play.mjs";

const data = fileURLToPath(new URL("../data/", import.meta.url));

/** The events of the only attempt, as they are kept. */
const kept = async (page) => (await stored(page)).events.map(([, text]) => JSON.parse(text).do);

const go = (page, fragment) => page.evaluate((to) => { location.hash = to; }, fragment);
const title = (page) => page.locator("#sheet-title").innerText();

test("what was chosen and carried out is there again after loading anew, at the same step", () =>
  visit(async ({ page }) => {
    await begin(page);
    const steps = sound(2024);
    await go(page, "#/case/1.1.2024.0");
    await page.locator(".sheet").waitFor();
    await byMouse(page, steps, "flap");
    const [key, value] = Object.entries(steps.flap)[0];
    await choose(page, key, value);
    await page.getByRole("button", { name: "75 %" }).click();
    await soon(async () => assert.deepEqual((await kept(page)).at(-1), { sure: "flap", percent: 75 }));
    await page.reload();
    await mounted(page);
    await page.locator(".sheet").waitFor();
    assert.equal(await title(page), "Flap");
    assert.match(await page.locator(".goes-on").innerText(), /where you left it: at Flap/);
    assert.equal(await page.getByRole("button", { name: "75 %" }).getAttribute("aria-pressed"), "true");
    assert.ok(await page.locator(`#decision-${key} input[value="${value}"]`).isChecked());
    assert.deepEqual(await axe(page), []);
    // And the end of it, with an objection and a note.
    await byMouse(page, Object.fromEntries(Object.entries(steps).slice(Object.keys(steps).indexOf("flap"))));
    await page.locator(".debrief").waitFor();
    await page.locator("#own-note").fill("Look at the plate first.");
    await page.locator("#own-note").blur();
    await page.getByText("Kept in this browser.").waitFor();
    await page.reload();
    await mounted(page);
    await page.locator(".debrief").waitFor();
    await soon(async () => assert.equal(await page.locator("#own-note").inputValue(), "Look at the plate first."));
    // Once more is a second attempt; the first stays.
    await page.getByRole("button", { name: "The same case again" }).click();
    await page.locator(".sheet").waitFor();
    await choose(page, "requests", ["allergies"]);
    await soon(async () => {
      const heads = (await stored(page)).attempts.map(([, text]) => JSON.parse(text));
      assert.deepEqual(heads.map(({ number }) => number), [1, 2]);
      assert.ok(heads[0].ended && heads[0].verdicts && !heads[1].ended);
    });
  }));

test("of two tabs in one attempt each follows the other, and nothing is lost", () =>
  visit(async ({ page, context, address }) => {
    await begin(page);
    const steps = sound(2024);
    const at = "#/case/1.1.2024.0";
    await go(page, at);
    await page.locator(".sheet").waitFor();
    await byMouse(page, steps, "examination");
    const other = await context.newPage();
    await other.goto(`${address}${at}`);
    await other.locator(".sheet").waitFor();
    assert.equal(await title(other), "Examination");
    // One goes on, the other is told and follows.
    await decide(page, steps.examination);
    await carry(page, "examination");
    await soon(async () => assert.equal(await title(other), "Intention"));
    await soon(async () => assert.match(await other.locator(".goes-on").innerText(), /Another tab carried out Examination/));
    // Both at once: everything that either did is kept, in one order, without a gap.
    page.setDefaultTimeout(3000);
    other.setDefaultTimeout(3000);
    // What one answers the other sees answered: by pointer, so that a tick is never taken back.
    await Promise.all([decide(page, steps.intention), decide(other, onlyOnes(steps.intention))]);
    await Promise.all([page, other].map((tab) => carry(tab, "intention").catch(() => {})));
    await soon(async () => {
      assert.equal(await title(page), "Extraction");
      assert.equal(await title(other), "Extraction");
    });
    const all = await stored(page);
    assert.equal(all.attempts.length, 1);
    assert.deepEqual(all.events.map(([key]) => Number(key.split("/")[1])), all.events.map((_, place) => place));
    const carried = all.events.map(([, text]) => JSON.parse(text).do["carry-out"]).filter((step) => step === "intention");
    assert.equal(carried.length, 1, "a step is carried out once");
    // The same views of the same attempt.
    const known = (tab) => tab.locator(".known").innerText();
    await soon(async () => assert.equal(await known(page), await known(other)));
    await other.close();
  }));

/** Answers that another tab cannot take back by giving them too. */
const onlyOnes = (answers) => Object.fromEntries(Object.entries(answers).filter(([, value]) => typeof value === "string"));

test("two tabs that begin a case at one moment lose nothing either", () =>
  visit(async ({ page, context, address }) => {
    await begin(page);
    const at = "#/case/1.1.2024.0";
    const other = await context.newPage();
    await Promise.all([page, other].map((tab) => tab.goto(`${address}${at}`)));
    await Promise.all([page, other].map((tab) => tab.locator(".sheet").waitFor()));
    await Promise.all([choose(page, "requests", ["allergies"]), choose(other, "requests", ["blood-pressure"])]);
    await soon(async () => {
      const all = await stored(page);
      const requests = all.events.map(([, text]) => JSON.parse(text).do.value);
      assert.ok(requests.some((value) => value.includes("allergies")), JSON.stringify(requests));
      assert.ok(requests.some((value) => value.includes("blood-pressure")), JSON.stringify(requests));
    });
    await other.close();
  }));

test("where the browser has no space left that is said, practice goes on and can be saved", () =>
  visit(async ({ page, context }) => {
    const session = await context.newCDPSession(page);
    const { origin } = new URL(page.url());
    // A browser asks how much space there is now and then only: it has to be gone from the beginning.
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
    await begin(page);
    const steps = sound(2024);
    await go(page, "#/case/1.1.2024.0");
    await page.locator(".sheet").waitFor();
    await byMouse(page, steps, "intention");
    await soon(async () => assert.match(await page.locator(".not-kept").innerText({ timeout: 500 }), /no space left/));
    await soon(async () => assert.equal(await title(page), "Intention"));
    assert.deepEqual(await axe(page), []);
    await page.getByRole("link", { name: "Save it as a file" }).click();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save everything as a file" }).click();
    const text = readFileSync(await (await download).path(), "utf8");
    const [record] = JSON.parse(text).records;
    assert.ok(record.events.some(({ do: done }) => done["carry-out"] === "examination"));
    // With space again it is kept from where it stopped.
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    await page.getByRole("button", { name: "Try again" }).click();
    await soon(async () => assert.equal(await page.locator(".not-kept").count(), 0));
    await page.goBack();
    await soon(async () => assert.ok((await kept(page)).some((done) => done["carry-out"] === "examination")));
    await page.reload();
    await mounted(page);
    await page.locator(".sheet").waitFor();
    assert.equal(await title(page), "Intention");
  }));

test("where storage is forbidden a whole case can be done all the same", () =>
  visit(async ({ page }) => {
    await begin(page);
    await go(page, "#/case/1.1.2024.0");
    await soon(async () => assert.match(await page.locator(".not-kept").innerText(), /keep nothing/));
    await byMouse(page, sound(2024));
    await page.locator(".debrief").waitFor();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save this attempt" }).click();
    const text = readFileSync(await (await download).path(), "utf8");
    assert.equal(JSON.parse(text).records.length, 1);
  }, {
    before: (context) => context.addInitScript(() => {
      const refuse = () => { throw new DOMException("refused", "SecurityError"); };
      Object.defineProperty(window, "indexedDB", { get: refuse });
      Object.defineProperty(window, "localStorage", { get: refuse });
    }),
  }));

test("what a newer version keeps is left as it is, and that is said", () =>
  visit(async ({ page }) => {
    await begin(page);
    await page.evaluate(async () => {
      const open = indexedDB.open("wallwise", 7);
      open.onupgradeneeded = () => open.result.createObjectStore("future").put("precious", "key");
      await new Promise((resolve) => { open.onsuccess = resolve; });
      open.result.close();
      localStorage.setItem("wallwise-keeps", "1");
    });
    await page.reload();
    await mounted(page);
    await go(page, "#/case/1.1.2024.0");
    await page.locator(".sheet").waitFor();
    await soon(async () => assert.match(await page.locator(".not-kept").innerText(), /newer version/));
    await choose(page, "requests", ["allergies"]);
    const all = await stored(page);
    assert.deepEqual(all, { future: [["key", "precious"]] });
  }));

test("an attempt that a newer version wrote stays, is named, and blocks nothing", () =>
  visit(async ({ page }) => {
    await begin(page);
    await go(page, "#/case/1.1.2024.0");
    await page.locator(".sheet").waitFor();
    await choose(page, "requests", ["allergies"]);
    await soon(async () => assert.equal((await stored(page)).attempts.length, 1));
    await page.evaluate(async () => {
      const open = indexedDB.open("wallwise");
      await new Promise((resolve) => { open.onsuccess = resolve; });
      const store = open.result.transaction("attempts", "readwrite").objectStore("attempts");
      const ask = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
      const [[key], [text]] = [await ask(store.getAllKeys()), await ask(store.getAll())];
      await ask(store.put(JSON.stringify({ ...JSON.parse(text), format: 99, more: { of: "it" } }), key));
      open.result.close();
    });
    const before = await stored(page);
    await page.reload();
    await mounted(page);
    await page.locator(".sheet").waitFor();
    assert.match(await page.locator(".goes-on").innerText(), /newer version.*stays as it is/);
    await choose(page, "requests", ["blood-pressure"]);
    await soon(async () => assert.equal((await stored(page)).attempts.length, 2));
    await go(page, "#/keeping");
    await page.getByText("Kept, and not readable here").waitFor();
    const after = await stored(page);
    assert.ok(after.attempts.some(([key, text]) => key === before.attempts[0][0] && text === before.attempts[0][1]));
  }));

test("a saved file comes in elsewhere, once however often it is brought, and everything can be erased", () =>
  visit(async ({ page, browser, address }) => {
    await begin(page);
    await go(page, "#/case/1.1.2024.0");
    await page.locator(".sheet").waitFor();
    await byMouse(page, sound(2024), "intention");
    await go(page, "#/keeping");
    await page.locator(".keeping h1").waitFor();
    assert.deepEqual(await axe(page), []);
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save everything as a file" }).click();
    const file = await (await download).path();
    const text = readFileSync(file, "utf8");
    assert.match(text, /synthetic, not for treatment/);
    assert.ok(JSON.parse(text).records[0].case.site, "the case is written out");
    const folder = mkdtempSync(join(tmpdir(), "wallwise-"));
    const path = join(folder, "mine.json");
    writeFileSync(path, text);

    const elsewhere = await browser.newContext();
    const other = await elsewhere.newPage();
    await other.goto(`${address}#/keeping`);
    await begin(other);
    await other.goto(`${address}#/keeping`);
    const says = async (brought, words) => {
      await other.locator("#bring-in").setInputFiles(brought);
      await soon(async () => assert.match(await other.locator(".said").innerText(), words));
    };
    await says(path, /^1 new, 0 gone further than here, 0 already here/);
    const once = await stored(other);
    await says(path, /^0 new, 0 gone further than here, 1 already here/);
    assert.deepEqual(await stored(other), once, "twice is as once");
    assert.deepEqual(once.events, (await stored(page)).events, "every event with its time");
    // An older form, and what is none.
    await says(join(data, "attempt-format-1.json"), /^1 new/);
    await says(join(data, "attempt-format-1.json"), /^0 new.*1 already here/);
    await says(join(data, "population.csv"), /Left out: line 1/);
    // It goes on from where it was left, in the other browser.
    await other.goto(`${address}#/case/1.1.2024.0`);
    await other.locator(".sheet").waitFor();
    assert.equal(await title(other), "Intention");
    await choose(other, ...Object.entries(sound(2024).intention)[0]);
    await other.goto(`${address}#/keeping`);
    await says(path, /^0 new, 0 gone further than here, 1 already here/);
    // What goes is named before it goes.
    const words = await other.locator("section", { hasText: "This takes away" }).innerText();
    assert.match(words, /2 attempts with \d+ things done/);
    assert.ok(await other.getByRole("button", { name: "Erase everything" }).isDisabled());
    await other.getByLabel("I want all of that gone.").check();
    await other.getByRole("button", { name: "Erase everything" }).click();
    await other.getByText("Everything is erased.").waitFor();
    assert.deepEqual(await stored(other), { attempts: [], events: [], notes: [] });
    assert.equal(await other.evaluate(() => localStorage.getItem("wallwise-keeps")), null);
    await elsewhere.close();
    rmSync(folder, { recursive: true });
  }));
