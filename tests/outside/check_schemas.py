"""What the tool prints with --json, judged by Python's jsonschema and tomllib.

The schemas in tests/schemas are held to the JSON Schema standard (2020-12), real outputs to the
schemas, and case files, read by a TOML reader that is not ours, to the same schema as their JSON.
"""

import copy
import json
import os
import re
import subprocess
import tempfile
import tomllib
import unittest
from pathlib import Path

from jsonschema import Draft202012Validator

TOOL = os.environ.get("WALLWISE", "wallwise")
SCHEMAS = Path(__file__).parents[1] / "schemas"
TEMPLATES = Path(__file__).parents[2] / "scenarios"
# Drawn one by one until every part that a case may have has been seen.
SEEDS = range(1, 41)


def schema(name):
    return json.loads((SCHEMAS / f"{name}.json").read_text())


def validator(name):
    return Draft202012Validator(schema(name))


def run(*arguments, codes=(0,)):
    ran = subprocess.run([TOOL, *arguments], capture_output=True, text=True, check=False)
    if ran.returncode not in codes:
        raise AssertionError(f"{arguments}: exit {ran.returncode}\n{ran.stdout}{ran.stderr}")
    return ran.stdout


def faults(name, printed):
    return [f"{fault.json_path}: {fault.message}" for fault in validator(name).iter_errors(printed)]


def objects(value, path=()):
    """Every object below a value, with the way to it."""
    if isinstance(value, dict):
        yield path, value
    children = value.items() if isinstance(value, dict) else enumerate(value)
    for key, child in children:
        if isinstance(child, (dict, list)):
            yield from objects(child, (*path, key))


def at(value, path):
    for key in path:
        value = value[key]
    return value


class Schemas(unittest.TestCase):
    def test_each_schema_keeps_to_the_standard(self):
        names = {path.stem for path in SCHEMAS.glob("*.json")}
        self.assertEqual(names, {"judge", "rules", "explain", "case", "population", "set", "replay", "class", "blueprint"})
        for name in names:
            Draft202012Validator.check_schema(schema(name))

    def test_the_population_table_keeps_to_its_schema(self):
        printed = json.loads(run("population", "--seeds", "200", "--json", codes=(0, 1)))
        self.assertEqual(faults("population", printed), [])

    def test_sets_that_are_checked_keep_to_their_schema_with_and_without_a_line_of_their_own(self):
        own = set()
        for file in sorted(TEMPLATES.glob("*.set.toml")):
            printed = json.loads(run("set", "check", str(file), "--json"))
            self.assertEqual(faults("set", printed), [], file.name)
            self.assertEqual(len(printed["cases"]), len(tomllib.loads(file.read_text())["case"]))
            told = tomllib.loads(file.read_text()).get("protocol")
            own.add(told is not None)
            blueprint = json.loads(run("set", "blueprint", str(file), "--json"))
            self.assertEqual(faults("blueprint", blueprint), [], file.name)
            printed["cases"][0]["difficulty"]["value"] = "hard"
            self.assertNotEqual(faults("set", printed), [], "a word is no number")
        self.assertEqual(own, {True, False})

    def test_attempts_that_are_done_again_keep_to_their_schema(self):
        data = Path(__file__).parents[1] / "data"
        for name in ("attempt-format-1.json", "attempts-format-2.json"):
            printed = json.loads(run("replay", str(data / name), "--json"))
            self.assertEqual(faults("replay", printed), [], name)
            self.assertGreater(len(printed["attempts"]), 0)
            printed = json.loads(run("class", str(data / name), "--json"))
            self.assertEqual(faults("class", printed), [], name)
            self.assertGreater(printed["counted"], 0)

    def test_cases_keep_to_their_schema_as_json_and_as_files(self):
        kinds = set()
        for seed in SEEDS:
            printed = json.loads(run("case", str(seed), "--json"))
            self.assertEqual(faults("case", printed), [], seed)
            self.assertEqual(tomllib.loads(run("case", str(seed), "--toml")), printed["case"], seed)
            site = printed["case"]["site"]
            kinds |= {defect["kind"] for defect in site.get("defect", [])}
            kinds |= {site["mesial"]["stands"], site["distal"]["stands"], site["lesion"]["kind"]}
            kinds |= set(site.get("vital", {}))
        # A check on easy cases alone would say little.
        self.assertGreaterEqual(len(kinds), 8, kinds)

    def test_the_templates_of_cases_keep_to_the_schema_and_name_every_key_of_it(self):
        texts = [path.read_text() for path in sorted(TEMPLATES.glob("template*.case.toml"))]
        self.assertEqual(len(texts), 2)
        whole = schema("case")
        file = {**whole, "$ref": "#/$defs/CaseFile"}
        for of_the_whole in ("type", "properties", "required", "additionalProperties"):
            del file[of_the_whole]
        for text in texts:
            faults_in = Draft202012Validator(file).iter_errors(tomllib.loads(text))
            self.assertEqual([fault.message for fault in faults_in], [])
        # How hard a case is, is told of it and stands in no file.
        parts = {name: part for name, part in whole["$defs"].items() if name != "Difficulty"}
        keys = {key for _, found in objects(parts) for key in found.get("properties", {})}
        self.assertGreater(len(keys), 60)
        named = set(re.findall(r"[a-z0-9-]+", "\n".join(texts)))
        self.assertEqual(keys - named, set())

    def test_verdicts_keep_to_their_schema_on_a_sound_plan_and_on_a_spoilt_one(self):
        with tempfile.TemporaryDirectory() as folder:
            words = set()
            for seed in SEEDS[:6]:
                plan = run("case", str(seed), "--plan")
                spoilt = plan.replace('"curette-and-irrigate"', '"nothing"')
                for text in (plan, spoilt):
                    file = Path(folder) / "plan.toml"
                    file.write_text(text)
                    printed = json.loads(run("judge", str(seed), file, "--json", codes=(0, 1)))
                    self.assertEqual(faults("judge", printed), [], seed)
                    words.add(printed["plan"])
            self.assertIn("sound", words)
            self.assertGreater(len(words), 1, "the spoilt plans are not sound")

    def test_rules_keep_to_their_schema_together_and_one_by_one(self):
        book = json.loads(run("rules", "--json"))
        self.assertEqual(faults("rules", book), [])
        self.assertGreater(len(book["rules"]), 50)
        for rule in book["rules"][:5]:
            alone = json.loads(run("explain", rule["id"], "--json"))
            self.assertEqual(faults("explain", alone), [])
            self.assertEqual(alone, rule)

    def test_a_key_too_many_or_too_few_or_of_another_kind_is_refused(self):
        for name, printed in (
            ("case", json.loads(run("case", "1", "--json"))),
            ("explain", json.loads(run("explain", "membrane-short-of-intact-bone", "--json"))),
        ):
            for path, found in objects(printed):
                for spoil in (
                    lambda one: one.update({"stranger": 1}),
                    lambda one: one.update({next(iter(one)): {"not": "this"}}),
                ):
                    spoilt = copy.deepcopy(printed)
                    spoil(at(spoilt, path))
                    self.assertNotEqual(faults(name, spoilt), [], (name, path))
                self.assertTrue(found, path)
            for key in printed:
                spoilt = {kept: value for kept, value in printed.items() if kept != key}
                self.assertNotEqual(faults(name, spoilt), [], (name, key))


if __name__ == "__main__":
    unittest.main()
