// Worked cases: one shown whole, one begun, one alone; and fresh cases as hard as is asked.

import assert from "node:assert/strict";
import test from "node:test";
import { axe, visit } from "./harness.mjs";
import { begin, movesOn, run } from "./play.mjs";

const carryOut = (page) => page.locator(".worked .carry-out button");

/** Goes through every step that is shown; the names of the steps, in order. */
async function readThrough(page) {
  const titles = [];
  await page.locator(".worked").waitFor();
  while (await carryOut(page).count()) {
    titles.push(await page.locator("#sheet-title").textContent());
    await movesOn(page, () => carryOut(page).click());
  }
  return titles;
}

test("a worked case is read step by step, then one is ended, then one is done alone", () =>
  visit(async ({ page }) => {
    await begin(page);
    await page.getByRole("link", { name: "See one worked first" }).nth(2).click();
    await page.locator(".worked").waitFor();
    // Nothing is there to be chosen, and every choice is told.
    assert.equal(await page.locator(".sheet .decision").count(), 0);
    assert.ok((await page.locator(".told .chosen").count()) > 0);
    const titles = await readThrough(page);
    assert.ok(titles.includes("Graft and membrane") && titles.length > 12, titles.join(", "));
    assert.match(await page.locator(".whole-word").textContent(), /This plan is sound/);
    await page.getByRole("link", { name: "Go on: the last steps are yours" }).click();
    const shown = await readThrough(page);
    assert.ok(shown.includes("Extraction") && !shown.includes("Graft and membrane"), shown.join(", "));
    // From here on the learner decides, and nothing is filled in.
    await page.locator(".sheet .decision.undecided").first().waitFor();
    assert.ok(await page.locator(".carry-out button").isDisabled());
  }));

test("a step that is shown stands on the figures before it is carried out, and says why", () =>
  visit(async ({ page }) => {
    await begin(page);
    const steps = ["Chart", "Chart", "Examination", "Examination", "Intention"];
    for (const step of steps) {
      await page.locator("#sheet-title", { hasText: step }).waitFor();
      await movesOn(page, () => carryOut(page).click());
    }
    while ((await page.locator("#sheet-title").textContent()) !== "Implant") await movesOn(page, () => carryOut(page).click());
    // The implant of the step is drawn, not yet placed, and not to be moved.
    assert.equal(await page.locator(".board .handle").count(), 0);
    await page.locator(".figure-section", { hasText: "implant" }).waitFor();
    const said = await page.locator(".told > li", { hasText: "Diameter" }).first().innerText();
    await page.locator(".told details").first().locator("summary").click();
    const address = page.url().match(/case\/([^?]+)/)[1];
    const told = run("case", address, "--worked");
    const diameter = said.match(/[0-9.]+ mm/)[0];
    assert.ok(told.includes(`Diameter: ${diameter}`), `the tool tells no ${diameter}`);
    assert.deepEqual(await axe(page), []);
  }, { path: "#/case/1.1.2024.339?worked" }));

test("terms explain themselves under the pointer, by key and by touch, and go by Escape", () =>
  visit(async ({ page, context }) => {
    await begin(page);
    await page.getByText("Ask for", { exact: true }).waitFor();
    while ((await page.locator("#sheet-title").textContent()) !== "Flap") await movesOn(page, () => carryOut(page).click());
    const word = page.locator(".told .ask .term-word").first();
    const means = page.locator(".told .ask .term-means").first();
    assert.ok(!(await means.isVisible()));
    await word.hover();
    assert.ok(await means.isVisible());
    assert.equal(await word.getAttribute("aria-description"), await means.textContent());
    await page.mouse.move(2, 2);
    assert.ok(!(await means.isVisible()));
    await word.focus();
    assert.ok(await means.isVisible());
    await page.keyboard.press("Escape");
    assert.ok(!(await means.isVisible()));
    await word.tap();
    assert.ok(await means.isVisible());
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${wide} pixels too wide`);
  }, { path: "#/case/1.1.2024.339?worked",
    context: { viewport: { width: 390, height: 800 }, hasTouch: true } }));

test("a fresh case is as hard as was asked, and its address says so until it is drawn", () =>
  visit(async ({ page }) => {
    await begin(page);
    const hard = page.getByLabel("A fresh case");
    assert.equal(await hard.inputValue(), "", "any kind, unless told otherwise");
    await hard.selectOption("easier");
    await page.getByRole("button", { name: "Draw" }).click();
    await page.locator(".case-head").waitFor();
    assert.match(page.url(), /\?difficulty=0-0\.5$/);
    const shown = await page.locator(".address input").inputValue();
    const address = shown.match(/case\/([0-9.]+)/)[1];
    const found = JSON.parse(run("case", address, "--json")).difficulty.value;
    assert.ok(found <= 0.5, `${address}: ${found}`);
  }));
