"""What is made of a class against other people's programs: alpha, difficulty and what an item adds against the
package `girth`, components of variance and decision studies against `generalizit` and least squares of numpy,
intervals, standards and the rest against scipy and scikit-learn.
"""

import contextlib
import io
import itertools
import json
import os
import unittest
import warnings
from pathlib import Path

import numpy as np
import pandas as pd
from generalizit import GeneralizIT
from girth import classical_test_statistics
from girth.common import cronbach_alpha
from scipy import stats
from sklearn.metrics import cohen_kappa_score

FOLDER = Path(os.environ.get("WALLWISE_CLASS", "."))
# Both count in double precision.
TOLERANCE = 1e-9
# Half of the last of the four decimals that `generalizit` keeps at every step.
HALF = 5.001e-5
# Each takes that package a tenth of a second.
TABLES = 50


def read(name):
    return json.loads((FOLDER / name).read_text(encoding="utf-8"))


def table(found):
    """Persons by items, nan where not reached."""
    return np.array(found["answers"], dtype=float).reshape(len(found["answers"]), -1)


def complete(answers):
    return answers[~np.isnan(answers).any(axis=1)]


class Class(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.classes = [(found, table(found)) for found in read("classes.json")]

    def close(self, found, expected, said=None):
        self.assertIsNotNone(found, said)
        self.assertAlmostEqual(found, expected, delta=TOLERANCE * max(1, abs(expected)), msg=said)


class Items(Class):
    def test_alpha_is_that_of_girth(self):
        compared = 0
        for found, answers in self.classes:
            whole, mine = complete(answers), found["reliability"]
            if whole.shape[1] < 2 or not len(whole) or np.ptp(whole.sum(1)) == 0:
                self.assertIsNone(mine)
                continue
            alpha = cronbach_alpha(whole.T.astype(int))
            self.close(mine["alpha"], alpha)
            self.assertEqual((mine["persons"], mine["left-out"]), (len(whole), len(answers) - len(whole)))
            self.close(mine["spread"], whole.sum(1).std())
            self.close(mine["error"], whole.sum(1).std() * np.sqrt(1 - alpha))
            if alpha > -1:
                self.close(mine["doubled"], 2 * alpha / (1 + alpha))
            else:
                self.assertIsNone(mine["doubled"])
            compared += 1
        self.assertGreater(compared, 150)

    def test_each_item_adds_what_girth_says(self):
        compared = nothing = 0
        for found, answers in self.classes:
            whole = complete(answers)
            if whole.shape[1] < 3 or len(whole) < 2:
                continue
            # girth divides by the spread of items that have none, and says so.
            with warnings.catch_warnings(), np.errstate(all="ignore"):
                warnings.simplefilter("ignore")
                try:
                    theirs = classical_test_statistics(whole.T.astype(int), 0, 1)
                except (ValueError, IndexError):
                    # Its polyserial correlation cannot do with an item that is the same for all.
                    theirs = None
            for place, item in enumerate(found["items"]):
                rest = np.delete(whole, place, axis=1)
                constant = np.ptp(whole[:, place]) == 0 or np.ptp(rest.sum(1)) == 0
                nothing += constant
                if constant:
                    self.assertIsNone(item["corrected"])
                else:
                    self.close(item["corrected"], np.corrcoef(whole[:, place], rest.sum(1))[0, 1])
                if np.ptp(rest.sum(1)) == 0:
                    self.assertIsNone(item["alpha-without"])
                else:
                    self.close(item["alpha-without"], cronbach_alpha(rest.T.astype(int)))
                if theirs and not constant:
                    self.close(item["corrected"], theirs["Item-Score Correlation"][place])
                    self.close(item["alpha-without"], theirs["Cronbach Alpha"][place])
                    compared += 1
        self.assertGreater(compared, 300)
        self.assertGreater(nothing, 100)

    def test_shares_are_over_what_was_reached_and_bands_are_wilson_s(self):
        bands = {}
        for found, answers in self.classes:
            for side, shares in ((0, [item["difficulty"] for item in found["items"]]), (1, found["persons"])):
                reached = (~np.isnan(answers)).sum(axis=side)
                right = np.nansum(answers, axis=side)
                self.assertEqual([share[1] for share in shares], reached.tolist())
                self.assertEqual([share[0] for share in shares], right.tolist())
                for good, count, value, band in shares:
                    if not count:
                        self.assertEqual((value, band), (None, None))
                        continue
                    self.close(value, good / count)
                    bands[good, count] = band
        for (good, count), (low, high) in bands.items():
            theirs = stats.binomtest(good, count).proportion_ci(0.90, method="wilson")
            self.close(low, theirs.low)
            self.close(high, theirs.high)
        self.assertGreater(len(bands), 300)

    def test_upper_and_lower_groups_are_read_off_the_curve_of_those_above(self):
        """Of persons in order of total, how many of the first so many had the item right: straight between
        levels, which is the mean over all orders of those who tie."""
        compared = nothing = 0
        for found, answers in self.classes:
            whole = complete(answers)
            totals, group = whole.sum(1), 0.27 * len(whole)
            for place, item in enumerate(found["items"]):
                column = whole[:, place]
                if not len(whole) or np.ptp(column) == 0 or np.ptp(totals) == 0:
                    self.assertIsNone(item["upper-lower"])
                    nothing += 1
                    continue
                right = []
                for levels in (sorted(set(totals), reverse=True), sorted(set(totals))):
                    persons = np.cumsum([0] + [(totals == level).sum() for level in levels])
                    good = np.cumsum([0] + [column[totals == level].sum() for level in levels])
                    right.append(np.interp(group, persons, good))
                self.close(item["upper-lower"], (right[0] - right[1]) / group)
                compared += 1
        self.assertGreater(compared, 500)
        self.assertGreater(nothing, 100)


class Agreement(Class):
    def test_pairs_of_cases_are_counted_one_by_one(self):
        compared = 0
        for found, answers in self.classes:
            if answers.size > 200:
                continue
            passed = [column[~np.isnan(column)].mean() if (column >= 0).any() else None for column in answers.T]
            alike, chance = [], []
            for row in answers:
                pairs = list(itertools.combinations(np.flatnonzero(~np.isnan(row)), 2))
                if pairs:
                    alike.append(np.mean([row[a] == row[b] for a, b in pairs]))
                    both = [passed[a] * passed[b] + (1 - passed[a]) * (1 - passed[b]) for a, b in pairs]
                    chance.append(np.mean(both))
            if not alike:
                self.assertIsNone(found["agreement"])
                continue
            mine = found["agreement"]
            self.assertEqual((mine["persons"], mine["left-out"]), (len(alike), len(answers) - len(alike)))
            self.close(mine["found"], np.mean(alike))
            self.close(mine["by-chance"], np.mean(chance))
            compared += 1
        self.assertGreater(compared, 100)

    def test_of_two_cases_it_is_the_kappa_of_scikit_learn(self):
        compared = 0
        for found, answers in self.classes:
            if answers.shape[1] != 2 or np.isnan(answers).any():
                continue
            if found["agreement"]["beyond-chance"] is None:
                self.assertEqual(np.ptp(answers), 0)
                continue
            self.close(found["agreement"]["beyond-chance"], cohen_kappa_score(*answers.T.astype(int)))
            compared += 1
        self.assertGreater(compared, 5)


class Components(Class):
    def by_least_squares(self, answers):
        """Henderson's method 1 as equations, the coefficients of each sum of squares by the trace of its
        projection on what a component does: no formula of ours."""
        persons, cases = np.nonzero(~np.isnan(answers))
        values = answers[persons, cases]
        of_persons = (persons[:, None] == np.arange(answers.shape[0])).astype(float)
        of_cases = (cases[:, None] == np.arange(answers.shape[1])).astype(float)
        all_ones, itself = np.ones((len(values), 1)), np.eye(len(values))
        variances = [of_persons @ of_persons.T, of_cases @ of_cases.T, itself]
        mean = all_ones @ np.linalg.pinv(all_ones)
        equations, sums = [], []
        for design in (of_persons, of_cases, itself):
            onto = design @ np.linalg.pinv(design) - mean
            equations.append([np.trace(onto @ variance) for variance in variances])
            sums.append(values @ onto @ values)
        return np.linalg.solve(equations, sums)

    def tables(self):
        for found, answers in self.classes:
            if found["components"] is not None:
                yield found["components"], answers

    def test_they_solve_the_equations_of_projections(self):
        compared = gaps = 0
        for mine, answers in self.tables():
            if answers.size > 200:
                continue
            for one, expected in zip(mine["estimates"], self.by_least_squares(answers)):
                self.close(one, expected)
            compared += 1
            gaps += mine["missing"] > 0
            self.assertEqual(mine["missing"], int(np.isnan(answers).sum()))
            self.assertEqual(mine["answered"], answers.size - mine["missing"])
        self.assertGreater(compared, 100)
        self.assertGreater(gaps, 50)

    def test_nothing_is_said_only_where_the_answers_cannot_tell(self):
        for found, answers in self.classes:
            reached = ~np.isnan(answers)
            rows, columns = reached.any(axis=1).sum(), reached.any(axis=0).sum()
            can_tell = reached.sum() + 1 > rows + columns and reached.sum() > max(rows, columns)
            self.assertEqual(found["components"] is not None, bool(can_tell))

    def test_they_and_their_decision_studies_are_those_of_generalizit(self):
        compared = gaps = studies = 0
        for mine, answers in itertools.islice(self.tables(), TABLES):
            persons, cases = np.nonzero(~np.isnan(answers))
            long = pd.DataFrame({"person": persons, "item": cases, "response": answers[persons, cases]})
            with contextlib.redirect_stdout(io.StringIO()), warnings.catch_warnings():
                # It asks pandas for what pandas will no longer do.
                warnings.simplefilter("ignore")
                theirs = GeneralizIT(data=long, design_str="person x item", response="response")
                theirs.calculate_anova()
                theirs.calculate_d_study(d_study_design={"person": [10], "item": [4, 9]})
            found = theirs.design.anova_table
            # What rounded sums and coefficients may do to what solves them.
            inverse = np.abs(np.linalg.inv(found.drop(columns=["T", "Variance"]))).sum(axis=1).max()
            rounding = HALF * (1 + inverse * (1 + np.abs(found["Variance"]).sum()))
            for name, one in zip(("person", "item", "person x item"), mine["estimates"]):
                self.assertAlmostEqual(one, found["Variance"][name], delta=rounding)
            compared += rounding < 1e-3
            gaps += rounding < 1e-3 and mine["missing"] > 0
            for study, place in zip(theirs.design.d_study_dict.values(), (1, 2)):
                if mine["values"][0] < 10 * rounding:
                    # Nearly nothing over nearly nothing.
                    continue
                # A component that is off moves a quotient by no more than this.
                delta = HALF + 2 * rounding / mine["values"][0]
                self.assertAlmostEqual(mine["phi"][place], study.loc["person", "phi^2"], delta=delta)
                self.assertAlmostEqual(mine["relative"][place], study.loc["person", "rho^2"], delta=delta)
                studies += delta < 0.01
        self.assertGreater(compared, 35)
        self.assertGreater(gaps, 15)
        self.assertGreater(studies, 25)

    def test_indices_follow_from_the_components(self):
        for mine, _ in self.tables():
            person, case, rest = mine["values"]
            estimates = np.array(mine["estimates"])
            np.testing.assert_array_equal(mine["values"], np.maximum(estimates, 0))
            np.testing.assert_array_equal(mine["set-to-zero"], estimates < 0)
            for place, cases in enumerate((1, 4, 9)):
                for name, error in (("phi", case + rest), ("relative", rest)):
                    if person + error == 0:
                        self.assertIsNone(mine[name][place])
                    else:
                        self.close(mine[name][place], person / (person + error / cases))
            for dependable, needed in zip((0.70, 0.90), mine["needed"]):
                if person == 0:
                    self.assertIsNone(needed)
                    continue
                at_least = [n for n in (needed - 1, needed) if n and person / (person + (case + rest) / n) > dependable - 1e-9]
                self.assertEqual(at_least, [needed])


class Standards(Class):
    def test_judges_sum_up_as_scipy_has_it(self):
        for found in read("judged.json"):
            judges = np.array(found["judges"])
            np.testing.assert_allclose(found["means"], judges.mean(axis=0), atol=TOLERANCE)
            np.testing.assert_allclose(found["sums"], judges.sum(axis=1), atol=TOLERANCE)
            self.close(found["cut"], judges.sum(axis=1).mean())
            if len(judges) == 1:
                self.assertIsNone(found["error"])
            else:
                self.close(found["error"], stats.sem(judges.sum(axis=1)))

    def test_the_line_is_that_of_scipy(self):
        compared = 0
        for found in read("rated.json"):
            ratings, marks = np.array(found["rated"], dtype=float).T
            if len(ratings) < 3 or np.ptp(ratings) == 0:
                self.assertIsNone(found["found"])
                continue
            mine = found["found"]
            line = stats.linregress(ratings, marks)
            # Seen from the borderline rating, the pass mark is an intercept and has its error.
            moved = stats.linregress(ratings - found["at"], marks)
            self.close(mine["slope"], line.slope)
            self.close(mine["intercept"], line.intercept)
            self.close(mine["cut"], moved.intercept)
            self.close(mine["error"], moved.intercept_stderr)
            self.close(mine["scatter"], line.stderr * np.sqrt(((ratings - ratings.mean()) ** 2).sum()))
            if np.ptp(marks) > 0:
                self.close(mine["explained"], line.rvalue**2)
            outside = not ratings.min() <= found["at"] <= ratings.max()
            self.assertEqual(mine["is-drawn-out"], bool(outside))
            compared += 1
        self.assertGreater(compared, 100)


if __name__ == "__main__":
    unittest.main()
