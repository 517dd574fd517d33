// The page by itself: it loads, as itself and as nothing else.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import test from "node:test";
import { axe, serve, visit, wallwise } from "./harness.mjs";
import { begin } from "./play.mjs";

test("the page loads and shows what the engine computes", () =>
  visit(async ({ page }) => {
    assert.match(await page.locator("#room").innerText(), /never clinical advice/i);
    await begin(page);
    await page.locator(".sheet").waitFor();
    const steps = await page.locator(".steps li > span:first-child").allTextContents();
    assert.deepEqual([steps[0], steps[1], steps.at(-1)], ["Chart", "Examination", "Debrief"]);
    // Along the implant nothing can be drawn before there is one.
    for (const name of ["facial-map", "section", "gap-clock"]) await page.locator(`.board .figure-${name}`).waitFor();
    assert.equal(await page.locator(".board .figure").count(), 3);
  }, { path: "#/case/1" }));

test("the protocol shows every fact behind the rules and every reason for leaving one out", () =>
  visit(async ({ page }) => {
    const book = JSON.parse(execFileSync(wallwise, ["rules", "--json"], { encoding: "utf8", maxBuffer: 1 << 26 }));
    await begin(page);
    const lists = page.locator(".facts ul");
    await lists.first().waitFor();
    assert.deepEqual(await page.locator(".facts h2").allTextContents(), ["Facts behind the rules", "Left out, and why"]);
    for (const [place, entries] of [book.facts, book["left-out"]].entries()) {
      assert.ok(entries.length > 0);
      const shown = await lists.nth(place).locator("li").allTextContents();
      assert.deepEqual(shown, entries.map(({ ledger, says }) => `${ledger}: ${says}`));
    }
  }, { path: "#/protocol" }));

test("no file is asked for twice", () =>
  visit(async ({ requests }) => assert.deepEqual(requests, [...new Set(requests)])));

test("the accessibility engine has nothing to say", () =>
  visit(async ({ page }) => assert.deepEqual(await axe(page), [])));

test("the page is found to be at fault when it is", async () => {
  // A watch that never barks proves nothing: each kind of fault is planted once.
  const planted = [
    [/policy broken: img-src/, () => { new Image().src = "https://elsewhere.invalid/x.png"; }],
    [/policy broken: style-src/, () => document.body.setAttribute("style", "color: red")],
    [/console: planted/, () => console.error("planted")],
    [/uncaught: Error: planted/, () => { setTimeout(() => { throw new Error("planted"); }); }],
  ];
  for (const [expected, fault] of planted) {
    await assert.rejects(
      visit(async ({ page }) => {
        await page.evaluate(fault);
        await page.waitForTimeout(100);
      }),
      (error) => expected.test(error.message),
    );
  }
});

test("a page with an unnamed picture does not pass the accessibility engine", () =>
  visit(async ({ page }) => {
    await page.evaluate(() => document.querySelector("#room").append(new Image()));
    assert.match((await axe(page)).join("\n"), /image-alt/);
  }));

test("each file comes with its type, compressed, under the strict policy", async () => {
  const served = await serve();
  try {
    const get = (path, headers) => fetch(new URL(path, served.address), { headers });
    const entry = await (await get("./")).text();
    const named = [...entry.matchAll(/(?:href|src)="(\.\/[^"]+)"/g)].map(([, path]) => path);
    const types = {
      js: "text/javascript; charset=utf-8",
      wasm: "application/wasm",
      css: "text/css; charset=utf-8",
      svg: "image/svg+xml",
    };
    for (const [extension, type] of Object.entries(types)) {
      const path = named.find((path) => path.endsWith(`.${extension}`));
      assert.ok(path, `expected index.html to name a .${extension} file`);
      const answer = await get(path, { "accept-encoding": "br" });
      assert.equal(answer.status, 200);
      assert.equal(answer.headers.get("content-type"), type);
      assert.equal(answer.headers.get("content-encoding"), "br");
      assert.match(answer.headers.get("cache-control"), /immutable/);
      assert.match(answer.headers.get("content-security-policy"), /^default-src 'none'; script-src 'self' 'wasm-unsafe-eval';/);
      assert.equal(answer.headers.get("x-content-type-options"), "nosniff");
      assert.equal(answer.headers.get("referrer-policy"), "no-referrer");
      const small = await answer.arrayBuffer();
      const plain = await (await get(path, { "accept-encoding": "identity" })).arrayBuffer();
      assert.deepEqual(Buffer.from(small), Buffer.from(plain), `${path} differs when compressed`);
    }
  } finally {
    await served.end();
  }
});
