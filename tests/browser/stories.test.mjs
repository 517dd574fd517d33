// What the room is for, played as a learner would: a wall read off a film, a thin septum, a loose implant.

import assert from "node:assert/strict";
import test from "node:test";
import { soon, visit } from "./harness.mjs";
import { agrees, begin, byMouse, carry, choose, decide, find, judged, sound, truth } from "./play.mjs";

const desk = { viewport: { width: 1440, height: 1000 } };
const known = (page) => page.locator(".known").innerText();
const row = (page, name) =>
  page.locator(".readings tbody tr", { hasText: name }).first().innerText();

/** The examination by these means alone, and what is held of the wall on that ground. */
const reading = (examination, means, wall, ground) => {
  const { "film-question": film, ...rest } = examination;
  delete rest["sections-question"];
  return {
    ...rest, examinations: means, ...(means.includes("film") && { "film-question": film }),
    "wall-reading": wall, "wall-ground": ground,
  };
};

test("a lost facial wall is taken for whole on a film, found by sounding, and the debrief says exactly that", async () => {
  const open = (one) => one.wall === "facial" && one.kind !== "fenestration";
  const { seed, steps } = find((steps, seed) =>
    steps.examination["wall-reading"] === "defect" && steps.examination.examinations.includes("film") &&
    (truth(seed).site.defect ?? []).some(open));
  const misled = { ...steps, examination: reading(steps.examination, ["look", "film"], "whole", "film") };
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, misled, "examination");
    const { "wall-reading": wall, "wall-ground": ground, ...acts } = misled.examination;
    await decide(page, acts);
    await carry(page, "examination");
    assert.doesNotMatch(await known(page), /dehiscence|the facial wall is (lost|gone)/i, "a film cannot tell");
    await page.getByLabel("Facial wall", { exact: true }).selectOption("whole");
    await decide(page, { "wall-reading": wall, "wall-ground": ground });
    await carry(page, "examination");
    const { chart: _, examination: __, ...rest } = misled;
    await byMouse(page, rest);
    await agrees(page, seed, misled);
    const told = await row(page, "Facial wall");
    assert.match(told, /whole/);
    assert.match(told, /None of your examinations could show this: could have been seen by bone sounding/);
    const zones = Object.fromEntries(judged(seed, misled).verdicts.map((one) => [one.rule, one.verdict]));
    assert.match(zones["wall-declared-whole-on-film-alone"], /outside|unsafe/);
    // The same case again, sounded.
    await page.getByRole("button", { name: "The same case again" }).click();
    await byMouse(page, steps, "examination");
    await decide(page, reading({ ...steps.examination }, ["look", "bone-sounding"], "defect", "sounding"));
    await soon(async () => assert.match(await known(page), /deeper than|loss|lost/i));
  }, { path: `#/case/${seed}`, context: desk });
});

test("a molar with a thin septum is staged, and no rule finds a fault in that", async () => {
  const address = "1.3.22.0";
  const steps = sound(address);
  assert.equal(steps.intention.course, "graft-and-return");
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps);
    const native = await agrees(page, address, steps);
    assert.equal(native.plan, "sound");
  }, { path: `#/case/${address}`, context: desk });
});

test("a loose implant is told by its torque and rescued by a wider one, once", async () => {
  const address = "1.1.4.0";
  const steps = sound(address);
  const loose = {
    ...steps,
    implant: { ...steps.implant, preparation: "tapped", "diameter-mm": 3.0, "length-mm": 10.0 },
  };
  assert.equal(judged(address, loose).plan, "compromised", "left as it is");
  const rescued = { ...loose, seating: { ...steps.seating, "seating-act": "seat-wider", "second-act": "leave" } };
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, rescued, "seating");
    const said = await page.locator(".sheet").innerText() + (await known(page));
    const torque = Number(/(\d+) Ncm/.exec(said)[1]);
    assert.ok(torque < 10, `${torque} Ncm`);
    await choose(page, "seating-act", "seat-wider");
    await carry(page, "seating");
    await decide(page, { "second-act": "leave", component: rescued.seating.component });
    await carry(page, "seating");
    const { chart, examination, intention, extraction, flap, implant, seating, ...rest } = rescued;
    await byMouse(page, rest);
    const native = await agrees(page, address, rescued);
    assert.notEqual(native.plan, "compromised");
  }, { path: `#/case/${address}`, context: desk });
});
