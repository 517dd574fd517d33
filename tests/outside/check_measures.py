"""Measurements of at least 200 (site, plan) pairs against outside libraries: see compare.py."""

import os
import statistics
import unittest
from pathlib import Path

import bench_volume
import compare

PAIRS = Path(os.environ.get("WALLWISE_PAIRS", Path(__file__).parents[2] / "target/outside/pairs"))
LEAST_PAIRS = 200
# A measurement that is nothing everywhere is not checked: each must be something this often.
LEAST_OFTEN = 10

VOLUMES = ("socket-volume", "wall-volume", "gap-volume", "contour-volume", "volume-to-graft")
AREAS = ("threads-engaged", "threads-facing-bone", "threads-exposed", "orifice-area")
CLEARANCES = (
    "to-mesial-neighbour",
    "to-distal-neighbour",
    "to-canal",
    "to-foramen",
    "to-floor",
    "to-nasopalatine",
)
LENGTHS = (
    "socket-width",
    "mesiodistal-room",
    "facial-plate",
    "oral-plate",
    "facial-gap",
    "gap-in-one-direction",
    "bone-beyond-apex",
    "anchorage-beyond-apex",
    "oral-engagement",
)
MARGINS = (
    "membrane-margin-mesial",
    "membrane-margin-distal",
    "membrane-margin-apical",
    "membrane-margin-oral",
    "membrane-to-root",
    "flap-beyond-membrane-mesial",
    "flap-beyond-membrane-distal",
    "flap-beyond-membrane-apical",
    "flap-beyond-membrane-oral",
    "incision-to-defect",
    "release-to-foramen",
)


class Measures(unittest.TestCase):
    """Each family within its tolerance, and not by being nothing."""

    @classmethod
    def setUpClass(cls):
        cls.pairs, cls.table = compare.table_of(PAIRS)
        print(compare.HEADING)
        for measure, rows in cls.table.items():
            print(compare.told(measure, rows))
        print(f"{cls.pairs} pairs, {sum(map(len, cls.table.values()))} comparisons")

    def holds(self, family):
        for measure in family:
            with self.subTest(measure=measure):
                rows = self.table.get(measure, [])
                something = [row for row in rows if row[2] != 0 or row[3] != 0]
                self.assertGreaterEqual(len(something), LEAST_OFTEN)
                self.assertEqual(compare.off(measure, rows), [])

    def test_there_are_enough_pairs(self):
        self.assertGreaterEqual(self.pairs, LEAST_PAIRS)

    def test_every_mesh_is_watertight_and_right_side_out(self):
        self.holds(["watertight"])

    def test_volumes_agree_with_booleans_within_half_a_percent_or_half_a_cubic_millimetre(self):
        self.holds(VOLUMES)

    def test_the_contour_layer_agrees_with_areas_of_widened_outlines(self):
        self.holds(["contour-volume-on-the-map"])

    def test_areas_agree_with_booleans_and_rays(self):
        self.holds(AREAS)

    def test_clearances_agree_with_distances_of_meshes_within_a_fiftieth_of_a_millimetre(self):
        self.holds(CLEARANCES)

    def test_lengths_agree_with_rays_through_meshes(self):
        self.holds(LENGTHS)

    def test_margins_on_the_map_agree_with_distances_of_outlines(self):
        self.holds(MARGINS)

    def test_the_angle_agrees_with_that_of_the_two_axes(self):
        self.holds(["angle-to-crown"])

    def test_nothing_is_measured_that_no_family_checks(self):
        known = {*VOLUMES, *AREAS, *CLEARANCES, *LENGTHS, *MARGINS}
        known |= {"watertight", "contour-volume-on-the-map", "angle-to-crown"}
        self.assertEqual(set(self.table) - known, set())


class Speed(unittest.TestCase):
    def test_a_boolean_takes_a_hundred_times_as_long_as_the_engine_for_the_volume_to_graft(self):
        found, wrong = bench_volume.ratios(PAIRS)
        print(bench_volume.told(found, wrong))
        self.assertEqual(wrong, 0)
        self.assertGreaterEqual(statistics.median(found), bench_volume.LEAST_RATIO)


class Comparing(unittest.TestCase):
    """The comparison itself sees a planted error."""

    def test_a_difference_at_the_tolerance_passes_and_one_just_over_does_not(self):
        for unit, value, just in [("mm3", 40.0, 0.5), ("mm2", 10.0, 0.1), ("mm", 3.0, 0.02)]:
            self.assertTrue(compare.agrees(unit, value + just * 0.999, value))
            self.assertFalse(compare.agrees(unit, value + just * 1.001, value))

    def test_a_large_volume_may_differ_by_half_a_percent(self):
        self.assertTrue(compare.agrees("mm3", 401.99, 400.0))
        self.assertFalse(compare.agrees("mm3", 402.01, 400.0))

    def test_a_margin_that_is_not_asked_differs_from_any_that_is(self):
        nothing = float("inf")
        self.assertTrue(compare.agrees("mm", nothing, nothing))
        self.assertFalse(compare.agrees("mm", nothing, 3.0))
        self.assertFalse(compare.agrees("mm", 3.0, nothing))


if __name__ == "__main__":
    unittest.main()
