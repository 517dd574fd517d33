// Every screen in every state, for those who see little, point badly or use no pointer at all.
//
// Beside the accessibility engine, the checks of WCAG 2.2 that it does not make: reflow (1.4.10),
// focus that shows and is not covered (2.4.7, 2.4.11), targets (2.5.8), motion (2.3.3).

import assert from "node:assert/strict";
import test from "node:test";
import { axe, mounted, soon, visit } from "./harness.mjs";
import { acts, begin, byMouse, carry, debrief, decide, find, sound, tabTo } from "./play.mjs";

const SCHEMES = ["light", "dark"];
const PHONE = { width: 320, height: 640 };
const full = () => find((steps) => steps.graft?.["membrane-outline-mm"] && steps.flap?.["flap-outline-mm"]);
const placed = () => find((steps) => steps.intention.course === "place-today");

/** Screens that are no case, by the name of the state. */
const PAGES = {
  home: "#/",
  protocol: "#/protocol",
  rule: "#/protocol/membrane-short-of-intact-bone",
  "no rule": "#/protocol/no-such-rule",
  limits: "#/limits",
  guide: "#/guide",
  desk: "#/desk",
  class: "#/class",
  nowhere: "#/attic",
};

/** Goes elsewhere within the page. */
async function go(page, fragment) {
  await page.evaluate((to) => { location.hash = to; }, fragment);
  await page.locator("#room h1").waitFor();
}

/**
 * Shows every screen and state in turn and calls `look(name)` at each: pages, then a case with an
 * implant and one with outlines, each step as it opens and as it stands once answered.
 */
async function everywhere(page, look) {
  await look("briefing");
  await begin(page);
  for (const [name, fragment] of Object.entries(PAGES)) {
    await go(page, fragment);
    await page.waitForFunction(() => !/on (its|their) way/.test(document.querySelector("main").textContent));
    await look(name);
  }
  for (const { seed, steps } of [placed(), full()]) {
    await go(page, `#/case/${seed}?guided`);
    await page.locator(".sheet").waitFor();
    for (const [step, answers] of Object.entries(steps)) {
      await look(`${seed}: ${step}, undecided`);
      await decide(page, answers);
      await look(`${seed}: ${step}, decided`);
      await carry(page, step);
    }
    await debrief(page);
    await look(`${seed}: debrief`);
    // Every verdict in full.
    await page.locator(".debrief details").evaluateAll((all) => all.forEach((one) => { one.open = true; }));
    await look(`${seed}: debrief, opened`);
  }
  // A plan with faults has signs, causes and lit figures that a sound one has not.
  const careless = sound(placed().seed);
  careless.implant["offset-facial-mm"] = 2.0;
  await go(page, `#/case/${placed().seed}?assessment`);
  await page.locator(".sheet").waitFor();
  await byMouse(page, careless);
  await debrief(page);
  await page.getByRole("button", { name: "Show it on the figures" }).first().click();
  await look("debrief with faults, one lit");
}

for (const colorScheme of SCHEMES) {
  test(`the accessibility engine has nothing to say on any screen, ${colorScheme}`, () =>
    visit(async ({ page }) => {
      const said = [];
      await everywhere(page, async (name) => said.push(...(await axe(page)).map((one) => `${name}: ${one}`)));
      assert.deepEqual(said, []);
    }, { context: { colorScheme, reducedMotion: "reduce" } }));
}

/** What sticks out of a page that is as wide as the window; what scrolls by itself may be wider. */
const sticksOut = (page) => page.evaluate(() => {
  const over = document.documentElement.scrollWidth - innerWidth;
  if (over <= 0) return [];
  const wide = [...document.querySelectorAll("main *, header *, footer *")].filter((one) => {
    const box = one.getBoundingClientRect();
    return box.width > 0 && box.right > innerWidth + 1 && !one.closest(".board");
  });
  return [`${over} px`, ...wide.slice(0, 3).map((one) => one.outerHTML.slice(0, 120))];
});

/** Controls that are smaller than 24 by 24 pixels; links within a sentence may be (2.5.8). */
const tooSmall = (page) => page.evaluate(() => {
  const inSentence = (one) =>
    one.tagName === "A" && getComputedStyle(one).display === "inline" &&
    one.parentElement.textContent.trim() !== one.textContent.trim();
  const target = (one) =>
    // A labelled box is pressed by its label too.
    one.matches("input[type=radio], input[type=checkbox]") ? one.closest("label") : one;
  return [...document.querySelectorAll("a[href], button, input, summary, [role=slider]")]
    .filter((one) => one.checkVisibility() && !one.matches(".skip") && !inSentence(one))
    .map((one) => [one, target(one).getBoundingClientRect()])
    .filter(([, box]) => box.width < 23.99 || box.height < 23.99)
    .map(([one, box]) => `${box.width.toFixed(1)} x ${box.height.toFixed(1)}: ${one.outerHTML.slice(0, 120)}`);
});

test("on a screen of 320 pixels nothing sticks out and every target can be hit", () =>
  visit(async ({ page }) => {
    const faults = [];
    await everywhere(page, async (name) => {
      for (const fault of [...await sticksOut(page), ...await tooSmall(page)]) faults.push(`${name}: ${fault}`);
    });
    assert.deepEqual(faults.slice(0, 20), []);
  }, { context: { viewport: PHONE, hasTouch: true } }));

test("the watch on width and targets sees what sticks out and what is too small", () =>
  visit(async ({ page }) => {
    assert.deepEqual([await sticksOut(page), await tooSmall(page)], [[], []]);
    await page.evaluate(() => {
      const wide = document.createElement("pre");
      wide.textContent = "x".repeat(400);
      const small = document.createElement("button");
      small.className = "quiet";
      small.textContent = "·";
      document.querySelector("main").append(wide, small);
    });
    assert.ok((await sticksOut(page)).length > 0);
    assert.equal((await tooSmall(page)).length, 1);
  }, { context: { viewport: PHONE } }));

test("at twice the size nothing sticks out either", () =>
  visit(async ({ page }) => {
    // 200 % on a screen of 1280 pixels leaves 640 of them.
    await everywhere(page, async (name) => assert.deepEqual(await sticksOut(page), [], name));
  }, { context: { viewport: { width: 640, height: 450 }, deviceScaleFactor: 2 } }));

/** Tabs through the whole page: each stop shows its focus and is not covered. */
async function walk(page, name) {
  await page.evaluate(() => { scrollTo(0, 0); document.activeElement.blur(); });
  const skip = ".room-head .name";
  await tabTo(page, skip);
  const stops = await tabTo(page, "body", { most: 300 }).catch((error) => {
    throw new Error(`${name}: ${error.message}`);
  });
  assert.ok(stops.length > 3, `${name}: ${stops.length} stops`);
  return stops;
}

for (const viewport of [{ width: 1440, height: 900 }, PHONE]) {
  test(`the focus shows and is not covered at any stop, ${viewport.width} pixels wide`, () =>
    visit(async ({ page }) => {
      await walk(page, "briefing");
      await begin(page);
      for (const name of ["home", "rule", "nowhere"]) {
        await go(page, PAGES[name]);
        await walk(page, name);
      }
      const { seed, steps } = placed();
      await go(page, `#/case/${seed}`);
      await walk(page, "chart");
      await byMouse(page, steps, "implant");
      await decide(page, acts(steps.implant));
      const stops = await walk(page, "implant");
      for (const handle of ["platform", "apex"]) {
        assert.ok(stops.some((stop) => stop.startsWith(handle)), `${handle} is reached`);
      }
    }, { context: { viewport } }));
}

test("the first stop leads past the head to the case", () =>
  visit(async ({ page }) => {
    await page.keyboard.press("Tab");
    await soon(async () => assert.equal(await page.evaluate(() => document.activeElement.textContent), "Skip to the case"));
    await page.keyboard.press("Enter");
    await soon(async () => assert.equal(await page.evaluate(() => document.activeElement.id), "room-place"));
  }));

test("nothing moves by itself for those who asked for less motion", async () => {
  const moving = (page) => page.evaluate(() =>
    [...document.querySelectorAll("*")].filter((one) => {
      const style = getComputedStyle(one);
      const lasts = (times) => times.split(", ").some((time) => parseFloat(time) > 0);
      return lasts(style.transitionDuration) || lasts(style.animationDuration);
    }).length);
  await visit(async ({ page }) => assert.equal(await moving(page), 0), { context: { reducedMotion: "reduce" } });
  // Without that wish some things do, so the count can be other than nought.
  await visit(async ({ page }) => assert.ok((await moving(page)) > 0), { context: { reducedMotion: "no-preference" } });
});

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function contrast(one, other) {
  const light = (colour) => {
    const parts = colour.match(/[\d.]+/g).slice(0, 3).map((part) => Number(part) / 255);
    const [r, g, b] = parts.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [dark, bright] = [light(one), light(other)].sort((a, b) => a - b);
  return (bright + 0.05) / (dark + 0.05);
}

test("the contrast of black on white is 21 and of one grey on itself is 1", () => {
  assert.equal(contrast("rgb(0, 0, 0)", "rgb(255, 255, 255)"), 21);
  assert.equal(contrast("rgb(90, 90, 90)", "rgb(90, 90, 90)"), 1);
});

for (const colorScheme of SCHEMES) {
  test(`lines that carry meaning, handles and focus stand out three to one, ${colorScheme}`, () =>
    visit(async ({ page }) => {
      const { seed, steps } = full();
      await begin(page);
      await go(page, `#/case/${seed}`);
      await byMouse(page, steps, "graft");
      await decide(page, steps.graft);
      await page.locator(".board .handle").first().focus();
      await page.keyboard.press("ArrowUp");
      const lines = await page.evaluate(() => {
        const ground = getComputedStyle(document.querySelector(".board .figure")).backgroundColor;
        const strokes = ["outline", "defect", "membrane", "flap", "mark", "dashed", "vital"].flatMap((ink) => {
          const one = document.querySelector(`.board .ink-${ink}`);
          return one ? [[ink, getComputedStyle(one).stroke]] : [];
        });
        const knob = getComputedStyle(document.querySelector(".handle-knob")).stroke;
        const ring = getComputedStyle(document.querySelector(".handle:focus-visible .handle-reach")).stroke;
        return { ground, strokes: [...strokes, ["knob", knob], ["ring", ring]] };
      });
      assert.ok(lines.strokes.length >= 5, JSON.stringify(lines));
      for (const [name, stroke] of lines.strokes) {
        if (stroke === "none") continue;
        const stands = contrast(stroke, lines.ground);
        assert.ok(stands >= 3, `${name}: ${stroke} on ${lines.ground} is ${stands.toFixed(2)}`);
      }
    }, { context: { colorScheme } }));
}
