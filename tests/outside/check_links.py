"""The link of a set, `wallwise set link`, opened by Python's own zlib and base64 (RFC 1950; RFC 4648,
section 5) and compared with the set's file as Python's own tomllib reads it.
"""

import base64
import json
import os
import re
import subprocess
import tomllib
import unittest
import zlib
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
WALLWISE = os.environ.get("WALLWISE", ROOT / "target/release/wallwise")


def link(file):
    """What the tool prints, and what it says beside it."""
    ran = subprocess.run([WALLWISE, "set", "link", file], capture_output=True, text=True, check=True)
    return ran.stdout.strip(), ran.stderr


def opened(fragment):
    """The set that a link holds."""
    letters = re.fullmatch(r"#/given/1\.([\w-]+)", fragment)[1]
    small = base64.urlsafe_b64decode(letters + "=" * (-len(letters) % 4))
    return json.loads(zlib.decompress(small))


class Links(unittest.TestCase):
    def test_every_shipped_set_is_in_its_link_as_it_is_in_its_file(self):
        files = sorted((ROOT / "scenarios").glob("*.set.toml"))
        self.assertGreater(len(files), 5)
        moved = 0
        for file in files:
            written = tomllib.loads(file.read_text())
            held = opened(link(file)[0])
            for key in ("title", "aim", "level"):
                self.assertEqual(held[key], written[key], file)
            self.assertEqual(held.get("mode") or "study", written.get("mode", "study"), file)
            self.assertEqual(len(held["addresses"]), len(written["case"]), file)
            for address, case in zip(held["addresses"], written["case"]):
                if "address" in case:
                    self.assertEqual(address, case["address"], file)
            for band in written.get("protocol", {}).get("band", []):
                bands = json.loads(held["protocol"])["bands"]
                self.assertIn((band["rule"], band["from"], band["to"]), [(b["rule"], b["from"], b["to"]) for b in bands])
                moved += 1
            # What to ask is the instructor's.
            asks = [case["ask"] for case in written["case"] if "ask" in case]
            self.assertFalse(any(ask in json.dumps(held, ensure_ascii=False) for ask in asks), file)
        self.assertGreater(moved, 0)

    def test_what_is_left_behind_is_counted(self):
        file = ROOT / "scenarios/1-the-intact-wall.set.toml"
        comments = sum(line.lstrip().startswith("#") for line in file.read_text().splitlines())
        said = link(file)[1]
        self.assertIn(f"left behind: {comments} lines of comment", said)
        asks = sum("ask" in case for case in tomllib.loads(file.read_text())["case"])
        self.assertIn(f"{asks} questions to ask", said)


if __name__ == "__main__":
    unittest.main()
