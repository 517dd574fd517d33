// What tests of the page that reads a class share.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";

/** How far the page has come. */
export const status = (page) => page.locator(".class > [role=status]");

/** Waits until so many attempts are read: a machine that has more to do takes its time. */
export const counted = (page, attempts) =>
  status(page).filter({ hasText: new RegExp(`read, ${attempts} attempts`) }).waitFor();

/** Drops files on the page, as `[name, text]`. */
export async function drop(page, files) {
  const carried = await page.evaluateHandle((files) => {
    const carried = new DataTransfer();
    for (const [name, text] of files) carried.items.add(new File([text], name));
    return carried;
  }, files);
  await page.locator(".class").dispatchEvent("dragover", { dataTransfer: carried });
  await page.locator(".class").dispatchEvent("drop", { dataTransfer: carried });
}

/** A part of the report. */
export const section = (page, id) => page.locator(`section[aria-labelledby="${id}"]`);

/** The lines of a table that the page saves. */
export async function saved(page, name) {
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: `Save ${name}` }).click();
  const got = await download;
  assert.equal(got.suggestedFilename(), name);
  return readFileSync(await got.path(), "utf8").trim().split("\r\n");
}
