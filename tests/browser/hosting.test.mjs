// The folder on somebody else's server, which knows nothing of it.

import assert from "node:assert/strict";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { site, start, visit } from "./harness.mjs";
import { begin } from "./play.mjs";

test("a plain static server can host the folder under any path", async () => {
  const root = mkdtempSync(join(tmpdir(), "wallwise-"));
  cpSync(site, join(root, "a", "b"), { recursive: true });
  const args = ["-u", "-m", "http.server", "0", "--bind", "127.0.0.1", "--directory", root];
  const { match, end } = await start("python3", args, /port (\d+)/);
  try {
    // No header says the policy here, so the page's own statement of it is what is watched.
    await visit(async ({ page }) => {
      await begin(page);
      // Sets come from a file of their own, and a case is computed: both work from there.
      await page.locator(".home .set").first().waitFor();
      await page.evaluate(() => { location.hash = "#/case/1"; });
      await page.locator(".sheet").waitFor();
      assert.match(await page.locator(".address input").inputValue(), /\/a\/b\/#\/case\/\d/);
    }, { address: `http://127.0.0.1:${match[1]}/a/b/` });
  } finally {
    await end();
    rmSync(root, { recursive: true });
  }
});
