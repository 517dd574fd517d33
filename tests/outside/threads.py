"""The implant's lateral surface by what it faces, two independent ways.

Engaged: area of the implant's faces that a boolean with bone keeps. All three classes: rays cast
radially at the bone's mesh from a grid on the cone, refined where the class changes.
"""

import numpy as np

ENGAGED, FACING, EXPOSED = 0, 1, 2
# How far outward a ray looks for bone, mm.
REACH = 6.0
FAR = 60.0


def engaged_faces(implant, bone, axis):
    """Corners (n x 3 x 3) of the faces of the implant's side that lie in bone, from their common part.

    `axis`: unit vector; faces whose normal runs along it are the ends, not the side.
    """
    inside = implant.as_original()
    common = inside ^ bone
    if common.is_empty():
        return np.zeros((0, 3, 3))
    mesh = common.to_mesh64()
    corners, faces = mesh.vert_properties[:, :3], mesh.tri_verts
    mine = np.zeros(len(faces), bool)
    for run, original in enumerate(mesh.run_original_id):
        if original == inside.original_id():
            mine[mesh.run_index[run] // 3 : mesh.run_index[run + 1] // 3] = True
    found = corners[faces[mine].astype(np.int64)]
    normal = _normals(found)
    along = np.abs(normal @ axis) / np.maximum(np.linalg.norm(normal, axis=1), 1e-12)
    return found[along < 0.9]


def _normals(faces):
    """Square to each face, twice its area long."""
    a, b, c = faces[:, 0], faces[:, 1], faces[:, 2]
    return np.cross(b - a, c - a)


def engaged_by_boolean(implant, bone, axis):
    """Area of the implant's side that lies inside bone."""
    normal = _normals(engaged_faces(implant, bone, axis))
    return float(np.linalg.norm(normal, axis=1).sum() / 2)


class Side:
    """Classes on the side of a cone, by rays."""

    def __init__(self, implant, bone):
        self.platform = np.array(implant["platform"])
        self.axis = np.array(implant["axis"])
        self.length = implant["length"]
        self.radii = implant["radii"]
        aside = np.array([1.0, 0, 0]) if abs(self.axis[0]) < 0.7 else np.array([0, 1.0, 0])
        self.u = np.cross(self.axis, aside)
        self.u /= np.linalg.norm(self.u)
        self.v = np.cross(self.axis, self.u)
        self.bone = bone
        self.known = {}

    def radius(self, depth):
        return self.radii[0] + (self.radii[1] - self.radii[0]) * depth / self.length

    def look(self, i, j, around, along):
        """Class at a place of the finest grid."""
        key = (i % around, j)
        if key not in self.known:
            angle = 2 * np.pi * (key[0] + 0.137) / around
            depth = self.length * min(max(j, 0.003), along - 0.003) / along
            out = self.u * np.cos(angle) + self.v * np.sin(angle)
            # A hair outside the true cone, so that the chords of the bone's mesh play no part.
            start = self.platform + self.axis * depth + out * self.radius(depth)
            # Past every solid, so that an odd number of hits says that the point lies inside.
            hits = self.bone.ray_cast(start, start + out * FAR)
            near = any(hit.distance * FAR <= REACH for hit in hits)
            self.known[key] = ENGAGED if len(hits) % 2 == 1 else FACING if near else EXPOSED
        return self.known[key]

    def areas(self, levels=3, around=40, along=24):
        """Areas (engaged, facing, exposed), mm2."""
        fine_a, fine_l = around << levels, along << levels
        total = np.zeros(3)
        slant = np.hypot(self.length, self.radii[0] - self.radii[1]) / self.length

        def area(j0, j1, width):
            r = self.radius(self.length * (j0 + j1) / 2 / fine_l)
            return 2 * np.pi * r * (width / fine_a) * slant * self.length * (j1 - j0) / fine_l

        stack = [
            (i << levels, j << levels, 1 << levels) for i in range(around) for j in range(along)
        ]
        while stack:
            i, j, step = stack.pop()
            seen = [
                self.look(a, b, fine_a, fine_l) for a in (i, i + step) for b in (j, j + step)
            ]
            if step > 1 << (levels - 1):
                seen.append(self.look(i + step // 2, j + step // 2, fine_a, fine_l))
            if len(set(seen)) == 1:
                total[seen[0]] += area(j, j + step, step)
            elif step == 1:
                for one in seen[:4]:
                    total[one] += area(j, j + 1, 1) / 4
            else:
                half = step // 2
                stack += [
                    (i, j, half),
                    (i + half, j, half),
                    (i, j + half, half),
                    (i + half, j + half, half),
                ]
        return total


def areas(implant, bone, cone):
    """Areas (engaged, facing, exposed); engaged by the boolean, which must agree with the rays."""
    side = Side(cone, bone)
    by_rays = side.areas()
    engaged = engaged_by_boolean(implant, bone, side.axis)
    if abs(engaged - by_rays[ENGAGED]) > max(0.15, 0.004 * engaged):
        raise ArithmeticError(f"boolean {engaged:.3f} and rays {by_rays[ENGAGED]:.3f} disagree")
    # The chords of the implant's mesh make its side a little smaller than the cone's.
    return engaged, by_rays[FACING], by_rays[EXPOSED]
