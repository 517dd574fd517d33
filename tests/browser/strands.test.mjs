// The module travels as strands; here they are laid back.

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
const { laid } = await import(`data:text/javascript,${encodeURIComponent(script)}`);
const parts = [/^app_bg-.*\.wasm$/, /^split_.*\.wasm$/].map((pattern) => readFileSync(named(pattern)));

/** What is laid back of bytes that arrive so many at a time. */
async function whole(bytes, size = bytes.length) {
  const arriving = ReadableStream.from((function* () {
    for (let at = 0; at < bytes.length; at += size) yield new Uint8Array(bytes.subarray(at, at + size));
  })());
  return new Uint8Array(await (await laid(new Response(arriving))).arrayBuffer());
}

test("every kind of instruction comes back to its place, however it arrives", async () => {
  const file = new URL("../data/strands.json", import.meta.url);
  const { module, strands } = JSON.parse(readFileSync(file, "utf8"));
  for (const size of [1, 63, 64, 65, 1000]) {
    assert.equal(Buffer.from(await whole(Buffer.from(strands, "hex"), size)).toString("hex"), module);
  }
});

test("both parts of the room are valid modules once they are laid back", async () => {
  for (const part of parts) {
    const module = await whole(part, 10_000);
    assert.ok(WebAssembly.validate(module));
    assert.ok(module.length > part.length);
    assert.deepEqual(await whole(part), module);
  }
});

test("what has arrived is handed on while the rest is still to come", async () => {
  const [first] = parts;
  const given = [];
  const arriving = new ReadableStream({
    async start(stream) {
      stream.enqueue(new Uint8Array(first.subarray(0, first.length / 2)));
      while (given.length === 0) await new Promise((later) => setTimeout(later));
      stream.enqueue(new Uint8Array(first.subarray(first.length / 2)));
      stream.close();
    },
  });
  for await (const piece of (await laid(new Response(arriving))).body) given.push(piece);
  assert.ok(given.length > 2, `${given.length} pieces`);
});

test("a part that is not there, one cut off and one that is none are refused and not compiled", async () => {
  const start = async (bytes) => WebAssembly.compileStreaming(await laid(new Response(bytes)));
  await assert.rejects(laid(new Response("", { status: 404 })), /404/);
  const [first] = parts;
  for (const end of [0, 1, 63, 64, 1000, first.length - 1]) {
    await assert.rejects(start(new Uint8Array(first.subarray(0, end))), `${end}`);
  }
  for (const byte of [0, 1, 255]) await assert.rejects(start(new Uint8Array(5000).fill(byte)), `${byte}`);
  // A number changed anywhere in the first lengths no longer fits the rest.
  // However it then reads, it comes to an end.
  for (let at = 0; at < 64; at += 4) {
    for (const bit of [1, 2, 8, 64]) {
      const strange = new Uint8Array(first);
      strange[at] ^= bit;
      await assert.rejects(start(strange), `${at} ${bit}`);
    }
  }
});
