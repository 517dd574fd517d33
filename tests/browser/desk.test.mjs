// The desk: a set is written from cases that are drawn, kept as it is written, handed out by link and
// as a file, and done by whoever opens the link.

import assert from "node:assert/strict";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inflateSync } from "node:zlib";
import test from "node:test";
import { axe, mounted, soon, visit } from "./harness.mjs";
import { begin, run } from "./play.mjs";

const CASES = ["1.1.2024.2591", "1.1.2024.1397"];
const go = (page, fragment) => page.evaluate((to) => { location.hash = to; }, fragment);
const link = (page) => page.locator("#desk-link").inputValue();

/** The set that a link holds. */
const held = (address) => {
  const [, letters] = /#\/given\/1\.([\w-]+)$/.exec(address);
  return JSON.parse(inflateSync(Buffer.from(letters, "base64url")).toString());
};

/** The link once it holds what is asserted of its set: its fragment. */
async function linked(page, check) {
  await soon(async () => check(held(await link(page))));
  return /#.*/.exec(await link(page))[0];
}

/** Fills a field and leaves it, which is when it tells. */
async function fill(page, id, text) {
  await page.locator(`#${id}`).fill(text);
  await page.locator(`#${id}`).blur();
}

/** Saves the set as a file: where it lies. */
async function saved(page) {
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save it as a file" }).click();
  const file = join(mkdtempSync(join(tmpdir(), "wallwise-")), "desk.set.toml");
  await (await coming).saveAs(file);
  return file;
}

async function write(page) {
  await begin(page);
  await page.getByRole("link", { name: "Write a set" }).click();
  await page.locator("#desk-title").waitFor();
  await fill(page, "desk-title", "Walls, \"thick\" & <thin>");
  await fill(page, "desk-aim", "Tell a wall that holds from one that does not.");
  for (const address of CASES) {
    await fill(page, "desk-address", address);
    await page.locator(".desk-cases > li", { hasText: address }).waitFor();
    await page.locator("#desk-address").fill("");
  }
}

test("a set is written, kept, taken up again, and its link holds what a learner needs and no more", () =>
  visit(async ({ page }) => {
    await begin(page);
    await go(page, "#/desk");
    // Until it is whole the desk says what is missing.
    await page.getByText("Still to do: a title, an aim, a case.").waitFor();
    await page.evaluate(() => localStorage.clear());
    await page.reload();
    await mounted(page);
    await go(page, "#/");
    await write(page);
    await fill(page, "desk-ask-0", "Which wall, and why?");
    await page.locator("#desk-mode").selectOption("assessment");
    const listed = page.locator(".desk-cases > li");
    await listed.first().getByRole("button", { name: "Later" }).click();
    await soon(async () => assert.match(await listed.nth(1).innerText(), /1\.1\.2024\.2591/));
    // The question went with its case.
    assert.equal(await page.locator("#desk-ask-1").inputValue(), "Which wall, and why?");
    await page.reload();
    await mounted(page);
    await soon(async () => assert.equal(await page.locator("#desk-title").inputValue(), "Walls, \"thick\" & <thin>"));
    await linked(page, (set) => {
      assert.deepEqual(set.addresses, [...CASES].reverse());
      assert.equal(set.mode, "assessment");
      assert.equal(JSON.stringify(set).includes("Which wall"), false);
    });
    assert.deepEqual(await axe(page), []);
  }));

test("the file of the desk is a set that the tool takes, with what to ask", () =>
  visit(async ({ page }) => {
    await write(page);
    await fill(page, "desk-ask-1", "What \\ does \"it\" ask for?");
    const file = await saved(page);
    const { title, cases } = JSON.parse(run("set", "check", file, "--json"));
    assert.equal(title, "Walls, \"thick\" & <thin>");
    assert.deepEqual(cases.map(({ findings }) => findings), [[], []]);
    assert.match(run("set", "key", file), /What \\ does "it" ask for\?/);
    // What the desk says that the set tests is what the tool says.
    const { rules, "left-out": left } = JSON.parse(run("set", "blueprint", file, "--json"));
    await soon(async () => {
      const said = await page.locator("#desk-tests ~ table").first().locator("td").allInnerTexts();
      const counts = said.map((one) => /^(\d+) of (\d+)$/.exec(one)).map(([, some, all]) => [Number(some), Number(all)]);
      assert.equal(counts.reduce((sum, [some]) => sum + some, 0), rules.length);
      assert.equal(counts.reduce((sum, [, all]) => sum + all, 0), rules.length + left.length);
    });
  }));

test("cases are drawn as hard and of the kind that is asked for, and what cannot be is said", () =>
  visit(async ({ page }) => {
    await begin(page);
    await go(page, "#/desk");
    await page.locator("#desk-kind").selectOption({ index: 1 });
    const kind = await page.locator("#desk-kind option").nth(1).innerText();
    await page.locator("#desk-from").fill("50");
    await page.getByRole("button", { name: "Draw 5 such cases" }).click();
    await page.getByText("5 cases. Draw again for others.").waitFor({ timeout: 60_000 });
    const rows = await page.locator(".drawn tbody tr").evaluateAll((all) => all.map((one) => [...one.cells].map((cell) => cell.innerText)));
    assert.equal(rows.length, 5);
    for (const [, about, hard] of rows) {
      assert.equal(about, kind);
      assert.ok(Number(hard) >= 0.5, hard);
    }
    await page.locator(".drawn").getByRole("button", { name: "Add" }).first().click();
    await page.locator(".desk-cases > li").waitFor();
    assert.equal(await page.locator(".drawn tbody tr").first().locator("td").last().innerText(), "yes");
    // Population cases have no kind.
    await page.locator("#desk-spread").selectOption("population");
    await page.getByRole("button", { name: "Draw 5 such cases" }).click();
    await page.getByRole("status").filter({ hasText: "population cases have no archetype" }).waitFor();
    await fill(page, "desk-address", "1.9.3");
    await page.getByRole("status").filter({ hasText: "expected" }).waitFor();
  }));

test("whoever opens the link has the set, does its cases as it says, and finds it among the sets again", async () => {
  let address;
  await visit(async ({ page }) => {
    await write(page);
    await page.locator("#desk-mode").selectOption("assessment");
    address = await linked(page, (set) => {
      assert.deepEqual([set.mode, set.addresses.length], ["assessment", 2]);
    });
  });
  await visit(async ({ page }) => {
    await begin(page);
    await page.getByRole("heading", { name: "Walls, \"thick\" & <thin>" }).waitFor();
    assert.equal(await page.locator("main thin").count(), 0, "nothing from a link is markup");
    assert.deepEqual(await axe(page), []);
    await page.locator(".cases a").nth(1).click();
    await page.locator(".sheet .decision").first().waitFor();
    assert.match(await page.evaluate(() => location.hash), /^#\/set\/given-[0-9a-f]{16}\/2\?assessment$/);
    await page.reload();
    await mounted(page);
    await page.locator(".sheet .decision").first().waitFor();
    await go(page, "#/");
    assert.equal(await page.locator(".sets h3").first().innerText(), "Walls, \"thick\" & <thin>");
    const sets = await page.locator(".sets h3").count();
    await go(page, address);
    await page.locator("#given").waitFor();
    await go(page, "#/");
    assert.equal(await page.locator(".sets h3").count(), sets, "opened twice it is there once");
  }, { path: address });
});

test("a code draws a learner's own cases, and the tool draws the same for the instructor", async () => {
  let address;
  let file;
  await visit(async ({ page }) => {
    await write(page);
    await page.locator("#desk-forms").selectOption("own");
    address = await linked(page, (set) => assert.equal(set.forms, true));
    file = await saved(page);
  });
  await visit(async ({ page }) => {
    await begin(page);
    await fill(page, "given-code", "   ");
    await page.getByRole("status").filter({ hasText: "expected a code" }).waitFor();
    await fill(page, "given-code", "Heron");
    await page.locator(".cases a").first().waitFor({ timeout: 60_000 });
    const kept = await page.evaluate(() => JSON.parse(localStorage.getItem("wallwise-sets"))[0]);
    const told = run("set", "forms", file, "heron");
    assert.deepEqual(kept.addresses, [...told.matchAll(/^  \d+\. ([\w.-]+): /gm)].map(([, one]) => one));
    assert.equal(kept.addresses.some((one) => CASES.includes(one)), false);
    await page.locator(".cases a").first().click();
    await page.locator(".sheet .decision").first().waitFor();
  }, { path: address });
});

test("a link that is cut off, of another version, too long or no set is refused with a sentence", () =>
  visit(async ({ page }) => {
    await begin(page);
    const { deflateSync } = await import("node:zlib");
    const spelt = (value) => `1.${deflateSync(Buffer.from(JSON.stringify(value))).toString("base64url")}`;
    const set = { title: "A", aim: "B", level: "student", cases: ["one"], addresses: ["1.1.2024.0"] };
    const whole = spelt(set);
    for (const [given, says] of [
      [whole.slice(0, -9), /cut off or changed/],
      [`1.${"*".repeat(30)}`, /cut off or changed/],
      [`9.${whole}`, /another version/],
      [`1.${"A".repeat(20_000)}`, /20000 characters/],
      [spelt([1, 2]), /holds no set/],
      [spelt({ ...set, addresses: ["1.1.x.0"] }), /holds no set/],
      [spelt({ ...set, cases: [], addresses: [] }), /0 cases/],
      [spelt({ ...set, conditions: "later 0 0 " }), /found the conditions/],
      [spelt({ ...set, protocol: '{"bands":[{"rule":"membrane-short-of-intact-bone","from":2,"to":90}]}' }), /decides what no set may/],
      [spelt({ ...set, cases: Array(900).fill("x"), addresses: Array(900).fill("1.1.2024.0") }), /900 cases/],
    ]) {
      await go(page, `#/given/${given}`);
      await soon(async () => assert.match(await page.getByRole("alert").innerText(), says, given.slice(0, 40)));
    }
    await go(page, `#/given/${whole}`);
    await page.getByRole("heading", { name: "A", exact: true }).waitFor();
  }));
