// Tabs that are killed: what was carried out is there, and what is left is whole.

import assert from "node:assert/strict";
import test from "node:test";
import { stored } from "./database.mjs";
import { soon, visit } from "./harness.mjs";
import { begin, carry, choose, sound } from "./play.mjs";

const go = (page, fragment) => page.evaluate((to) => { location.hash = to; }, fragment);
const title = (page) => page.locator("#sheet-title").innerText();

// Two browsers at a time, each in cases of its own.
const LANES = 2;
const KILLS = 100;

/** Lets the page go on for so many milliseconds and then kills its tab. */
async function kill(context, page, play, wait) {
  const killed = new Promise((resolve) => page.once("crash", resolve));
  const session = await context.newCDPSession(page);
  page.setDefaultTimeout(1500);
  const played = play().catch(() => {});
  await new Promise((resolve) => setTimeout(resolve, wait));
  session.send("Page.crash").catch(() => {});
  await killed;
  await played;
  await page.close();
}

test("200 tabs killed at any moment lose no step that was carried out", async () => {
  const steps = await Promise.all(Array.from({ length: LANES }, (_, lane) => killing(lane + 1)));
  const all = steps.reduce((sum, one) => sum + one, 0);
  assert.ok(all >= 20, `in killed tabs only ${all} steps were carried out`);
});

/** Kills tabs in the cases of every second seed from this one on; how many steps were carried out. */
async function killing(lane) {
  let steps = 0;
  await visit(async ({ page: first, context, address }) => {
    await begin(first);
    // From the second visit on a case is on the bench once the database is open.
    await go(first, "#/case/1.1.2024.0");
    await choose(first, "requests", ["allergies"]);
    await soon(async () => assert.equal((await stored(first)).events.length, 1));
    // A seeded course of chance, so that a failure can be run again.
    let chance = 2026 + lane;
    const draw = (below) => {
      chance = (Math.imul(chance, 1664525) + 1013904223) >>> 0;
      return chance % below;
    };
    const said = new Map();
    await context.exposeBinding("noteShown", (_, at, done) => said.set(at, Math.max(done, said.get(at) ?? 0)));
    await context.addInitScript(() => {
      addEventListener("DOMContentLoaded", () => {
        new MutationObserver(() => {
          const done = document.querySelectorAll(".steps .done").length;
          noteShown(location.hash, done);
        }).observe(document.body, { subtree: true, childList: true, attributes: true });
      });
    });
    await first.close();
    let [kills, lost] = [0, 0];
    for (let seed = lane; kills < KILLS; seed += LANES) {
      const plan = sound(seed);
      const at = `#/case/${seed}`;
      for (let over = false; !over && kills < KILLS; kills += 1) {
        const page = await context.newPage();
        const asked = performance.now();
        await page.goto(`${address}${at}`);
        await page.locator(".sheet, .debrief").first().waitFor();
        // A machine that takes long to show a case takes long to go on with it.
        const most = Math.max(800, performance.now() - asked);
        const done = await page.locator(".steps .done").count();
        const shown = said.get(at) ?? 0;
        if (done < shown) lost += shown - done;
        over = (await page.locator(".debrief").count()) > 0;
        await kill(context, page, () => goOn(page, plan, done), draw(most));
      }
    }
    assert.equal(lost, 0);
    steps = [...said.values()].reduce((sum, done) => sum + done, 0);
    // What is left is whole: every attempt opens, and has no gap.
    const page = await context.newPage();
    await page.goto(`${address}#/keeping`);
    await page.locator(".keeping h1").waitFor();
    assert.equal(await page.getByText("Kept, and not readable here").count(), 0);
    const places = new Map();
    for (const [key] of (await stored(page)).events) {
      const [id, place] = key.split("/");
      assert.equal(Number(place), places.get(id) ?? 0, key);
      places.set(id, Number(place) + 1);
    }
  });
  return steps;
}

/** Goes on with a case from where it stands, as fast as it goes, until the tab is killed. */
async function goOn(page, steps, done) {
  for (const [step, answers] of Object.entries(steps).slice(done)) {
    const asked = new Map(Object.entries(answers).map((answer) => [answer[0].replace(/-(mm|degrees|cc|days|weeks|months)$/, ""), answer]));
    const due = await title(page);
    // Twice, where acts come before what weighs their findings.
    while ((await title(page)) === due) {
      for (const id of await page.locator(".sheet .decision").evaluateAll((all) => all.map(({ id }) => id))) {
        const [key, value] = asked.get(id.replace("decision-", "")) ?? [];
        if (key) await answer(page, `#${id}`, key, value);
      }
      await carry(page, step);
    }
  }
}

/** Answers a decision of which a part may have been answered before. */
async function answer(page, at, key, value) {
  if (Array.isArray(value) && typeof value[0] === "string") {
    for (const one of value) {
      const tick = page.locator(`${at} input[value="${one}"]`);
      if (!(await tick.isChecked())) await tick.click();
    }
  } else if ((await page.locator(`${at} .undecided-mark`).count()) > 0) {
    await choose(page, key, value);
  }
}
