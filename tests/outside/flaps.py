"""The form of a flap and where its releases end, from its outline on the map."""

import math

from shapely import LineString

import faces
import maps

WIDE = maps.WIDE


def _widths(reader, flap):
    """Widths at the coronal and the apical end, and the height."""
    outline = maps.polygon(reader, flap)
    _, top, _, low = outline.bounds

    def width(part):
        t = top + part * (low - top)
        return outline.intersection(LineString([(-WIDE, t), (WIDE, t)])).length

    quarter, three = width(0.25), width(0.75)
    # The straight line through both, at either end.
    return quarter - (three - quarter) / 2, three + (three - quarter) / 2, low - top


def base_over_margin(reader, flap):
    margin, base, _ = _widths(reader, flap)
    return base / max(margin, 0.1)


def length_over_base(reader, flap):
    _, base, length = _widths(reader, flap)
    return length / max(base, 0.1)


def lowest_edge(reader, outline):
    return maps.polygon(reader, outline).bounds[3]


def breadth(reader, outline):
    west, _, east, _ = maps.polygon(reader, outline).bounds
    return east - west


def _row(reader, node):
    """(from, to) along the row: of an outline, or of an implant's platform."""
    name = faces.word(node)
    if any(outline["name"] == name for outline in reader.export.recipe["outlines"]):
        west, _, east, _ = maps.polygon(reader, node).bounds
        return west, east
    x = faces.first_ring(reader.export, name)[:, 0]
    # Outlines on the map are never mirrored.
    x = -x if reader.export.recipe["mirrored"] else x
    return float(x.min()), float(x.max())


def to_marks(reader, flap, sides, *bodies):
    """From the coronal end of each release to the nearest prominence or papilla."""
    flap = maps.polygon(reader, flap)
    row = sorted(_row(reader, body) for body in bodies)
    marks = [(a + b) / 2 for a, b in row]
    marks += [(one[1] + other[0]) / 2 for one, other in zip(row, row[1:])]
    least = math.inf
    for side in faces.word(sides).split("_"):
        corners = [c for edge in maps.side_edges(flap, side) for c in edge.coords]
        if corners:
            s = min(corners, key=lambda corner: corner[1])[0]
            least = min(least, *(abs(s - mark) for mark in marks))
    return least
