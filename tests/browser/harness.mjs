// What every browser test shares: a served page, a browser, and a watch on what the page does.
//
//   import { visit } from "./harness.mjs";
//   test("the page …", () => visit(async ({ page, address }) => { … }));
//
// `visit` fails the test if the page logged an error, broke its policy or asked any other host.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { after } from "node:test";
import { fileURLToPath } from "node:url";
import { join } from "node:path";

const target = fileURLToPath(new URL("../../target/", import.meta.url));
/** Where the packages are that the tests need. */
export const tools = process.env.WALLWISE_TOOLS ?? join(target, "tools");
const require = createRequire(join(tools, "node", "package.json"));
const { chromium } = require("playwright-core");

/** The tool, and the folder that it built. */
export const wallwise = process.env.WALLWISE ?? join(target, "release", "wallwise");
export const site = process.env.WALLWISE_SITE ?? join(target, "site");
/** The folder of the page that packages carry. */
export const packageSite = process.env.WALLWISE_PACKAGE_SITE ?? join(target, "package-site");
/** The program that says what the native build computes. */
export const nativeParity =
  process.env.WALLWISE_PARITY ?? join(target, "release", "examples", "parity");

// A page under test needs no sandbox, no graphics card and none of the browser's own errands.
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Starts a program and waits for the line that matches `ready`: its match, and a way to end it. */
export async function start(program, args, ready) {
  const child = spawn(program, args, { stdio: ["ignore", "pipe", "pipe"] });
  const ended = new Promise((resolve) => child.on("exit", resolve));
  const end = () => {
    child.kill();
    return ended;
  };
  let said = "";
  const match = await new Promise((resolve, reject) => {
    const hear = (chunk) => {
      said += chunk;
      const found = ready.exec(said);
      if (found) resolve(found);
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.on("error", reject);
    child.on("exit", () => reject(new Error(`${program} ended before it was ready; it said: ${said}`)));
  });
  return { match, end };
}

/** Serves the built folder, or another, with the tool itself. */
export async function serve(folder = site) {
  const args = ["serve", "--no-build", "--port", "0", "--folder", folder];
  const { match, end } = await start(wallwise, args, /http:\/\/127\.0\.0\.1:\d+\//);
  return { address: match[0], end };
}

const browser = { executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS };

/** Opens a browser. */
export const browse = () => chromium.launch(browser);

/** The browser of all visits of a file: each has a context of its own, which knows nothing of the others. */
let visited;
async function browsing() {
  if (!(await visited)?.isConnected()) visited = browse();
  return visited;
}
after(async () => (await visited)?.close());

/** Opens a browser that keeps everything in a folder, as a reader's own does: its one context. */
export const settle = (folder) => chromium.launchPersistentContext(folder, browser);

/**
 * Watches what the pages of a context do: `faults` fills with every error that they log, every break
 * of their policy, every request that fails or asks another host than `home`'s; `requests` with what
 * the pages ask for, `kept` with what the worker fetches to keep it, for which no page waits.
 */
export async function watch(context, home) {
  const [faults, requests, kept] = [[], [], []];
  await context.exposeBinding("noteViolation", (_, what) => faults.push(`policy broken: ${what}`));
  await context.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) =>
      noteViolation(`${event.violatedDirective} by ${event.blockedURI || event.sourceFile}`));
  });
  context.on("request", (request) => {
    (request.serviceWorker() ? kept : requests).push(request.url());
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith("http") && origin !== new URL(home).origin) {
      faults.push(`asked another host: ${request.url()}`);
    }
  });
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) faults.push(`console: ${message.text()}`);
  });
  context.on("weberror", (error) => faults.push(`uncaught: ${error.error()}`));
  // A page that is left cuts off what it had just asked for, as it may seconds after it came to keep
  // itself for later: no fault of the page, and no moment is known at which it would ask for nothing.
  const away = { pages: 0 };
  context.on("page", (page) => leaving(page, away));
  context.on("requestfailed", (request) => {
    const why = request.failure()?.errorText;
    const cut = away.pages > 0 && why === "net::ERR_ABORTED" && !request.serviceWorker();
    if (!cut) faults.push(`request failed: ${request.url()} ${why}`);
  });
  return { faults, requests, kept };
}

/** Counts in `away` the pages that are being left or loaded anew; after they have come to rest. */
function leaving(page, away) {
  for (const way of ["reload", "goto"]) {
    const go = page[way].bind(page);
    page[way] = async (...where) => {
      if (page.url() !== "about:blank") await page.waitForLoadState("networkidle");
      away.pages += 1;
      try {
        return await go(...where);
      } finally {
        away.pages -= 1;
      }
    };
  }
}

/**
 * Opens `address` (by default the page, served by the tool) once the room is mounted, hands
 * `{ page, address, context, requests, kept }` to `look`, and holds the page to its manners; `planted`
 * is how a fault that the test itself made is worded, `before` is done to the browser before it goes
 * there.
 */
export async function visit(look, { address, context: options = {}, path = "", planted, before } = {}) {
  const served = address ? undefined : await serve();
  const home = address ?? served.address;
  const browser = await browsing();
  const context = await browser.newContext(options);
  try {
    const { faults, ...seen } = await watch(context, home);
    await before?.(context);
    const page = await context.newPage();
    await page.goto(home + path);
    await mounted(page);
    await look({ page, address: home, context, browser, ...seen });
    assert.deepEqual(faults.filter((fault) => !planted?.test(fault)), []);
  } finally {
    await context.close();
    await served?.end();
  }
}

/**
 * What is asserted of a page after something was done to it: the page draws a moment later, so it is
 * tried until it holds, for five seconds, and then fails as it stands.
 */
export async function soon(check) {
  const late = Date.now() + 5000;
  for (;;) {
    try {
      return await check();
    } catch (error) {
      if (Date.now() > late) throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** Waits until the module has mounted the room. */
export async function mounted(page) {
  await page.locator("#room h1").waitFor();
}

/** Everything that the accessibility engine objects to, worded for a failed test. */
export async function axe(page) {
  // The policy forbids an added script, so the engine is evaluated instead.
  if (!(await page.evaluate(() => "axe" in globalThis))) {
    await page.evaluate(readFileSync(require.resolve("axe-core/axe.min.js"), "utf8"));
  }
  const { violations } = await page.evaluate(() =>
    axe.run(document, {
      runOnly: {
        type: "tag",
        values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      },
    }));
  return violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0].html})`);
}
