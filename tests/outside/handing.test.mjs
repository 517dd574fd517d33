// What a package hands to its host, judged by other people's programs in plain node: the values by the
// run-time `scorm-again` in both editions, statements by `xapi-validation`.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import test from "node:test";
import { fileURLToPath, pathToFileURL } from "node:url";

const target = fileURLToPath(new URL("../../target/", import.meta.url));
const tools = join(process.env.WALLWISE_TOOLS ?? join(target, "tools"), "outside-node");
const folder = process.env.WALLWISE_HANDING ?? join(target, "outside", "handing");
const require = createRequire(join(tools, "package.json"));
const again = join(tools, "node_modules", "scorm-again", "dist", "esm", "scorm-again.js");
const { Scorm12API, Scorm2004API } = await import(pathToFileURL(again).href);
const faultsOf = require("xapi-validation").default;

const sittings = JSON.parse(readFileSync(join(folder, "sittings.json"), "utf8"));

/** A host of an edition, and how it is spoken to. */
function host(edition) {
  const Api = edition === "older" ? Scorm12API : Scorm2004API;
  const api = new Api({ logLevel: 5, autocommit: false });
  return {
    begin: (known) => {
      if (known) api.loadFromJSON(known);
      return api.lmsInitialize("");
    },
    set: (name, value) => api.lmsSetValue(name, value),
    get: (name) => api.lmsGetValue(name),
    fault: () => Number(api.lmsGetLastError()),
    end: () => api.lmsFinish(""),
    api,
  };
}

const yes = (answer) => String(answer) === "true";

/** Everything that a host refuses of what is set. */
function refusals(at, writes) {
  return writes.filter(([name, value]) => !yes(at.set(name, value)) || at.fault() !== 0);
}

for (const edition of ["older", "newer"]) {
  test(`a host of the ${edition} edition takes every value of every sitting`, () => {
    let values = 0;
    for (const sitting of sittings) {
      const at = host(edition);
      assert.ok(yes(at.begin()));
      assert.deepEqual(refusals(at, sitting[edition]), []);
      values += sitting[edition].length;
      const { suspend_data: kept } = at.api.cmi;
      const [, ours] = sitting[edition].find(([name]) => name === "cmi.suspend_data");
      assert.equal(kept, ours);
      assert.ok(edition === "newer" || kept.length <= 4096);
      assert.ok(yes(at.end()));
    }
    assert.ok(values > 2000, `${values} values`);
  });

  test(`a host of the ${edition} edition reads back how it went`, () => {
    for (const sitting of sittings) {
      const at = host(edition);
      at.begin();
      refusals(at, sitting[edition]);
      const mark = at.get(edition === "older" ? "cmi.core.score.raw" : "cmi.score.raw");
      assert.equal(mark === "" ? null : Number(mark), sitting.mark);
      if (edition === "older") {
        const ended = sitting.success === "unknown" ? "completed" : sitting.success;
        const status = sitting.complete ? ended : "incomplete";
        assert.equal(at.get("cmi.core.lesson_status"), status);
      } else {
        assert.equal(at.get("cmi.success_status"), sitting.success);
        const status = sitting.complete ? "completed" : "incomplete";
        assert.equal(at.get("cmi.completion_status"), status);
        assert.equal(Number(at.get("cmi.score.scaled") || 0), Math.round((sitting.mark ?? 0) * 100) / 1e4);
      }
      const count = sitting[edition].filter(([name]) => name.endsWith(".id")).length;
      assert.equal(Number(at.get("cmi.interactions._count")), count);
    }
  });
}

// What stands in place of a value of ours, and must be refused by the host: it shows that the host
// looks. It takes much that the standard forbids, which our own table of limits holds.
const PLANTED = [
  ["older", "cmi.core.score.raw", "101"],
  ["older", "cmi.core.lesson_status", "complete"],
  ["older", "cmi.core.session_time", "0000:12:34.567"],
  ["older", "cmi.interactions.99.id", "case-1-chart"],
  ["older", "cmi.interactions.0.result", "right"],
  ["newer", "cmi.score.scaled", "1.01"],
  ["newer", "cmi.score.scaled", "85"],
  ["newer", "cmi.completion_status", "complete"],
  ["newer", "cmi.session_time", "PT1.234S"],
  ["newer", "cmi.interactions.0.timestamp", "2026-11-24T14:03:59Z"],
  ["newer", "cmi.interactions.99.id", "case-1-chart"],
];

test("planted values are refused", () => {
  for (const [edition, name, value] of PLANTED) {
    const at = host(edition);
    at.begin();
    refusals(at, sittings[0][edition]);
    assert.equal(refusals(at, [[name, value]]).length, 1, `${name} = ${value}`);
  }
});

test("a host that is told the mark to reach passes by the mark alone, which is why none is told", () => {
  const hurt = sittings.find((one) => one.complete && one.hurts > 0 && one.success === "failed");
  assert.ok(hurt, "a sitting that an unsafe act fails");
  const ends = (mastery) => {
    const at = host("older");
    at.begin({ cmi: { core: { credit: "credit" }, student_data: { mastery_score: mastery } } });
    refusals(at, hurt.older);
    at.set("cmi.core.score.raw", "95");
    at.end();
    return at.api.cmi.core.lesson_status;
  };
  assert.equal(ends("60"), "passed");
  assert.equal(ends(""), "failed");
});

test("every statement is one of version 1.0.3", () => {
  const all = sittings.flatMap((sitting) => sitting.statements);
  assert.ok(all.length > 300, `${all.length} statements`);
  for (const statement of all) {
    const faults = faultsOf(statement).map(String);
    assert.deepEqual(faults, [], JSON.stringify(statement));
  }
  const verbs = new Set(all.map((one) => one.verb.id.split("/").pop()));
  for (const verb of ["attempted", "answered", "completed", "passed", "failed"]) {
    assert.ok(verbs.has(verb), verb);
  }
});

test("statements with planted faults are refused", () => {
  const whole = sittings
    .flatMap((sitting) => sitting.statements)
    .find((one) => one.result?.score && one.verb.id.endsWith("completed"));
  const plants = {
    "a verb that is no address": (one) => (one.verb.id = "completed"),
    "two identifiers of the actor": (one) => (one.actor.mbox = "mailto:a@example.org"),
    "a mark beyond the scale": (one) => (one.result.score.scaled = 2),
    "a duration that is none": (one) => (one.result.duration = "12 minutes"),
    "a registration that is no UUID": (one) => (one.context.registration = "1"),
    "an extension that is no address": (one) => (one.result.extensions = { faults: [] }),
    "a time that is none": (one) => (one.timestamp = "yesterday"),
    "an unknown part": (one) => (one.mark = 80),
    "a later version": (one) => (one.version = "3.0.0"),
  };
  for (const [fault, plant] of Object.entries(plants)) {
    const broken = structuredClone(whole);
    plant(broken);
    assert.notEqual(faultsOf(broken).length, 0, fault);
  }
});
