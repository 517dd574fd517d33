"""Compares what the engine measured with what outside libraries make of the same export.

    python compare.py FOLDER [--jobs 2] [--verbose]

FOLDER holds one export folder for each (site, plan) pair. Booleans and distances: manifold3d on the
exported meshes. Watertightness: trimesh. Distances on the map: shapely on the exported outlines.
Prints one line for each measurement: how many were compared, how many were nothing on both sides,
the worst difference and its pair. Exit 0: all within tolerance; 1: some are not; 2: could not run.
"""

import argparse
import ast
import math
import sys
from collections import defaultdict
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import faces
import flaps
import lengths
import maps
import models
import septum
import solids
import threads
import walls

# Where the functions of expressions are.
FUNCTIONS = (maps, lengths, faces, walls, flaps, models, septum)

# Absolute, relative: a difference within either passes. Sections of meshes have the area of the body's,
# and no mesh of a body as wide as these departs from it by more than 0.002 mm; the rest is the promise.
TOLERANCE = {
    "mm3": (0.5, 0.005),
    "mm2": (0.1, 0.005),
    "mm": (0.02, 0.0),
    "degrees": (0.01, 0.0),
    "": (0.0005, 0.005),
    "Ncm": (0.1, 0.005),
    "N": (0.0005, 0.005),
}


# The orifice is a polygon of 48 corners at even angles inside its section; for sections twice as long
# as wide that is up to 0.9 % of the area (0.28 % for a circle).
# The engine looks at 90 levels of the root, so that each end of a stretch may lie half a level off.
# A single face that bends may be close over two stretches, which have four ends.
OF_MEASURE = {
    "orifice-area": (0.1, 0.009),
    "root-between-cortices": (1.01 / 90, 0.0),
    "root-class-facial": (2.01 / 90, 0.0),
    "root-class-oral": (2.01 / 90, 0.0),
}


class Reader:
    """Evaluates the expressions of one recipe."""

    def __init__(self, export):
        self.export = export
        self.bodies = {b["name"]: b["expression"] for b in export.recipe["bodies"]}
        self.side = None

    def spelled(self, node):
        """The expression with named bodies written out, so that it names primitives only."""
        reader = self

        class Spell(ast.NodeTransformer):
            def visit_Name(self, name):
                if name.id in reader.bodies:
                    inner = ast.parse(reader.bodies[name.id], mode="eval").body
                    return self.visit(inner)
                return name

        return ast.unparse(ast.fix_missing_locations(Spell().visit(node)))

    def solid(self, node):
        return self.export.evaluate(self.spelled(node))

    def evaluate(self, text):
        """A solid from an expression in words."""
        return self.solid(ast.parse(text, mode="eval").body)

    def value(self, text):
        call = ast.parse(text, mode="eval").body
        return self.number(call)

    def number(self, node):
        if isinstance(node, ast.BinOp):
            left, right = self.number(node.left), self.number(node.right)
            return {ast.Add: left + right, ast.Sub: left - right, ast.Mult: left * right}[
                type(node.op)
            ]
        if isinstance(node, ast.Constant):
            return float(node.value)
        if isinstance(node, ast.Name):
            return models.quantity(self, node.id)
        if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
            return -self.number(node.operand)
        name, given = node.func.id, node.args
        if name == "volume":
            return solids.volume(self.solid(given[0]))
        if name in ("engaged", "facing", "open"):
            areas = self.areas(given[1])
            return areas[("engaged", "facing", "open").index(name)]
        for module in FUNCTIONS:
            if hasattr(module, name):
                return getattr(module, name)(self, *given)
        raise solids.Fault(f"cannot read '{name}'")

    def areas(self, bone_node):
        if self.side is None:
            cone = self.export.recipe["implant"]
            bone = self.solid(bone_node)
            self.side = threads.areas(self.export.solid("implant"), bone, cone)
        return self.side

    def outline(self, node):
        for outline in self.export.recipe["outlines"]:
            if outline["name"] == node.id:
                return outline["points"]
        raise solids.Fault(f"no outline '{node.id}'")


def check(folder):
    """Rows (name, unit, engine, outside, complaint) for one pair."""
    rows = []
    export = solids.Export(folder)
    reader = Reader(export)
    for primitive in export.recipe["primitives"]:
        tight = export.tight(primitive["name"])
        rows.append(("watertight", "closed", 1.0, float(tight), "" if tight else primitive["name"]))
    rows.append(("lines-of-the-ridge", "mm", 0.0, faces.lines_of_the_mesh(export), ""))
    for entry in export.recipe["measurements"]:
        try:
            outside = reader.value(entry["expression"])
        except solids.Fault as fault:
            rows.append((entry["name"], entry["unit"], 0.0, float("nan"), str(fault)))
            continue
        # Infinity stands for what is not asked, on either side.
        engine = float("inf") if entry["value"] is None else entry["value"]
        rows.append((entry["name"], entry["unit"], engine, outside, ""))
    return folder.name, rows


def agrees(unit, engine, outside, measure=None):
    if unit == "closed" or math.isinf(engine) or math.isinf(outside):
        return engine == outside
    absolute, relative = OF_MEASURE.get(measure) or TOLERANCE[unit]
    # A measured overlap is negative; a mesh distance stops at nothing.
    is_distance = measure is not None and measure.startswith("to-")
    if is_distance and outside == 0.0 and engine <= absolute:
        return True
    if measure == "grain-to-gap":
        # A gap for each grain of 1 mm; of the largest, 2 mm, that is 0.02 mm of the gap.
        absolute, engine, outside = 0.01, 1 / engine, 1 / outside
    difference = abs(engine - outside)
    return difference <= absolute or difference <= relative * abs(outside)


def table_of(folder, jobs=2):
    """Rows by measurement over all pairs of a folder: (pair, unit, engine, outside, complaint)."""
    folders = sorted(path.parent for path in Path(folder).glob("*/recipe.json"))
    table = defaultdict(list)
    with ProcessPoolExecutor(jobs) as pool:
        for name, rows in pool.map(check, folders):
            for measure, unit, engine, outside, said in rows:
                table[measure].append((name, unit, engine, outside, said))
    return len(folders), dict(sorted(table.items()))


def off(measure, rows):
    """Those that do not agree."""
    return [row for row in rows if not agrees(row[1], row[2], row[3], measure)]


def told(measure, rows):
    """One line about a measurement."""
    nothing = sum(1 for row in rows if row[2] == 0 and row[3] == 0)
    apart = [row for row in rows if row[2] != row[3]]
    worst = max(apart, key=lambda row: abs(row[2] - row[3]), default=rows[0])
    return (
        f"{measure:32}{len(rows):9}{nothing:9}{len(off(measure, rows)):5}   "
        f"engine {worst[2]:.4f}, outside {worst[3]:.4f} {worst[1]} ({worst[0]}) {worst[4]}"
    )


HEADING = f"{'measurement':32}{'compared':>9}{'nothing':>9}{'off':>5}   worst difference"


def main():
    options = argparse.ArgumentParser()
    options.add_argument("folder", type=Path)
    options.add_argument("--jobs", type=int, default=2)
    options.add_argument("--verbose", action="store_true")
    options = options.parse_args()
    pairs, table = table_of(options.folder, options.jobs)
    if not pairs:
        print(f"found no export folder in {options.folder}")
        return 2
    print(HEADING)
    for measure, rows in table.items():
        print(told(measure, rows))
        if options.verbose:
            for row in off(measure, rows)[:12]:
                print(f"    {row[0]}: engine {row[2]:.4f}, outside {row[3]:.4f} {row[4]}")
    failed = sum(len(off(measure, rows)) for measure, rows in table.items())
    print(f"{pairs} pairs, {sum(map(len, table.values()))} comparisons, {failed} off")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
