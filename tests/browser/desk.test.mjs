// The desk: a set is written from cases that are drawn, kept as it is written, handed out by link and
// as a file, and done by whoever opens the link.

import assert from "node:assert/strict";
import { createRequire } from "node:module";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import { download, fill, go, held, link, linked, write as written } from "./desk.mjs";
import { axe, mounted, soon, tools, visit } from "./harness.mjs";
import { begin, run } from "./play.mjs";

const jsqr = createRequire(join(tools, "node", "package.json"))("jsqr");
const CASES = ["1.1.2024.2591", "1.1.2024.1397"];

/** Saves the set as a file: where it lies. */
const saved = async (page) => (await download(page, "Save it as a file", "desk.set.toml")).file;

async function write(page) {
  await begin(page);
  await page.getByRole("link", { name: "Write a set" }).click();
  await page.locator("#desk-title").waitFor();
  await written(page, {
    title: "Walls, \"thick\" & <thin>",
    aim: "Tell a wall that holds from one that does not.",
    cases: CASES,
  });
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
    const out = page.locator("#desk-tests ~ details:not(.desk-against) > ul > li");
    assert.equal(await out.count(), left.length);
    await soon(async () => {
      for (const one of await out.allTextContents()) assert.match(one, /: [A-Z].*\.$/, "each says what it asks");
    });
    // Rule by rule the desk names the cases that the tool names, in one order, the register's.
    const named = (await page.locator(".desk-against > ul > li").allTextContents()).map((line) => /cases? ([\d, ]+)$/.exec(line)[1]);
    assert.deepEqual(named.toSorted(), rules.map(({ cases }) => cases.join(", ")).toSorted());
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

/** What a picture of the page says to whoever scans it. */
async function scanned(page, picture) {
  const sheet = await page.context().newPage();
  const { data, width, height } = await sheet.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = document.createElement("canvas");
    Object.assign(canvas, { width: image.width, height: image.height });
    const pen = canvas.getContext("2d");
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    // As text: a list of millions of numbers takes a minute on its way.
    const text = Array.from(data, (one) => String.fromCharCode(one)).join("");
    return { data: btoa(text), width: image.width, height: image.height };
  }, picture.toString("base64"));
  await sheet.close();
  return jsqr(new Uint8ClampedArray(Buffer.from(data, "base64")), width, height)?.data;
}

test("the link stands on the whole screen as a code that a camera reads, in the dark too, and Escape puts it away", () =>
  visit(async ({ page }) => {
    await page.emulateMedia({ colorScheme: "dark" });
    await write(page);
    await linked(page, (set) => assert.equal(set.addresses.length, 2));
    const show = page.getByRole("button", { name: "Show as a picture to scan" });
    await show.focus();
    await page.keyboard.press("Enter");
    const code = page.getByRole("img", { name: "QR code of the link" });
    await code.waitFor();
    assert.equal(await page.getByRole("dialog", { name: "Walls, \"thick\" & <thin>" }).count(), 1);
    const { width, height } = await code.boundingBox();
    const side = 0.9 * Math.min(page.viewportSize().width, page.viewportSize().height);
    assert.ok(Math.abs(width - side) < 2 && Math.abs(height - side) < 2, `${width} by ${height}`);
    assert.equal(await code.locator("path").count(), 1);
    assert.equal(await scanned(page, await code.screenshot()), await link(page));
    assert.deepEqual(await axe(page), []);
    await page.keyboard.press("Escape");
    await code.waitFor({ state: "hidden" });
    assert.ok(await show.evaluate((one) => one === document.activeElement), "the focus is where it was");
  }));

test("a link that is too fine for a room is said to be so, and points to the link and the file", () =>
  visit(async ({ page }) => {
    await write(page);
    // Letters that cannot be squeezed.
    const long = Array.from({ length: 380 }, (_, place) => String.fromCharCode(0x4e00 + (place * 7919) % 20_000)).join("");
    await fill(page, "desk-aim", long);
    await fill(page, "desk-opening", [...long].reverse().join(""));
    await linked(page, (set) => assert.equal(set.aim, long));
    await page.getByRole("button", { name: "Show as a picture to scan" }).click();
    const says = page.getByRole("status").filter({ hasText: "Hand out the link or the file" });
    await says.waitFor();
    const length = (await link(page)).length;
    assert.ok(length > 1273);
    assert.match(await says.innerText(), new RegExp(`^${length} characters: .*too fine to be scanned across a room`));
    assert.equal(await page.getByRole("dialog").count(), 0);
  }));

test("the key of the desk tells what the tool tells, only once it is unfolded, and is printed by itself", () =>
  visit(async ({ page }) => {
    await write(page);
    await fill(page, "desk-ask-1", "Which wall, and why?");
    const told = run("set", "key", await saved(page));
    const part = page.locator(".key-part");
    assert.equal(await part.locator("h3").count(), 0);
    await page.emulateMedia({ media: "print" });
    assert.equal(await part.isVisible(), false, "folded, no word of it is on paper");
    await page.emulateMedia({ media: "screen" });
    await part.locator("summary").press("Enter");
    await part.locator("h3").nth(1).waitFor({ timeout: 60_000 });
    await part.getByText("Not for learners: it tells what each case hides.").waitFor();
    const lines = (selector) => part.locator(selector).allInnerTexts();
    const of = (pattern) => [...told.matchAll(pattern)].map(([, one]) => one);
    assert.deepEqual(await lines("h3"), of(/^(Case \d+\. .*)$/gm));
    assert.deepEqual(await lines(".key-ask"), of(/^(What to ask: .*)$/gm));
    const blocks = of(/^Usual faults: .*\n((?: {2}.*\n)+)/gm);
    const faults = blocks.flatMap((block) => block.trimEnd().split("\n").map((one) => one.replace(/^ {2}(- | {2})/, "")));
    assert.ok(faults.length > 8);
    await soon(async () => assert.deepEqual(await lines(".key-faults p"), faults));
    // What the case hides: every line of it stands in the tool's, under the same titles.
    for (const line of await lines("h4 + ul:not(.key-plan, .key-faults) > li")) assert.ok(told.includes(`  - ${line}\n`), line);
    for (const line of await lines(".from")) if (/^(Address|Difficulty)/.test(line)) assert.ok(told.includes(`${line}\n`), line);
    // The plan: as many answers as the tool's file has, in the words in which the tool works it.
    const plan = await lines(".key-plan > li");
    assert.equal(plan.length, of(/^([\w-]+) = .*  # /gm).length);
    const worked = CASES.map((one) => run("case", one, "--worked")).join("");
    for (const line of plan) assert.ok(worked.includes(`  ${line}\n`), line);
    assert.deepEqual(await axe(page), []);
    await page.emulateMedia({ media: "print" });
    assert.equal(await part.locator("h3").first().isVisible(), true);
    assert.equal(await page.locator("#desk-out").isVisible(), false);
    assert.equal(await page.locator(".desk-page > h1").isVisible(), false);
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

test("a set that is shown opens each case act by act, says so, and is the same to the tool", () =>
  visit(async ({ page, context }) => {
    await write(page);
    await page.locator("#desk-mode").selectOption("worked");
    // Time and waiting verdicts are for who decides.
    assert.equal(await page.locator("#desk-minutes").count(), 0);
    const link = await linked(page, (set) => assert.equal(set.mode, "worked"));
    const { file } = await download(page, "Save it as a file");
    assert.equal(JSON.parse(run("set", "check", file, "--json")).mode, "worked");
    assert.equal(held(run("set", "link", file).trim().split("\n")[0]).mode, "worked");
    const other = await context.newPage();
    await other.goto(page.url().split("#")[0] + link);
    await mounted(other);
    await other.getByText("shown, act by act with the reasons").waitFor();
    await other.locator(".cases a").first().click();
    await other.locator(".told > li").first().waitFor();
    assert.equal(await other.getByRole("link", { name: "See one worked first" }).count(), 0);
  }));

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

test("one thing about a case is changed by its number, by keys and by hand, and the set has the case as it is then", () =>
  visit(async ({ page }) => {
    await write(page);
    const row = page.locator(".desk-cases > li").first();
    await row.getByRole("button", { name: "Change one thing about it" }).click();
    const amount = page.locator("#desk-amount-0");
    const grip = row.locator("figure .handle");
    const now = async (of) => {
      await linked(page, ({ addresses }) => assert.equal(addresses[0], of ? `${CASES[0]}.${of}` : CASES[0]));
      await row.getByText(of ? `${CASES[0]}.${of}` : CASES[0]).first().waitFor();
    };
    await now();
    await fill(page, "desk-amount-0", "4.5");
    await now("facial-loss.45");
    await soon(async () => assert.equal(await grip.getAttribute("aria-valuenow"), "4.5"));
    assert.deepEqual(await axe(page), []);

    // Ten steps of the key that leads down the wall, whichever way the jaw is drawn.
    const moved = async (key) => {
      const before = await amount.inputValue();
      await page.keyboard.press(key);
      await soon(async () => assert.notEqual(await amount.inputValue(), before));
      return Number(await amount.inputValue()) - Number(before);
    };
    await grip.focus();
    const first = await moved("Shift+ArrowDown");
    assert.equal(Math.abs(first), 1);
    await moved("Shift+ArrowUp");
    await now("facial-loss.45");
    assert.ok(await grip.evaluate((one) => one === document.activeElement), "the focus stays");

    // By hand as far as the pointer goes: the figure's own scale says how far that is.
    const box = await grip.locator(".handle-knob").boundingBox();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const pixels = await grip.evaluate((one) => one.ownerSVGElement.getScreenCTM().a);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + 2 * pixels * Math.sign(first), { steps: 5 });
    // While it is dragged it shows, and the set is as it was.
    await soon(async () => assert.equal(await amount.inputValue(), "6.5"));
    await linked(page, ({ addresses }) => assert.match(addresses[0], /facial-loss\.45$/));
    await page.mouse.up();
    await now("facial-loss.65");

    // What cannot be is said, and changes nothing.
    const says = row.locator(".desk-change > [role=status]");
    await fill(page, "desk-amount-0", "0.4");
    await soon(async () => assert.match(await says.innerText(), /0\.4 mm: a defect shallower than 1 mm is none/));
    await fill(page, "desk-amount-0", "deep");
    await soon(async () => assert.match(await says.innerText(), /found "deep", expected 0\.0 to 20\.0 mm/));
    await now("facial-loss.65");
    // Another thing takes its place; the set is one that the tool takes, and the case one to be done.
    await page.locator("#desk-aspect-0").selectOption("age");
    await fill(page, "desk-amount-0", "71");
    await now("age.71");
    const { cases } = JSON.parse(run("set", "check", await saved(page), "--json"));
    assert.equal(cases.length, 2);
    await row.getByRole("link", { name: "Do it as a learner" }).click();
    await page.locator(".sheet").first().waitFor();
    await page.getByText(/71/).first().waitFor();
    await go(page, "#/desk");
    // Back to what was drawn.
    await row.getByRole("button", { name: "Change one thing about it" }).click();
    const AGE = /(\d+)-year-old/.exec(run("case", CASES[0]))[1];
    await fill(page, "desk-amount-0", AGE);
    await now();
  }));

test("a line of one's own goes with the set inside what is published, and is refused outside it", () =>
  visit(async ({ page }) => {
    await write(page);
    await page.locator(".desk-line > summary").click();
    await page.locator("#desk-rule").selectOption("membrane-short-of-intact-bone");
    const field = page.getByLabel(/^The limit at 2 mm/);
    await field.fill("90");
    await field.blur();
    await page.getByRole("status").filter({ hasText: "published figures run" }).waitFor();
    await field.fill("2,5");
    await field.blur();
    await page.locator(".desk-line li", { hasText: "2.5" }).waitFor();
    await page.locator("#desk-rule").selectOption("wide-facial-loss-in-one-stage");
    await page.locator("#desk-side").selectOption("one-not");
    await fill(page, "desk-note", "We cover more.");
    const link = await linked(page, (set) => {
      assert.deepEqual(JSON.parse(set.protocol), {
        note: "We cover more.",
        bands: [{ rule: "membrane-short-of-intact-bone", from: 2, to: 2.5 }],
        positions: [{ rule: "wide-facial-loss-in-one-stage", holds: "one", debated: "outside-suboptimal" }],
      });
    });
    const checked = JSON.parse(run("set", "check", await saved(page), "--json"));
    assert.equal(checked.protocol.note, "We cover more.");
    assert.match(checked.protocol.rules[0].moved, /2\.5/);
    assert.deepEqual(await axe(page), []);
    await go(page, link);
    await page.locator(".cases a").first().click();
    await page.getByText("This set has a protocol of its own").waitFor();
    // A link that somebody wrote by hand decides no more than a file may.
    const set = held(`#${link.slice(1)}`);
    set.protocol = set.protocol.replace("2.5", "90.5");
    await go(page, `#/given/1.${deflateSync(Buffer.from(JSON.stringify(set))).toString("base64url")}`);
    await page.getByRole("alert").filter({ hasText: "decides what no set may" }).waitFor();
  }));

test("a file that the desk has saved is taken up again whole, one that was changed is not, and any set comes by its link", () =>
  visit(async ({ page }) => {
    await write(page);
    await fill(page, "desk-ask-1", "Which wall,\u00a0and \"why\"?");
    await page.locator("#desk-mode").selectOption("assessment");
    await fill(page, "desk-code", "heron");
    const { text } = await download(page, "Save it as a file", "desk.set.toml");
    const titled = (title) => soon(async () => assert.equal(await page.locator("#desk-title").inputValue(), title));
    await page.getByRole("button", { name: "Begin another set" }).click();
    await titled("");
    await fill(page, "desk-title", "Another");
    await page.locator(".desk-taken > summary").click();
    const choose = (buffer) => page.locator("#desk-file").setInputFiles({ name: "a.set.toml", mimeType: "text/plain", buffer: Buffer.from(buffer) });
    const says = (words) => page.locator(".desk-taken [role=status]").filter({ hasText: words }).waitFor();
    // Through a program that ends lines otherwise, too.
    await choose(text.replaceAll("\n", "\r\n"));
    await titled("Walls, \"thick\" & <thin>");
    assert.equal(await page.locator("#desk-ask-1").inputValue(), "Which wall,\u00a0and \"why\"?");
    assert.equal(await page.locator("#desk-mode").inputValue(), "assessment");
    assert.equal(await page.locator("#desk-code").inputValue(), "heron");
    assert.equal((await download(page, "Save it as a file")).text, text);
    await page.getByRole("button", { name: "Bring back what lay here before" }).click();
    await titled("Another");

    // What somebody changed by hand would be lost; what the desk never wrote it cannot read.
    await choose(text.replace("Which wall", "What wall"));
    await says("changed after it was saved");
    await choose(text.replace("# 1.", "# 1.x"));
    await says(/./);
    const shipped = fileURLToPath(new URL("../../scenarios/one-school-s-line.set.toml", import.meta.url));
    await page.locator("#desk-file").setInputFiles(shipped);
    await says("was not saved at a desk: wallwise set link");
    await titled("Another");
    // The way that is told: with the line of its own it goes on the desk, and back into a file.
    const whole = run("set", "link", shipped).trim();
    await fill(page, "desk-again", `http://somewhere.example/${whole}`);
    const set = held(whole);
    await titled(set.title);
    const back = join(mkdtempSync(join(tmpdir(), "wallwise-")), "back.set.toml");
    await page.locator("#desk-code").fill("");
    writeFileSync(back, (await download(page, "Save it as a file")).text);
    assert.deepEqual(held(run("set", "link", back).trim()), set);
    await fill(page, "desk-again", "1.AAAA");
    await says(/cut off|holds no set|no set/);
    await titled(set.title);
    assert.deepEqual(await axe(page), []);
  }));
