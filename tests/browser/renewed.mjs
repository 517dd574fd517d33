// A folder that is served and can be renewed in place, as a server is when a newer version is put on it.

import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { serve, site } from "./harness.mjs";

const TEXT = /\.(css|html|js|json|svg|webmanifest)$/;
const NAMED = /-([0-9a-f]{16})(?=\.\w+$)/;

const hash = (bytes) => createHash("sha256").update(bytes);

/** The files of the built page, by path: what lies in the folder but the list and what is compressed. */
export function built() {
  const entries = readdirSync(site, { recursive: true, withFileTypes: true });
  const paths = entries.filter((one) => one.isFile()).map((one) => relative(site, join(one.parentPath, one.name)));
  const files = paths.filter((path) => !/(\.br|^site\.json)$/.test(path));
  return new Map(files.map((path) => [path, readFileSync(join(site, path))]));
}

/**
 * The page with one of its files changed, as the build would make it: `change` maps the file's bytes.
 * Every name stands for its content again, and so does what refers to it, up to the worker's list.
 */
export function renewed(start, change) {
  const files = built();
  const changed = [...files.keys()].find((path) => path.startsWith(start));
  files.set(changed, change(files.get(changed)));
  for (;;) {
    const stale = [...files].find(([path, bytes]) => {
      const named = NAMED.exec(path)?.[1];
      return named && named !== hash(bytes).digest("hex").slice(0, named.length);
    });
    if (!stale) break;
    rename(files, ...stale);
  }
  list(files);
  return files;
}

/** Names a file for its content wherever it is named. */
function rename(files, path, bytes) {
  const [, before] = NAMED.exec(path);
  const after = hash(bytes).digest("hex").slice(0, before.length);
  files.delete(path);
  files.set(path.replace(before, after), bytes);
  for (const [at, text] of files) {
    if (TEXT.test(at)) files.set(at, Buffer.from(text.toString().replaceAll(before, after)));
  }
}

/** Writes the list of the worker, and the version. */
function list(files) {
  const [, before] = /data-version="(\w+)"/.exec(files.get("index.html"));
  const after = hash([...files].map(([path, bytes]) => path + hash(bytes).digest("hex")).join()).digest("hex").slice(0, 16);
  const put = (path, from, to) => files.set(path, Buffer.from(files.get(path).toString().replace(from, to)));
  put("index.html", before, after);
  const listed = [...files].filter(([path]) => path !== "sw.js").sort()
    .map(([path, bytes]) => [path, `sha256-${hash(bytes).digest("base64")}`]);
  put("sw.js", `const VERSION = "${before}"`, `const VERSION = "${after}"`);
  put("sw.js", /const FILES = .*;/, `const FILES = ${JSON.stringify(listed)};`);
}

/**
 * A custom section at the end of the later part: another content that does the same. The first number
 * of a part in strands is how long its sections are, and the sections are what it begins with.
 */
export function withSection(bytes) {
  const section = Buffer.from([0, 2, 1, 0x78]);
  const numbers = [];
  let at = 0;
  for (let strand = 0; strand < 16; strand += 1) {
    let number = 0;
    for (let shift = 0, byte = 128; byte > 127; shift += 7) number |= ((byte = bytes[at++]) & 127) << shift;
    numbers.push(number);
  }
  const end = at + numbers[0];
  numbers[0] += section.length;
  const lengths = numbers.flatMap((number) => {
    const written = [];
    for (; number > 127; number >>>= 7) written.push((number & 127) | 128);
    return [...written, number];
  });
  return Buffer.concat([Buffer.from(lengths), bytes.subarray(at, end), section, bytes.subarray(end)]);
}

/** The version that a page of these files says it is. */
export const versionOf = (files) => /data-version="(\w+)"/.exec(files.get("index.html"))[1];

/** The path of the file whose name begins so. */
export const named = (files, start) => [...files.keys()].find((path) => path.startsWith(start));

/** Serves a copy of the built folder; `renew` puts these files in its place, under the same address. */
export async function renewable() {
  const folder = mkdtempSync(join(tmpdir(), "wallwise-"));
  cpSync(site, folder, { recursive: true });
  const { address, end } = await serve(folder);
  const renew = (files) => {
    for (const entry of readdirSync(folder)) rmSync(join(folder, entry), { recursive: true });
    for (const [path, bytes] of files) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), bytes);
    }
  };
  return {
    address,
    renew,
    end: async () => {
      await end();
      rmSync(folder, { recursive: true });
    },
  };
}
