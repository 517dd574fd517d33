// Practice over days: what is due and why, a sitting, the review and the portfolio.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import test from "node:test";
import { axe, soon, visit, wallwise } from "./harness.mjs";
import { begin, byMouse, choose, sound } from "./play.mjs";

const planted = fileURLToPath(new URL("../data/planted-learner.json", import.meta.url));
const go = (page, fragment) => page.evaluate((to) => { location.hash = to; }, fragment);

/** Brings the planted learner's seven weeks in. */
async function grow(page) {
  await begin(page);
  await go(page, "#/keeping");
  await page.locator("#bring-in").setInputFiles(planted);
  await soon(async () => assert.match(await page.locator(".said").innerText(), /^35 new/));
}

/** The text of what a button saves. */
async function saves(page, button) {
  const download = page.waitForEvent("download");
  await button.click();
  return readFileSync(await (await download).path(), "utf8");
}

test("the review says what a learner of seven weeks had not noticed, and leads to the very verdict", () =>
  visit(async ({ page }) => {
    await grow(page);
    await go(page, "#/review");
    await page.getByText("What stands out").waitFor();
    const text = await page.locator("#room-place").innerText();
    // Both planted faults, counted, and where the one of them lies.
    assert.match(text, /charged in 18 of the 2\d attempts/);
    assert.match(text, /at teeth of the lower jaw/);
    assert.match(text, /333 answers/);
    assert.deepEqual(await axe(page), []);
    // Every plot has its numbers as CSV.
    const buttons = await page.getByRole("button", { name: "Save as CSV" }).all();
    assert.equal(buttons.length, 4);
    for (const button of buttons) {
      const rows = (await saves(page, button)).trim().split("\r\n").map((row) => row.split(",").length);
      assert.ok(rows.length > 2 && rows.every((count) => count === rows[0]), String(rows));
    }
    // The very moment: the attempt's debrief, unfolded at that verdict.
    const fault = page.locator("li, section", { hasText: "Send every patient home with an emergency number." }).last();
    await fault.getByRole("link").first().click();
    await page.locator(".debrief").waitFor();
    await soon(async () => {
      const focused = await page.evaluate(() => document.activeElement.closest("details")?.id);
      assert.equal(focused, await page.evaluate(() => `verdict-${location.hash.split("/").at(-1)}`));
    });
    assert.match(await page.locator("details:focus-within > summary").first().innerText(), /emergency number/);
    assert.match(await page.locator(".case-head").innerText(), /Tooth \d\d/);
  }));

test("before thirty answers no calibration is shown, and it is said how many there are", () =>
  visit(async ({ page }) => {
    await begin(page);
    await go(page, "#/review");
    await page.getByRole("link", { name: /first case/ }).waitFor();
    assert.deepEqual(await axe(page), []);
    await go(page, "#/case/1.1.2024.0");
    await page.locator(".sheet").waitFor();
    await page.getByRole("button", { name: "90 %" }).click();
    await byMouse(page, sound(2024));
    await page.locator(".debrief").waitFor();
    await go(page, "#/review");
    await page.getByText("What stands out").waitFor();
    const text = await page.locator("#room-place").innerText();
    assert.doesNotMatch(text, /Brier/);
    assert.match(text, /30/);
  }));

test("the portfolio holds what its learner chose, says under what circumstances, and others can replay it", () =>
  visit(async ({ page }) => {
    await grow(page);
    await go(page, "#/portfolio");
    await page.getByRole("heading", { name: "Portfolio" }).waitFor();
    assert.deepEqual(await axe(page), []);
    await page.getByRole("button", { name: "None of them" }).click();
    const boxes = page.locator(".choosing input[type=checkbox]");
    await page.getByLabel(/1\.3\.520\.0/).check();
    const text = await page.locator("#room-place").innerText();
    for (const words of ["1.3.520.0", "Study", "resident|student|none|No set", "1", "Rule set", "alone|no help|none"]) {
      assert.match(text, new RegExp(words, "i"), words);
    }
    assert.ok((await boxes.count()) >= 35);
    const folder = mkdtempSync(join(tmpdir(), "wallwise-"));
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: /Save/ }).first().click();
    const file = join(folder, "chosen.json");
    await (await download).saveAs(file);
    const again = execFileSync(wallwise, ["replay", file], { encoding: "utf8" });
    assert.match(again, /^1 attempts/);
    assert.match(again, /1\.3\.520\.0/);
    for (const format of ["A4", "Letter"]) {
      const pdf = await page.pdf({ format });
      assert.ok(pdf.length > 5000, format);
    }
    rmSync(folder, { recursive: true });
  }));

/** Plays the case on the bench as its sound plan has it, but for what `spoil` changes. */
async function play(page, spoil = (steps) => steps) {
  await page.locator(".sheet").waitFor({ timeout: 60_000 });
  const [, address] = /case\/([\d.a-z-]+)/.exec(page.url());
  await byMouse(page, spoil(sound(address)));
  await page.locator(".debrief").waitFor();
  return address;
}

const withoutNumber = (steps) => ({
  ...steps,
  closure: { ...steps.closure, instructions: steps.closure.instructions.filter((one) => one !== "emergency-number") },
});

test("what was missed comes back the next day with the reason, and a sitting ends with one thing to take away", () =>
  visit(async ({ page }) => {
    const day = (number) => page.clock.setSystemTime(new Date(2026, 8, 20 + number, 9));
    await day(1);
    await begin(page);
    await go(page, "#/today");
    await page.locator(".today").waitFor();
    assert.match(await page.locator(".today").innerText(), /every skill is untried/);
    assert.deepEqual(await axe(page), []);
    await page.getByRole("button", { name: "Begin practising" }).click();
    const first = await play(page, withoutNumber);
    await page.getByText("Case 1 of 5 in this sitting.").waitFor();
    await page.getByRole("button", { name: "Next case" }).click();
    await page.waitForURL((url) => !url.hash.includes(`/${first}?`), { timeout: 60_000 });
    await page.locator(".sheet").waitFor();
    await choose(page, "requests", ["allergies"]);
    // Going elsewhere changes nothing: the sitting goes on with the case that was open.
    const open = page.url();
    await go(page, "#/today");
    await page.getByRole("button", { name: "Go on: case 2 of 5" }).click();
    await soon(async () => assert.equal(page.url(), open));
    await page.locator(".sheet").waitFor();
    await choose(page, "requests", ["allergies"]);
    const second = await play(page, withoutNumber);
    assert.notEqual(second, first, "never the same case unasked");
    await page.getByRole("link", { name: "End the sitting here" }).click();
    await page.getByText("One thing to take away").waitFor();
    await soon(async () => assert.match(await page.locator(".take-away").innerText(), /emergency number[\s\S]*missed in 2 cases of this sitting/));
    assert.deepEqual(await axe(page), []);

    await day(2);
    await page.reload();
    await go(page, "#/today");
    await page.locator(".due li").first().waitFor();
    const due = await page.locator(".today").innerText();
    assert.match(due, /Closing and following up: missed yesterday in a case about/);
    await page.getByRole("button", { name: "Begin practising" }).click();
    // Block until two in a row are right.
    await play(page);
    await page.getByRole("button", { name: "Next case" }).click();
    await page.getByText("Case 1 of 5").waitFor({ state: "detached", timeout: 60_000 });
    await play(page);
    await go(page, "#/today");
    await page.locator(".today").waitFor();
    await soon(async () => assert.doesNotMatch(await page.locator(".due").first().innerText(), /Closing and following up: missed/));
  }));
