// Plays a case in the page, by mouse or by keyboard alone, from choices that the tool printed.
//
// Choices are `{ step: { key: answer } }` in the order of care, as plan files hold them.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { soon, wallwise } from "./harness.mjs";

export const run = (...args) => execFileSync(wallwise, args, { encoding: "utf8", maxBuffer: 1 << 26 });

/** A sound plan of the case, as a plan file. */
export const planFile = (which) => run("case", String(which), "--plan");

/** The case itself, as JSON: everything that is true of it, seen or not. */
export const truth = (which) => JSON.parse(run("case", String(which), "--json")).case;

/** The choices in a plan file. */
export function choices(file) {
  const steps = {};
  let step;
  for (const line of file.split("\n")) {
    const head = /^\[(.+)\]$/.exec(line.trim());
    if (head) {
      step = steps[head[1]] = {};
      continue;
    }
    const found = /^([\w-]+) = (.+?)(?:\s+#.*)?$/.exec(line);
    if (found && step) step[found[1]] = JSON.parse(found[2]);
  }
  return steps;
}

/** The choices of a sound plan of the case. */
export const sound = (which) => choices(planFile(which));

/** A plan file that holds these choices. */
export function asFile(steps) {
  const number = (value) => (Number.isInteger(value) ? value.toFixed(1) : String(value));
  const plain = (value) => {
    if (Array.isArray(value)) return `[${value.map(plain).join(", ")}]`;
    return typeof value === "number" ? number(value) : JSON.stringify(value);
  };
  const lines = ["format = 1", 'kind = "plan"'];
  for (const [step, answers] of Object.entries(steps)) {
    lines.push(`[${step}]`, ...Object.entries(answers).map(([key, value]) => `${key} = ${plain(value)}`));
  }
  return lines.join("\n") + "\n";
}

/** What the tool judges these choices to be, on the same case, natively. */
export const judged = (which, steps) => JSON.parse(judge(which, steps, "--json"));

/**
 * What the tool tells of these choices beside the verdicts: the change to make first, and how far each
 * finding holds, as `{ stays, past }` in the order of the findings.
 */
export function explained(which, steps) {
  const said = judge(which, steps, "--breaks");
  const first = /^ {2}- (.+) \(this first\)$/m.exec(said)?.[1];
  const holds = [];
  for (const line of said.split("Where the plan breaks\n")[1].split("\n").filter(Boolean)) {
    if (line.startsWith("    ")) holds.at(-1).past.push(line.trim());
    else holds.push({ stays: line.trim(), past: [] });
  }
  return { first, holds };
}

/** What the tool says of a pair. */
export const paired = (address) => run("pair", address);

function judge(which, steps, how) {
  const folder = mkdtempSync(join(tmpdir(), "wallwise-"));
  try {
    const file = join(folder, "plan.toml");
    writeFileSync(file, asFile(steps));
    return answer("judge", String(which), file, how);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** What the tool prints; a plan with faults ends it with 1, which is an answer too. */
function answer(...args) {
  try {
    return run(...args);
  } catch (ended) {
    if (ended.status !== 1) throw ended;
    return ended.stdout;
  }
}

/** The first case from `first` on whose sound plan is like this. */
export function find(like, first = 1) {
  for (let seed = first; seed < first + 400; seed += 1) {
    const steps = sound(seed);
    if (like(steps, seed)) return { seed, steps };
  }
  throw new Error(`no case from ${first} to ${first + 399} is like this`);
}

/** The id of a decision from its key in a file, which carries the unit. */
function decision(key, value) {
  const bare = typeof value === "string" || (Array.isArray(value) && !isOutline(value));
  return `#decision-${bare ? key : key.replace(/-(mm|degrees|cc|days|weeks|months)$/, "")}`;
}

const isOutline = (value) => Array.isArray(value) && Array.isArray(value[0]);

/** Goes past the briefing. */
export const begin = (page) => page.getByRole("button", { name: "I have read this" }).click();

/** The button of the step that is due. */
const carryOut = (page) => page.getByRole("button", { name: /^(Carry out|Conclude): / });

/** Decisions that weigh what the acts of their step find: asked once those are carried out. */
const WEIGHED = ["drugs", "advice", "wall-reading", "wall-ground", "after-extraction", "after-flap", "preparation", "healed-act", "healed-act-again", "healed-act-last", "late-component",
  // Answers to what came by chance.
  "broken-plate", "lost-tip", "torn-lining", "second-act", "bleeds-again", "swollen-floor", "numb-lip", "bare-membrane", "infected-wound"];

/** Whether the acts of the step have to be carried out before this is asked. */
const waits = async (page, key) =>
  WEIGHED.includes(key) && (await page.locator(`#decision-${key}`).count()) === 0;

/** The answers of a step that its acts do not wait for: what stands before they are carried out. */
export const acts = (answers) =>
  Object.fromEntries(Object.entries(answers).filter(([key]) => !WEIGHED.includes(key)));

// --- By mouse -----------------------------------------------------------------------------------

/** Answers one decision by pointer and field. */
export async function choose(page, key, value) {
  if (await waits(page, key)) {
    await carry(page, key);
    await page.locator(`#decision-${key}`).waitFor();
  }
  const box = page.locator(decision(key, value));
  if (isOutline(value)) {
    await box.getByRole("button", { name: /Begin/ }).click();
    await box.locator("details.vertices > summary").click();
    for (const [name, text] of fieldsOf(value)) {
      const field = box.getByLabel(name, { exact: true });
      if (text === undefined) {
        await field.click();
      } else {
        await field.fill(text);
        await field.press("Enter");
      }
    }
  } else if (Array.isArray(value)) {
    const keys = value.length === 0 ? ["none-of-these"] : value;
    for (const one of keys) await box.locator(`input[value="${one}"]`).click();
  } else if (typeof value === "number") {
    await box.locator(".field input").fill(String(value));
    await box.locator(".field input").press("Enter");
  } else {
    await box.locator(`input[value="${value}"]`).click();
  }
}

/** Answers every decision of a step. */
export async function decide(page, answers) {
  for (const [key, value] of Object.entries(answers)) await choose(page, key, value);
}

/** Carries the step out that is due, or concludes it. */
export async function carry(page, step) {
  const button = carryOut(page);
  // What was typed last may still be on its way into the page, on a machine that has much to do.
  await soon(async () => {
    if (await button.isDisabled()) {
      throw new Error(`${step} cannot be carried out: ${await page.locator(".missing").allInnerTexts()}`);
    }
  });
  await movesOn(page, () => button.click());
}

/**
 * Does something after which the room goes on, and waits for that: it goes on once a step is kept, and
 * where it stands is said by the step that is due and by what its button does. Other words beside them
 * may come late, as the long texts do, and say nothing of it.
 */
export async function movesOn(page, act) {
  const stands = (before) => {
    const said = document.querySelectorAll(".steps [aria-current=step], .carry-out button");
    const now = [...said].map((one) => one.textContent).join(", ");
    return before === undefined ? now : now !== before;
  };
  const before = await page.evaluate(stands);
  await act();
  await page.waitForFunction(stands, before);
}

/** Plays steps by mouse: all of them, or those before `until`. */
export async function byMouse(page, steps, until) {
  for (const [step, answers] of Object.entries(steps)) {
    if (step === until) return;
    await decide(page, answers);
    await carry(page, step);
  }
}

/** A place as a field shows it: with the way in which it lies, which the jaw names orally. */
export const inWords = (mm, [less, more]) =>
  mm === 0 ? "0.0" : `${Math.abs(mm).toFixed(1)} ${mm < 0 ? less : more}`;
const ALONG = ["mesial", "distal"];
const DOWN = ["oral", "apical"];

/**
 * What makes the starting patch this outline: buttons to press and fields to fill, in this order. It
 * gets as many corners, then its edges, so that it has the outline's size, then corner by corner
 * what is no rectangle.
 */
function fieldsOf(outline) {
  const along = outline.map(([s]) => s);
  const down = outline.map(([, t]) => t);
  const [west, east] = [Math.min(...along), Math.max(...along)];
  const [north, south] = [Math.min(...down), Math.max(...down)];
  // The patch reaches from -2 to 2 and from -1 to 3: no edge may pass its opposite on the way.
  const across = [["Distal edge, mm", east, ALONG], ["Mesial edge, mm", west, ALONG]];
  const downward = [["Apical edge, mm", south, DOWN], ["Coronal edge, mm", north, DOWN]];
  if (east <= -2) across.reverse();
  if (south <= -1) downward.reverse();
  const fields = [];
  // Every second corner of the patch lies on an edge.
  for (let count = 8; count > Math.max(outline.length, 4); count -= 1) fields.push([`Take corner ${2 * (count - 4)} away`]);
  if (outline.length === 3) fields.push(["Take corner 4 away"]);
  for (let count = 8; count < outline.length; count += 1) fields.push([`Add a corner after corner ${count - 7}`]);
  fields.push(...across, ...downward);
  const corners = [[west, north], [east, north], [east, south], [west, south]];
  const rectangle = outline.length === 4 &&
    corners.every(([s, t]) => outline.some((at) => at[0] === s && at[1] === t));
  if (!rectangle) {
    outline.forEach(([s, t], place) => fields.push(
      [`corner ${place + 1}, mesiodistal, mm`, s, ALONG],
      [`corner ${place + 1}, apical, mm`, t, DOWN],
    ));
  }
  return fields.map(([name, mm, ways]) => [name, ways && inWords(mm, ways)]);
}

// --- By keyboard alone --------------------------------------------------------------------------

/** What has the focus, and whether it can be seen to have it. */
function focused(page) {
  return page.evaluate(() => {
    const at = document.activeElement;
    const box = at.getBoundingClientRect();
    const seen = (x, y) => {
      const top = document.elementFromPoint(x, y);
      return !!top && (at.contains(top) || top.contains(at));
    };
    const points = [0.1, 0.5, 0.9].flatMap((part) => [
      [box.left + box.width * part, box.top + box.height / 2],
      [box.left + box.width / 2, box.top + box.height * part],
    ]);
    const shown = at.matches(".handle") ? at.querySelector(".handle-reach") : at;
    const style = getComputedStyle(shown);
    const ring = at.matches(".handle")
      ? style.stroke !== "none" && parseFloat(style.strokeWidth) >= 2
      : style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
    return {
      tag: at.tagName,
      name: at.getAttribute("aria-label") ?? at.textContent.trim().slice(0, 60),
      onBody: at === document.body,
      visible: at.matches(":focus-visible") && ring,
      uncovered: points.some(([x, y]) => seen(x, y)),
    };
  });
}

/** Presses Tab (or Shift+Tab) until the focus is on what the selector names. */
export async function tabTo(page, selector, { back = false, most = 400, watch = true } = {}) {
  const stops = [];
  for (let presses = 0; presses < most; presses += 1) {
    const here = await page.evaluate((s) => document.activeElement.matches(s), selector);
    if (here) return stops;
    await page.keyboard.press(back ? "Shift+Tab" : "Tab");
    const at = await focused(page);
    stops.push(at.name);
    if (watch && !at.onBody) {
      assert.ok(at.visible, `focus cannot be seen on ${at.tag} "${at.name}"`);
      assert.ok(at.uncovered, `${at.tag} "${at.name}" has the focus and is covered`);
    }
  }
  throw new Error(`${most} presses did not reach ${selector}; last were ${stops.slice(-5).join(" | ")}`);
}

/** Types into the field that has the focus, in place of what stands there. */
async function type(page, text) {
  await page.keyboard.press("Control+A");
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

/** Whether what has the focus is checked. */
const isChecked = (page) => page.evaluate(() => document.activeElement.checked);

async function radioByKeys(page, box, value) {
  await tabTo(page, `${box} input[type=radio]`);
  const wanted = `${box} input[value="${value}"]`;
  for (let presses = 0; presses < 40; presses += 1) {
    if (await page.evaluate((s) => document.activeElement.matches(s), wanted)) break;
    await page.keyboard.press("ArrowDown");
  }
  if (!(await isChecked(page))) await page.keyboard.press("Space");
  assert.ok(await page.locator(wanted).isChecked(), `${wanted} by keys`);
}

async function outlineByKeys(page, box, outline) {
  await tabTo(page, `${box} .options button`);
  await page.keyboard.press("Enter");
  // What replaces the button takes the focus over: nobody is sent back to the top of the page.
  await page.waitForFunction((s) => document.activeElement.matches(`${s} *`), box);
  let opened = false;
  for (const [name, text] of fieldsOf(outline)) {
    if (/corner/.test(name) && !opened) {
      await tabTo(page, `${box} summary`);
      await page.keyboard.press("Enter");
      opened = true;
    }
    const field = `${box} [aria-label="${name}"]`;
    const order = await page.evaluate((s) =>
      document.activeElement.compareDocumentPosition(document.querySelector(s)), field);
    await tabTo(page, field, { back: (order & 2) !== 0 });
    if (text === undefined) await page.keyboard.press("Enter");
    else await type(page, text);
  }
}

/** Answers one decision by keys. */
async function chooseByKeys(page, key, value) {
  const box = decision(key, value);
  if (isOutline(value)) return outlineByKeys(page, box, value);
  if (Array.isArray(value)) {
    const keys = value.length === 0 ? ["none-of-these"] : value;
    for (const one of keys) {
      await tabTo(page, `${box} input[value="${one}"]`);
      await page.keyboard.press("Space");
      assert.ok(await isChecked(page), `${key}: ${one} by keys`);
    }
    return undefined;
  }
  if (typeof value === "string") return radioByKeys(page, box, value);
  if (key.startsWith("tilt") || key.startsWith("tip")) return slideByKeys(page, box, value);
  await tabTo(page, `${box} .field input`);
  return type(page, String(value));
}

/** A number by its slider: the first step button answers, arrows go on from there. */
async function slideByKeys(page, box, value) {
  await tabTo(page, `${box} button:last-of-type`);
  await page.keyboard.press("Enter");
  await tabTo(page, `${box} input[type=range]`, { back: true });
  const field = page.locator(`${box} .field input`);
  for (let presses = 0; presses < 100; presses += 1) {
    const away = value - Number(await field.inputValue());
    if (away === 0) return;
    await page.keyboard.press(away > 0 ? "ArrowRight" : "ArrowLeft");
  }
  assert.fail(`the slider of ${box} does not come to ${value}`);
}

/** Goes past the briefing by keys. */
export async function beginByKeys(page) {
  await tabTo(page, "button.main");
  await page.keyboard.press("Enter");
}

/** Plays steps by keyboard alone: all of them, or those before `until`. */
export async function byKeyboard(page, steps, until) {
  for (const [step, answers] of Object.entries(steps)) {
    if (step === until) return;
    for (const [key, value] of Object.entries(answers)) {
      if (await waits(page, key)) await carryByKeys(page, step);
      await chooseByKeys(page, key, value);
    }
    await carryByKeys(page, step);
  }
}

async function carryByKeys(page, step) {
  await tabTo(page, ".carry-out button");
  assert.ok(await carryOut(page).isEnabled(), `${step} can be carried out`);
  await page.keyboard.press("Enter");
  // What was found, the next step, or the debrief, takes the focus over.
  await page.waitForFunction(() => document.activeElement.id === "sheet-title");
}

// --- The debrief --------------------------------------------------------------------------------

/** What the debrief on the page says: word, mark, and the zone of every rule. */
export async function debrief(page) {
  await page.locator(".debrief").waitFor();
  const word = /This plan is (\w+)\./.exec(await page.locator(".whole-word").innerText())[1];
  const mark = Number(/Mark: (\d+) of 100\./.exec(await page.locator(".mark").innerText())?.[1]);
  const zones = await page.locator(".debrief details.verdict").evaluateAll((verdicts) =>
    Object.fromEntries(verdicts.map((verdict) => [
      verdict.querySelector('a[href^="#/protocol/"]').getAttribute("href").slice("#/protocol/".length),
      verdict.className.replace("verdict", "").trim(),
    ])));
  return { word, mark, zones };
}

/** Holds the debrief on the page to what the tool judges natively. */
export async function agrees(page, which, steps) {
  const native = judged(which, steps);
  const { word, mark, zones } = await debrief(page);
  assert.equal(word, native.plan);
  // The page rounds to whole marks.
  assert.ok(Math.abs(mark - native.mark.percent) <= 0.5, `${mark} on the page, ${native.mark.percent} natively`);
  const plain = (verdict) => verdict.replace(/[^a-z]+/g, "-");
  assert.deepEqual(zones, Object.fromEntries(native.verdicts.map((one) => [one.rule, plain(one.verdict)])));
  return native;
}
