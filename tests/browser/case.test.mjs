// Whole cases in the page, by mouse and by keyboard alone, held to what the tool judges natively.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./harness.mjs";
import { agrees, begin, beginByKeys, byKeyboard, byMouse, find, tabTo } from "./play.mjs";

const treats = (course) => (steps) => steps.intention.course === course;
const placed = treats("place-today");
/** A membrane with chamfered corners and a flap under it: both outlines, in full. */
const staged = (steps) =>
  treats("graft-and-return")(steps) &&
  steps.flap?.["flap-outline-mm"] && steps.graft?.["membrane-outline-mm"];

/** Plays a case by mouse to its end and holds the debrief to the native judge. */
async function toTheEnd({ seed, steps }, look = () => {}) {
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps);
    const native = await agrees(page, seed, steps);
    assert.equal(native.plan, "sound");
    await look(page, native);
  }, { path: `#/case/${seed}` });
}

test("a case with an implant today, by mouse, ends in the debrief that the tool computes", () =>
  toTheEnd(find(placed), async (page, native) => {
    const room = page.locator("section.space");
    await room.locator(".figure-room svg").waitFor();
    assert.equal(await room.locator("[role=status]").innerText(), native.room.words);
    assert.match(await room.locator(".figure-room .says p").textContent(), /of 63 stock sizes/);
  }));

test("a case with flap and membrane, staged, ends in the debrief that the tool computes", () =>
  toTheEnd(find(staged)));

test("a case that is postponed ends in the debrief that the tool computes", () =>
  toTheEnd(find(treats("postpone"))));

test("a spreading infection is drained and referred the same day", async () => {
  const spreading = find((steps) => treats("refer")(steps) && steps.intention.today.includes("drain"));
  assert.equal(spreading.steps.intention["by-when"], "same-day");
  await toTheEnd(spreading, async (page) =>
    assert.match(await page.locator(".known").innerText(), /fever|swelling/i));
});

test("a case that returns early ends in the debrief that the tool computes", () =>
  toTheEnd(find(treats("return-early"))));

test("a tooth that is kept ends in the debrief that the tool computes", () =>
  toTheEnd(find(treats("keep-tooth"))));

test("a whole case with an implant today is played by keyboard alone", async () => {
  const { seed, steps } = find(placed);
  await visit(async ({ page }) => {
    await beginByKeys(page);
    await tabTo(page, "#address");
    await page.keyboard.type(String(seed));
    await page.keyboard.press("Enter");
    await page.locator(".sheet").waitFor();
    await byKeyboard(page, steps);
    await agrees(page, seed, steps);
  });
});

test("a whole case with flap and membrane is played by keyboard alone", async () => {
  const { seed, steps } = find(staged);
  await visit(async ({ page }) => {
    await beginByKeys(page);
    await byKeyboard(page, steps);
    await agrees(page, seed, steps);
  }, { path: `#/case/${seed}` });
});
