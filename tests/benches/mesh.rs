//! The reference: the same gap volume by a general mesh boolean on the exported bodies.

use boolmesh::prelude::{Manifold, OpType, compute_boolean};
use engine::chart::Case;
use engine::measure::Measurements;
use engine::plan::Plan;
use engine::solids::{Mesh, of_plan, of_site};

/// Meshes of the socket space, of what lies apical of the crest, and of the implant.
pub(crate) struct Bodies {
    socket: Manifold,
    apical: Manifold,
    implant: Manifold,
}

impl Bodies {
    /// The bodies of a plan with an implant; `None` where the library refuses one of them.
    pub(crate) fn of(case: &Case, plan: &Plan) -> Option<Self> {
        let m = Measurements::of(case, plan);
        let parts = of_site(&case.site).into_iter().chain(of_plan(&case.site, plan, m.drilled()));
        let parts: Vec<_> = parts.collect();
        let body = |name: &str| {
            let part = parts.iter().find(|part| part.name == name)?;
            read(&part.mesh)
        };
        Some(Self { socket: body("root_1")?, apical: body("apical")?, implant: body("implant")? })
    }

    /// Socket space apical of the level crest, less the implant, cubic millimetres.
    pub(crate) fn gap_volume(&self) -> Option<f64> {
        let space = compute_boolean(&self.socket, &self.apical, OpType::Intersect).ok()?;
        let gap = compute_boolean(&space, &self.implant, OpType::Subtract).ok()?;
        Some(volume(&gap))
    }
}

fn read(mesh: &Mesh) -> Option<Manifold> {
    let corners: Vec<f64> = mesh.corners.iter().flat_map(|at| [at.x, at.y, at.z]).collect();
    let places = mesh.triangles.iter().flatten().map(|place| usize::try_from(*place));
    let places: Vec<usize> = places.collect::<Result<_, _>>().ok()?;
    Manifold::new(&corners, &places).ok()
}

fn volume(body: &Manifold) -> f64 {
    body.hs
        .chunks_exact(3)
        .map(|face| {
            let [a, b, c] = [0, 1, 2].map(|corner| body.ps[face[corner].tail]);
            a.dot(b.cross(c)) / 6.0
        })
        .sum()
}
