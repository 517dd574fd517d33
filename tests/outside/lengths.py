"""Lengths and angles that recipes name, from rays and distances on manifold3d's solids."""

import math

import manifold3d as m3
import numpy as np

import threads

FAR = 120.0


def crossings(solid, start, way, far=FAR):
    """Stretches (from, to) of the ray that lie in the solid."""
    start, way = np.array(start), np.array(way)
    # Always as far as every solid reaches, so that an odd number of hits says that it starts inside.
    hits = [FAR * hit.distance for hit in solid.ray_cast(start, start + way * FAR)]
    if len(hits) % 2 == 1:
        hits.insert(0, 0.0)
    pairs = zip(hits[::2], hits[1::2])
    return [(a, min(b, far)) for a, b in pairs if a < far]


def _ray(reader, given):
    numbers = [reader.number(node) for node in given]
    return numbers[:3], numbers[3:6], numbers[6:]


def chord(reader, body, *given):
    start, way, (far,) = _ray(reader, given)
    return sum(b - a for a, b in crossings(reader.solid(body), start, way, far))


def meets(reader, body, *given):
    start, way, _ = _ray(reader, given)
    return float(bool(crossings(reader.solid(body), start, way)))


def first(reader, body, *given):
    start, way, _ = _ray(reader, given)
    met = crossings(reader.solid(body), start, way)
    return met[0][0] if met else math.inf


def leaves(reader, body, *given):
    start, way, _ = _ray(reader, given)
    met = crossings(reader.solid(body), start, way)
    return met[-1][1] if met else 0.0


def stretch(reader, body, *given):
    start, way, (begins,) = _ray(reader, given)
    # From a little before the start, which lies on a surface.
    hair = 0.01
    back = [s - hair * w for s, w in zip(start, way)]
    met = [(max(a, hair), b) for a, b in crossings(reader.solid(body), back, way) if b > 2 * hair]
    if not met or met[0][0] - hair > begins + 0.02:
        return 0.0
    return met[0][1] - met[0][0]


def gap(reader, a, b):
    return reader.solid(a).min_gap(reader.solid(b), FAR)


def apart(reader, a, b, way):
    one, other, sign = reader.solid(a), reader.solid(b), reader.number(way)
    between = one.min_gap(other, FAR)
    if between > 0:
        return between
    low, high = 0.0, 40.0
    while high - low > 1e-4:
        middle = (low + high) / 2
        parted = one.translate((sign * middle, 0, 0)).min_gap(other, 1.0) > 1e-9
        low, high = (low, middle) if parted else (middle, high)
    return -high


def _speck(at):
    return m3.Manifold.cube((1e-5, 1e-5, 1e-5), True).translate(tuple(at))


def to_point(reader, body, *given):
    return reader.solid(body).min_gap(_speck([reader.number(n) for n in given]), FAR)


def to_tube(reader, body, radius, *given):
    numbers = np.array([reader.number(n) for n in given])
    line = (_speck(numbers[:3]) + _speck(numbers[3:])).hull()
    return reader.solid(body).min_gap(line, FAR) - reader.number(radius)


def point_to_tube(reader, x, y, z, radius, *given):
    at, numbers = [reader.number(n) for n in (x, y, z)], [reader.number(n) for n in given]
    line = (_speck(numbers[:3]) + _speck(numbers[3:])).hull()
    return line.min_gap(_speck(at), FAR) - reader.number(radius)


def to_plane(reader, body, z, rise):
    z, rise = reader.number(z), reader.number(rise)
    corners = reader.solid(body).to_mesh64().vert_properties[:, :3]
    below = z + rise * corners[:, 0] - corners[:, 2]
    return float(below.min()) / math.hypot(1.0, rise)


def section_area(reader, body, *given):
    """Area of the section with the plane through two points, along x."""
    one, other = np.array([reader.number(n) for n in given]).reshape(2, 3)
    # Turned about x until the plane lies level, then sliced there.
    turn = -math.degrees(math.atan2(other[2] - one[2], other[1] - one[1]))
    level = reader.solid(body).translate(tuple(-one)).rotate((turn, 0, 0))
    return level.slice(0.0).area()


# Of depth, mm.
GRAZE = 0.1


def anchored(reader, implant, body):
    """Along 480 generators, how much of the apical end lies in the solid; the least counts."""
    cone = reader.export.recipe["implant"]
    solid = reader.solid(body)
    side = threads.Side(cone, solid)
    least = cone["length"]
    slope = (side.radii[1] - side.radii[0]) / side.length
    for i in range(480):
        angle = 2 * math.pi * (i + 0.31) / 480
        out = side.u * math.cos(angle) + side.v * math.sin(angle)
        way = -(side.axis + out * slope)
        arc = float(np.linalg.norm(way))
        end = side.platform + side.axis * side.length + out * side.radii[1]
        met = crossings(solid, end, way / arc, side.length * arc)
        held, slack = 0.0, 1e-6
        for start, stop in met:
            if start > held * arc + slack:
                break
            # A break no longer than a graze does not end the hold.
            held, slack = stop / arc, GRAZE * arc
        least = min(least, held)
    return least


def angle(reader, *given):
    tilt, tip, other_tilt, other_tip = (math.radians(reader.number(n)) for n in given)
    one = np.array([math.tan(tip), math.tan(tilt), 1.0])
    other = np.array([math.tan(other_tip), math.tan(other_tilt), 1.0])
    cosine = one @ other / np.linalg.norm(one) / np.linalg.norm(other)
    return math.degrees(math.acos(min(1.0, cosine)))


def least(reader, *given):
    return min(reader.number(node) for node in given)


def most(reader, *given):
    return max(reader.number(node) for node in given)
