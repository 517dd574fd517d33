// What tests of the desk, and of what comes of it, share.

import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inflateSync } from "node:zlib";
import { soon } from "./harness.mjs";

/** Goes to a place in the room. */
export const go = (page, fragment) => page.evaluate((to) => { location.hash = to; }, fragment);

/** The set that a link holds. */
export const held = (address) => {
  const [, letters] = /#\/given\/1\.([\w-]+)$/.exec(address);
  return JSON.parse(inflateSync(Buffer.from(letters, "base64url")).toString());
};

/** Fills a field and leaves it, which is when it tells. */
export async function fill(page, id, text) {
  await page.locator(`#${id}`).fill(text);
  await page.locator(`#${id}`).blur();
}

/**
 * Writes a set on the desk, which lies open: what it is, when its verdicts come, its cases, and whatever
 * else is filled in, by the desk's own names.
 */
export async function write(page, { title, aim, when, cases, ...others }) {
  await fill(page, "desk-title", title);
  await fill(page, "desk-aim", aim);
  if (when) await page.locator("#desk-mode").selectOption(when);
  for (const [id, text] of Object.entries(others)) await fill(page, `desk-${id}`, text);
  for (const address of cases) {
    await fill(page, "desk-address", address);
    await page.locator(".desk-cases > li", { hasText: address }).waitFor();
    await page.locator("#desk-address").fill("");
  }
}

/** The link of the set on the desk. */
export const link = (page) => page.locator("#desk-link").inputValue();

/** The link once it holds what is asserted of its set, which it does a moment later: its fragment. */
export async function linked(page, check, read = held) {
  await soon(async () => check(read(await link(page))));
  return /#.*/.exec(await link(page))[0];
}

/** Saves what the button of this name saves, under another name: where it lies, and as text. */
export async function download(place, name, as = "saved") {
  // The page tells of what is saved in a frame too.
  const page = place.page?.() ?? place;
  const coming = page.waitForEvent("download");
  await place.getByRole("button", { name }).click();
  const file = join(mkdtempSync(join(tmpdir(), "wallwise-")), as);
  await (await coming).saveAs(file);
  return { file, text: readFileSync(file, "utf8") };
}
