// Packages as hosts open them: both editions under scorm-again, a host that refuses, no host, a file.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import test, { after } from "node:test";
import { axe, browse, mounted, packageSite, soon, visit, watch } from "./harness.mjs";
import { FRESH, hosted, unzipped } from "./host.mjs";
import { begin, byMouse, run, sound } from "./play.mjs";

const CASES = ["1.1.2024.2591", "1.1.2024.1857"];
const folder = mkdtempSync(join(tmpdir(), "wallwise-package-"));
after(() => rmSync(folder, { recursive: true }));

const set = join(folder, "two-walls.set.toml");
writeFileSync(set, `# synthetic, not for treatment; do not enter a real patient
format = 1
kind = "set"
title = "Two walls"
aim = "Place behind a whole wall."
level = "student"
mode = "assessment"
${CASES.map((address) => `[[case]]\naddress = "${address}"\n`).join("")}`);

const packed = Object.fromEntries(["1.2", "2004"].map((edition) => {
  const out = join(folder, `${edition}.zip`);
  run("package", set, "--edition", edition, "--pass", "60", "--site", packageSite, "--out", out);
  return [edition, unzipped(readFileSync(out))];
}));

/** Opens a package in a host, in a browser of its own, once its set is there. */
const opened = (edition, state, look, refuses) =>
  hosted(edition, packed[edition], look, { title: "Two walls", state, refuses });

const wrote = (calls) => calls.filter(({ name }) => ["SetValue", "Commit", "Initialize"].includes(name));
const play = async (frame, place, until) => {
  await frame.evaluate((to) => { location.hash = to; }, `#/set/two-walls/${place}?assessment`);
  await frame.locator(".sheet").waitFor();
  await byMouse(frame, sound(CASES[place - 1]), until);
};
const leave = async (page) => {
  await page.evaluate(() => { document.getElementById("frame").src = "about:blank"; });
};
const part = {
  "1.2": { status: (cmi) => cmi.core.lesson_status, state: (cmi) => cmi.suspend_data, mark: (cmi) => cmi.core.score.raw },
  "2004": { status: (cmi) => cmi.completion_status, state: (cmi) => cmi.suspend_data, mark: (cmi) => cmi.score.raw },
};

for (const edition of ["1.2", "2004"]) {
  test(`SCORM ${edition}: every step is committed, left and taken up again, and the end is told`, async () => {
    let left;
    const { status, state, mark } = part[edition];
    await opened(edition, FRESH[edition], async ({ page, frame, calls, commits }) => {
      assert.match(await frame.locator("article.page").innerText(), /Not clinical advice[^]*Learner, A\./);
      assert.deepEqual(await axe(frame), []);
      assert.equal(await frame.locator('nav a[href="#/today"]').count(), 0);
      await play(frame, 1, "flap");
      // A step is handed in once it is judged, a moment after the room has gone on.
      await soon(() => assert.match(JSON.stringify(commits.at(-1)), /case-1-extraction/));
      const kept = commits.length;
      assert.ok(kept >= 4, `${kept} commits`);
      await leave(page);
      await soon(() => assert.ok(commits.length > kept));
      left = commits.at(-1);
      const all = await calls();
      assert.deepEqual(wrote(all).filter(({ said, error }) => said !== "true" || error !== "0"), []);
      assert.match(all.at(-1).name, /Finish|Terminate/);
      assert.equal(status(left), "incomplete");
      assert.match(state(left), /^2\./);
      assert.ok(state(left).length <= 4096);
      assert.ok(!JSON.stringify(left.interactions ?? {}).includes("Learner"));
      for (const { given: [name, value] } of all.filter(({ name }) => name === "SetValue")) {
        assert.ok(!value.includes("Learner"), name);
      }
    });
    // Another browser, which has kept nothing: all there is comes from the host.
    const resumed = structuredClone(left);
    if (edition === "1.2") resumed.core.entry = "resume"; else resumed.entry = "resume";
    await opened(edition, resumed, async ({ page, frame, calls, commits }) => {
      await soon(async () => assert.match(await frame.locator("ol.cases").innerText(), /: begun/));
      await frame.getByRole("link", { name: "Go on" }).click();
      await frame.locator(".sheet").waitFor();
      assert.equal(await frame.locator("#sheet-title").innerText(), "Flap");
      const steps = sound(CASES[0]);
      await byMouse(frame, Object.fromEntries(Object.entries(steps).slice(Object.keys(steps).indexOf("flap"))));
      await frame.locator(".debrief").waitFor();
      await play(frame, 2);
      await frame.locator(".debrief").waitFor();
      await soon(() => assert.match(status(commits.at(-1)), /passed|completed/));
      await leave(page);
      await soon(async () => assert.match((await calls()).at(-1).name, /Finish|Terminate/));
      assert.deepEqual(wrote(await calls()).filter(({ said, error }) => said !== "true" || error !== "0"), []);
      assert.ok(Number(mark(commits.at(-1))) > 90);
    });
  });
}

test("a host that only looks back is told nothing", async () => {
  const state = structuredClone(FRESH["1.2"]);
  state.core.lesson_mode = "review";
  await opened("1.2", state, async ({ frame, calls }) => {
    await play(frame, 1, "examination");
    assert.deepEqual((await calls()).filter(({ name }) => ["SetValue", "Commit"].includes(name)), []);
  });
});

test("a host that refuses is told of in one sentence, and practice goes on", async () => {
  await opened("1.2", FRESH["1.2"], async ({ frame, commits }) => {
    const says = frame.locator(".not-kept");
    await soon(async () => assert.match(await says.innerText(), /refused .*suspend_data: error 101.*Practice goes on/));
    await play(frame, 1, "extraction");
    assert.equal(await frame.locator("#sheet-title").innerText(), "Extraction");
    assert.ok(commits.length > 0);
  }, "SetValue cmi.suspend_data");
});

test("a host that does not begin is told of, and practice goes on", async () => {
  await opened("2004", FRESH["2004"], async ({ frame }) => {
    assert.match(await frame.locator(".not-kept").innerText(), /did not begin/);
    await play(frame, 1, "examination");
  }, "Initialize");
});

test("opened as a file, without a host, the case is judged and the results are saved as statements", async () => {
  for (const [name, bytes] of Object.entries(packed["1.2"])) writeFileSync(join(folder, name), bytes);
  const browser = await browse();
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    const address = pathToFileURL(join(folder, "index.html")).href;
    const { faults, requests } = await watch(context, address);
    const page = await context.newPage();
    await page.goto(address);
    await mounted(page);
    await begin(page);
    await play(page, 1);
    await page.locator(".debrief .whole-word").waitFor();
    await page.evaluate(() => { location.hash = "#/"; });
    await soon(async () => assert.match(await page.locator("ol.cases").innerText(), /mark \d+ of 100/));
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save the results as a file" }).click(),
    ]);
    const statements = JSON.parse(readFileSync(await file.path(), "utf8"));
    assert.ok(statements.some(({ verb }) => verb.id.endsWith("/completed")));
    assert.ok(requests.every((url) => /^(file|data|blob):/.test(url)), requests.join());
    assert.deepEqual(faults, []);
  } finally {
    await browser.close();
  }
});

test("what the portfolio saves becomes statements in the tool, by a code and not by a name", () =>
  visit(async ({ page }) => {
    await begin(page);
    await page.evaluate(() => { location.hash = "#/case/1.1.2024.2591"; });
    await page.locator(".sheet").waitFor();
    await byMouse(page, sound(CASES[0]), "flap");
    await page.evaluate(() => { location.hash = "#/portfolio"; });
    await page.getByLabel("A name, if you like").fill("Ada");
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save these attempts" }).click(),
    ]);
    const saved = join(folder, "saved.json");
    await file.saveAs(saved);
    const text = run("statements", saved, "--base", "https://example.org/room");
    const [attempted, ...more] = JSON.parse(text);
    assert.deepEqual(more, []);
    assert.match(attempted.verb.id, /attempted$/);
    assert.equal(attempted.object.id, "https://example.org/room/set/outside-sets/case/1-1-2024-2591");
    assert.match(attempted.actor.account.name, /^learner-[0-9a-f]{16}$/);
    assert.ok(!text.includes("Ada"));
  }));
