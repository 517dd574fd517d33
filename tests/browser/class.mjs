// What tests of the page that reads a class share.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { go } from "./desk.mjs";
import { begin } from "./play.mjs";

const data = fileURLToPath(new URL("../data/", import.meta.url));
const { files: kinds } = JSON.parse(readFileSync(`${data}planted-class.json`, "utf8"));
/** Kinds of learners, by their places among the planted. */
export const KINDS = [0, 1, 2, 3];
const [NUMBER, BOTH, SOUNDING, NEITHER] = KINDS;

/** A learner of a kind, with attempts of their own, as one file. */
export function learner(code, kind, change = () => {}) {
  const file = structuredClone(kinds[kind]);
  file.learner = code;
  for (const record of file.records) {
    record.head.id = record.head.id.replace(/^kind-\d/, code);
    change(record);
  }
  return { name: `${code}.json`, mimeType: "application/json", buffer: Buffer.from(JSON.stringify(file)) };
}

/** Eight of twelve send the patient home without an emergency number, four never sound bone. */
export const twelve = () =>
  Array.from({ length: 12 }, (_, place) =>
    learner(`k-${String(place).padStart(2, "0")}`,
      place < 6 ? NUMBER : place < 8 ? BOTH : place < 10 ? SOUNDING : NEITHER));

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

/** Opens the page. */
export async function open(page) {
  await begin(page);
  await go(page, "#/class");
  await page.locator("#handed-in").waitFor();
}

/** Has files read, and waits for so many attempts. */
export async function read(page, files, attempts) {
  await page.locator("#handed-in").setInputFiles(files);
  await counted(page, attempts);
}
