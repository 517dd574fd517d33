"""What stands beside the implant, from rays through the booleans of the meshes."""

import numpy as np
from shapely import Point, unary_union

import faces
import lengths
import maps

# Depths that are looked at along a line.
LEVELS = 120


def least_wall(reader, side, _, start, end):
    """The least along the implant's most facial or oral line, in the sagittal plane of its axis."""
    side = faces.word(side)
    start, end = reader.number(start), reader.number(end)
    cone = reader.export.recipe["implant"]
    out = faces.OUTWARD[side]
    bone, socket = (reader.evaluate(text) for text in ("bone", "socket & ridge"))
    wall = lambda depth: _wall(reader, cone, out, side, bone, socket, depth)
    step = (end - start) / LEVELS
    depths = np.linspace(start, end, LEVELS + 1)
    nearest = min(depths, key=wall)
    # And closer round the least: at a bend of the face it changes fast.
    closer = np.linspace(max(start, nearest - step), min(end, nearest + step), LEVELS // 4)
    return min(wall(depth) for depth in (nearest, *closer))


def _wall(reader, cone, out, side, bone, socket, depth):
    axis = np.array(cone["axis"])
    # Square to the axis and to the row of teeth.
    aside = np.cross(axis, (1.0, 0.0, 0.0))
    aside *= np.sign(aside[1]) / np.linalg.norm(aside)
    near, far = cone["radii"]
    radius = near + (far - near) * depth / cone["length"]
    at = np.array(cone["platform"]) + axis * depth + aside * out * radius
    room = out * (float(faces.face(reader, side, at[2])) - at[1])
    if room <= 0:
        return room
    way = (0.0, out, 0.0)
    held = lengths.crossings(bone, at, way, room + 1.0)
    if not held:
        return 0.0
    return sum(b - a for a, b in _union(held + lengths.crossings(socket, at, way, room)))


def _union(parts, slack=0.0):
    joined = []
    for a, b in sorted(parts):
        if joined and a <= joined[-1][1] + slack:
            joined[-1][1] = max(joined[-1][1], b)
        else:
            joined.append([a, b])
    return joined


def _point(reader, given):
    return np.array([reader.number(node) for node in given])


def run(reader, body, implant, *given):
    """Facially from the implant, the stretch that begins at its surface, to the face at most."""
    at, way = _point(reader, given), (0.0, 1.0, 0.0)
    through = lengths.crossings(reader.solid(implant), at, way)
    surface = through[-1][1] if through else 0.0
    slack = reader.export.recipe["chord_error"]
    # Where two solids of a union touch, a ray may leave and enter at once.
    for a, b in _union(lengths.crossings(reader.solid(body), at, way), 1e-4):
        if a <= surface + slack and surface < b:
            face = float(faces.face(reader, "facial", at[2])) - at[1]
            return max(0.0, min(b, face) - surface)
    return 0.0


def within(reader, body, *given):
    return float(faces.inside(reader.solid(body), _point(reader, given)))


def layer_at(reader, thickness, fall, x, z, *outlines):
    """Thickness at the place of the map that lies facially of a point."""
    x, z = reader.number(x), reader.number(z)
    levels = np.linspace(min(0.0, z), max(0.0, z), 4001)
    arc = np.hypot(np.diff(levels), np.diff(faces.face(reader, "facial", levels))).sum()
    if z < 0:
        return 0.0
    base = unary_union([maps.polygon(reader, outline) for outline in outlines])
    away = base.distance(Point(x, arc))
    return reader.number(thickness) * max(0.0, 1.0 - away / reader.number(fall))


def joined(reader, one, other):
    first = reader.number(one)
    return first + reader.number(other) if first > 0 else 0.0
