"""The teaching model of seating torque against the published series that it stands on.

compare.py holds each torque and each closing force of the engine against models.py, which works them
out from the models' statement in words; here the model itself is held against what was measured in
patients and in blocks of foam.
"""

import csv
import json
import math
import os
import statistics
import unittest
from pathlib import Path

import models

PAIRS = Path(os.environ.get("WALLWISE_PAIRS", Path(__file__).parents[2] / "target/outside/pairs"))
SERIES = Path(__file__).parents[1] / "data" / "torque_series.csv"
# Fresh socket and healed, blocks of foam: mean, standard deviation, n (in-vitro comparison; confirmed).
FRESH, HEALED, BLOCKS = (28.4, 5.8), (38.6, 6.2), 20
LEAST_PLANS = 20


def series():
    lines = [line for line in SERIES.read_text().splitlines() if not line.startswith("#")]
    return list(csv.DictReader(lines))


def healed(density):
    """The reference implant, held all over in a bed of full width."""
    return models.of_moment(models.whole_moment(*models.REFERENCE), density, "full")


def ratio_interval():
    """95 % interval of the ratio of the two means, by the errors of both."""
    ratio = FRESH[0] / HEALED[0]
    error = math.hypot(*(spread / mean / math.sqrt(BLOCKS) for mean, spread in (FRESH, HEALED)))
    return ratio * (1 - 1.96 * error), ratio * (1 + 1.96 * error)


def sound_ratios():
    """The engine's torque over the healed torque of the same implant, in plans that are sound today.

    export-pairs writes such a plan for every third seed.
    """
    for path in sorted(PAIRS.glob("*/recipe.json")):
        # A name of digits alone is a seed of one root: a letter before them says another kind of pair.
        seed = path.parent.name
        if not seed.isdigit() or int(seed) % 3 != 2:
            continue
        recipe = json.loads(path.read_text())
        values = {entry["name"]: entry["value"] for entry in recipe["measurements"]}
        if "estimated-torque" not in values:
            continue
        cone, chosen = recipe["implant"], recipe["chosen"]
        density = next(q["value"] for q in recipe["quantities"] if q["name"] == "density")
        near, far = cone["radii"]
        moment = models.whole_moment(2 * near, cone["length"], far / near)
        whole = models.of_moment(moment, density, chosen["preparation"])
        yield values["estimated-torque"] / whole


class Torque(unittest.TestCase):
    def test_the_series_that_is_used_comes_out_and_the_others_within_their_spread(self):
        rows = series()
        self.assertEqual(len(rows), 6)
        self.assertTrue(all(row["mark"] == "confirmed" for row in rows))
        for row in rows:
            density, mean, spread = (float(row[key]) for key in ("density", "torque", "spread"))
            found = healed(density)
            print(f"{row['source'][:40]:40} {density:4.0f} HU {mean:5.1f} +- {spread:4.1f}, ours {found:.1f}")
            if density == 751:
                self.assertAlmostEqual(found, mean, places=6)
            # A part that was split off by its outcome leans to one side: twice its spread.
            self.assertLess(abs(found - mean), spread * (1 if row["sample"] == "whole" else 2))

    def test_denser_bone_seats_firmer_as_in_every_series(self):
        rows = sorted(series(), key=lambda row: float(row["density"]))
        ours = [healed(float(row["density"])) for row in rows]
        self.assertEqual(ours, sorted(ours))
        self.assertGreater(ours[-1] / ours[0], 39.7 / 21.8)

    def test_sound_plans_in_fresh_sockets_have_the_share_of_healed_that_foam_gave(self):
        ratios = list(sound_ratios())
        self.assertGreaterEqual(len(ratios), LEAST_PLANS)
        low, high = ratio_interval()
        middle = statistics.median(ratios)
        print(f"fresh over healed: {middle:.2f} in {len(ratios)} sound plans; foam {low:.2f} to {high:.2f}")
        self.assertTrue(low < middle < high)

    def test_the_interval_is_that_of_the_two_means(self):
        low, high = ratio_interval()
        self.assertAlmostEqual((low + high) / 2, 0.736, places=3)
        self.assertAlmostEqual(high - low, 0.168, delta=0.002)


if __name__ == "__main__":
    unittest.main()
