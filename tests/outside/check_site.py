"""The built folder, judged by Python's own HTML parser, hash functions and brotli decoder."""

import hashlib
import json
import os
import re
import unittest
from html.parser import HTMLParser
from pathlib import Path

import brotli

SITE = Path(os.environ.get("WALLWISE_SITE", Path(__file__).parents[2] / "target/site"))
# Bytes as sent: until the first case can be played, and for everything.
FIRST_VISIT = 280_000
# As the browser suite has it: whoever teaches has more beside the learners' room.
EVERYTHING = 725_000


class Addresses(HTMLParser):
    """Every address that the page's entry names."""

    def __init__(self):
        super().__init__()
        self.found = []

    def handle_starttag(self, tag, attrs):
        self.found += [value for name, value in attrs if name in ("href", "src")]


class Site(unittest.TestCase):
    def setUp(self):
        self.files = json.loads((SITE / "site.json").read_text())["files"]
        entry = Addresses()
        entry.feed((SITE / "index.html").read_text())
        self.addresses = entry.found

    def sent(self, path):
        small = SITE / (path + ".br")
        return (small if small.exists() else SITE / path).stat().st_size

    def test_each_listed_file_is_there_with_the_listed_hash(self):
        self.assertGreater(len(self.files), 4)
        for file in self.files:
            content = (SITE / file["path"]).read_bytes()
            self.assertEqual(hashlib.sha256(content).hexdigest(), file["sha256"], file["path"])
            self.assertEqual(len(content), file["bytes"], file["path"])

    def test_each_name_stands_for_its_content(self):
        for file in self.files:
            if file["path"] not in ("index.html", "sw.js"):
                stem = Path(file["path"]).stem
                self.assertEqual(stem[-17:], "-" + file["sha256"][:16], file["path"])

    def test_another_decoder_reads_what_ours_compressed(self):
        compressed = sorted(SITE.rglob("*.br"))
        self.assertGreater(len(compressed), 4)
        for small in compressed:
            plain = small.with_suffix("").read_bytes()
            self.assertEqual(brotli.decompress(small.read_bytes()), plain, small.name)

    def test_each_address_in_the_entry_is_relative_and_leads_to_a_file(self):
        self.assertGreater(len(self.addresses), 4)
        for address in self.addresses:
            self.assertRegex(address, r"^\./[a-z0-9_/.-]+$")
            self.assertTrue((SITE / address).is_file(), address)

    def test_no_path_of_the_building_machine_is_in_the_module(self):
        for module in SITE.rglob("*.wasm"):
            found = re.search(rb"/(root|home|work|Users)/[\w./-]+", module.read_bytes())
            self.assertIsNone(found, module.name)

    def test_the_first_visit_stays_within_its_budget(self):
        # What the entry names, and the list of sets that the first case is chosen from; a browser
        # test holds that nothing else is fetched before that case is on the bench.
        sets = [file["path"] for file in self.files if file["path"].startswith("sets-")]
        self.assertEqual(len(sets), 1)
        first = ["index.html"] + [address[2:] for address in self.addresses] + sets
        self.assertLessEqual(sum(map(self.sent, first)), FIRST_VISIT)

    def test_everything_stays_within_its_budget(self):
        self.assertLessEqual(sum(self.sent(file["path"]) for file in self.files), EVERYTHING)
