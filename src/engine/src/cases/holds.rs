//! Whether a site holds together: what must be so of any case, drawn here or brought in.

use super::shape;
use crate::anatomy::{Neighbour, Site, Socket, Tube};
use crate::chart::Case;
use crate::geometry::P3;

/// Whether a case that was not drawn here holds together: one that somebody's file carries.
///
/// # Errors
/// What does not.
pub fn holds(case: &Case) -> Result<(), &'static str> {
    holds_together(&case.site)
}

/// What must hold of any drawn site: the root lies inside the ridge with some plate over it, the
/// faces do not meet, nothing stands in the canal, neighbours stand clear.
pub(crate) fn holds_together(site: &Site) -> Result<(), &'static str> {
    if let Socket::Parted(parted) = &site.socket
        && let Some(fault) = parted.fault()
    {
        return Err(fault);
    }
    let deepest = shape::deepest(site);
    for step in 0..=40 {
        let z = deepest * f64::from(step) / 40.0;
        let (facial, oral) = (shape::face(&site.ridge.facial, z), shape::face(&site.ridge.oral, z));
        for at in shape::socket_at(site, z) {
            if facial - at.y - at.half_fo < 0.1 || at.y - at.half_fo - oral < 0.1 {
                return Err("the root would stand out of the ridge");
            }
        }
    }
    for step in 0..=60 {
        let z = f64::from(step) / 2.0;
        if shape::face(&site.ridge.facial, z) - shape::face(&site.ridge.oral, z) < 2.0 {
            return Err("the faces of the ridge would meet");
        }
    }
    let in_canal = |canal: &Tube| {
        let near = |tip: &P3| shape::to_segment(*tip, canal.from, canal.to) < canal.radius.get();
        shape::apices(site).iter().any(near)
    };
    if site.vital.canal.as_ref().is_some_and(in_canal) {
        return Err("the root would stand in the canal");
    }
    for (neighbour, sign) in [(&site.neighbours.mesial, -1.0), (&site.neighbours.distal, 1.0)] {
        if let Neighbour::Root(beside) = neighbour {
            for step in 0..=10 {
                let z = deepest * f64::from(step) / 10.0;
                let other = shape::root_at(beside, z);
                for own in shape::socket_at(site, z) {
                    if sign * (other.x - own.x) - own.half_md - other.half_md < 0.6 {
                        return Err("the roots would touch");
                    }
                }
            }
        }
    }
    Ok(())
}
