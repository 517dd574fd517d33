// The page on paper, and in the few colours that a system forces on it.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./harness.mjs";
import { begin, byMouse, debrief, decide, find, sound } from "./play.mjs";

const placed = () => find((steps) => steps.intention.course === "place-today");
const covered = () => find((steps) => steps.flap?.["flap-outline-mm"] && steps.graft?.["membrane-outline-mm"]);
/** About what is left of a sheet of A4, CSS pixels. */
const PAPER = { width: 718, height: 1047 };

/** A visit to the debrief of a plan with a fault. */
function debriefed(look, context) {
  const { seed } = placed();
  const careless = sound(seed);
  careless.implant["offset-facial-mm"] = 2.0;
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, careless);
    await debrief(page);
    await look(page);
  }, { path: `#/case/${seed}`, context });
}

/** Relative luminance, 0 black to 1 white. */
const luminance = (colour) => {
  const [r, g, b] = colour.match(/[\d.]+/g).slice(0, 3).map((part) => {
    const share = Number(part) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** Colours of all words and lines that are shown, of areas of figures, and what is shown besides. */
const inked = (page) => page.evaluate(() => {
  // A group of a drawing that is not displayed counts as visible with Chromium: its style is asked too.
  const shown = (one) => one.checkVisibility({ contentVisibilityAuto: true }) && getComputedStyle(one).display !== "none";
  const own = (one) => [...one.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim());
  const words = [...document.querySelectorAll("body *")].filter((one) => shown(one) && own(one));
  const colour = (one) => (one.matches("svg *") ? getComputedStyle(one).fill : getComputedStyle(one).color);
  const lines = [...document.querySelectorAll(".board .ink-outline, .board .ink-implant, .board .ink-dimension")];
  const grounds = [...document.querySelectorAll(".drawing .ink-ground")].filter(shown);
  return {
    words: words.map((one) => [one.textContent.trim().slice(0, 40), colour(one)]),
    lines: lines.map((one) => getComputedStyle(one).stroke),
    grounds: grounds.map((one) => getComputedStyle(one).fill),
    // A term is a plain word on paper.
    controls: [...document.querySelectorAll("button:not(.term-word), input, .handle, nav a")].filter(shown).map((one) => one.outerHTML.slice(0, 80)),
    off: [...document.querySelectorAll(".figure svg, table, .verdict, .caution")].filter(shown)
      .map((one) => [one.getBoundingClientRect(), one]).filter(([box]) => box.left < -0.5 || box.right > innerWidth + 0.5)
      .map(([, one]) => one.outerHTML.slice(0, 80)),
    folded: [...document.querySelectorAll(".of-step .verdict .word")].filter((one) => !shown(one)).length,
    caution: [...document.querySelectorAll(".caution")].filter(shown).map((one) => one.textContent),
    terms: [...document.querySelectorAll(".term-word")].filter(shown)
      .map((one) => getComputedStyle(one).borderBottomStyle),
    scale: getComputedStyle(document.documentElement).colorScheme,
  };
});

function isOnPaper(found, name) {
  assert.ok(found.words.length > 20, `${name}: ${found.words.length} words`);
  // Dark enough on white paper for the smallest words: 4.5 to 1.
  const pale = found.words.filter(([, colour]) => 1.05 / (luminance(colour) + 0.05) < 4.5);
  assert.deepEqual(pale, [], name);
  assert.ok(found.lines.every((colour) => luminance(colour) < 0.1), `${name}: ${found.lines}`);
  assert.ok(found.grounds.every((colour) => luminance(colour) > 0.99), `${name}: ${found.grounds}`);
  assert.deepEqual([found.controls, found.off, found.folded], [[], [], 0], name);
  assert.ok(found.terms.every((line) => line === "none"), `${name}: ${found.terms}`);
  assert.match(found.caution.join(), /not clinical advice/i, name);
  assert.equal(found.scale, "light");
}

for (const colorScheme of ["light", "dark"]) {
  test(`debrief and protocol print dark on white, with the caution and without controls, ${colorScheme}`, () =>
    debriefed(async (page) => {
      const onScreen = await inked(page);
      assert.ok(onScreen.controls.length > 3 && onScreen.folded > 3, "the screen has what the paper has not");
      await page.emulateMedia({ media: "print" });
      const found = await inked(page);
      isOnPaper(found, "debrief");
      assert.ok(found.lines.length > 3 && found.grounds.length >= 4);
      // No page ends within a figure.
      const whole = await page.locator(".figure").evaluateAll((all) => all.map((one) => getComputedStyle(one).breakInside));
      assert.deepEqual([...new Set(whole)], ["avoid"]);
      await page.emulateMedia({ media: "screen" });
      await page.evaluate(() => { location.hash = "#/protocol"; });
      await page.locator("table.protocol").first().waitFor();
      await page.waitForFunction(() => !/on (its|their) way/.test(document.querySelector("main").textContent));
      await page.emulateMedia({ media: "print" });
      isOnPaper(await inked(page), "protocol");
    }, { viewport: PAPER, colorScheme }));
}

for (const colorScheme of ["light", "dark"]) {
  test(`in forced colours figures, handles, focus and verdicts stay visible, ${colorScheme}`, () => {
    const { seed, steps } = covered();
    return visit(async ({ page }) => {
      await begin(page);
      await byMouse(page, steps, "graft");
      await decide(page, steps.graft);
      await page.locator(".board .handle").first().focus();
      await page.keyboard.press("ArrowUp");
      const found = await page.evaluate(() => {
        const canvas = getComputedStyle(document.body).backgroundColor;
        const style = (selector, part) => getComputedStyle(document.querySelector(selector))[part];
        return {
          canvas,
          ground: style(".board .ink-ground", "fill"),
          lines: ["outline", "membrane", "flap", "dimension", "fine"].map((ink) => [ink, style(`.board .ink-${ink}`, "stroke")]),
          words: [".board text.ink-words", ".board text.ink-quiet"].map((one) => [one, style(one, "fill")]),
          knob: style(".handle-knob", "stroke"),
          ring: style(".handle:focus-visible .handle-reach", "stroke"),
        };
      });
      const apart = (colour) => {
        const [a, b] = [luminance(colour), luminance(found.ground)].sort();
        return (b + 0.05) / (a + 0.05);
      };
      assert.equal(found.ground, found.canvas);
      const drawn = [...found.lines, ...found.words, ["knob", found.knob], ["ring", found.ring]];
      for (const [name, colour] of drawn) assert.ok(apart(colour) >= 3, `${name}: ${colour} on ${found.ground}`);
      await page.locator(".sheet button").last().focus();
      await page.keyboard.press("Shift+Tab");
      const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineWidth);
      assert.ok(parseFloat(outline) >= 2, outline);
    }, { path: `#/case/${seed}`, context: { forcedColors: "active", colorScheme } });
  });

  test(`in forced colours each verdict keeps its shape beside its word, ${colorScheme}`, () =>
    debriefed(async (page) => {
      const signs = await page.locator(".debrief .verdict > summary").evaluateAll((all) =>
        all.filter((one) => one.checkVisibility()).map((one) => {
          const sign = one.querySelector(".sign");
          const ground = getComputedStyle(document.body).backgroundColor;
          return [one.querySelector(".word").textContent, sign.textContent, sign.getBoundingClientRect().width, getComputedStyle(sign).color, ground];
        }));
      assert.ok(signs.length > 0);
      for (const [word, sign, width, colour, ground] of signs) {
        assert.match(sign, /^[●◐◇△▲■]$/);
        assert.ok(width > 5 && colour !== ground, `${word}: ${colour} on ${ground}`);
      }
    }, { forcedColors: "active", colorScheme }));
}
