// A set that draws a line of its own says so with the case and at each verdict that it changes.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./harness.mjs";
import { begin, byMouse, sound } from "./play.mjs";

const SET = "one-school-s-line";

test("a case of a set with a protocol tells it from the start, and a verdict what it would be without", () =>
  visit(async ({ page, address }) => {
    await begin(page);
    await page.goto(`${address}#/set/${SET}/1`);
    await page.locator(".decided").waitFor();
    const told = page.locator(".decided");
    assert.equal(await told.evaluate((one) => one.open), false, "folded until it is asked for");
    await told.locator("summary").click();
    const words = await told.innerText();
    assert.match(words, /for residents/);
    assert.match(words, /at 2\.5 mm, not at 2 mm; published figures run from 2 to 3 mm/);
    const steps = sound("1.1.3002.0");
    steps.implant["offset-facial-mm"] = -0.8;
    await byMouse(page, steps);
    await page.locator(".debrief").waitFor();
    const verdict = page.locator(".causes .verdict, .debrief .verdict").filter({ hasText: "Your set:" });
    await verdict.first().waitFor();
    const said = await verdict.first().innerText();
    assert.match(said, /Here your set draws the limit at 2 mm, not at 1\.5 mm/);
    assert.match(said, /Without it this would be debated/);
    assert.match(said, /outside: likely to compromise/);
  }));

test("a case without a protocol says nothing of one", () =>
  visit(async ({ page, address }) => {
    await begin(page);
    await page.goto(`${address}#/set/1-the-intact-wall/1`);
    await page.locator(".sheet .decision").first().waitFor();
    await page.locator(".board figure").nth(2).waitFor();
    assert.equal(await page.locator(".decided").count(), 0);
  }));
