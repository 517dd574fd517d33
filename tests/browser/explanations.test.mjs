// What a debrief explains beside its verdicts: what to change first, how close it was, both sides of a
// debate, and where the learner objects.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { axe, soon, visit } from "./harness.mjs";
import { agrees, begin, byMouse, debrief, explained, find, judged, sound, tabTo } from "./play.mjs";

const PHONE = { width: 390, height: 844 };
const DESK = { width: 1440, height: 1000 };
const placed = (steps) => steps.intention.course === "place-today";

/** A plan with an implant today that stands too far to the facial side. */
function facial() {
  const { seed, steps } = find(placed);
  steps.implant["offset-facial-mm"] = 2.0;
  return { seed, steps };
}

/** The same with a membrane whose apical edge ends too soon, so that both figures have to change. */
function facialAndShort() {
  // A dehiscence under a membrane, behind an implant placed today.
  const seed = "1.1.2024.339";
  const steps = sound(seed);
  const outline = steps.graft["membrane-outline-mm"];
  const far = Math.max(...outline.map(([, t]) => t));
  const shorter = ([s, t]) => [s, t > far - 2 ? Math.round(10 * (t - 4)) / 10 : t];
  steps.graft["membrane-outline-mm"] = outline.map(shorter);
  steps.implant["offset-facial-mm"] = 2.0;
  return { seed, steps };
}

/** Plays a plan to its end and waits until every part of the debrief stands. */
function debriefed({ seed, steps }, look, context = { viewport: DESK }) {
  return visit(async ({ page }) => {
    await begin(page);
    await byMouse(page, steps);
    await stands(page);
    await look(page);
  }, { path: `#/case/${seed}`, context });
}

/** Waits for what is looked for once the debrief stands: the nearest plan, the edges, the room. */
async function stands(page) {
  await debrief(page);
  await page.locator(".nearest .lead, .nearest ul, .nearest p:has-text('sound as it is')").first().waitFor();
  await page.locator(".breaks .onward, .breaks p:has-text('No second case')").waitFor({ timeout: 60_000 });
  await page.locator(".space", { hasText: "Trying every stock size" }).waitFor({ state: "detached" });
}

const unfold = (page, within) =>
  page.locator(`${within} details`).evaluateAll((all) => all.forEach((one) => { one.open = true; }));

test("the debrief names the one change to make first, as the tool does, and draws the learner's own over both figures", () => {
  const plan = facialAndShort();
  const { first } = explained(plan.seed, plan.steps);
  assert.ok(first, "the tool names one");
  return debriefed(plan, async (page) => {
    const lead = page.locator(".nearest .lead");
    assert.equal(await lead.count(), 1, "one thing is named, not two");
    assert.equal(await lead.innerText(), `Change this first: ${first}`);
    const own = { section: /Your own implant, [\d.]+ by [\d.]+\smm, is dashed\./, "facial-map": /Your own membrane is dashed\./ };
    for (const [figure, says] of Object.entries(own)) {
      const drawn = page.locator(`.nearest .figure-${figure}`);
      assert.equal(await drawn.locator("path.ink-former").count(), 1, figure);
      assert.match(await drawn.locator(".says p").textContent(), says);
      assert.match(await drawn.locator("svg").innerHTML(), />your own/, `${figure} is labelled`);
    }
  });
});

test("a change that no drawing shows is told without a figure that shows nothing", () => {
  // A thick wall, which the lever does not break.
  const seed = "1.1.2024.2591";
  const steps = sound(seed);
  steps.extraction.technique = "lever-on-facial-plate";
  return debriefed({ seed, steps }, async (page) => {
    await page.locator(".nearest .lead", { hasText: "Technique" }).waitFor();
    assert.equal(await page.locator(".nearest svg").count(), 0);
    assert.match(await page.locator(".nearest").innerText(), /how and when, not of where/);
  });
});

test("each finding that decides has a bar, and its words and interval are the tool's", () => {
  const plan = facial();
  const { holds } = explained(plan.seed, plan.steps);
  const telling = holds.filter(({ past }) => past.length > 0);
  assert.ok(telling.length > 5, `${telling.length} findings`);
  const room = judged(plan.seed, plan.steps).room.words;
  return debriefed(plan, async (page) => {
    const rows = await page.locator(".breaks li").evaluateAll((all) => all.map((row) => ({
      bars: row.querySelectorAll("svg path").length,
      named: document.getElementById(row.querySelector("svg").getAttribute("aria-labelledby").split(" ")[1])?.textContent,
      read: row.querySelector(":scope > p").textContent,
    })));
    const by = (one, other) => (one.stays < other.stays ? -1 : 1);
    const shown = rows.map(({ named, read }) => ({ stays: named, read })).sort(by);
    const told = telling.map(({ stays, past }) =>
      ({ stays, read: [/The verdicts stay .+$/.exec(stays)[0], ...past].join(" ") })).sort(by);
    assert.deepEqual(shown, told);
    for (const row of rows) assert.ok(row.bars >= 3, `${row.named} has a bar`);
    const open = holds.filter(({ past }) => past.length === 0).length;
    const rest = page.locator(".breaks p", { hasText: "Whatever these are" });
    assert.equal(await rest.count(), open > 0 ? 1 : 0);
    assert.equal(await page.locator(".space [role=status]").innerText(), room, "the room, too");
  });
});

test("the findings nearest to an edge stand first and the others are folded away", () =>
  debriefed(facial(), async (page) => {
    const lists = page.locator(".breaks ul.plain");
    assert.equal(await lists.nth(0).locator("li").count(), 5);
    assert.equal(await lists.nth(1).isVisible(), false);
    const far = await lists.nth(1).locator("li").count();
    assert.equal(await page.locator(".breaks summary", { hasText: "Farther" }).innerText(), `Farther from an edge: ${far}`);
  }));

test("debate cards show what either side says and does here, and carry no mark", () => {
  const { seed, steps } = find(placed);
  const native = judged(seed, steps);
  const debated = native.verdicts.filter((one) => one.verdict === "debated");
  assert.ok(debated.length > 1);
  return debriefed({ seed, steps }, async (page) => {
    await unfold(page, ".debates");
    const cards = page.locator("details.debate");
    assert.equal(await cards.count(), debated.length);
    for (const card of await cards.all()) {
      const sides = await card.locator("blockquote").allInnerTexts();
      assert.equal(new Set(sides).size, 2, sides.join(" | "));
      const text = await card.innerText();
      assert.match(text, /Here: (One side leaves it .+ The other [a-z].+|You have .+ satisfies both sides)\./);
      assert.doesNotMatch(text, /nothing needs mending|\bmark\b|\d+ of 100/i);
      assert.ok((await card.locator(".sources li").count()) > 0, "who says so");
    }
    const statements = await cards.locator(":scope > summary").allInnerTexts();
    await unfold(page, ".whole");
    const lost = await page.locator(".whole").innerText();
    for (const statement of statements) {
      assert.ok(!lost.includes(statement.replace(/^\W+/, "")), `${statement} costs nothing`);
    }
  });
});

test("an objection is kept with the attempt, changes no verdict, and an empty one takes it back", () => {
  const plan = facial();
  const reason = "The plate was thick on the section.";
  return debriefed(plan, async (page) => {
    const before = await debrief(page);
    const dispute = page.locator(".cause details.dispute").first();
    await dispute.locator("summary").click();
    await dispute.getByRole("textbox").fill(`  ${reason} `);
    await dispute.getByRole("button", { name: "Keep this reason" }).click();
    await dispute.getByText("Kept.").waitFor();
    assert.deepEqual(await debrief(page), before);
    await agrees(page, plan.seed, plan.steps);
    // Saved, the attempt has it, and choices besides; no mark.
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save this attempt" }).click(),
    ]);
    assert.equal(saved.suggestedFilename(), "wallwise-attempt.json");
    const file = JSON.parse(readFileSync(await saved.path(), "utf8"));
    assert.equal(file.caution, "synthetic, not for treatment");
    const [attempt] = file.records;
    const done = attempt.events.map((event) => event.do);
    assert.deepEqual(done.filter((event) => event.dispute).map((event) => event.reason.trim()), [reason]);
    assert.ok(done.length > 40 && attempt.events.every(({ at }) => at > 1e12), "each with its time");
    assert.ok(!JSON.stringify(attempt.head).includes("mark") && /^[0-9a-f]{16}$/.test(attempt.head.verdicts));
    // Elsewhere and back: the attempt has it.
    await page.evaluate(() => { location.hash = "#/protocol"; });
    await page.getByRole("heading", { level: 1, name: /protocol|rules/i }).waitFor();
    await page.goBack();
    await debrief(page);
    const again = page.locator(".cause details.dispute").first();
    assert.equal(await again.locator("summary").innerText(), "Your objection");
    await again.locator("summary").click();
    assert.equal(await again.getByRole("textbox").inputValue(), reason);
    assert.equal(await page.locator("details.dispute", { hasText: "Your objection" }).count(), 1, "that rule alone");
    await again.getByRole("textbox").fill("");
    await again.getByRole("button", { name: "Keep this reason" }).click();
    await again.locator("summary", { hasText: "I see it otherwise" }).waitFor();
    assert.deepEqual(await debrief(page), before);
  });
});

test("by keyboard alone a card is opened, an objection kept, and the second case reached", () =>
  debriefed(facial(), async (page) => {
    // The pointer rests nowhere: a term under it would explain itself over what has the focus.
    await page.mouse.move(1, 1);
    await page.locator("#sheet-title").focus();
    await tabTo(page, ".cause details.dispute > summary");
    await page.keyboard.press("Enter");
    await tabTo(page, ".dispute textarea");
    await page.keyboard.type("I would do it again.");
    await tabTo(page, ".dispute button");
    await page.keyboard.press("Enter");
    await page.locator(".dispute", { hasText: "Kept." }).waitFor();
    await tabTo(page, "details.debate > summary");
    await page.keyboard.press("Enter");
    assert.ok(await page.locator("details.debate blockquote").first().isVisible());
    await tabTo(page, ".breaks details > summary");
    await page.keyboard.press("Enter");
    assert.ok(await page.locator(".breaks details li").first().isVisible());
    await tabTo(page, ".breaks .onward");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Two cases, one difference" }).waitFor();
  }));

/** What reaches beyond the window, and words of a drawing that are set too small to read. */
const faults = (page) => page.evaluate(() => {
  const over = document.documentElement.scrollWidth - innerWidth;
  const small = [...document.querySelectorAll(".nearest text, .breaks text, .space text, .pair-page text")]
    .filter((one) => one.checkVisibility())
    .map((one) => [one.textContent, parseFloat(one.getAttribute("font-size")) * one.getScreenCTM().a])
    .filter(([, size]) => size < 10);
  return [over > 0 ? `${over} px too wide` : "", ...small.map(([text, size]) => `${text}: ${size.toFixed(1)} px`)].filter(Boolean);
});

for (const colorScheme of ["light", "dark"]) {
  test(`on a phone nothing of the explanations sticks out, none is too small, and the accessibility engine is content, ${colorScheme}`, () =>
    debriefed(facialAndShort(), async (page) => {
      await unfold(page, ".debrief");
      await soon(async () => assert.deepEqual(await faults(page), []));
      assert.deepEqual(await axe(page), []);
      await page.setViewportSize(DESK);
      await soon(async () => assert.deepEqual(await faults(page), []));
      assert.deepEqual(await axe(page), []);
    }, { viewport: PHONE, colorScheme, reducedMotion: "reduce" }));
}
