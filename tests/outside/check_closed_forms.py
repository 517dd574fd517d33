"""Closed forms of the engine against scipy's quadrature of their definitions."""

import json
import math
import os
import unittest
from collections import defaultdict
from pathlib import Path

import numpy as np
from scipy.integrate import dblquad, quad

import models

PAIRS = Path(os.environ.get("WALLWISE_PAIRS", Path(__file__).parents[2] / "target/outside/pairs"))
LEAST = 60
CLOSE = 1e-6


def share(body, w):
    """Half-widths at a level over the full ones: straight between knots, then a quarter ellipse."""
    knots = np.array(body["knots"])
    base, last = knots[-1]
    if w <= base:
        return float(np.interp(w, knots[:, 0], knots[:, 1]))
    up = (w - base) / (body["apex"] - base)
    return last * math.sqrt(max(0.0, 1 - up * up))


def pieces(body):
    """Levels between which the body is smooth, from where it is asked for to where its cap begins."""
    levels = [knot[0] for knot in body["knots"]]
    start = max(body["from"], levels[0])
    return [start] + [level for level in levels if level > start]


def root_volume(form):
    body = form["body"]
    a, b = body["half"]
    ends = pieces(body)
    ends = ends if ends[-1] == body["apex"] else [*ends, body["apex"]]
    section = lambda w: math.pi * a * b * share(body, w) ** 2
    return sum(quad(section, p, q)[0] for p, q in zip(ends, ends[1:]))


def root_area(form):
    """The integral of the surface element |r_w x r_f| of r = (a s cos f, b s sin f, w)."""
    body = form["body"]
    a, b = body["half"]
    total = 0.0
    ends = pieces(body)
    for p, q in zip(ends, ends[1:]):
        slope = (share(body, q) - share(body, p)) / (q - p)

        def element(f, w, slope=slope):
            s, c, d = share(body, w), math.cos(f), math.sin(f)
            return s * math.sqrt((b * c) ** 2 + (a * d) ** 2 + (a * b * slope) ** 2)

        total += 4 * dblquad(element, p, q, 0, math.pi / 2)[0]
    base, last = body["knots"][-1]
    height = body["apex"] - base
    a, b = a * last, b * last
    start = math.asin(min(1.0, max(0.0, (body["from"] - base) / height)))

    def cap(f, latitude):
        up, out = math.sin(latitude), math.cos(latitude)
        across = height * out * math.hypot(b * math.cos(f), a * math.sin(f))
        return out * math.hypot(a * b * up, across)

    return total + 4 * dblquad(cap, start, math.pi / 2, 0, math.pi / 2)[0]


def radius(cone, v):
    return cone["diameter"] / 2 * (1 - 0.3 * v / cone["length"])


def cone_side(cone, start, end):
    slope = 0.3 * cone["diameter"] / 2 / cone["length"]
    return quad(lambda v: 2 * math.pi * radius(cone, v) * math.hypot(1, slope), start, end)[0]


def developed(knots, start, end):
    """Length of a polyline y(z) between two levels, piece by piece."""
    knots = np.array(knots)
    inner = [z for z in knots[:, 0] if start < z < end]
    ends = np.array([start, *inner, end])
    heights = np.interp(ends, knots[:, 0], knots[:, 1])
    return sum(
        quad(lambda z, s=(h1 - h0) / (z1 - z0): math.hypot(1, s), z0, z1)[0]
        for z0, z1, h0, h1 in zip(ends, ends[1:], heights, heights[1:])
    )


def oral_t(form):
    walls = form["walls"]
    at = lambda knots, z: float(np.interp(z, *np.array(knots).T))
    drop = walls["drop"]
    across = math.hypot(at(walls["facial"], 0.0) - at(walls["oral"], drop), drop)
    return -across - developed(walls["oral"], drop, walls["level"])


def off_the_law(form):
    """The farthest that a knot at or below the crest stands off (1 - u)^q."""
    length = form["length"]
    return max(
        abs(s - (1 - max(0.0, w) / length) ** form["q"]) for w, s in form["knots"]
    )


FORMS = {
    "ellipse-perimeter": lambda form: 4
    * quad(
        lambda f: math.hypot(form["half"][0] * math.sin(f), form["half"][1] * math.cos(f)),
        0,
        math.pi / 2,
        epsabs=1e-11,
    )[0],
    "ellipse-area": lambda form: 4
    * form["half"][0]
    * form["half"][1]
    * quad(lambda f: math.cos(f) ** 2, 0, math.pi / 2)[0],
    "root-volume": root_volume,
    "root-area": root_area,
    "taper": off_the_law,
    "cone-volume": lambda form: quad(
        lambda v: math.pi * radius(form["cone"], v) ** 2, 0, form["cone"]["length"]
    )[0],
    "cone-side": lambda form: cone_side(form["cone"], 0, form["cone"]["length"]),
    "cone-side-between": lambda form: cone_side(
        form["cone"], form["cone"]["from"], form["cone"]["to"]
    ),
    "facial-t": lambda form: developed(form["walls"]["facial"], 0.0, form["walls"]["level"]),
    "oral-t": oral_t,
    "seating-torque": lambda form: models.of_moment(form["moment"], form["density"], form["bed"]),
}


class ClosedForms(unittest.TestCase):
    def test_every_closed_form_agrees_with_its_integral_to_a_millionth(self):
        by_kind = defaultdict(list)
        for form in json.loads((PAIRS / "closed-forms.json").read_text()):
            by_kind[form["what"]].append(form)
        self.assertEqual(set(by_kind), set(FORMS))
        for what, forms in by_kind.items():
            with self.subTest(what=what):
                self.assertGreaterEqual(len(forms), LEAST)
                worst = 0.0
                for form in forms:
                    outside = FORMS[what](form)
                    worst = max(worst, abs(form["value"] - outside) / max(1.0, abs(outside)))
                print(f"{what:20} {len(forms)} forms, worst relative difference {worst:.1e}")
                self.assertLess(worst, CLOSE)


if __name__ == "__main__":
    unittest.main()
