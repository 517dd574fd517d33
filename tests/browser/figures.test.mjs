// The board: what is dragged, pressed or typed moves every figure, and each says where a fault lies.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import test from "node:test";
import { soon, visit } from "./harness.mjs";
import { acts, begin, byMouse, carry, choose, debrief, decide, find, judged, sound, tabTo } from "./play.mjs";

const placed = () => find((steps) => steps.intention.course === "place-today");
const returned = () => find((steps) => steps["late-placement"]);
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

/** Lets the page draw what was done to it: a drag is drawn with the next frame. */
const rested = (page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Every figure as it is drawn, by name, in short. What it or a handle says is no drawing. */
async function drawn(page) {
  await rested(page);
  const figures = await page.locator(".board .figure").evaluateAll((figures) => {
    // In which order attributes came to an element is no drawing either.
    const written = (one) => [
      one.nodeName,
      [...(one.attributes ?? [])].map(({ name, value }) => `${name}=${value}`)
        .filter((text) => !text.startsWith("aria-value")).sort().join(" "),
      one.nodeType === Node.TEXT_NODE ? one.data : "",
      ...[...one.childNodes].filter((child) => !child.classList?.contains("said")).map(written),
    ].join("|");
    return figures.map((figure) => [figure.className, written(figure)]);
  });
  const short = (text) => createHash("sha256").update(text).digest("hex").slice(0, 16);
  return Object.fromEntries(figures.map(([name, text]) => [name, short(text)]));
}

/** The number that stands in a decision's field. */
async function field(page, key) {
  await rested(page);
  return Number(await page.locator(`#decision-${key} .field input`).inputValue());
}

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

/** Presses one of two keys until a decision's field shows what is wanted. */
async function presses(page, [key, back], id, wanted) {
  const start = await field(page, id);
  await page.keyboard.press(key);
  // Which way a key counts depends on how the jaw is drawn.
  const toward = Math.abs((await field(page, id)) - wanted) < Math.abs(start - wanted);
  for (let times = 0; times < 200 && (await field(page, id)) !== wanted; times += 1) {
    await page.keyboard.press(toward ? key : back);
  }
  await soon(async () => assert.equal(await field(page, id), wanted));
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
    await soon(async () => assert.deepEqual(await drawn(page), still));
    await tabTo(page, '.board .figure-section .handle[aria-label^="platform"]', { back: true });
    await presses(page, ["ArrowLeft", "ArrowRight"], "offset-facial", after.facial);
    await presses(page, ["ArrowDown", "ArrowUp"], "depth", after.depth);
    await soon(async () => assert.deepEqual(await drawn(page), dragged));
  }));

test("what is being typed stays while the sheet is drawn anew, and counts once it is entered", () =>
  at(placed(), "implant", async (page) => {
    const input = page.locator("#decision-offset-facial .field input");
    const before = await input.inputValue();
    await input.fill("0.7");
    // An answer beside it, given without taking the focus: the whole sheet is drawn anew.
    const chosen = await page.evaluate(() => {
      const other = [...document.querySelectorAll(".sheet input[type=radio]")].find((one) => !one.checked);
      other.click();
      return other.value;
    });
    await rested(page);
    assert.ok(await page.locator(`.sheet input[value="${chosen}"]`).first().isChecked());
    assert.equal(await input.inputValue(), "0.7");
    await input.press("Enter");
    await soon(async () => assert.equal(await field(page, "offset-facial"), 0.7));
    // Left without being entered it is entered too, and what cannot be gives way to what is chosen.
    await input.fill("none");
    await input.blur();
    await soon(async () => assert.equal(await field(page, "offset-facial"), 0.7));
    assert.notEqual(before, "0.7");
  }));

test("an implant is moved and leant in the healed section by drag, by keys and by its fields, all to the same", () =>
  at(returned(), "late-placement", async (page) => {
    const numbers = async () => ({
      facial: await field(page, "late-facial"), depth: await field(page, "late-depth"), tilt: await field(page, "late-tilt"),
    });
    const handle = (name) => page.locator(`.board .figure-healed .handle[aria-label^="${name}"]`);
    const before = await numbers();
    const still = await drawn(page);
    const from = await middle(handle("platform"));
    let tried;
    await drag(page, handle("platform"), -14, 18, async () => { tried = await drawn(page); });
    await soon(async () => assert.notEqual((await numbers()).facial, before.facial, "the drag goes sideways"));
    const moved = await numbers();
    assert.notEqual(moved.depth, before.depth, "the drag goes down");
    assert.equal(moved.tilt, before.tilt, "the platform goes without leaning");
    const [there, pixels] = [await middle(handle("platform")), await handle("platform").evaluate((node) => node.ownerSVGElement.getScreenCTM().a)];
    assert.ok(Math.abs(there.x - from.x + 14) <= 0.06 * pixels + 1, "the handle follows sideways");
    assert.ok(Math.abs(there.y - from.y - 18) <= 0.06 * pixels + 1, "the handle follows down");
    const dragged = await drawn(page);
    assert.deepEqual(tried, dragged, "what is shown while dragging is what is chosen at the end");
    for (const name of Object.keys(still)) {
      const follows = name.includes("figure-healed");
      assert.equal(dragged[name] !== still[name], follows, `${name}: ${follows ? "follows" : "is the past"}`);
    }

    // The apex alone: it leans and stays where it is seated.
    await drag(page, handle("apex"), 16, 0);
    await soon(async () => assert.notEqual((await numbers()).tilt, moved.tilt, "the apex leans"));
    const leant = await numbers();
    assert.deepEqual({ ...leant, tilt: moved.tilt }, moved);
    const whole = await drawn(page);

    // Back by the fields, then the same way by keys alone.
    for (const [key, value] of [["late-facial-mm", before.facial], ["late-depth-mm", before.depth], ["late-tilt-degrees", before.tilt]]) {
      await choose(page, key, value);
    }
    await soon(async () => assert.deepEqual(await drawn(page), still));
    await tabTo(page, '.board .figure-healed .handle[aria-label^="platform"]', { back: true });
    await presses(page, ["ArrowLeft", "ArrowRight"], "late-facial", leant.facial);
    await presses(page, ["ArrowDown", "ArrowUp"], "late-depth", leant.depth);
    await tabTo(page, '.board .figure-healed .handle[aria-label^="apex"]');
    await presses(page, ["ArrowLeft", "ArrowRight"], "late-tilt", leant.tilt);
    await soon(async () => assert.deepEqual(await drawn(page), whole));

    // Once it is placed it stays.
    await carry(page, "late-placement");
    await soon(async () => assert.equal(await page.locator(".board .figure-healed .handle").count(), 0));
  }));

test("a drag that the browser takes away ends as a choice and leaves nothing hanging", () =>
  at(placed(), "implant", async (page) => {
    const handle = platform(page);
    await handle.evaluate((node) => {
      const drawing = node.ownerSVGElement;
      drawing.addEventListener("pointermove", (event) => drawing.releasePointerCapture(event.pointerId), { once: true });
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
    await soon(async () => assert.notEqual(await corner.getAttribute("aria-valuetext"), words));
    await soon(async () => assert.notDeepEqual(await numbers(), before));
    await rested(page);
    const after = await numbers();
    await corner.focus();
    await page.keyboard.press("ArrowUp");
    await soon(async () => assert.notDeepEqual(await numbers(), after));
    await page.keyboard.press("ArrowDown");
    await soon(async () => assert.deepEqual(await numbers(), after));
  }));

test("a corner that would cross the outline stays where it was, and a typed one says why", () =>
  at(covered(), "graft", async (page) => {
    const box = page.locator("#decision-membrane-outline");
    const still = await drawn(page);
    const cell = box.getByLabel("corner 1, mesiodistal, mm", { exact: true });
    const other = await box.getByLabel("corner 5, mesiodistal, mm", { exact: true }).inputValue();
    await cell.fill(`${Math.abs(parseFloat(other)) + 20} ${other.endsWith("mesial") ? "mesial" : "distal"}`);
    await cell.press("Enter");
    await soon(async () => assert.match(await box.locator(".wrong").innerText(), /cross/));
    await soon(async () => assert.deepEqual(await drawn(page), still));
  }));

/** The corners of the membrane as the numbers beside the map have them, in words. */
const corners = (page) => page.locator("#decision-membrane-outline tbody tr").evaluateAll((rows) =>
  rows.map((row) => [...row.querySelectorAll("input")].map((one) => one.value).join(", ")));
const said = (page) => page.locator(".board .figure-facial-map .said");
const grip = (page, corner) => page.locator(`.board .handle[aria-label="membrane, corner ${corner}"]`);

/** The membrane as a square of 12 mm, so that each edge has room for a handle. */
async function square(page) {
  const box = page.locator("#decision-membrane-outline");
  await box.getByRole("button", { name: /Begin/ }).click();
  await box.locator("summary").click();
  for (const corner of [8, 6, 4, 2]) {
    await box.getByRole("button", { name: `Take corner ${corner} away`, exact: true }).click();
  }
  for (const [name, text] of [["Distal", "6 d"], ["Mesial", "6 m"], ["Apical", "10 a"], ["Coronal", "2 o"]]) {
    await box.getByLabel(`${name} edge, mm`, { exact: true }).fill(text);
    await page.keyboard.press("Enter");
  }
  const oral = (await page.locator(".figure-facial-map").innerText()).includes("palatal") ? "palatal" : "lingual";
  const before = [`6.0 mesial, 2.0 ${oral}`, `6.0 distal, 2.0 ${oral}`, "6.0 distal, 10.0 apical", "6.0 mesial, 10.0 apical"];
  assert.deepEqual(await corners(page), before);
  return before;
}

/** A visit to a case whose membrane is about to be drawn. */
function drawing(look) {
  const { seed, steps } = covered();
  const { "membrane-outline-mm": _, ...rest } = steps.graft;
  return at({ seed, steps: { ...steps, graft: rest } }, "graft", look);
}

test("a pull on an edge makes a corner and two presses take it away, and the numbers follow", () =>
  drawing(async (page) => {
    const before = await square(page);
    const edge = page.locator(".board .edge-handle").first();
    const pixels = await edge.evaluate((node) => node.ownerSVGElement.getScreenCTM().a);
    const right = (await middle(grip(page, 2))).x - (await middle(grip(page, 1))).x > 0 ? 1 : -1;
    await drag(page, edge, 2 * right * pixels, 0);
    const pulled = await corners(page);
    assert.equal(pulled.length, 5);
    assert.deepEqual(pulled.filter((_, place) => place !== 1), before);
    assert.match(pulled[1], /^(1\.9|2\.0|2\.1) distal, /);
    // What is held is the new corner, which lies under the pointer.
    await grip(page, 2).dblclick();
    assert.deepEqual(await corners(page), before);
    assert.match(await said(page).innerText(), /^membrane, corner 2: taken away\. 4 corners/);
    // A press without a pull leaves the corner where the edge is.
    await page.locator(".board .edge-handle").nth(1).click();
    await soon(async () => assert.equal((await corners(page))[2], "6.0 distal, 4.0 apical"));
  }));

test("a finger does what a mouse does to corners", () => {
  const { seed, steps } = covered();
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps, "graft");
    const { "membrane-outline-mm": _, ...rest } = steps.graft;
    await decide(page, rest);
    const before = await square(page);
    await page.locator(".board .edge-handle").first().tap();
    await soon(async () => assert.equal((await corners(page)).length, 5));
    const { x, y } = await middle(grip(page, 2));
    await page.waitForTimeout(500);
    await page.touchscreen.tap(x, y);
    await page.touchscreen.tap(x, y);
    await soon(async () => assert.deepEqual(await corners(page), before));
  }, { path: `#/case/${seed}`, context: { viewport: { width: 390, height: 844 }, hasTouch: true } });
});

test("keys alone add corners up to sixteen and take them away down to three, and say why not further", () =>
  drawing(async (page) => {
    await square(page);
    // Every edge in turn: the corner that it begins at, then the new one, then the next.
    for (let count = 5; count <= 16; count += 1) {
      if (count === 5 || count === 9) await tabTo(page, '.board .handle[aria-label="membrane, corner 1"]', { back: true });
      await page.keyboard.press(count % 2 ? "Insert" : "+");
      await soon(async () => assert.equal((await corners(page)).length, count, await said(page).textContent()));
      await soon(async () => assert.match(await said(page).innerText(), new RegExp(`one added after it\\. ${count} corners`)));
      if (count < 16) for (const key of ["Tab", "Tab"]) await page.keyboard.press(key);
    }
    const full = await corners(page);
    await page.keyboard.press("Insert");
    await soon(async () => assert.match(await said(page).innerText(), /corner \d+: found 17 corners, expected 3 to 16/));
    assert.deepEqual(await corners(page), full);
    // What was added first, then one of the square.
    let count = 16;
    for (const corner of [16, 15, 14, 12, 11, 10, 8, 7, 6, 4, 3, 2, 4]) {
      const back = corner !== 16 && !(corner === 4 && count === 4);
      await tabTo(page, `.board .handle[aria-label="membrane, corner ${corner}"]`, { back });
      await page.keyboard.press("Delete");
      count -= 1;
      await soon(async () => assert.equal((await corners(page)).length, count, await said(page).textContent()));
      // The focus stays on a corner: the one before takes it over from the last.
      const label = await page.evaluate(() => document.activeElement.getAttribute("aria-label"));
      assert.equal(label, `membrane, corner ${Math.min(corner, count)}`);
    }
    await page.keyboard.press("Backspace");
    await soon(async () => assert.match(await said(page).innerText(), /found 2 corners, expected 3 to 16/));
    assert.equal((await corners(page)).length, 3);
  }));

test("a corner that is pulled across the outline stays, and a sentence under the map names the edges", () =>
  drawing(async (page) => {
    const before = await square(page);
    // Past the middle of the opposite edge, so that the edge behind it crosses that one.
    const [one, three] = [await middle(grip(page, 1)), await middle(grip(page, 3))];
    const across = [1.3 * (three.x - one.x), 0.5 * (three.y - one.y)];
    let during;
    await drag(page, grip(page, 1), ...across, async () => { during = await said(page).innerText(); });
    const named = /^membrane, corner 1: the edge from corner \d crosses the edge from corner \d/;
    assert.match(during, named);
    assert.match(await said(page).innerText(), named);
    assert.deepEqual(await corners(page), before);
    // By keys the same is refused in the same words, and the next good step clears them.
    await grip(page, 1).focus();
    const [keyX, keyY] = [three.x > one.x ? "ArrowRight" : "ArrowLeft", three.y > one.y ? "ArrowDown" : "ArrowUp"];
    for (let presses = 0; presses < 30 && !named.test(await said(page).innerText()); presses += 1) {
      await page.keyboard.press(`Shift+${presses < 6 ? keyY : keyX}`);
    }
    await soon(async () => assert.match(await said(page).innerText(), named));
    await page.keyboard.press(keyX === "ArrowRight" ? "ArrowLeft" : "ArrowRight");
    await soon(async () => assert.equal(await said(page).textContent(), ""));
  }));

test("places are spoken in words: no field, handle or button has a bare sign", () =>
  drawing(async (page) => {
    await square(page);
    const box = page.locator("#decision-membrane-outline");
    const fields = await box.locator("input").evaluateAll((all) => all.map((one) => [one.getAttribute("aria-label"), one.value]));
    assert.equal(fields.length, 4 + 2 * 4);
    for (const [name, value] of fields) assert.match(value, /^\d+\.\d (mesial|distal|palatal|lingual|apical)$/, name);
    const names = await box.locator("button").evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")));
    assert.ok(names.every((name) => /^\w[^+−]*$/.test(name)), names.join(" | "));
    assert.equal(new Set(names).size, names.length);
    // Without a word a number lies the way in which it lay; what cannot be read is said.
    const edge = box.getByLabel("Mesial edge, mm", { exact: true });
    await edge.fill("7");
    await edge.press("Enter");
    await soon(async () => assert.equal(await edge.inputValue(), "7.0 mesial"));
    await edge.fill("7 upwards");
    await edge.press("Enter");
    await soon(async () => assert.match(await box.locator(".wrong").innerText(), /Mesial edge: expected .* mesial or distal/));
  }));

test("an edge that would pass the one opposite is refused in words", () =>
  at(covered(), "graft", async (page) => {
    const box = page.locator("#decision-membrane-outline");
    const still = await drawn(page);
    const edge = box.getByLabel("Apical edge, mm", { exact: true });
    await edge.fill("30 oral");
    await edge.press("Enter");
    await soon(async () => assert.match(await box.locator(".wrong").innerText(), /Apical edge: .*opposite edge/));
    await soon(async () => assert.deepEqual(await drawn(page), still));
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
    await soon(async () => assert.equal(await button.getAttribute("aria-pressed"), "true"));
    await soon(async () => assert.ok((await lit()) > dark, "the fault is lit"));
    await button.click();
    await soon(async () => assert.equal(await lit(), dark));
  }, { path: `#/case/${seed}` });
});

test("a finished case keeps the hatchings of its figures", () =>
  visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, sound(1));
    await page.locator(".debrief .whole").waitFor();
    const fills = await page.locator('.drawing path[fill^="url"]').evaluateAll((all) => all.map((one) => getComputedStyle(one).fill));
    assert.ok(fills.length > 5, `${fills.length}`);
    for (const fill of fills) assert.match(fill, /^url/);
  }, { path: "#/case/1" }));
