"""Exported layers of a film or a section, asked point by point and summed along rays by numpy."""

import numpy as np


def polyline(knots, at):
    knots = np.array(knots)
    return np.interp(at, knots[:, 0], knots[:, 1])


def local(frame, points):
    return (points - np.array(frame["origin"])) @ np.array(frame["axes"]).T


def in_ridge(shape, points):
    x, y, z = points.T
    crest = polyline(shape["crest"], x) + shape["drop"] * polyline(shape["share"], y)
    inside = (y <= polyline(shape["facial"], z)) & (y >= polyline(shape["oral"], z)) & (z >= crest)
    if shape["floor"]:
        level, rise = shape["floor"]
        inside &= z <= level + rise * x
    return inside


def in_root(shape, points):
    own = local(shape["frame"], points)
    knots = np.array(shape["knots"])
    base, last = knots[-1]
    w = own[:, 2]
    up = np.clip((w - base) / (shape["apex"] - base), 0, 1)
    share = np.where(w <= base, np.interp(w, knots[:, 0], knots[:, 1]), last * np.sqrt(1 - up * up))
    a, b = shape["half"]
    inside = (own[:, 0] / a) ** 2 + (own[:, 1] / b) ** 2 <= share**2
    inside &= (w >= knots[0, 0]) & (w <= shape["apex"])
    if shape["part"]:
        side, level = shape["part"]
        inside &= points[:, 2] >= level if side == "below" else points[:, 2] <= level
    return inside


def in_crown(shape, points):
    own = local(shape["frame"], points)
    low, high = shape["ends"]
    inside = (own[:, 2] >= low) & (own[:, 2] <= high)
    for across, facial, rate in shape["flares"]:
        share = 1 + rate * own[:, 2]
        inside &= (own[:, 0] / across) ** 2 + (own[:, 1] / facial) ** 2 <= share**2
    for *normal, at in shape["facets"]:
        inside &= own @ np.array(normal) <= at
    return inside


def in_tube(shape, points):
    start, end = np.array(shape["ends"])
    way = end - start
    whole = way @ way
    t = np.clip((points - start) @ way / whole, 0, 1) if whole > 0 else np.zeros(len(points))
    off = points - start - t[:, None] * way
    return (off * off).sum(axis=1) <= shape["radius"] ** 2


def in_window(shape, points):
    level, slope = shape["plane"]
    outward = points[:, 1] - level - slope * points[:, 2]
    inside = np.zeros(len(points), dtype=bool)
    corners = shape["shadow"]
    x, z = points[:, 0], points[:, 2]
    for (ax, az), (bx, bz) in zip(corners, corners[1:] + corners[:1]):
        if az != bz:
            inside ^= ((az > z) != (bz > z)) & (x < ax + (bx - ax) * (z - az) / (bz - az))
    return inside & (outward >= 0 if shape["wall"] == "facial" else outward <= 0)


def in_sheet(shape, points):
    heights = np.array(shape["heights"]).reshape(-1, shape["columns"])
    u = (points[:, 0] - shape["origin"][0]) / shape["spacing"]
    v = (points[:, 2] - shape["origin"][1]) / shape["spacing"]
    rows, columns = heights.shape
    inside = (u >= 0) & (v >= 0) & (u < columns - 1) & (v < rows - 1)
    i = np.clip(u, 0, columns - 2).astype(int)
    j = np.clip(v, 0, rows - 2).astype(int)
    p, q = u - i, v - j
    upper = heights[j, i] * (1 - p) + heights[j, i + 1] * p
    lower = heights[j + 1, i] * (1 - p) + heights[j + 1, i + 1] * p
    height = upper * (1 - q) + lower * q
    off = points[:, 1] - polyline(shape["facial"], points[:, 2])
    return inside & (off >= 0) & (off <= height)


def in_turned(shape, points):
    own = local(shape["frame"], points)
    outline = np.array(shape["outline"])
    radius = np.interp(own[:, 2], outline[:, 0], outline[:, 1])
    inside = (own[:, 2] >= outline[0, 0]) & (own[:, 2] <= outline[-1, 0])
    return inside & (own[:, 0] ** 2 + own[:, 1] ** 2 <= radius**2)


INSIDE = {
    "ridge": in_ridge,
    "root": in_root,
    "crown": in_crown,
    "tube": in_tube,
    "window": in_window,
    "sheet": in_sheet,
    "turned": in_turned,
}


class Scene:
    """Layers from the ground up, each with what it changes and into what."""

    def __init__(self, written):
        self.names = [name for name, _ in written["coefficients"]]
        self.values = np.array([value for _, value in written["coefficients"]])
        place = {name: i for i, name in enumerate(self.names)}
        self.layers = [
            (
                np.isin(np.arange(len(place)), [place[name] for name in layer["only"]]),
                place[layer["to"]],
                layer["shape"],
            )
            for layer in written["layers"]
        ]

    def value(self, name):
        return self.values[self.names.index(name)]

    def materials(self, points):
        """Place of the material in `names` at each point; air comes first."""
        found = np.zeros(len(points), dtype=int)
        for only, to, shape in self.layers:
            found[only[found] & INSIDE[shape["kind"]](shape, points)] = to
        return found

    def pieces(self, origin, direction, start, end, step=0.02, halvings=20):
        """Ends of pieces and their materials along a ray: found at even steps, ends by halving."""
        count = int(np.ceil((end - start) / step)) + 1
        t = np.linspace(start, end, count)
        at = lambda t: self.materials(origin + np.asarray(t)[:, None] * direction)
        found = at(t)
        # A step that passes one border may pass two: gum is thin before a crown.
        passed = np.flatnonzero(found[1:] != found[:-1])
        between = [np.linspace(t[i], t[i + 1], 21)[1:-1] for i in passed]
        t = np.sort(np.concatenate([t, *between]))
        found = at(t)
        change = np.flatnonzero(found[1:] != found[:-1])
        low, high, before = t[change], t[change + 1], found[change]
        for _ in range(halvings):
            middle = (low + high) / 2
            same = at(middle) == before
            low, high = np.where(same, middle, low), np.where(same, high, middle)
        return np.concatenate([(low + high) / 2, [end]]), np.concatenate([before, [found[-1]]])

    def sum(self, origin, direction, start, end):
        """Coefficient times length along a ray, and the sum of the changes of the coefficient."""
        ends, found = self.pieces(origin, direction, start, end)
        values = self.values[found]
        whole = (np.diff(np.concatenate([[start], ends])) * values).sum()
        return whole, np.abs(np.diff(values)).sum()

    def march(self, origin, direction, start, end, steps=960):
        """The same sum by asking the middle of each of equal steps."""
        step = (end - start) / steps
        middles = start + (np.arange(steps) + 0.5) * step
        values = self.values[self.materials(origin + middles[:, None] * direction)]
        return values.sum() * step
