// The board: what is dragged, pressed or typed moves every figure, and each says where a fault lies.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import test from "node:test";
import { visit } from "./harness.mjs";
import { acts, begin, byMouse, choose, debrief, decide, find, judged, tabTo } from "./play.mjs";

const placed = () => find((steps) => steps.intention.course === "place-today");
const covered = () => find((steps) => steps.flap?.["flap-outline-mm"] && steps.graft?.["membrane-outline-mm"]);

/** A visit to a case that has been played up to a step, whose acts all stand and are still to be done. */
function at({ seed, steps }, step, look) {
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps, step);
    await decide(page, acts(steps[step]));
    await look(page);
  }, { path: `#/case/${seed}`, context: { viewport: { width: 1440, height: 1000 } } });
}

/** Every figure as it is drawn, by name, in short. What a handle says of itself is no drawing. */
async function drawn(page) {
  const figures = await page.locator(".board .figure").evaluateAll((figures) => {
    // In which order attributes came to an element is no drawing either.
    const written = (one) => [
      one.nodeName,
      [...(one.attributes ?? [])].map(({ name, value }) => `${name}=${value}`)
        .filter((text) => !text.startsWith("aria-value")).sort().join(" "),
      one.nodeType === Node.TEXT_NODE ? one.data : "",
      ...[...one.childNodes].map(written),
    ].join("|");
    return figures.map((figure) => [figure.className, written(figure)]);
  });
  const short = (text) => createHash("sha256").update(text).digest("hex").slice(0, 16);
  return Object.fromEntries(figures.map(([name, text]) => [name, short(text)]));
}

/** The number that stands in a decision's field. */
const field = async (page, key) => Number(await page.locator(`#decision-${key} .field input`).inputValue());

/** Takes hold of a handle and lets go of it elsewhere, by as many CSS pixels. */
async function drag(page, handle, right, down, during = () => {}) {
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + right / 2, y + down / 2, { steps: 4 });
  await page.mouse.move(x + right, y + down, { steps: 4 });
  await during();
  await page.mouse.up();
}

/** Where the middle of something is on the screen. */
async function middle(thing) {
  const box = await thing.boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

const platform = (page) => page.locator(".board .figure-section .handle").first();

test("dragging the platform moves number and every figure, and keys do exactly the same", () =>
  at(placed(), "implant", async (page) => {
    const before = { facial: await field(page, "offset-facial"), depth: await field(page, "depth") };
    const still = await drawn(page);
    const from = await middle(platform(page));
    let tried;
    await drag(page, platform(page), -12, 30, async () => { tried = await drawn(page); });
    const after = { facial: await field(page, "offset-facial"), depth: await field(page, "depth") };
    // What is held lies under the pointer: within half a step and the rounding of a pixel.
    const [there, pixels] = [await middle(platform(page)), await platform(page).evaluate((node) => node.ownerSVGElement.getScreenCTM().a)];
    assert.ok(Math.abs(there.x - from.x + 12) <= 0.06 * pixels + 1, "the handle follows sideways");
    assert.ok(Math.abs(there.y - from.y - 30) <= 0.06 * pixels + 1, "the handle follows down");
    assert.notEqual(after.facial, before.facial, "the drag goes sideways");
    assert.notEqual(after.depth, before.depth, "the drag goes down");
    const dragged = await drawn(page);
    for (const name of Object.keys(still)) {
      if (name.includes("facial-map")) continue; // an implant that is not in yet casts nothing on the map
      assert.notEqual(dragged[name], still[name], `${name} follows`);
    }
    assert.deepEqual(tried, dragged, "what is shown while dragging is what is chosen at the end");

    // Back by the fields, then the same way by keys alone.
    await choose(page, "offset-facial-mm", before.facial);
    await choose(page, "depth-mm", before.depth);
    assert.deepEqual(await drawn(page), still);
    await tabTo(page, '.board .figure-section .handle[aria-label^="platform"]', { back: true });
    const presses = async (key, back, id, wanted) => {
      const start = await field(page, id);
      await page.keyboard.press(key);
      // Which way a key counts depends on how the jaw is drawn.
      const toward = Math.abs((await field(page, id)) - wanted) < Math.abs(start - wanted);
      for (let times = 0; times < 200 && (await field(page, id)) !== wanted; times += 1) {
        await page.keyboard.press(toward ? key : back);
      }
      assert.equal(await field(page, id), wanted);
    };
    await presses("ArrowLeft", "ArrowRight", "offset-facial", after.facial);
    await presses("ArrowDown", "ArrowUp", "depth", after.depth);
    assert.deepEqual(await drawn(page), dragged);
  }));

test("a drag that the browser takes away ends as a choice and leaves nothing hanging", () =>
  at(placed(), "implant", async (page) => {
    const handle = platform(page);
    await handle.evaluate((node) => {
      node.addEventListener("pointermove", (event) => node.releasePointerCapture(event.pointerId), { once: true });
    });
    await drag(page, handle, 0, 20);
    const depth = await field(page, "depth");
    await page.mouse.move(5, 5, { steps: 3 });
    assert.equal(await field(page, "depth"), depth);
  }));

test("a corner of an outline is dragged and pressed on the map, and its numbers follow", () =>
  at(covered(), "graft", async (page) => {
    // Corners of a chamfer lie close together: the last one lies on top.
    const corner = page.locator(".board .figure-facial-map .handle").last();
    const words = await corner.getAttribute("aria-valuetext");
    assert.match(words, /^\d+\.\d mm (mesially|distally), \d+\.\d mm (palatally|lingually|apically)$/);
    const corners = page.locator("#decision-membrane-outline table");
    const numbers = () => corners.locator("input").evaluateAll((all) => all.map((one) => one.value));
    const before = await numbers();
    await drag(page, corner, -6, -6);
    const after = await numbers();
    assert.notDeepEqual(after, before);
    assert.notEqual(await corner.getAttribute("aria-valuetext"), words);
    await corner.focus();
    await page.keyboard.press("ArrowUp");
    assert.notDeepEqual(await numbers(), after);
    await page.keyboard.press("ArrowDown");
    assert.deepEqual(await numbers(), after);
  }));

test("a corner that would cross the outline stays where it was, and a typed one says why", () =>
  at(covered(), "graft", async (page) => {
    const box = page.locator("#decision-membrane-outline");
    const still = await drawn(page);
    const cell = box.getByLabel("corner 1, mesiodistal, mm", { exact: true });
    const other = await box.getByLabel("corner 5, mesiodistal, mm", { exact: true }).inputValue();
    await cell.fill((Number(other) + 20).toFixed(1));
    await cell.press("Enter");
    assert.match(await box.getByRole("alert").innerText(), /cross/);
    assert.deepEqual(await drawn(page), still);
  }));

test("an edge that would pass the one opposite is refused in words", () =>
  at(covered(), "graft", async (page) => {
    const box = page.locator("#decision-membrane-outline");
    const still = await drawn(page);
    const edge = box.getByLabel("Apical edge, mm", { exact: true });
    await edge.fill("-30.0");
    await edge.press("Enter");
    assert.match(await box.getByRole("alert").innerText(), /Apical edge: .*opposite edge/);
    assert.deepEqual(await drawn(page), still);
  }));

test("every handle can be reached by keyboard and names itself with its value in words", () =>
  at(placed(), "implant", async (page) => {
    const handles = await page.locator(".board .handle").evaluateAll((all) =>
      all.map((one) => [one.getAttribute("aria-label"), one.getAttribute("aria-valuetext")]));
    assert.ok(handles.length >= 2, `${handles.length} handles`);
    for (const [name, value] of handles) {
      assert.match(name, /\w/);
      assert.match(value, /\d/);
      assert.doesNotMatch(value, /(^|\s)[-−]\d/, `${name}: ${value}`);
    }
    await page.locator(".board").focus();
    const reached = new Set();
    for (let presses = 0; presses < 60; presses += 1) {
      await page.keyboard.press("Tab");
      reached.add(await page.evaluate(() =>
        [...document.querySelectorAll(".board .handle")].indexOf(document.activeElement)));
    }
    reached.delete(-1);
    assert.equal(reached.size, handles.length);
  }));

test("a membrane that is too small is a fault, said in words and lit on the figure", async () => {
  const { seed, steps } = covered();
  const small = structuredClone(steps);
  const [s, t] = [0, 1].map((part) => {
    const along = steps.graft["membrane-outline-mm"].map((at) => at[part]);
    return (Math.min(...along) + Math.max(...along)) / 2;
  });
  // A third of its size about its middle, on the grid of tenths.
  small.graft["membrane-outline-mm"] = steps.graft["membrane-outline-mm"].map(([x, y]) =>
    [s + (x - s) / 3, t + (y - t) / 3].map((mm) => Number(mm.toFixed(1))));
  await visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, small);
    const { word, zones } = await debrief(page);
    const native = judged(seed, small);
    assert.equal(word, native.plan);
    assert.notEqual(word, "sound");
    const id = "membrane-short-of-intact-bone";
    assert.match(zones[id], /^outside/);
    const verdict = page.locator(".debrief details.verdict").filter({ has: page.locator(`a[href="#/protocol/${id}"]`) });
    const told = native.verdicts.find((one) => one.rule === id);
    const says = await verdict.innerText();
    for (const part of ["measured", "distance", "mend"]) assert.ok(says.includes(told.words[part]), told.words[part]);
    const button = verdict.getByRole("button", { name: "Show it on the figures" });
    const [lit, dark] = [() => page.locator(".board .ink-fault").count(), await page.locator(".board .ink-fault").count()];
    await button.click();
    assert.equal(await button.getAttribute("aria-pressed"), "true");
    assert.ok((await lit()) > dark, "the fault is lit");
    await button.click();
    assert.equal(await lit(), dark);
  }, { path: `#/case/${seed}` });
});
