// The healing illustration in the debrief: bands, words and numbers, and that it says what it is.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { axe, soon, visit, wallwise } from "./harness.mjs";
import { asFile, begin, byMouse, debrief, find } from "./play.mjs";

/** A sound plan that places an implant between whole walls, with its gap left empty. */
function ungrafted(steps) {
  if (!steps.implant || !steps.graft) return undefined;
  const { "graft-material": material, ...graft } = steps.graft;
  if (material === "no-graft") return undefined;
  // What is asked of a graft is not asked without one.
  const asked = ["membrane", "membrane-outline-mm", "trim", "fold", "fixation", "tissue-graft"];
  const kept = Object.entries(graft).filter(([key]) => asked.includes(key));
  return { ...steps, graft: { "graft-material": "no-graft", ...Object.fromEntries(kept) } };
}

/** What the tool says of the same plan, natively. */
function native(seed, steps) {
  const folder = mkdtempSync(join(tmpdir(), "wallwise-"));
  try {
    const file = join(folder, "plan.toml");
    writeFileSync(file, asFile(steps));
    const args = ["judge", String(seed), file, "--healing", "--json"];
    try {
      return JSON.parse(execFileSync(wallwise, args, { encoding: "utf8" })).healing;
    } catch (ended) {
      if (ended.status !== 1) throw ended;
      return JSON.parse(ended.stdout).healing;
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The first case where that is another treatment than the nearest sound plan's: three bands. */
function three() {
  const { seed, steps } = find((steps, seed) => {
    const mine = ungrafted(steps);
    const treatments = mine ? native(seed, mine).treatments : [];
    return treatments.length === 3 && treatments.every(({ unknown }) => unknown === null);
  });
  return { seed, steps: ungrafted(steps) };
}

test("the debrief shows three labelled bands a quantity, says them in words, and says that they are an illustration", () => {
  const { seed, steps } = three();
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps);
    await debrief(page);
    const part = page.locator(".healing");
    assert.match(await part.innerText(), /An illustration of a teaching model: no forecast, no promise/);
    // Folded away until it is asked for.
    assert.equal(await part.locator("svg.drawing").first().isVisible().catch(() => false), false);
    await part.locator("summary").first().click();
    const drawings = part.locator("svg.drawing");
    await soon(async () => assert.equal(await drawings.count(), 2));
    for (const drawing of await drawings.all()) {
      const held = await drawing.evaluate((svg) => ({
        words: [...svg.querySelectorAll("text")].map((text) => text.textContent),
        bands: ["ink-band-acceptable", "ink-spread-broken", "ink-spread-slanted"].map((ink) => svg.querySelectorAll(`path.${ink}`).length),
        fills: [...svg.querySelectorAll("path")].map((path) => getComputedStyle(path).fill).filter((fill) => fill.startsWith("url(")),
        says: svg.closest("figure").querySelector(".says p").textContent,
      }));
      assert.deepEqual(held.bands, [1, 1, 1]);
      assert.equal(new Set(held.fills).size, 3, `three hatchings: ${held.fills}`);
      for (const name of ["yours", "nearest sound", "untreated"]) assert.ok(held.words.includes(name), `${name} in ${held.words}`);
      for (const said of [/Yours: an implant at once/, /The nearest sound plan: /, /No treatment: extracted and left to heal\./, /after 12 months \d\.\d to \d\.\d mm, median \d\.\d/]) {
        assert.match(held.says, said);
      }
    }
    // What the tool computes natively stands in the page's numbers.
    const table = (await part.locator("textarea").inputValue()).trim().split("\n");
    const rows = Object.fromEntries(table.slice(1).map((line) => {
      const [quantity, whose, month, ...lost] = line.split(",");
      return [`${quantity} ${whose} ${month}`, lost];
    }));
    const { treatments } = native(seed, steps);
    assert.equal(treatments.length, 3);
    for (const { whose, months } of treatments) {
      for (const month of months) {
        for (const quantity of ["width", "facial-height"]) {
          const told = month[`${quantity}-mm`];
          rows[`${quantity} ${whose.join("+")} ${month.month}`].forEach((cell, place) =>
            assert.ok(Math.abs(Number(cell) - told[place]) <= 0.005 + 1e-9, `${quantity} ${whose} ${month.month}`));
        }
      }
    }
    for (const title of ["What it does not know", "Where its numbers come from", "The numbers, month by month"]) {
      await part.getByText(title).click();
    }
    assert.match(await part.innerText(), /no reason to place an implant at once/);
    assert.match(await part.innerText(), /Tan 2012/);
    assert.deepEqual(await axe(page), []);
  }, { path: `#/case/${seed}` });
});
