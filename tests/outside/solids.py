"""Reading an export folder and doing its booleans and distances with manifold3d.

Nothing here knows how the engine computes: it has only the meshes and the words of the recipe.
"""

import ast
import json
from pathlib import Path

import manifold3d as m3
import numpy as np
import trimesh

NOTICE = "synthetic, not for treatment"


class Fault(Exception):
    """An export that does not hold what it promises."""


def read_ply(path):
    """Corners (n x 3) and triangles (m x 3) of a binary PLY file, and its comments."""
    raw = path.read_bytes()
    end = raw.index(b"end_header\n") + len(b"end_header\n")
    lines = raw[:end].decode("ascii").splitlines()
    comments = [line[len("comment "):] for line in lines if line.startswith("comment ")]
    count = {line.split()[1]: int(line.split()[2]) for line in lines if line.startswith("element ")}
    corners = np.frombuffer(raw, "<f8", count["vertex"] * 3, end).reshape(-1, 3)
    faces = np.frombuffer(
        raw, np.dtype([("n", "u1"), ("at", "<i4", 3)]), count["face"], end + corners.nbytes
    )
    return corners, faces["at"], comments


class Export:
    """One folder: its recipe, and its primitives as manifolds, read when first asked for."""

    def __init__(self, folder):
        self.folder = Path(folder)
        self.recipe = json.loads((self.folder / "recipe.json").read_text())
        if self.recipe["notice"] != NOTICE:
            raise Fault(f"{folder}: the recipe does not say '{NOTICE}'")
        self.files = {p["name"]: p["file"] for p in self.recipe["primitives"]}
        self.solids = {}
        self.values = {}

    def arrays(self, name):
        corners, faces, comments = read_ply(self.folder / self.files[name])
        if NOTICE not in comments:
            raise Fault(f"{self.folder.name}/{self.files[name]}: the header does not say '{NOTICE}'")
        return corners, faces

    def tight(self, name):
        """Whether an independent reader finds the mesh closed, consistently wound, right side out."""
        corners, faces = self.arrays(name)
        mesh = trimesh.Trimesh(corners, faces, process=False)
        return mesh.is_watertight and mesh.is_winding_consistent and mesh.volume > 0

    def solid(self, name):
        if name not in self.solids:
            if name not in self.files:
                raise Fault(f"{self.folder.name}: the recipe names '{name}', which is no primitive")
            corners, faces = self.arrays(name)
            solid = m3.Manifold(
                m3.Mesh64(
                    vert_properties=np.array(corners, dtype=np.float64, order="C"),
                    tri_verts=np.array(faces, dtype=np.uint64, order="C"),
                )
            )
            if solid.status() != m3.Error.NoError:
                raise Fault(f"{self.folder.name}/{name}: {solid.status()}")
            self.solids[name] = solid
        return self.solids[name]

    def evaluate(self, text):
        """A solid from an expression over primitives: `+` union, `&` common part, `-` difference."""
        if text not in self.values:
            self.values[text] = self._solid(ast.parse(text, mode="eval").body)
        return self.values[text]

    def _solid(self, node):
        if isinstance(node, ast.Name):
            return self.solid(node.id) if node.id != "nothing" else m3.Manifold()
        if isinstance(node, ast.BinOp):
            left, right = self._solid(node.left), self._solid(node.right)
            if isinstance(node.op, ast.Add):
                return left + right
            if isinstance(node.op, ast.BitAnd):
                return left ^ right
            if isinstance(node.op, ast.Sub):
                return left - right
        raise Fault(f"{self.folder.name}: cannot read '{ast.unparse(node)}' as a solid")


def volume(solid):
    """Enclosed volume, mm3."""
    return solid.volume()

