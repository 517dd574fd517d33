// The later part of the module travels as strands; here they are laid back.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import { site } from "./harness.mjs";

const named = (pattern) => {
  const found = readdirSync(site).filter((name) => pattern.test(name));
  assert.equal(found.length, 1, found.join(" "));
  return join(site, found[0]);
};
// The script as the page has it, which node would not take for a module by its name.
const script = readFileSync(named(/^strands-.*\.js$/), "utf8");
const { start, whole } = await import(`data:text/javascript,${encodeURIComponent(script)}`);

test("every kind of instruction comes back to its place", () => {
  const file = new URL("../data/strands.json", import.meta.url);
  const { module, strands } = JSON.parse(readFileSync(file, "utf8"));
  assert.equal(Buffer.from(whole(Buffer.from(strands, "hex"))).toString("hex"), module);
});

test("the later part of the room is a valid module once it is laid back", () => {
  const part = readFileSync(named(/^split_.*\.strands$/));
  const module = whole(part);
  assert.ok(WebAssembly.validate(module));
  assert.ok(module.length > part.length);
});

test("a part that is not there, and one that is no part, are refused and not compiled", async () => {
  const gone = new Response("", { status: 404 });
  await assert.rejects(start(gone, {}), /404/);
  await assert.rejects(start(new Response(new Uint8Array(200)), {}));
});
