// Addresses that lead nowhere, and addresses that were meant to do harm.

import assert from "node:assert/strict";
import test from "node:test";
import { soon, visit } from "./harness.mjs";
import { begin } from "./play.mjs";

/** Fragments that name nothing. */
const NOWHERE = [
  "#/case/9.9.9.9",
  "#/case/1.1.2024.255",
  "#/case/1.1.2024",
  "#/case/1.1.2024.0.0",
  "#/case/-1",
  "#/case/1e9",
  "#/case/99999999999999999999999999",
  "#/case/18446744073709551616",
  "#/case/",
  "#/set/none/1",
  "#/set/none/0",
  "#/set/none/99999999999999999999",
  "#/set//1",
  "#/protocol/none",
  "#/attic",
  "#/case/%00",
  "#/case/1/2/3",
  `#/${"a".repeat(20000)}`,
  "#//////",
  "#?assessment",
  "#/case/\u202e1.1.1.0",
];

const PAYLOADS = [
  "<img src=x onerror=alert(1)>",
  "<script>window.harmed = true</script>",
  "\"><svg onload=window.harmed=true>",
  "javascript:window.harmed=true",
  "{{constructor.constructor('window.harmed=true')()}}",
];
const HOSTILE = PAYLOADS.flatMap((text) => [text, encodeURIComponent(text)]).flatMap((text) =>
  [`#/${text}`, `#/case/${text}`, `#/set/${text}/1`, `#/protocol/${text}`, `#/case/1?${text}`]);

/** Every address leads to a heading, a sentence, and a link or a case: never to a blank page. */
async function stands(page, fragment) {
  const main = await page.locator("main").evaluate((main) => ({
    heading: main.querySelector("h1")?.textContent ?? "",
    words: main.innerText.trim().split(/\s+/).length,
    home: !!main.querySelector('a[href="#/"], a[href="#/protocol"], .sheet, .ways'),
  }));
  assert.ok(main.heading.length > 3, `${fragment.slice(0, 60)}: no heading`);
  assert.ok(main.words > 8, `${fragment.slice(0, 60)}: ${main.words} words`);
  assert.ok(main.home, `${fragment.slice(0, 60)}: no way on`);
  assert.ok(await page.locator('header a[href="#/"]').isVisible());
}

async function go(page, fragment) {
  await page.evaluate((to) => { location.hash = to; }, fragment);
  await page.waitForFunction(() =>
    document.querySelector("#room h1") && !/is on its way/.test(document.querySelector("main").textContent));
}

test("an address that leads nowhere says so and leads home", () =>
  visit(async ({ page }) => {
    await begin(page);
    for (const fragment of NOWHERE) {
      await go(page, fragment);
      await stands(page, fragment);
    }
    // What is no case at all opens none, and says what was expected.
    for (const fragment of ["#/case/9.9.9.9", "#/case/99999999999999999999999999", "#/set/none/1"]) {
      await go(page, fragment);
      const alert = page.getByRole("alert");
      await alert.waitFor();
      assert.match(await alert.innerText(), /found|expected|reads|no /i, fragment);
      assert.equal(await page.locator(".sheet").count(), 0);
      await page.locator('main a[href="#/"]').click();
      await page.locator(".home").waitFor();
    }
  }));

test("an address that leads nowhere does so on a fresh visit too", async () => {
  for (const path of ["#/case/9.9.9.9", "#/set/none/1", "#/attic"]) {
    await visit(async ({ page }) => {
      await begin(page);
      await page.getByRole("alert").waitFor();
      await stands(page, path);
    }, { path });
  }
});

test("text that comes from outside never becomes markup", () =>
  visit(async ({ page }) => {
    page.on("dialog", (dialog) => assert.fail(`a dialogue opened: ${dialog.message()}`));
    await begin(page);
    for (const fragment of HOSTILE) {
      await go(page, fragment);
      await stands(page, fragment);
      assert.equal(await page.evaluate(() => window.harmed), undefined, fragment);
      const planted = await page.locator("main").evaluate((main) =>
        main.querySelectorAll('script, img, iframe, [onerror], [onload], a[href^="javascript:"]').length);
      assert.equal(planted, 0, fragment);
    }
  }));

test("what is typed as an address is answered beside the field", () =>
  visit(async ({ page }) => {
    await begin(page);
    for (const typed of ["", "x", "9.9.9.9.9", "../..", "1.1", PAYLOADS[0], "99999999999999999999999999"]) {
      await page.locator("#address").fill(typed);
      await page.getByRole("button", { name: "Open" }).click();
      const alert = page.getByRole("alert");
      await alert.waitFor();
      assert.match(await alert.innerText(), /expected/, typed);
      assert.equal(await page.locator("main img").count(), 0);
    }
    // A whole link, as the case page gives it, is taken as it is.
    await page.locator("#address").fill(`${page.url().split("#")[0]}#/case/7?assessment`);
    await page.getByRole("button", { name: "Open" }).click();
    await page.locator(".sheet").waitFor();
    await soon(async () => assert.match(await page.locator(".case-head").innerText(), /Assessment/));
    await go(page, "#/");
    await page.locator("#address").fill(" 18446744073709551615 ");
    await page.getByRole("button", { name: "Open" }).click();
    await page.locator(".sheet").waitFor();
    await soon(async () => assert.match(await page.locator(".address input").inputValue(), /#\/case\/\d+\.\d+\.18446744073709551615\.\d+$/));
  }));

test("cases that are drawn otherwise open from their address on a fresh visit too", () =>
  visit(async ({ page }) => {
    await begin(page);
    for (const [address, title] of [["1.2.5.0", /./], ["1.3.2.0", /Upper right second molar/]]) {
      await go(page, `#/case/${address}`);
      await page.reload();
      await page.locator(".sheet").waitFor();
      assert.match(await page.locator(".case-head h1").innerText(), title);
      assert.ok((await page.locator(".address input").inputValue()).endsWith(address));
    }
  }, { path: "#/case/1.2.5.0" }));

test("a seed and the lasting address that the page gives lead to the same case", () =>
  visit(async ({ page }) => {
    await begin(page);
    await go(page, "#/case/7");
    await page.locator(".sheet").waitFor();
    const shown = () => page.locator("main").evaluate((main) =>
      [".case-head h1", ".known", ".board"].map((part) => main.querySelector(part).innerHTML));
    const [address, first] = [await page.locator(".address input").inputValue(), await shown()];
    await go(page, "#/");
    await go(page, new URL(address).hash);
    await page.locator(".sheet").waitFor();
    await soon(async () => assert.deepEqual(await shown(), first));
  }));
