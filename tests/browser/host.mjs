// A host for packages: what `wallwise package` wrote, unzipped and played in a frame under scorm-again,
// another project's run-time of both editions. It serves every file of a package as bytes of no kind,
// as some hosts do, and writes down what is committed and each call with what was answered.

import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const target = fileURLToPath(new URL("../../target/", import.meta.url));
const tools = process.env.WALLWISE_TOOLS ?? join(target, "tools");
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
export async function host(edition, files, state, refuses = "") {
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
