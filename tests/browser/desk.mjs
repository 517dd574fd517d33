// What tests of the desk, and of what comes of it, share.

import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inflateSync } from "node:zlib";

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

/** Saves what the button of this name saves, under another name: where it lies, and as text. */
export async function download(page, name, as = "saved") {
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name }).click();
  const file = join(mkdtempSync(join(tmpdir(), "wallwise-")), as);
  await (await coming).saveAs(file);
  return { file, text: readFileSync(file, "utf8") };
}
