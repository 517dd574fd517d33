"""What is made of a learner's answers against other people's programs: memory against the package `fsrs`,
confidence against scikit-learn (Brier score, calibration curve, and Murphy's parts by its own mean squares),
the chance level and the bands against scipy.
"""

import json
import os
import unittest
from datetime import datetime, timedelta, timezone
from pathlib import Path

import numpy as np
from fsrs import Card, Rating, Scheduler
from scipy import stats
from sklearn.calibration import calibration_curve
from sklearn.metrics import brier_score_loss, mean_squared_error

FOLDER = Path(os.environ.get("WALLWISE_LEARNING", "."))
# Both count in double precision.
TOLERANCE = 1e-9


def read(name):
    return json.loads((FOLDER / name).read_text(encoding="utf-8"))


class Memory(unittest.TestCase):
    def test_random_histories_leave_the_same_memory(self):
        scheduler = Scheduler(learning_steps=(), relearning_steps=(), enable_fuzzing=False)
        compared = 0
        for history in read("histories.json"):
            card, now = Card(), datetime(2026, 1, 1, tzinfo=timezone.utc)
            for place, answer in enumerate(history):
                if place > 0:
                    now += timedelta(days=answer["days"])
                    held = scheduler.get_card_retrievability(card, now)
                    self.assertAlmostEqual(answer["held"], held, delta=TOLERANCE)
                card, _ = scheduler.review_card(card, Rating(int(answer["grade"])), now)
                for name, found in (("stability", card.stability), ("difficulty", card.difficulty)):
                    self.assertAlmostEqual(answer[name], found, delta=TOLERANCE * max(1, found), msg=history)
                self.assertEqual(answer["interval"], (card.due - now).days, history)
                compared += 1
        self.assertGreater(compared, 3000)


class Confidence(unittest.TestCase):
    def lists(self):
        for found in read("confidence.json"):
            said = np.array([percent for percent, _ in found["answers"]]) / 100
            right = np.array([right for _, right in found["answers"]], dtype=int)
            yield found, said, right

    def close(self, found, expected):
        self.assertAlmostEqual(found, expected, delta=TOLERANCE)

    def test_the_score_is_that_of_scikit_learn(self):
        compared = 0
        for found, said, right in self.lists():
            self.close(found["brier"], brier_score_loss(right, said, labels=[0, 1], pos_label=1))
            compared += 1
        self.assertEqual(compared, 200)

    def test_its_parts_are_mean_squares_between_said_seen_and_overall(self):
        for found, said, right in self.lists():
            # Of each answer, the share right among those who said the same.
            seen = np.array([right[said == one].mean() for one in said])
            overall = np.full(len(right), right.mean())
            self.close(found["reliability"], mean_squared_error(said, seen))
            self.close(found["resolution"], mean_squared_error(overall, seen))
            self.close(found["uncertainty"], mean_squared_error(overall, right))
            parts = found["reliability"] - found["resolution"] + found["uncertainty"]
            self.close(parts, brier_score_loss(right, said, labels=[0, 1], pos_label=1))
            self.close(found["bias"], said.mean() - right.mean())
            self.close(found["error"], np.abs(said - seen).mean())

    def test_the_curve_is_that_of_scikit_learn(self):
        for found, said, right in self.lists():
            # Each of the five answers lies in a tenth of its own.
            seen, mean = calibration_curve(right, said, n_bins=10)
            np.testing.assert_allclose(seen, [good / count for _, count, good, _, _ in found["groups"]])
            np.testing.assert_allclose(100 * mean, [percent for percent, *_ in found["groups"]])

    def test_bands_are_wilson_s(self):
        for found, _, _ in self.lists():
            for _, count, good, low, high in found["groups"]:
                band = stats.binomtest(good, count).proportion_ci(0.90, method="wilson")
                self.close(low, band.low)
                self.close(high, band.high)

    def test_the_chance_level_is_that_of_binomials(self):
        for found, _, right in self.lists():
            off = 0
            for percent, count, _, _, _ in found["groups"]:
                counts = np.arange(count + 1)
                off += (stats.binom.pmf(counts, count, percent / 100) * np.abs(counts - count * percent / 100)).sum()
            self.close(found["by-chance"], off / len(right))


if __name__ == "__main__":
    unittest.main()
