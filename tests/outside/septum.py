"""What a septum between roots holds of the implant, from booleans of meshes."""

import numpy as np

import threads


def side_in(reader, implant, body):
    """Area of the implant's side that lies in the solid."""
    axis = np.array(reader.export.recipe["implant"]["axis"])
    return threads.engaged_by_boolean(reader.solid(implant), reader.solid(body), axis)


def held_round(reader, area):
    """Length over which a body as wide as the platform has that area all round, mm."""
    near = reader.export.recipe["implant"]["radii"][0]
    return reader.number(area) / (2 * np.pi * near)


def off_axis(reader, _implant, *point):
    """How far the axis passes from a point, at the point's level, mm."""
    x, y, z = (reader.number(node) for node in point)
    implant = reader.export.recipe["implant"]
    platform, axis = np.array(implant["platform"]), np.array(implant["axis"])
    at = platform + axis * (z - platform[2]) / axis[2]
    return float(np.hypot(at[0] - x, at[1] - y))


def septum_class(reader, below, in_bone, in_septum):
    """1 to 3, as the recipe states the classes."""
    below, in_bone, in_septum = (reader.number(node) for node in (below, in_bone, in_septum))
    if in_bone >= 0.99 * below:
        return 1.0
    return 2.0 if in_septum >= 0.1 * below else 3.0


def class_by_room(reader, room):
    """1 to 3 before an implant is chosen: 4.5 mm of room, the narrowest usual implant, and 1.5 mm."""
    room = reader.number(room)
    return 1.0 if room >= 4.5 else 2.0 if room >= 1.5 else 3.0
