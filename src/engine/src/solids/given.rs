//! What an outside reader is given beside solids and outlines: profiles and crest lines, the numbers
//! of the plan that models read, and what was chosen, by key.

use crate::chart::Case;
use crate::geometry::P2;
use crate::measure::Measurements;
use crate::plan::{Component, Plan, Releases};
use crate::units::Mm;
use serde::Serialize;
use std::collections::BTreeMap;

/// The lines that the ridge is built on. A line goes on level beyond its ends.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Lines {
    /// Outer faces as (z, y), as they are beside every defect, above the present crest too.
    pub facial: Vec<[f64; 2]>,
    /// The same orally.
    pub oral: Vec<[f64; 2]>,
    /// Crest as it is now, as (x, z) of the facial side.
    pub crest: Vec<[f64; 2]>,
    /// Crest before any loss.
    pub unharmed: Vec<[f64; 2]>,
    /// How far apical of the facial crest the oral crest lies, mm.
    pub oral_offset: f64,
}

impl Lines {
    pub(super) fn of(case: &Case) -> Self {
        let ridge = &case.site.ridge;
        let sign = if case.site.tooth.is_mirrored() { -1.0 } else { 1.0 };
        let crest = |knots: &[P2]| {
            let mut line: Vec<[f64; 2]> = knots.iter().map(|p| [sign * p.x, p.y]).collect();
            if sign < 0.0 {
                line.reverse();
            }
            line
        };
        let face = |knots: &[P2]| knots.iter().map(|p| [p.x, p.y]).collect();
        Self {
            facial: face(&ridge.facial.knots),
            oral: face(&ridge.oral.knots),
            crest: crest(&ridge.crest.knots),
            unharmed: crest(&ridge.crest.unharmed),
            oral_offset: ridge.crest.oral_offset.get(),
        }
    }
}

/// A number that no mesh holds.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Quantity {
    /// As expressions name it.
    pub name: &'static str,
    /// Its value.
    pub value: f64,
    /// Of the value.
    pub unit: &'static str,
}

/// The numbers that expressions name.
pub(super) fn quantities(m: &Measurements<'_>) -> Vec<Quantity> {
    let mm = |name, value: Mm| Quantity { name, value: value.get(), unit: Mm::UNIT };
    let mut all = vec![
        mm("margin", m.case.site.crown.margin_z),
        Quantity { name: "density", value: m.case.site.density.hu, unit: "HU" },
    ];
    if let Some(graft) = m.plan.graft_laid() {
        all.push(mm("fill_level", graft.fill));
        all.push(mm("layer_thickness", graft.contour.unwrap_or(Mm::ZERO)));
    }
    all
}

/// What was chosen, by key, of what the models read.
pub(super) fn chosen(plan: &Plan) -> BTreeMap<&'static str, &'static str> {
    let mut all = BTreeMap::new();
    let releases = plan.raised().map_or("no-flap", |raised| match raised.releases {
        Releases::None => "none",
        Releases::One(_) => "one",
        Releases::Two => "two",
    });
    all.insert("vertical-releases", releases);
    let released = plan.raised().is_some_and(|raised| raised.periosteum_released);
    all.insert("periosteal-release", if released { "yes" } else { "no" });
    if let Some(component) = plan.component() {
        let key = match component {
            Component::CoverScrew => "cover-screw",
            Component::HealingAbutment => "healing-abutment",
            Component::CustomAbutment => "custom-abutment",
            Component::Provisional(_) => "provisional",
        };
        all.insert("component", key);
    }
    all.extend(plan.implant.as_ref().map(|implant| ("preparation", implant.preparation.key())));
    all.extend(plan.graft_laid().map(|graft| ("grain-size", graft.grains.key())));
    all.extend(plan.closure.as_ref().map(|closure| ("closure", closure.kind.key())));
    all
}
