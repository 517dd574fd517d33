// Two cases that differ in one thing: asked about before anything is told.

import assert from "node:assert/strict";
import test from "node:test";
import { axe, mounted, soon, visit } from "./harness.mjs";
import { begin, paired, tabTo } from "./play.mjs";

// A wall that is whole in the first and lost in the second, in a molar; and a canal that comes nearer.
const ADDRESSES = ["1.3.315.0.facial-loss.10", "1.1.2024.34.bone-to-canal.69"];

const differ = (page) => page.locator("section[aria-labelledby=differ-title]");
const decide = (page) => page.locator("section[aria-labelledby=decide-title]");
const told = (page) => page.locator("section[aria-labelledby=told-title]");

/** What the page shows and asks of a pair at first, figures included. */
async function posed(page) {
  await differ(page).waitFor({ timeout: 30_000 });
  return page.locator("article").evaluate((article) => ({
    text: article.innerText,
    drawn: [...article.querySelectorAll("svg")].map((svg) => svg.innerHTML),
  }));
}

/** Answers every question of a section: with this answer, or the other one. */
async function answer(section, button, place) {
  for (const asked of await section.locator("fieldset").all()) await asked.locator("input").nth(place).click();
  await section.getByRole("button", { name: button, exact: true }).click();
}

const shown = (look, address = ADDRESSES[0], context = {}) =>
  visit(async (given) => {
    await begin(given.page);
    await posed(given.page);
    await look(given.page);
  }, { path: `#/pair/${address}`, context });

for (const address of ADDRESSES) {
  test(`the pair ${address} asks what differs and what has to change before it tells a word of why`, () => {
    const native = paired(address);
    const [, name, first, second] = /\n(.+): (.+) in the first, (.+) in the second\.\n/.exec(native);
    const broken = native.split("A sound plan of the first, in the second\n")[1].split("\n\n")[0]
      .split("\n").map((line) => /: ([A-Z].+)$/.exec(line)?.[1]).filter(Boolean);
    assert.ok(broken.length > 0);
    return shown(async (page) => {
      /** Whether anything on the page so far gives the rule away. */
      const untold = async (when) => {
        const text = await page.locator("article").innerText();
        for (const statement of broken) assert.ok(!text.includes(statement), `${when}: ${statement}`);
        assert.doesNotMatch(text, /what decides|why:|unsafe|outside|suboptimal/i, when);
        assert.equal(await page.locator("article .verdict, article .remark.right").count(), 0, when);
      };
      await untold("at first");
      assert.equal(await decide(page).count(), 0, "one question after the other");
      assert.ok(await differ(page).getByRole("button", { name: "Compare" }).isDisabled());
      const asked = await differ(page).locator("fieldset").count();
      await answer(differ(page), "Compare", 0);
      assert.equal(await differ(page).locator(".remark:not(.right)").count(), 1, "one thing differs");
      assert.equal(await differ(page).locator(".remark.right").count(), asked - 1);
      const row = differ(page).locator("fieldset", { hasText: name }).locator("xpath=following-sibling::p[1]");
      assert.equal(await row.innerText(), `▲ Not so: ${first} in the first, ${second} in the second.`);
      assert.ok(await decide(page).getByRole("button", { name: "See" }).isDisabled());
      assert.doesNotMatch(await decide(page).innerText(), /not asked in the first/, "what is not there cannot stay");
      assert.equal(await told(page).count(), 0);
      await answer(decide(page), "See", 0);
      const text = await told(page).innerText();
      assert.ok(broken.some((statement) => text.includes(statement)), text.slice(0, 200));
      assert.match(text, new RegExp(`${name}: with ${first} the rule is kept, with ${second} the same plan breaks it\\.`));
      const remarks = await decide(page).locator(".remark").allInnerTexts();
      const changed = remarks.filter((remark) => /has to change/.test(remark));
      assert.ok(changed.length > 0 && changed.length < remarks.length, remarks.join("\n"));
      for (const remark of changed) {
        const change = /it has to change\. (.+)\.$/.exec(remark)[1];
        assert.ok(native.includes(`  ${change}\n`), `${change} is the tool's`);
      }
      assert.equal(await told(page).getByRole("button", { name: "Show it on the figures" }).count(), 0, "no button without effect");
      await told(page).getByRole("link", { name: "Take the second case as your own" }).click();
      await page.locator(".sheet").waitFor();
    }, address);
  });
}

test("right answers are called right", () =>
  shown(async (page) => {
    const rows = differ(page).locator("fieldset");
    for (const row of await rows.all()) {
      await row.getByLabel(/facial defect/i.test(await row.innerText()) ? "more in the second" : "alike").check();
    }
    await differ(page).getByRole("button", { name: "Compare" }).click();
    assert.equal(await differ(page).locator(".remark.right").count(), await rows.count());
  }));

test("the address of a pair, reopened, gives the same pair", () =>
  shown(async (page) => {
    const once = await posed(page);
    await answer(differ(page), "Compare", 1);
    await page.reload();
    await mounted(page);
    const again = await posed(page);
    assert.deepEqual(again, once);
    assert.ok(once.drawn.length === 4 && once.drawn[0] !== once.drawn[2], "the difference can be seen on the map");
  }));

test("an address that is no pair's says what is missing", () =>
  visit(async ({ page }) => {
    await begin(page);
    await soon(async () => assert.match(await page.getByRole("alert").innerText(), /names one case, not a pair: add what differs/));
  }, { path: "#/pair/1.1.2024.34" }));

test("a pair is answered by keyboard alone", () =>
  shown(async (page) => {
    for (const [section, button] of [["differ", "Compare"], ["decide", "See"]]) {
      const box = `section[aria-labelledby=${section}-title]`;
      await page.locator(box).waitFor();
      const count = await page.locator(`${box} fieldset`).count();
      for (let place = 0; place < count; place += 1) {
        await tabTo(page, `${box} input[name="${section}-${place}"]`);
        await page.keyboard.press("Space");
      }
      await tabTo(page, `${box} .row button`);
      assert.equal(await page.evaluate(() => document.activeElement.textContent), button);
      await page.keyboard.press("Enter");
      // What comes instead of the button takes the focus over.
      const next = section === "differ" ? "decide-title" : "told-title";
      await soon(async () => assert.equal(await page.evaluate(() => document.activeElement.id), next));
    }
    await tabTo(page, ".onward");
  }));

for (const colorScheme of ["light", "dark"]) {
  test(`a pair fits a phone at every stage and the accessibility engine is content, ${colorScheme}`, () =>
    shown(async (page) => {
      const look = async (stage) => {
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        assert.ok(over <= 0, `${stage}: ${over} px too wide`);
        assert.deepEqual(await axe(page), [], stage);
      };
      await look("asked what differs");
      await answer(differ(page), "Compare", 0);
      await look("asked what has to change");
      await answer(decide(page), "See", 1);
      await page.locator("article details").evaluateAll((all) => all.forEach((one) => { one.open = true; }));
      await look("told");
    }, ADDRESSES[0], { viewport: { width: 390, height: 844 }, colorScheme, reducedMotion: "reduce" }));
}
