"""Distances on the map, from shapely's geometry on the exported outlines.

s runs distally and t apically on the facial side, so mesial is -s and apical +t.
"""

import math

import numpy as np
from shapely import LineString, Point, Polygon, box, unary_union

WIDE = 200.0
# Spacing of points on an outline that is looked at for sticking out, mm.
DENSE = 0.005


def _name(node):
    return node.id


def polygon(reader, node):
    """An outline, or the part of one that a call names."""
    if hasattr(node, "func"):
        inner, at = polygon(reader, node.args[0]), reader.number(node.args[1])
        half = {
            "apical_of": box(-WIDE, at, WIDE, WIDE),
            "oral_of": box(-WIDE, -WIDE, WIDE, at),
        }[node.func.id]
        return inner.intersection(half)
    return Polygon(reader.outline(node))


def side_of(s, t):
    if abs(s) >= abs(t):
        return "mesial" if s < 0 else "distal"
    return "apical" if t > 0 else "coronal"


def side_edges(outline, side):
    """Edges whose outward normal leans most towards the side."""
    corners = list(outline.exterior.coords)
    if not outline.exterior.is_ccw:
        corners.reverse()
    return [
        LineString([a, b])
        for a, b in zip(corners, corners[1:])
        if a != b and side_of(b[1] - a[1], a[0] - b[0]) == side
    ]


def _margin(side, inner, outer):
    if inner.is_empty:
        return math.inf
    edges = side_edges(outer, side)
    rim = inner.exterior if inner.geom_type == "Polygon" else inner
    least = min((edge.distance(rim) for edge in edges), default=math.inf)
    step = {"mesial": (-1, 0), "distal": (1, 0), "apical": (0, 1), "coronal": (0, -1)}[side]
    corners = np.array(rim.coords)
    points = [rim.interpolate(at) for at in np.arange(0, rim.length, DENSE)]
    points += [Point(c) for c in corners]
    for point in points:
        away = outer.distance(point)
        if away > 1e-9:
            nearest = outer.exterior.interpolate(outer.exterior.project(point))
            if side_of(point.x - nearest.x, point.y - nearest.y) == side:
                least = min(least, -away)
    if not edges:
        for c in corners:
            if outer.covers(Point(c)):
                line = LineString([c, (c[0] + WIDE * step[0], c[1] + WIDE * step[1])])
                ends = line.intersection(outer)
                least = min(least, max(Point(c).distance(Point(e)) for e in _ends(ends)))
    return least


def _ends(shape):
    if shape.is_empty:
        return []
    if hasattr(shape, "geoms"):
        first = min(shape.geoms, key=lambda g: g.distance(shape.geoms[0]))
        return list(first.coords)
    return list(shape.coords)


def margin(reader, side, inner, outer):
    return _margin(_name(side), polygon(reader, inner), polygon(reader, outer))


def margin_unless_at(reader, side, inner, outer, room, *roots):
    """The same, but not asked where a root leaves less room, unless the cover ends short."""
    inner = polygon(reader, inner)
    found = _margin(_name(side), inner, polygon(reader, outer))
    beside = min((inner.distance(polygon(reader, root)) for root in roots), default=math.inf)
    return math.inf if beside < reader.number(room) and found >= 0 else found


def margin_of_line(reader, side, from_s, to_s, t, outer):
    t = reader.number(t)
    line = LineString([(reader.number(from_s), t), (reader.number(to_s), t)])
    return _margin(_name(side), line, polygon(reader, outer))


def map_gap(reader, one, *others):
    """Least distance between filled outlines, 0 where they overlap."""
    one = polygon(reader, one)
    return min((one.distance(polygon(reader, other)) for other in others), default=math.inf)


def edges_gap(reader, flap, sides, *others):
    """From the edges of an outline on the named sides to other outlines, or to a point."""
    flap = polygon(reader, flap)
    edges = [edge for side in _name(sides).split("_") for edge in side_edges(flap, side)]
    if others and not hasattr(others[0], "id"):
        target = [Point(*(reader.number(node) for node in others))]
    else:
        target = [polygon(reader, other).exterior for other in others]
    return min((edge.distance(t) for edge in edges for t in target), default=math.inf)


def lowest(reader, outline):
    return polygon(reader, outline).bounds[1]


def layer(reader, thickness, fall, *outlines):
    """Volume of a layer, as the mean over d of the area within d of the base, apical of t = 0."""
    base = unary_union([polygon(reader, outline) for outline in outlines])
    wall = box(-WIDE, 0, WIDE, WIDE)
    fall = reader.number(fall)
    steps = 64
    within = [
        base.buffer(fall * (i + 0.5) / steps, quad_segs=64).intersection(wall).area
        for i in range(steps)
    ]
    return reader.number(thickness) * float(np.mean(within))
