// A host for packages: what `wallwise package` wrote, unzipped and played in a frame under scorm-again,
// another project's run-time of both editions. It serves every file of a package as bytes of no kind,
// as some hosts do, and writes down what is committed and each call with what was answered.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { browse, mounted, tools, watch } from "./harness.mjs";
import { begin } from "./play.mjs";

const dist = join(tools, "node", "node_modules", "scorm-again", "dist");

/** The files of an archive that stores them as they are: `{ name: bytes }`, read by its directory. */
export function unzipped(archive) {
  const files = {};
  const end = archive.lastIndexOf(Buffer.from("PK\x05\x06", "latin1"));
  let at = archive.readUInt32LE(end + 16);
  for (let left = archive.readUInt16LE(end + 10); left > 0; left -= 1) {
    const [size, name, extra, note] = [20, 28, 30, 32].map((field, place) =>
      place === 0 ? archive.readUInt32LE(at + field) : archive.readUInt16LE(at + field));
    const start = archive.readUInt32LE(at + 42);
    const body = start + 30 + archive.readUInt16LE(start + 26) + archive.readUInt16LE(start + 28);
    files[archive.toString("latin1", at + 46, at + 46 + name)] = archive.subarray(body, body + size);
    at += 46 + name + extra + note;
  }
  return files;
}

const EDITIONS = {
  "1.2": { script: "scorm12.min.js", kind: "Scorm12API", api: "API", prefix: "LMS" },
  "2004": { script: "scorm2004.min.js", kind: "Scorm2004API", api: "API_1484_11", prefix: "" },
};

/** What a host knows of a learner who comes for the first time. */
export const FRESH = {
  "1.2": { core: { student_id: "u-1", student_name: "Learner, A.", lesson_mode: "normal", entry: "ab-initio" } },
  "2004": { learner_id: "u-1", learner_name: "Learner, A.", mode: "normal", entry: "ab-initio" },
};

/** The page of a host; `state` is what it knows of the learner, `refuses` how the calls begin that it refuses. */
function page(edition, state, refuses) {
  const { script, kind, api, prefix } = EDITIONS[edition];
  return `<!doctype html><title>Host</title><link rel="icon" href="data:,"><script src="/sa/${script}"></script><script>
    window.calls = [];
    let wrong = "";
    const host = new ${kind}({ lmsCommitUrl: "/commit", autocommit: false, logLevel: 5 });
    host.loadFromJSON(${JSON.stringify(state)});
    window.${api} = {};
    for (const name of ["Initialize", "GetValue", "SetValue", "Commit", "Finish", "Terminate", "GetLastError"]) {
      window.${api}["${prefix}" + name] = (...given) => {
        const refused = ${JSON.stringify(refuses)} && [name, ...given].join(" ").startsWith(${JSON.stringify(refuses)});
        if (name === "GetLastError" && wrong) return wrong;
        wrong = refused ? "101" : "";
        const said = refused ? "false" : host["${prefix}" + name](...given);
        calls.push({ name, given, said: String(said), error: wrong || String(host["${prefix}GetLastError"]()) });
        return said;
      };
    }
  </script><iframe id="frame" src="/package/index.html" width="1250" height="850"></iframe>`;
}

/** Hosts the files of a package until `end()`; `commits` fills with what is committed. */
async function host(edition, files, state, refuses = "") {
  const commits = [];
  const server = createServer((request, response) => {
    const path = new URL(request.url, "http://host").pathname;
    const answer = (bytes, type) => response.writeHead(200, { "content-type": type }).end(bytes);
    if (path === "/") return answer(page(edition, state, refuses), "text/html");
    if (path.startsWith("/sa/")) return answer(readFileSync(join(dist, path.slice(4))), "text/javascript");
    const file = files[path.replace("/package/", "")];
    if (file) return answer(file, path.endsWith(".html") ? "text/html" : "application/octet-stream");
    if (path !== "/commit") return response.writeHead(404).end();
    let body = "";
    request.on("data", (chunk) => { body += chunk; });
    request.on("end", () => {
      commits.push(JSON.parse(body).cmi);
      answer('{"result":true,"errorCode":0}', "application/json");
    });
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  const address = `http://127.0.0.1:${server.address().port}/`;
  return { address, commits, end: () => { server.closeAllConnections(); server.close(); } };
}

/**
 * Opens a package in a host, in a browser of its own, once the set of this title is there; hands
 * `{ page, frame, calls, commits }` to `look`: the host's page, the package's frame, what was called and
 * committed.
 */
export async function hosted(edition, files, look, { title, state = FRESH[edition], refuses }) {
  const served = await host(edition, files, state, refuses);
  const browser = await browse();
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    const { faults } = await watch(context, served.address);
    const page = await context.newPage();
    await page.goto(served.address);
    const frame = await (await page.locator("#frame").elementHandle()).contentFrame();
    await mounted(frame);
    await begin(frame);
    await frame.getByRole("heading", { name: title }).waitFor();
    const calls = () => page.evaluate(() => calls);
    await look({ page, frame, calls, commits: served.commits });
    // The host's own script may complain of itself; the package may not.
    assert.deepEqual(faults.filter((fault) => !/\/commit/.test(fault)), []);
  } finally {
    await browser.close();
    served.end();
  }
}
