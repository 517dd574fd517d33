"""Attenuation coefficients against xraydb; the energies that they are taken at against spekpy."""

import csv
import unittest
from pathlib import Path

import spekpy
import xraydb

TABLE = Path(__file__).parents[1] / "data/attenuation.csv"
# Atomic masses of what the mixtures are made of.
MASS = {"H": 1.008, "C": 12.011, "N": 14.007, "O": 15.999, "P": 30.973762, "Ca": 40.078}
PURE = {
    "hydroxyapatite": {"Ca": 10, "P": 6, "O": 26, "H": 2},
    "collagen": {"C": 102, "H": 149, "N": 31, "O": 38},
    "water": {"H": 2, "O": 1},
}
# Half of the fourth figure is 0.05 % at the most; collagen's formula varies.
CLOSE = 0.001


def rows():
    with TABLE.open() as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def by_mass(name, table):
    """Elements by mass of a compound, or of a material of the table."""
    if name in PURE:
        masses = {element: MASS[element] * count for element, count in PURE[name].items()}
        whole = sum(masses.values())
        return {element: mass / whole for element, mass in masses.items()}
    return composition(table[name]["composition"], table)


def composition(text, table):
    """`H 0.1 C 0.9`, or shares of compounds and materials: `0.7 hydroxyapatite 0.3 water`."""
    words = text.split()
    if words[0][0].isalpha():
        return {element: float(share) for element, share in zip(words[::2], words[1::2])}
    mixed = {}
    for share, name in zip(words[::2], words[1::2]):
        for element, mass in by_mass(name, table).items():
            mixed[element] = mixed.get(element, 0.0) + float(share) * mass
    return mixed


class Attenuation(unittest.TestCase):
    def test_every_coefficient_follows_from_its_composition(self):
        table = {row["material"]: row for row in rows()}
        self.assertEqual(len(table), 13)
        worst = 0.0
        for name, row in table.items():
            elements = composition(row["composition"], table)
            self.assertAlmostEqual(sum(elements.values()), 1.0, delta=2e-3, msg=name)
            for energy, column in ((40e3, "mu40"), (60e3, "mu60")):
                mass = sum(share * xraydb.mu_elam(e, energy) for e, share in elements.items())
                off = abs(float(row[column]) / (float(row["density"]) * mass) - 1)
                worst = max(worst, off)
                self.assertLess(off, CLOSE, f"{name} {column}")
        print(f"attenuation: {len(table)} materials, worst {worst:.1e}")

    def test_the_energies_are_the_mean_energies_of_the_beams(self):
        # The columns stand for beams before and behind a jaw (15 and, for a scanner, 160 mm of water).
        def mean(kilovolt, aluminium, water):
            beam = spekpy.Spek(kvp=kilovolt, th=12)
            beam.filter("Al", aluminium)
            return beam.filter("Water, Liquid", water).get_emean() if water else beam.get_emean()

        film = [mean(kv, al, w) for kv, al in ((60, 2.0), (65, 2.0), (70, 2.5)) for w in (0, 15)]
        cone = [mean(kv, 6.0, w) for kv in (110, 120) for w in (0, 15)]
        print("beams: film", *(f"{e:.1f}" for e in film), "cone", *(f"{e:.1f}" for e in cone))
        self.assertTrue(all(34.5 < energy < 42 for energy in film), film)
        self.assertTrue(all(56.5 < energy < 62 for energy in cone), cone)

    def test_the_spectra_are_those_of_a_published_measurement(self):
        # 110 kV with 6 mm of aluminium: mean 56.7 keV, half-value layer 5.8 mm of aluminium (a paper on
        # dental cone-beam scanners in Scientific Reports, 2024; confirmed). Tolerance: half a keV and
        # 0.15 mm, what target angles of 10 to 16 degrees make of them.
        beam = spekpy.Spek(kvp=110, th=12)
        beam.filter("Al", 6.0)
        print(f"110 kV: mean {beam.get_emean():.2f} keV, half-value layer {beam.get_hvl1():.2f} mm Al")
        self.assertAlmostEqual(beam.get_emean(), 56.7, delta=0.5)
        self.assertAlmostEqual(beam.get_hvl1(), 5.8, delta=0.15)


if __name__ == "__main__":
    unittest.main()
