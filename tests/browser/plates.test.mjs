// Films and sections: computed on the page when they are taken, aimed, moved, measured.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import test from "node:test";
import { soon, visit } from "./harness.mjs";
import { begin, byMouse, carry, debrief, decide, find } from "./play.mjs";

const examined = (steps) => ["film", "sections"].every((one) => steps.examination.examinations.includes(one));
/** A whole wall, seen on film and sections, and an implant today. */
const placed = () => find((steps) =>
  steps.examination["wall-reading"] === "whole" && steps.intention.course === "place-today" && examined(steps) && steps.implant["seating-film"] === "yes");

const film = ".plates .plate:has(.aiming)";
const section = ".plates .plate:has(.caliper-reads)";

/** What stands on a canvas: its size, its pixels as a digest, and how many tones it has. */
const seen = (page, plate) => page.locator(`${plate} canvas`).evaluate((canvas) => {
  const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
  const grey = data.filter((_, place) => place % 4 === 0);
  return { size: [canvas.width, canvas.height], grey: String.fromCharCode(...grey.slice(0, 60000)), tones: new Set(grey).size };
}).then(({ grey, ...rest }) => ({ ...rest, digest: createHash("sha256").update(grey).digest("hex") }));

/** A visit to a case that has been played up to a step. */
function at(step, look) {
  const { seed, steps } = placed();
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps, step);
    await look(page, steps);
  }, {
    path: `#/case/${seed}`, context: { viewport: { width: 1440, height: 1000 } },
    // The browser's advice to who reads a canvas often, as only this test does.
    planted: /willReadFrequently/,
  });
}

test("nothing is seen before it is taken, and a film and sections are pictures afterwards", () =>
  at("examination", async (page, steps) => {
    assert.equal(await page.locator(".plates").count(), 0);
    await byMouse(page, { examination: steps.examination });
    await page.locator(`${section} canvas`).waitFor();
    for (const plate of [film, section]) {
      await soon(async () => assert.ok((await seen(page, plate)).tones > 100, plate));
    }
    // Of a receptor of 31 x 41 mm, the long side in 400 pixels.
    const [wide, tall] = (await seen(page, film)).size;
    assert.ok(Math.max(wide, tall) === 400 && Math.abs(Math.min(wide, tall) / 400 - 31 / 41) < 0.01, `${wide} x ${tall}`);
  }));

test("a film that is aimed otherwise is another film, the repeat is counted, and the first can still be looked at", () =>
  at("intention", async (page) => {
    await page.locator(`${film} canvas`).waitFor();
    await soon(async () => assert.ok((await seen(page, film)).tones > 100));
    const first = await seen(page, film);
    await page.locator(".aiming > summary").click();
    const angle = page.getByLabel("Tube, up and down in degrees", { exact: true });
    const drawn = () => page.locator(".aiming .drawing").innerHTML();
    const before = await drawn();
    await angle.fill("30");
    await angle.press("Enter");
    await soon(async () => assert.notEqual(await drawn(), before, "the drawing follows"));
    assert.deepEqual(await seen(page, film), first, "nothing is exposed yet");
    await page.getByRole("button", { name: "Expose" }).click();
    await soon(async () => assert.match(await page.locator(film).innerText(), /film 2 of 2.*Repeats so far: 1\./s));
    await soon(async () => assert.notEqual((await seen(page, film)).digest, first.digest));
    await page.getByRole("button", { name: "Film 1" }).click();
    await soon(async () => assert.deepEqual(await seen(page, film), first));
    // An angle out of reach stays where it was.
    await page.locator(".aiming > summary").click();
    const again = page.getByLabel("Tube, up and down in degrees", { exact: true });
    await again.fill("300");
    await again.press("Enter");
    await soon(async () => assert.match(await page.locator(".aiming .dial").first().innerText(), /30 degrees from the apical side/));
  }));

test("the film after seating shows what was not there before", () =>
  at("seating", async (page) => {
    await soon(async () => assert.match(await page.locator(film).innerText(), /film 2 of 2, after seating/));
    await soon(async () => assert.ok((await seen(page, film)).tones > 100));
    const after = await seen(page, film);
    await page.getByRole("button", { name: "Film 1" }).click();
    await soon(async () => assert.notEqual((await seen(page, film)).digest, after.digest));
  }));

test("a section is moved, turned and windowed, and each way back leads to the same picture", () =>
  at("intention", async (page) => {
    await soon(async () => assert.ok((await seen(page, section)).tones > 100));
    const first = await seen(page, section);
    const where = page.getByLabel("Where, slider");
    await where.focus();
    for (let times = 0; times < 6; times += 1) await page.keyboard.press("ArrowRight");
    await soon(async () => assert.match(await page.locator(section).innerText(), /1\.2 mm distal/));
    await soon(async () => assert.notEqual((await seen(page, section)).digest, first.digest));
    const number = page.getByLabel("Where in mm", { exact: true });
    await number.fill("0");
    await number.press("Enter");
    await soon(async () => assert.deepEqual(await seen(page, section), first));
    await page.getByRole("button", { name: "across the axis" }).click();
    await soon(async () => assert.notDeepEqual((await seen(page, section)).size, first.size));
    await page.getByRole("button", { name: "across the arch" }).click();
    await soon(async () => assert.deepEqual(await seen(page, section), first));
    const width = page.getByLabel("Window, width in grey", { exact: true });
    await width.fill("200");
    await width.press("Enter");
    await soon(async () => assert.notEqual((await seen(page, section)).digest, first.digest));
  }));

test("the caliper reads the same whether it is pulled, pressed or typed", () =>
  at("intention", async (page) => {
    await page.locator(`${section} canvas`).waitFor();
    const says = () => page.locator(".caliper-reads [role=status]").innerText();
    const field = (tip, way) => page.getByLabel(`${tip} tip, mm from the ${way}`, { exact: true });
    const set = async (values) => {
      for (const [tip, way, value] of values) {
        await field(tip, way).fill(value);
        await field(tip, way).press("Enter");
      }
    };
    await set([["first", "left", "12"], ["first", "top", "20"], ["second", "left", "16"], ["second", "top", "20"]]);
    await soon(async () => assert.match(await says(), /Caliper: 4\.0 mm/));
    const typed = await says();
    const knob = page.locator(`${section} .handle`).last();
    await knob.focus();
    for (let times = 0; times < 10; times += 1) await page.keyboard.press("ArrowRight");
    await soon(async () => assert.match(await says(), /Caliper: 5\.0 mm/));
    await page.keyboard.press("Shift+ArrowLeft");
    await soon(async () => assert.equal(await says(), typed));
    const at = await knob.locator(".handle-knob").boundingBox();
    const middle = [at.x + at.width / 2, at.y + at.height / 2];
    await page.mouse.move(...middle);
    await page.mouse.down();
    await page.mouse.move(middle[0] + 40, middle[1], { steps: 4 });
    await page.mouse.up();
    const wide = await page.locator(`${section} .over`).evaluate((one) => one.getBoundingClientRect().width);
    const mm = 4 + (40 * 30) / wide;
    await soon(async () => assert.match(await says(), /Caliper: [5-9]/));
    const read = Number(/Caliper: ([\d.]+)/.exec(await says())[1]);
    assert.ok(Math.abs(read - mm) < 0.35, `${read} mm for ${mm.toFixed(2)}`);
  }));

test("what was read is written down at the examination and set beside the truth in the debrief", () =>
  at("examination", async (page, steps) => {
    // The acts first: nothing can be written down before something is seen.
    assert.equal(await page.locator(".notes").count(), 0);
    const { "wall-reading": reading, "wall-ground": ground, ...acts } = steps.examination;
    await decide(page, acts);
    await carry(page, "examination");
    const width = page.getByLabel("Facial defect, across, mm", { exact: true });
    await width.fill("4,2");
    await width.press("Enter");
    await soon(async () => assert.equal(await width.inputValue(), "4.2"));
    await page.getByLabel("Facial wall", { exact: true }).selectOption("fenestration");
    await page.getByLabel("Bone density", { exact: true }).selectOption("d1");
    await page.getByRole("button", { name: "Facial defect, across: take it back" }).click();
    await soon(async () => assert.equal(await width.inputValue(), ""));
    await width.fill("99");
    await width.press("Enter");
    await decide(page, { "wall-reading": reading, "wall-ground": ground });
    await carry(page, "examination");
    const written = await page.locator(".notes").innerText();
    assert.match(written, /Facial wall: a fenestration/);
    assert.doesNotMatch(written, /across/, "99 mm is nothing that could be written down");
    const { chart: _, examination: __, ...rest } = steps;
    await byMouse(page, rest);
    await debrief(page);
    const rows = await page.locator(".readings tbody tr").allInnerTexts();
    assert.equal(rows.length >= 2, true, rows.join("\n"));
    const wall = rows.find((row) => row.startsWith("Facial wall"));
    assert.match(wall, /a fenestration\s+whole\s+(Misread|None of your examinations)/);
  }));

test("bone is sounded where the probe is put, by pointer and by number, and each reading is listed with its class", () => {
  const { seed, steps } = placed();
  const sounded = { ...steps, examination: { ...steps.examination, examinations: [...new Set([...steps.examination.examinations, "bone-sounding"])] } };
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, sounded, "intention");
    const plate = page.locator(".plates .sounding");
    const rows = () => plate.locator(".soundings tbody tr").allInnerTexts();
    await soon(async () => assert.equal((await rows()).length, 4, "the first round"));
    const along = plate.getByLabel("Probe, along the arch in mm", { exact: true });
    await along.fill("1,5");
    await along.press("Enter");
    await soon(async () => assert.match(await plate.locator(".dial").innerText(), /1\.5 mm distally/));
    assert.equal((await rows()).length, 4, "nothing is pierced yet");
    const sound = plate.getByRole("button", { name: "Sound here" });
    await sound.click();
    await soon(async () => assert.match((await rows())[4] ?? "", /facial, 1\.5 mm distally\s+\d+\.[05] mm\s+\S/));
    const probes = () => plate.locator(".drawing .ink-mark").count();
    assert.equal(await probes(), 1, "it is drawn where it was read");
    // By pointer: a press on the drawing moves the probe to where it was pressed.
    const box = await plate.locator(".drawing").boundingBox();
    // The tooth's middle is the drawing's 0; a column and a cut stand beside it.
    const middle = await plate.locator(".drawing").evaluate(({ viewBox: { baseVal: { x, width } } }) => -x / width);
    await page.mouse.click(box.x + box.width * middle, box.y + box.height / 2);
    await soon(async () => assert.ok(Math.abs(Number(await along.inputValue())) <= 0.2, await along.inputValue()));
    await plate.getByLabel(/^(palatal|lingual) side$/).check();
    await sound.click();
    await soon(async () => assert.match((await rows())[5] ?? "", /(palatal|lingual), /));
    // Out of the tooth's reach: it stays where it was.
    const before = await along.inputValue();
    await along.fill("30");
    await along.press("Enter");
    await sound.click();
    await soon(async () => assert.equal((await rows()).length, 7));
    assert.match((await rows())[6], before === "0.0" ? /in the middle/ : new RegExp(before.replace("-", "")));
    assert.match(await page.locator(".known").textContent(), /1\.5 mm distally/);
    await byMouse(page, { intention: steps.intention, extraction: steps.extraction });
    assert.equal(await sound.count(), 0, "the tooth is out");
    assert.equal((await rows()).length, 7, "what was read stays");
  }, { path: `#/case/${seed}`, context: { viewport: { width: 1440, height: 1000 } } });
});

test("a film that leans is not read for a length, and its report says what to do instead", () =>
  at("intention", async (page) => {
    const known = page.locator(".known");
    await soon(async () => assert.match(await known.textContent(), /Root from crest to apex/));
    await page.locator(".aiming > summary").click();
    for (const [name, value] of [["Tube, up and down in degrees", "40"], ["Receptor leans in degrees", "40"]]) {
      await page.getByLabel(name, { exact: true }).fill(value);
      await page.getByLabel(name, { exact: true }).press("Enter");
    }
    await page.getByRole("button", { name: "Expose" }).click();
    await soon(async () => assert.match(await known.textContent(), /Read off film 2/));
    const told = await known.textContent();
    assert.match(told, /The root is drawn too short|The apex is not on this film/);
    assert.doesNotMatch(told, /Root from crest to apex/);
  }));

test("at the returns a film shows how it has healed, counted and no repeat", () =>
  at("returns", async (page) => {
    await soon(async () => assert.ok((await seen(page, film)).tones > 100));
    const before = await seen(page, film);
    await page.locator(".aiming > summary", { hasText: "Take a film at follow-up" }).click();
    await page.getByRole("button", { name: "Expose" }).click();
    await soon(async () => assert.match(await page.locator(film).innerText(), /film 3 of 3, at follow-up.*Films so far: 3\. Repeats so far: 0\./s));
    await soon(async () => assert.notEqual((await seen(page, film)).digest, before.digest));
  }));
