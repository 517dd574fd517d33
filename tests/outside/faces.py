"""The ridge's faces, its crest and what stands between them, from the exported profiles and meshes."""

import math

import numpy as np

import lengths

# Just inside a face, mm: closer than the chords of any mesh.
HAIR = 0.002
# Spacing of levels that are looked at, mm.
DENSE = 0.01
OUTWARD = {"facial": 1.0, "oral": -1.0}


def word(node):
    return node.id


def face(reader, side, z):
    """y of an outer face at these levels."""
    knots = np.array(reader.export.recipe["lines"][side])
    return np.interp(z, knots[:, 0], knots[:, 1])


def crest(reader, line, side, x=0.0):
    lines = reader.export.recipe["lines"]
    knots = np.array(lines[line])
    drop = lines["oral_offset"] if side == "oral" else 0.0
    return float(np.interp(x, knots[:, 0], knots[:, 1])) + drop


def inside(solid, at, way=(0.0, 0.0, 1.0)):
    met = lengths.crossings(solid, at, way)
    return bool(met) and met[0][0] == 0.0


def begins_on(reader, side, x, body):
    """Least z at which the solid lies just inside a face; by marching, then halving."""
    out, x, solid = OUTWARD[word(side)], reader.number(x), reader.solid(body)

    def holds(z):
        y = float(face(reader, word(side), z)) - out * HAIR
        return inside(solid, (x, y, z), (0.0, -out, 0.0))

    low, step = -15.0, 0.02
    while not holds(low + step):
        low += step
        if low > 60:
            return math.inf
    high = low + step
    for _ in range(12):
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high


def draws_back(reader, side):
    side = word(side)
    last = reader.export.recipe["lines"][side][-1][0]
    z = np.arange(crest(reader, "unharmed", side), last, DENSE)
    out = OUTWARD[side] * face(reader, side, z)
    return float((np.maximum.accumulate(out) - out).max(initial=0.0))


def hollow(reader, side):
    """At each level the steepest line from the crest to any level beyond, against the face there."""
    side = word(side)
    last = reader.export.recipe["lines"][side][-1][0]
    z = np.arange(DENSE, last + DENSE, DENSE)
    out = OUTWARD[side] * face(reader, side, z)
    start = OUTWARD[side] * float(face(reader, side, 0.0))
    steepest = np.maximum.accumulate(((out - start) / z)[::-1])[::-1]
    return float((start + steepest * z - out).max(initial=0.0))


def poles(export, name):
    """The two ends of a round body's axis."""
    corners, _ = export.arrays(name)
    return corners[-2], corners[-1]


def first_ring(export, name):
    corners, _ = export.arrays(name)
    return corners[: export.recipe["around"]]


def platform(reader, body):
    return float(first_ring(reader.export, word(body)).mean(axis=0)[2])


def depth_at(reader, z):
    """From the implant's mesh: the part of its axis coronal of a level."""
    near, far = poles(reader.export, "implant")
    length = float(np.linalg.norm(far - near))
    if far[2] <= near[2]:
        return 0.0
    part = (reader.number(z) - near[2]) / (far[2] - near[2])
    return length * min(1.0, max(0.0, part))


def share_between(reader, root, near):
    """Along the root's axis, by the mesh of the root: where both faces are close."""
    return _share(reader, root, near, OUTWARD.items())


def share_touching(reader, side, root, near):
    """The same where the face of one side is."""
    return _share(reader, root, near, [(word(side), OUTWARD[word(side)])])


def _share(reader, root, near, sides):
    name, near = word(root), reader.number(near)
    solid = reader.export.solid(name)
    start, apex = poles(reader.export, name)
    way = (apex - start) / (apex[2] - start[2])

    def close(share):
        at = start + way * (-start[2] + apex[2] * share)
        return all(
            sign * (float(face(reader, side, at[2])) - at[1]) - _leaves(solid, at, sign) <= near
            for side, sign in sides
        )

    # Even levels, and halving where what one finds is not what the next one does.
    count = 720
    levels = [i / count for i in range(count + 1)]
    found = [close(share) for share in levels]
    total = 0.0
    for low, high, here, there in zip(levels, levels[1:], found, found[1:]):
        if here == there:
            total += here * (high - low)
            continue
        least, most = low, high
        for _ in range(12):
            middle = (least + most) / 2
            least, most = (middle, most) if close(middle) == here else (least, middle)
        total += least - low if here else high - least
    return total


def _leaves(solid, at, sign):
    met = lengths.crossings(solid, at, (0.0, sign, 0.0))
    return met[-1][1] if met else 0.0


def behind_line(reader, implant, *bodies):
    """Implants by the rim of their platform, roots by their section with the plane z = 0."""
    what = {primitive["name"]: primitive["what"] for primitive in reader.export.recipe["primitives"]}

    def most_facial(name):
        if what[name].startswith("implant"):
            rim = first_ring(reader.export, name)
        else:
            rings = reader.export.solid(name).slice(0.0).to_polygons()
            rim = np.vstack(rings)
        return rim[rim[:, 1].argmax()]

    (xa, ya, *_), (xb, yb, *_) = sorted(tuple(most_facial(word(b))) for b in bodies)
    rim = first_ring(reader.export, word(implant))
    x = rim.mean(axis=0)[0]
    return float(ya + (yb - ya) * (x - xa) / (xb - xa) - rim[:, 1].max())


def lines_of_the_mesh(export):
    """The farthest, in mm, that the ridge's mesh at x = 0 stands off the lines it was said to follow."""
    lines = export.recipe["lines"]
    ridge = export.solid("ridge")
    worst = 0.0
    for side, out in OUTWARD.items():
        knots = np.array(lines[side])
        top = float(np.interp(0.0, *np.array(lines["crest"]).T)) + abs(lines["oral_offset"])
        for z in np.linspace(top + 0.5, knots[-1][0] - 0.5, 40):
            start = (0.0, 60.0 * out, z)
            met = lengths.crossings(ridge, start, (0.0, -out, 0.0))
            y = out * (60.0 - met[0][0])
            worst = max(worst, abs(y - np.interp(z, knots[:, 0], knots[:, 1])))
    return worst
