// What the page keeps to itself: nothing is answered for the learner, nothing unseen is shown.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./harness.mjs";
import { begin, byMouse, carry, debrief, decide, find, sound, truth } from "./play.mjs";

const placed = () => find((steps) => steps.intention.course === "place-today");

/** Whether a case lost facial bone: what no film shows. */
const defective = (seed) => (truth(seed).site.defect ?? []).some(({ wall }) => wall === "facial");

/** Asserts that the step that is due is undecided in every part. */
async function blank(page, name) {
  const state = await page.locator(".sheet").evaluate((sheet) => ({
    decisions: sheet.querySelectorAll(".decision").length,
    undecided: sheet.querySelectorAll(".decision.undecided").length,
    marks: sheet.querySelectorAll(".undecided-mark").length,
    checked: sheet.querySelectorAll("input:checked").length,
    filled: [...sheet.querySelectorAll("input[type=text]")].filter((one) => one.value !== "").length,
    can: !sheet.querySelector(".carry-out button").disabled,
  }));
  assert.ok(state.decisions > 0, `${name} asks something`);
  assert.deepEqual(state, {
    decisions: state.decisions,
    undecided: state.decisions,
    marks: state.decisions,
    checked: 0,
    filled: 0,
    can: false,
  }, name);
}

test("nothing is prefilled: every step opens undecided and cannot be carried out", async () => {
  for (const { seed, steps } of [placed(), find((one) => one.graft?.["membrane-outline-mm"])]) {
    await visit(async ({ page }) => {
      await begin(page);
      for (const [step, answers] of Object.entries(steps)) {
        await blank(page, step);
        await decide(page, answers);
        await carry(page, step);
      }
    }, { path: `#/case/${seed}` });
  }
});

test("a step with one answer missing names it and cannot be carried out", async () => {
  const { seed, steps } = placed();
  await visit(async ({ page }) => {
    await begin(page);
    const { requests, drugs, ...others } = steps.chart;
    assert.match(await page.locator(".missing").innerText(), /^Still undecided: Ask for/i);
    assert.ok(await page.getByRole("button", { name: "Carry out: Chart" }).isDisabled());
    await decide(page, { requests, ...others });
    assert.match(await page.locator(".missing").innerText(), /^Still undecided: .*Drugs/i);
    assert.ok(await page.getByRole("button", { name: "Conclude: Chart" }).isDisabled());
    await decide(page, { drugs });
    assert.equal(await page.locator(".missing").count(), 0);
    await carry(page, "chart");
  }, { path: `#/case/${seed}` });
});

test("what an act finds stands on the sheet before it has to be weighed", async () => {
  const { seed, steps } = placed();
  const weighs = { chart: "drugs", examination: "wall-reading", extraction: "after-extraction" };
  await visit(async ({ page }) => {
    await begin(page);
    for (const [step, answers] of Object.entries(steps)) {
      const late = Object.keys(answers).indexOf(weighs[step] ?? "");
      if (late >= 0) {
        const entries = Object.entries(answers);
        await decide(page, Object.fromEntries(entries.slice(0, late)));
        assert.equal(await page.locator(`#decision-${weighs[step]}`).count(), 0, `${step}: not asked yet`);
        assert.equal(await page.locator(".sheet .report").count(), 0, `${step}: nothing found yet`);
        await carry(page, step);
        await page.locator(`#decision-${weighs[step]}`).waitFor();
        assert.ok((await page.locator(".sheet .report li").count()) > 0, `${step}: what was found`);
        await decide(page, Object.fromEntries(entries.slice(late)));
      } else {
        await decide(page, answers);
      }
      await carry(page, step);
      if (step === "extraction") return;
    }
  }, { path: `#/case/${seed}` });
});

test("study explains a step as soon as it is carried out, assessment holds every verdict back", async () => {
  const { seed, steps } = placed();
  for (const [path, shown] of [[`#/case/${seed}`, true], [`#/case/${seed}?assessment`, false]]) {
    await visit(async ({ page }) => {
      await begin(page);
      for (const [step, answers] of Object.entries(steps)) {
        await decide(page, answers);
        await carry(page, step);
        if (step === Object.keys(steps).at(-1)) break;
        const verdicts = await page.locator(".verdict").count();
        if (!shown) assert.equal(verdicts, 0, `after ${step}`);
        if (shown && step === "examination") assert.ok(verdicts > 0, `after ${step}`);
      }
      assert.ok(Object.keys((await debrief(page)).zones).length > 0);
      // Wherever verdicts stand, the caution stands.
      assert.ok(await page.locator(".debrief .caution").isVisible());
    }, { path });
  }
});

test("the same case again begins empty, on the same address", async () => {
  const { seed, steps } = find((one) => one.intention.course === "postpone");
  await visit(async ({ page }) => {
    await begin(page);
    const title = await page.locator(".case-head h1").innerText();
    await byMouse(page, steps);
    await debrief(page);
    const address = page.url();
    await page.getByRole("button", { name: "The same case again" }).click();
    await page.locator(".sheet").waitFor();
    assert.equal(page.url(), address);
    assert.equal(await page.locator(".case-head h1").innerText(), title);
    assert.equal(await page.locator(".debrief, .verdict").count(), 0);
    await blank(page, "chart");
    assert.equal(await page.evaluate(() => document.activeElement.id), "sheet-title");
  }, { path: `#/case/${seed}` });
});

test("another case leaves nothing of the one before", async () => {
  const { seed, steps } = placed();
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps, "intention");
    await page.evaluate((other) => { location.hash = `#/case/${other}`; }, seed + 1);
    await page.waitForFunction(() => document.querySelector("#sheet-title")?.textContent === "Chart");
    await blank(page, "chart");
    assert.equal(await page.locator(".verdict").count(), 0);
  }, { path: `#/case/${seed}` });
});

/** Everything that the page holds of the case, shown or not: text, names, drawings. */
const held = (page) => page.locator("main").evaluate((main) => ({
  // The list of terms explains defects to everybody, and questions and answers are the same for all.
  text: [...main.querySelectorAll(".board, .known, .case-head")].map((one) => one.textContent).join("\n"),
  markup: main.innerHTML,
  inks: [...main.querySelectorAll(".board [class*=ink-]")].map((one) => one.getAttribute("class")),
}));

const DEFECT = /dehiscence|fenestration|facial (wall|plate)[^.]*\b(lost|missing|gone)|\bdefect\b/i;

test("a facial defect that only a film was taken of stands nowhere in the page before the debrief", async () => {
  const hidden = find((_, seed) => defective(seed));
  const plan = sound(hidden.seed);
  const whole = find((steps, seed) => !defective(seed) && steps.intention.course === "place-today");
  const blind = {
    chart: plan.chart,
    examination: {
      examinations: ["film"],
      "film-question": "root-and-apex",
      "wall-reading": "whole",
      "wall-ground": "film",
    },
  };
  assert.ok(whole.seed !== hidden.seed);
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, blind);
    const { text, inks } = await held(page);
    assert.ok(!inks.some((ink) => /ink-(defect|lost)/.test(ink)), "no defect is drawn");
    assert.doesNotMatch(text, DEFECT);
    assert.ok(inks.length > 50, "the figures are drawn");
  }, { path: `#/case/${hidden.seed}?assessment` });

  // The watch barks: once the wall has been sounded and cut, the same page says and shows it.
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, plan);
    const { text, inks } = await held(page);
    assert.ok(inks.some((ink) => /ink-(defect|lost)/.test(ink)) || DEFECT.test(text));
  }, { path: `#/case/${hidden.seed}?assessment` });
});
