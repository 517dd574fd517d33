// Where the pass mark of a class lies, on the page and by the tool.

import assert from "node:assert/strict";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { open, read, section, twelve } from "./class.mjs";
import { download } from "./desk.mjs";
import { axe, soon, visit } from "./harness.mjs";
import { run } from "./play.mjs";

const CASES = 4;

/** The class as files, for the tool. */
function folder() {
  const place = mkdtempSync(join(tmpdir(), "wallwise-"));
  for (const { name, buffer } of twelve()) writeFileSync(join(place, name), buffer);
  return place;
}

/** One of the two ways, unfolded. */
async function unfold(page, words) {
  await open(page);
  await read(page, twelve(), 12 * CASES);
  const way = section(page, "standard").locator("details", { hasText: words });
  await way.locator("summary").click();
  return way;
}

const told = (way) => way.getByRole("status").locator("li").allInnerTexts();
const rows = (way) => way.locator("tbody tr");

test("what judges type sets the pass mark that the tool sets, beside how hard each case is and who passed", () =>
  visit(async ({ page }) => {
    const way = await unfold(page, "By what judges expect");
    assert.match((await told(way)).join(), /No pass mark yet: no judge/);
    await way.getByRole("button", { name: "Another judge" }).click();
    const names = await rows(way).locator("th").allInnerTexts();
    assert.equal(names.length, CASES);
    // The first and the third judge; the second types nothing and is none.
    const chances = { 1: ["0.6", "0,7", "0.5", "0.8"], 3: ["0.5", "0.6", "0.6", "0.7"] };
    for (const [judge, all] of Object.entries(chances)) {
      for (const [place, chance] of all.entries()) {
        if (place === 2) {
          await soon(async () => assert.match((await told(way)).join(), /Judge \d: 2 of 4 cases judged\./));
        }
        await rows(way).nth(place).getByRole("textbox", { name: new RegExp(`^Judge ${judge},`) }).fill(chance);
      }
    }
    await soon(async () => assert.match((await told(way))[0], /^Pass mark: 2\.5 of 4 cases, standard error 0\.10 cases/));
    // How hard each is comes while one types.
    await soon(async () => assert.doesNotMatch(await way.locator("tbody").innerText(), /…/));
    const { file, text } = await download(page, "Save judges.csv", "judges.csv");
    assert.equal(text.trim().split("\r\n").length, 3);
    const tool = run("standard", "judges", file, folder());
    for (const line of await told(way)) assert.ok(tool.includes(line), `${line}\n${tool}`);
    for (const row of await rows(way).all()) {
      const name = /^(\S+) at/.exec(await row.locator("th").innerText())[1];
      const [hard, passed] = await row.locator("td").allInnerTexts();
      const line = tool.split("\n").find((one) => one.trim().startsWith(`${name}:`));
      assert.ok(line.endsWith(`difficulty ${hard}; ${passed} learners passed`), `${line}, not ${hard}, ${passed}`);
    }
    assert.deepEqual(await axe(page), []);
  }));

test("cases that come with later files are told how hard they are too", () =>
  visit(async ({ page }) => {
    await open(page);
    const [first, ...others] = twelve();
    const file = JSON.parse(first.buffer.toString());
    file.records.splice(2);
    await read(page, [{ ...first, buffer: Buffer.from(JSON.stringify(file)) }], 2);
    const way = section(page, "standard").locator("details", { hasText: "By what judges expect" });
    await way.locator("summary").click();
    const hard = () => rows(way).locator("td:nth-child(2)").allInnerTexts();
    await soon(async () => assert.match((await hard()).join(" "), /^0\.\d\d 0\.\d\d$/));
    await read(page, others, 2 + 11 * CASES);
    await soon(async () => assert.match((await hard()).join(" "), /^(0\.\d\d ?){4}$/));
  }));

test("everything that is wrong with what was typed is told at once, as text", () =>
  visit(async ({ page }) => {
    const way = await unfold(page, "By what judges expect");
    const typed = ["60", "<b>x</b>", "", "1"];
    for (const [place, text] of typed.entries()) {
      await rows(way).nth(place).getByRole("textbox", { name: /^Judge 2,/ }).fill(text);
    }
    await soon(async () => assert.equal((await told(way)).length, 3));
    const [first, second, third] = await told(way);
    assert.match(first, /^Judge 2, \S+: found "60", expected a chance from 0 to 1/);
    assert.match(second, /found "<b>x<\/b>"/);
    assert.equal(third, "Judge 2: 3 of 4 cases judged.");
    assert.equal(await way.locator("b").count(), 0);
  }));

test("ratings set the pass mark that the tool sets over marks that are worked out, and learners stay numbers", () =>
  visit(async ({ page }) => {
    const way = await unfold(page, "By how examiners rated");
    await way.locator("select").selectOption("1.1.7.0");
    await soon(async () => assert.equal(await rows(way).count(), 12));
    assert.doesNotMatch(await way.innerText(), /k-\d\d/);
    const borderline = way.getByRole("textbox", { name: /neither a clear pass/ });
    await borderline.fill("2,5");
    for (const [place, row] of (await rows(way).all()).entries()) {
      await row.getByRole("textbox").fill(String(1 + place % 4));
      if (place === 1) {
        await soon(async () => assert.match((await told(way)).join(), /No line yet: found 2 rated performances/));
      }
    }
    await soon(async () => assert.match((await told(way))[1], /^Pass mark: [\d.]+ of 100, at the rating 2\.5/));
    const marks = await rows(way).locator("td:nth-child(2)").allInnerTexts();
    assert.ok(new Set(marks).size > 1, marks.join());
    const { file, text } = await download(page, "Save ratings.csv", "ratings.csv");
    assert.match(text, /^learner,case,rating\r\nk-00,1\.1\.7\.0,1\r\n/);
    const tool = run("standard", "ratings", file, folder(), "--borderline", "2.5");
    for (const line of await told(way)) assert.ok(tool.includes(line), `${line}\n${tool}`);
    for (const mark of marks) assert.ok(tool.includes(`mark ${mark}\n`), `${mark}\n${tool}`);
    // Codes, once they are asked for, stand where the numbers stood.
    await page.getByText("Show learners by their codes").click();
    await soon(async () => assert.equal(await rows(way).first().locator("th").innerText(), "k-00"));
    assert.deepEqual(await axe(page), []);
  }));
