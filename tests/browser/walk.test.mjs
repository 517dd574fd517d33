// From the desk to the report in one walk: an instructor writes a set and hands it out by link and as a
// package, a class with planted misconceptions sits it, and the page of a class names just those.
//
// One learner of each kind plays, by clicks, in a browser of their own; who else is of that kind hands in
// the same choices under another code. Files are as the page saved them but for that code and the names of
// attempts, and they say what their verdicts were: choices altered on the way would be set aside.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after } from "node:test";
import { drop, saved, section, status } from "./class.mjs";
import { download, fill, go, link, linked, write } from "./desk.mjs";
import { packageSite, soon, visit } from "./harness.mjs";
import { hosted, unzipped } from "./host.mjs";
import { begin, byMouse, debrief, run, sound } from "./play.mjs";

const SET = {
  title: "Two whole walls",
  aim: "Find out what holds before you place.",
  // Verdicts wait for a word, so that one hands in before they are told and one after.
  when: "word",
  word: "Maple leaf",
  opening: "Decide as you would on Monday.",
  cases: ["1.1.2024.2591", "1.1.2024.1397"],
};

/** What those who hold it leave out of a sound plan, and what they say of the wall instead. */
const HELD = {
  number: { step: "closure", key: "instructions", without: "emergency-number", also: {} },
  sounding: { step: "examination", key: "examinations", without: "bone-sounding", also: { "wall-ground": "sections" } },
};

/** Seven of twelve send patients home without an emergency number, five never sound bone, three do both. */
const CLASS = {
  "k-01": ["number"], "k-02": ["sounding"], "k-03": ["number", "sounding"], "k-04": [],
  "k-05": ["number"], "k-06": ["number"], "k-07": ["number"], "k-08": ["sounding"],
  "k-09": ["number", "sounding"], "k-10": ["number", "sounding"], "k-11": [], "k-12": [],
};

/** The rules that these miss, the one that most of them miss first, and who does. */
const MISSED = [
  ["no-emergency-number", ["k-01", "k-03", "k-05", "k-06", "k-07", "k-09", "k-10"]],
  ["wall-not-sounded", ["k-02", "k-03", "k-08", "k-09", "k-10"]],
];

/** What a learner misses. */
const missedBy = (code) => MISSED.filter(([, codes]) => codes.includes(code)).map(([rule]) => rule);

const folder = mkdtempSync(join(tmpdir(), "wallwise-walk-"));
after(() => rmSync(folder, { recursive: true }));

const plans = SET.cases.map(sound);

/** What is chosen at a case of the set by somebody who holds this. */
function choices(place, held) {
  const steps = structuredClone(plans[place]);
  for (const { step, key, without, also } of held.map((one) => HELD[one])) {
    const kept = steps[step][key].filter((one) => one !== without);
    assert.equal(kept.length, steps[step][key].length - 1, `a sound plan has ${without}`);
    Object.assign(steps[step], { [key]: kept, ...also });
  }
  return steps;
}

/** Writes the set at the desk: its link, and where its file lies. */
async function written(page) {
  await begin(page);
  await page.getByRole("link", { name: "Write a set" }).click();
  await page.locator("#desk-title").waitFor();
  await write(page, SET);
  await linked(page, ({ addresses }) => assert.deepEqual(addresses, SET.cases));
  const { file } = await download(page, "Save it as a file", "walls.set.toml");
  return { given: await link(page), file };
}

/** The files of a package of the set. */
function packed(file) {
  const out = join(folder, "walls.zip");
  run("package", file, "--site", packageSite, "--out", out);
  return unzipped(readFileSync(out));
}

/** Sits the whole set, from its page on. */
async function sit(page, held) {
  await page.locator(".cases a").first().click();
  await page.getByText(SET.opening).waitFor();
  await page.getByRole("button", { name: "Begin" }).click();
  for (const place of SET.cases.keys()) {
    // Every case leads to the one that is still open.
    if (place > 0) await page.locator("ol.cases a").click();
    await page.locator(".sheet").waitFor();
    await byMouse(page, choices(place, held));
    await page.getByText("This case is at its end.").waitFor();
  }
  await page.getByText("Every case of the set is at its end.").waitFor();
}

/** Hands in where the last case ends: the file. */
async function handedIn(page, code) {
  await fill(page, "sat-code", code);
  return (await download(page, "Save the attempts of this set")).text;
}

/** Says the word, reads the verdicts, and hands in from the set's page on, where the link leads again. */
async function handedInLater(page, code, given) {
  await fill(page, "sat-word", SET.word);
  const { zones } = await debrief(page);
  const faults = Object.entries(zones).filter(([, zone]) => /^(outside|unsafe)/.test(zone));
  assert.deepEqual(faults.map(([rule]) => rule), missedBy(code));
  await page.goto(given);
  await page.getByRole("link", { name: "Hand in: save your attempts" }).click();
  await fill(page, "code", code);
  return (await download(page, "Save these attempts")).text;
}

/** A learner who opens the link in a browser that knows nothing of the others. */
async function byLink({ given, address }, code, handIn) {
  let text;
  await visit(async ({ page }) => {
    await begin(page);
    await page.getByRole("heading", { name: SET.title }).waitFor();
    await sit(page, CLASS[code]);
    text = await handIn(page, code, given);
  }, { address, path: given.slice(address.length) });
  return text;
}

/** A learner whose host opens the package, and is told of it: the file. */
async function byPackage(files, code) {
  let text;
  await hosted("1.2", files, async ({ frame, commits }) => {
    await sit(frame, CLASS[code]);
    text = await handedIn(frame, code);
    // The host is told of each case what it missed, and nothing else.
    const missed = ["case-1", "case-2"].flatMap((one) => missedBy(code).map((rule) => `${one}-rule-${rule}`));
    await soon(() => {
      const told = Object.values(commits.at(-1).interactions).map(({ id }) => id);
      assert.deepEqual(told.filter((id) => id.includes("-rule-")).sort(), missed.sort());
    });
  }, { title: SET.title });
  return text;
}

/** What somebody of the same kind hands in. */
function alike(text, code) {
  const file = JSON.parse(text);
  file.learner = code;
  file.records.forEach(({ head }, place) => { head.id = `${code}-${place}`; });
  return JSON.stringify(file);
}

/** Everybody's file, by code, from those of the learners who played. */
function everybody(played) {
  for (const [code, text] of Object.entries(played)) {
    const { learner, records } = JSON.parse(text);
    assert.deepEqual([learner, records.map(({ head }) => head.address)], [code, SET.cases]);
    assert.ok(records.every(({ head }) => head.verdicts), "each attempt says what its verdicts were");
  }
  const kind = (code) => CLASS[code].join();
  const file = (code) => {
    const model = Object.keys(played).find((one) => kind(one) === kind(code));
    return model === code ? played[code] : alike(played[model], code);
  };
  return Object.keys(CLASS).map((code) => [code, file(code)]);
}

/** That the report names what was planted, with its counts and by learner, and nothing else. */
async function tells(page) {
  const lines = section(page, "missed-by-class").locator("ol > li");
  const told = async () => (await lines.allInnerTexts()).map((one) => one.replace(/\s+/g, " "));
  const found = () => lines.locator("strong a").evaluateAll((all) => all.map((one) => one.hash.split("/").at(-1)));
  await soon(async () => assert.deepEqual(await found(), MISSED.map(([rule]) => rule)));
  // The long texts come late.
  await soon(async () => {
    const [number, sounding] = await told();
    assert.match(number, /emergency number.* 7 of 12 learners .*14 of 14 that missed it left out “[^”]*number[^”]*” \(Instructions\), 0 of 10 of the others/i);
    assert.match(sounding, /sound.* 5 of 12 learners .*10 of 10 that missed it left out “bone sounding[^”]*” \(Examinations\), 0 of 14 of the others/i);
  });
  assert.match(await section(page, "grave").innerText(), /None in these attempts/);
  assert.equal(await section(page, "objections").count(), 0);
  // Learner by learner, once their codes are asked for.
  await page.getByLabel("Show learners by their codes").check();
  await soon(async () => assert.match(await section(page, "marks").innerText(), /12\. k-12/));
  const [head, ...rows] = (await saved(page, "learners.csv")).map((row) => row.split(","));
  const rules = head.indexOf("after the time") + 1;
  const missed = rows.map((row) => [row[0], head.filter((_, place) => place >= rules && row[place] === "0")]);
  assert.deepEqual(missed.map(([code, of]) => [code, of.sort()]), Object.keys(CLASS).map((code) => [code, missedBy(code).sort()]));
}

test("a set goes from the desk by link and as a package to a class of twelve, and the report names what was planted and nothing else", () =>
  visit(async ({ page, address }) => {
    const { given, file } = await written(page);
    const handed = { given, address };
    const played = {
      "k-01": await byLink(handed, "k-01", handedIn),
      "k-02": await byLink(handed, "k-02", handedInLater),
      "k-03": await byPackage(packed(file), "k-03"),
      "k-04": await byLink(handed, "k-04", handedIn),
    };
    const files = everybody(played);
    await go(page, "#/");
    await page.getByRole("link", { name: "Read what a class handed in" }).click();
    await page.locator("#handed-in").waitFor();
    // The page gives every learner's file one name: the codes in them tell them apart.
    await drop(page, files.map(([, text]) => ["wallwise-attempts.json", text]));
    await status(page).filter({ hasText: "12 files read" }).waitFor();
    assert.deepEqual(await section(page, "aside").allInnerTexts(), []);
    assert.equal(await status(page).innerText(), "12 files read, 24 attempts.");
    await tells(page);
    // The tool tells the same.
    const paths = files.map(([code, text]) => {
      const path = join(folder, `${code}.json`);
      writeFileSync(path, text);
      return path;
    });
    const { rules } = JSON.parse(run("class", ...paths, "--json"));
    const missed = rules.map(({ rule, learners: { right, of } }) => [rule, of - right, of]);
    assert.deepEqual(missed.filter(([, count]) => count > 0), MISSED.map(([rule, codes]) => [rule, codes.length, 12]));
  }));
