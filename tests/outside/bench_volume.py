"""How much faster the engine measures a graft's volume than a mesh boolean does, in one run.

    python bench_volume.py FOLDER

FOLDER was just written by export-pairs, which also timed the engine on each pair, from the bare site
to the volume. The boolean is given every advantage: meshes are made and read beforehand, and roots and
implant are the coarsest meshes whose result is still within 0.5 % of the finest. Prints the
middle ratio of least times, and exits with 1 when it is under 100 or when a volume of the engine is
farther than 0.5 % (or 0.5 mm3) off.
"""

import json
import statistics
import sys
import time
from pathlib import Path

import manifold3d as m3
import numpy as np

import compare
import solids

REPEATS = 5
LEAST_RATIO = 100


def coarse(export, name, keep):
    """A round body by every `keep`th corner of each of its rings, and its two poles."""
    corners, _ = export.arrays(name)
    rings = corners[:-2].reshape(-1, export.recipe["around"], 3)[:, ::keep]
    levels, around = rings.shape[:2]
    at = np.arange(levels * around).reshape(levels, around)
    here, after = at, np.roll(at, -1, axis=1)
    near, far = levels * around, levels * around + 1
    a, b, c, d = here[:-1].ravel(), after[:-1].ravel(), after[1:].ravel(), here[1:].ravel()
    fan = lambda pole, one, other: np.stack([np.full(around, pole), one, other], axis=1)
    faces = [
        np.stack([a, b, c], axis=1),
        np.stack([a, c, d], axis=1),
        fan(near, after[0], here[0]),
        fan(far, here[-1], after[-1]),
    ]
    faces = np.vstack(faces)
    if export.recipe["mirrored"]:
        faces = faces[:, ::-1]
    mesh = m3.Mesh64(
        vert_properties=np.vstack([rings.reshape(-1, 3), corners[-2:]]),
        tri_verts=np.array(faces, dtype=np.uint64, order="C"),
    )
    return m3.Manifold(mesh)


def needs(export):
    names = set(export.files)
    round_bodies = [n for n in sorted(names) if n.startswith("root_") or n == "implant"]
    return names, round_bodies


def volume(bodies, names):
    """Gap to the fill level, lost walls and contour layer, as the recipe says."""
    union = lambda start: [bodies[n] for n in sorted(names) if n.startswith(start)]
    socket = union("root_")[0]
    level = bodies["fill" if "fill" in names else "apical"]
    space = socket ^ level
    if "implant" in names:
        space = space - bodies["implant"]
    total = space.volume()
    cuts = union("cut_")
    if cuts:
        lost = m3.Manifold.batch_boolean(cuts, m3.OpType.Add)
        whole = bodies["ridge"] - socket
        around = union("neighbour_") + union("canal") + union("loop") + union("nasopalatine")
        around += union("lesion") + union("floor")
        if around:
            whole = whole - m3.Manifold.batch_boolean(around, m3.OpType.Add)
        total += (whole ^ lost).volume()
    if "contour" in names:
        total += bodies["contour"].volume()
    return total


def fresh(export, names, round_bodies, keep):
    """Bodies with nothing cached in them."""
    bodies = {}
    for name in names:
        solid = coarse(export, name, keep) if name in round_bodies else export.solid(name)
        bodies[name] = m3.Manifold(solid.to_mesh64())
        bodies[name].num_tri()
    return bodies


def timed(export):
    """(seconds, volume) of the coarsest boolean that is good enough."""
    names, round_bodies = needs(export)
    finest = volume(fresh(export, names, round_bodies, 1), names)
    for keep in (16, 8, 4, 2, 1):
        found = volume(fresh(export, names, round_bodies, keep), names)
        if abs(found - finest) <= 0.005 * finest:
            break
    least = float("inf")
    for _ in range(REPEATS):
        bodies = fresh(export, names, round_bodies, keep)
        start = time.perf_counter()
        volume(bodies, names)
        least = min(least, time.perf_counter() - start)
    return least, finest


def ratios(folder):
    """(ratios in rising order, how many volumes are too far apart)."""
    folder = Path(folder)
    seconds = json.loads((folder / "seconds.json").read_text())
    found, wrong = [], 0
    for name in sorted(seconds):
        export = solids.Export(folder / name)
        by_name = {entry["name"]: entry for entry in export.recipe["measurements"]}
        if "volume-to-graft" not in by_name:
            continue
        took, finest = timed(export)
        wrong += not compare.agrees("mm3", by_name["volume-to-graft"]["value"], finest)
        found.append(took / seconds[name])
    return sorted(found), wrong


def told(found, wrong):
    return (
        f"graft volume, {len(found)} pairs in one run: the mesh boolean takes "
        f"{statistics.median(found):.0f} times as long as the engine (from {found[0]:.0f} to "
        f"{found[-1]:.0f} times); {wrong} volumes too far apart"
    )


def main():
    found, wrong = ratios(sys.argv[1])
    print(told(found, wrong))
    return 1 if wrong or statistics.median(found) < LEAST_RATIO else 0


if __name__ == "__main__":
    sys.exit(main())
