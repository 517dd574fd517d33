// Words in figures, measured where they are drawn: none on another, on a scale bar or off its figure,
// and none too small to read on a phone.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./harness.mjs";
import { begin, carry, debrief, decide, find, sound, truth } from "./play.mjs";

const SCREENS = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1440, height: 900 },
];
/** The smallest type on a phone, CSS pixels. */
const SMALLEST = 10.9;

/** What is wrong with the words of every drawing on the page, and how many words there are. */
const measured = (page) => page.evaluate((smallest) => {
  const faults = [];
  let count = 0;
  for (const drawing of document.querySelectorAll(".figure svg.drawing")) {
    const { a: scale, d, e, f } = drawing.getScreenCTM();
    const { x, y, width, height } = drawing.viewBox.baseVal;
    const [left, top] = [x * scale + e, y * d + f];
    const sheet = { left, top, right: left + width * scale, bottom: top + height * d };
    const name = drawing.closest(".figure").className.replace("figure ", "");
    const boxes = [...drawing.querySelectorAll("text")].map((text) => {
      const { left, right } = text.getBoundingClientRect();
      const size = Number(text.getAttribute("font-size")) * scale;
      const base = Number(text.getAttribute("y")) * d + f;
      // From the top of a capital to the foot of a p.
      return { what: text.textContent, left, right, top: base - 0.68 * size, bottom: base + 0.2 * size, size };
    });
    count += boxes.length;
    for (const { what, size } of boxes) {
      if (innerWidth < 500 && size < smallest) faults.push(`${name}: "${what}" is ${size.toFixed(1)} px`);
    }
    // The bar is the line drawn just before its length.
    const bars = [...drawing.querySelectorAll("text.ink-quiet")].filter((text) => /^\d+ mm$/.test(text.textContent))
      .map((text) => ({ what: "the scale bar", ...text.previousElementSibling.getBoundingClientRect().toJSON() }));
    const things = [...boxes, ...bars];
    things.forEach((one, place) => {
      const off = Math.max(sheet.left - one.left, one.right - sheet.right, sheet.top - one.top, one.bottom - sheet.bottom);
      if (off > 0.6) faults.push(`${name}: "${one.what}" is ${off.toFixed(1)} px off the figure`);
      for (const other of things.slice(place + 1)) {
        const into = Math.min(one.right, other.right, sheet.right) - Math.max(one.left, other.left);
        const onto = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        if (into > 0.6 && onto > 0.6) faults.push(`${name}: "${one.what}" lies on "${other.what}", ${into.toFixed(1)} by ${onto.toFixed(1)} px`);
      }
    });
  }
  return { faults, count };
}, SMALLEST);

/** Lays the page out anew for each screen and measures it there. */
async function onEveryScreen(page, state, faults) {
  const here = await page.evaluate(() => location.hash);
  for (const screen of SCREENS) {
    await page.setViewportSize(screen);
    await page.evaluate(() => { location.hash = "#/limits"; });
    await page.locator(".board").waitFor({ state: "detached" });
    await page.evaluate((to) => { location.hash = to; }, here);
    await page.locator(".board .figure").first().waitFor();
    await page.evaluate(() => document.querySelectorAll(".debrief details").forEach((one) => { one.open = true; }));
    const { faults: found, count } = await measured(page);
    assert.ok(count > 8, `${state}: ${count} labels`);
    faults.push(...found.map((fault) => `${state}, ${screen.width} px: ${fault}`));
  }
}

const covered = (steps) => steps.flap?.["flap-outline-mm"] && steps.graft?.["membrane-outline-mm"];
const lower = (seed) => truth(seed).site.tooth > 30;
const CASES = {
  "implant, flap and membrane": () => find((steps) => steps.implant && covered(steps)),
  "the same in another mouth": () => find((steps) => steps.implant && covered(steps), 112),
  "flap and membrane in the lower jaw": () => find((steps, seed) => covered(steps) && lower(seed)),
  "an implant in the lower jaw": () => find((steps, seed) => steps.implant && lower(seed)),
  "a lower molar, its roots beside the cut": () => ({ seed: "1.3.315.0", steps: sound("1.3.315.0") }),
  "an upper molar, a root in the cut": () => ({ seed: "1.3.2.0", steps: sound("1.3.2.0") }),
};

for (const [name, chosen] of Object.entries(CASES)) {
  test(`no label lies on another, on a scale bar or off its figure: ${name}`, () => {
    const { seed, steps } = chosen();
    return visit(async ({ page }) => {
      const faults = [];
      await begin(page);
      await onEveryScreen(page, `${seed}, nothing seen yet`, faults);
      for (const [step, answers] of Object.entries(steps)) {
        await decide(page, answers);
        const drawn = ["extraction", "implant", "flap", "graft"].includes(step);
        if (drawn) await onEveryScreen(page, `${seed}, ${step} decided`, faults);
        await carry(page, step);
      }
      await debrief(page);
      await onEveryScreen(page, `${seed}, debrief`, faults);
      const told = [...new Set(faults)];
      assert.equal(told.length, 0, told.slice(0, 40).join("\n"));
    }, { path: `#/case/${seed}` });
  });
}

test("the measuring sees words that lie on words, leave the figure or are small", () =>
  visit(async ({ page }) => {
    await begin(page);
    await page.locator(".board .figure").first().waitFor();
    assert.deepEqual((await measured(page)).faults, []);
    await page.evaluate(() => {
      const [one, two, three] = document.querySelectorAll(".figure-section text");
      two.setAttribute("x", one.getAttribute("x"));
      two.setAttribute("y", one.getAttribute("y"));
      two.setAttribute("text-anchor", one.getAttribute("text-anchor"));
      three.setAttribute("y", "-90");
      three.setAttribute("font-size", "0.5");
    });
    const { faults } = await measured(page);
    for (const kind of [/ lies on /, / off the figure/, / is \d\.\d px$/]) {
      assert.ok(faults.some((fault) => kind.test(fault)), faults.join("\n"));
    }
  }, { path: "#/case/1", context: { viewport: SCREENS[0] } }));
