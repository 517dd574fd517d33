//! What the rows of the population table ask of a drawn site. A share is the mean of 0 and 1.

use super::survey::{Section, Surveyed, is_open, oral_wall, wall};
use crate::anatomy::{Map, Neighbour, Site, Wall};
use crate::cases::readings::{concavity, to_floor};
use crate::cases::shape::{along, apex, face, root_at, to_segment};
use crate::cases::socket::Sagittal;
use crate::chart::{Complaint, Sex};

/// Something that is measured on a drawn site.
#[derive(Debug, Clone, Copy)]
pub struct Quantity {
    /// What rows name it by.
    pub id: &'static str,
    /// Its value at a site: millimetres, Hounsfield units, or 0 and 1; `None` where it does not apply.
    pub read: fn(&Surveyed) -> Option<f64>,
}

/// A truth as 0 or 1.
const fn share(of: bool) -> Option<f64> {
    Some(if of { 1.0 } else { 0.0 })
}

macro_rules! quantities {
    ($($id:literal: $read:expr;)+) => {
        /// Every quantity.
        pub const QUANTITIES: &[Quantity] = &[$(Quantity { id: $id, read: $read },)+];
    };
}

quantities! {
    // At extraction, measured directly.
    "crest-plate": |s| crest_plate(&s.referred);
    "crest-plate-1-or-less": |s| share(crest_plate(&s.referred)? <= 1.0);
    "crest-plate-2-or-more": |s| share(crest_plate(&s.referred)? >= 2.0);
    "oral-crest-plate": |s| oral_crest_plate(&s.referred);
    "cause-endodontic": |s| share(s.cause == Complaint::EndodonticFailure);
    "cause-periodontitis": |s| share(s.cause == Complaint::Periodontitis);
    "cause-caries": |s| share(s.cause == Complaint::Caries);
    "wall-missing-at-4-fractured": |s| missing_at_4(s, Complaint::RootFracture);
    "wall-missing-at-4-periodontitis": |s| missing_at_4(s, Complaint::Periodontitis);
    "wall-missing-at-4-endodontic": |s| missing_at_4(s, Complaint::EndodonticFailure);
    "diabetes": |s| share(s.patient.sugar.is_some());
    "smoker": |s| share(s.patient.cigarettes > 0);
    "blood-thinned": |s| share(s.patient.anticoagulant.is_some() || s.patient.antiplatelets > 0);

    // Before disease, as it really is.
    "dehiscence": |s| share(has(&s.before, true));
    "fenestration": |s| share(has(&s.before, false));
    "either-defect": |s| share(has(&s.before, true) || has(&s.before, false));
    "crest-plate-whole-over-open": |s| open_crest(s);
    "crest-plate-as-drawn": |s| Some(crest_as_drawn(&s.before));
    "apical-fenestration": |s| apical(s);
    "facial-class": |s| share(s.sagittal == Sagittal::Facial);
    "central-class": |s| share(s.sagittal == Sagittal::Central);
    "oral-class": |s| share(s.sagittal == Sagittal::Oral);
    "facial-shape": |s| share(by_shape(&s.before) == Sagittal::Facial);
    "central-shape": |s| share(by_shape(&s.before) == Sagittal::Central);
    "oral-shape": |s| share(by_shape(&s.before) == Sagittal::Oral);
    "engaged-shape": |s| share(by_shape(&s.before) == Sagittal::Engaged);
    "midway-class": |s| share(matches!(s.sagittal, Sagittal::Central | Sagittal::Engaged));
    "ridge-width": |s| Some(ridge_width(&s.before));
    "root-ridge-angle": |s| Some(root_ridge_angle(&s.before));
    "concavity": |s| Some(concavity(&s.before));
    "beyond-apex": |s| to_floor(&s.before);
    "to-floor": |s| to_floor(&s.before);
    "to-canal": |s| to_canal(&s.before);
    "to-canal-men": |s| if s.patient.sex == Sex::Male { to_canal(&s.before) } else { None };
    "to-foramen": |s| Some((apex(&s.before.socket.as_one()) - s.before.vital.foramen?).length());
    "nearest-apex-to-foramen": |s| nearest_to_foramen(&s.before);
    "foramen-in-span": |s| share((-7.0..=3.5).contains(&foramen_x(&s.before)?));
    "foramen-between": |s| share(foramen_x(&s.before)? < -1.75);
    "foramen-under-second": |s| share(foramen_x(&s.before)? >= -1.75);
    "foramen-below-apex": |s| share(foramen_below(&s.before)? > 0.8);
    "foramen-level": |s| share(foramen_below(&s.before)?.abs() <= 0.8);
    "foramen-above-apex": |s| share(foramen_below(&s.before)? < -0.8);
    "foramen-depth-below": |s| foramen_below(&s.before).filter(|below| *below > 0.8);
    "foramen-height-above": |s| foramen_below(&s.before).filter(|b| *b < -0.8).map(|below| -below);
    "loop": |s| { s.before.vital.foramen?; share(s.before.vital.loop_.is_some()) };
    "loop-forward": |s| s.before.vital.loop_.as_ref().map(|run| run.from.x - run.to.x);
    "nasopalatine-across": |s| s.before.vital.nasopalatine.as_ref().map(|run| 2.0 * run.radius.get());
    "density": |s| Some(s.before.density.hu);
    "root-over-crown": |s| Some(whole_root(&s.before) / crown(&s.before));
    "whole-root": |s| Some(whole_root(&s.before));
    "crown-width": |s| Some(s.before.crown.width.get());
    "root-across-3-below-neck": |s| Some(2.0 * root_at(&s.before.socket.as_one(), below_neck(&s.before, 3.0)).half_fo);
    "gum-thickness": |s| Some(s.before.soft.thickness.get());
    "gum-1-or-less": |s| share(s.before.soft.thickness.get() <= 1.0);
    "keratinised-width": |s| Some(s.before.soft.keratinised.get());
    "margin-to-crest": |s| Some(-s.before.soft.margin_z.get());
    "keratinised-under-thin-gum": |s| under_gum(s, true, s.before.soft.keratinised.get());
    "keratinised-under-thick-gum": |s| under_gum(s, false, s.before.soft.keratinised.get());
    "crest-plate-under-thin-gum": |s| under_gum(s, true, crest_as_drawn(&s.before));
    "crest-plate-under-thick-gum": |s| under_gum(s, false, crest_as_drawn(&s.before));

    // Before disease, as read.
    "sounded": |s| (!has(&s.before, true)).then_some(s.sounded);
    "fine-none-at-4": |s| share(at_4(s).is_none());
    "fine-thin-at-4": |s| share(at_4(s).is_some_and(|plate| plate < 1.0));
    "fine-1-or-more-at-4": |s| share(at_4(s).is_some_and(|plate| plate >= 1.0));
    "fine-none-at-mid": |s| share(fine_mid(s).is_none());
    "fine-thin-at-mid": |s| share(fine_mid(s).is_some_and(|plate| plate < 1.0));
    "fine-1-or-more-at-mid": |s| share(fine_mid(s).is_some_and(|plate| plate >= 1.0));
    "fine-neck-to-crest": |s| Some(fine(s).crest(&s.before) + s.before.socket.as_one().neck.get());
    "fine-dehiscence": |s| share(fine(s).crest(&s.before) >= 2.0);
    "fine-fenestration": |s| share(fine(s).window(&s.before) >= 1.0);
    "chair-dehiscence": |s| share(chair(s).crest(&s.before) >= 2.0);
    "chair-fenestration": |s| share(chair(s).window(&s.before) >= 1.0);
    "fine-facial-1-below-crest": |s| fine(s).plate(&s.before, 1.0);
    "fine-facial-2-below-crest": |s| fine(s).plate(&s.before, 2.0);
    "fine-facial-3-below-crest": |s| fine(s).plate(&s.before, 3.0);
    "fine-facial-5-below-crest": |s| fine(s).plate(&s.before, 5.0);
    "fine-facial-2-below-neck": |s| fine(s).plate(&s.before, below_neck(&s.before, 2.0));
    "fine-facial-over-1-at-2-below-neck": |s| share(fine(s).plate(&s.before, below_neck(&s.before, 2.0))? > 1.0);
    "fine-facial-3-below-neck": |s| fine(s).plate(&s.before, below_neck(&s.before, 3.0));
    "fine-facial-5-below-neck": |s| fine(s).plate(&s.before, below_neck(&s.before, 5.0));
    "fine-facial-4-below-neck-oral-class": |s| if s.sagittal == Sagittal::Oral { at_4(s) } else { None };
    "fine-facial-4-below-neck-engaged-class": |s| if s.sagittal == Sagittal::Engaged { at_4(s) } else { None };
    "oral-3-below-neck": |s| oral_wall(&s.before, below_neck(&s.before, 3.0));
    "fine-facial-mid": |s| fine_mid(s);
    "fine-facial-apex": |s| fine(s).plate(&s.before, apex(&s.before.socket.as_one()).z);
    "oral-crest": |s| oral_crest_plate(&s.before);
    "oral-mid": |s| oral_wall(&s.before, mid(&s.before));
    "oral-apex": |s| oral_wall(&s.before, apex(&s.before.socket.as_one()).z);
    "chair-facial-crest": |s| chair_crest(s);
    "chair-crest-plate-under-1": |s| share(chair_crest(s)? < 1.0);
    "chair-facial-mid": |s| chair(s).plate(&s.before, mid(&s.before));
    "chair-facial-apex": |s| chair(s).plate(&s.before, apex(&s.before.socket.as_one()).z);
}

const fn fine(s: &Surveyed) -> &Section {
    &s.sections[0]
}

const fn chair(s: &Surveyed) -> &Section {
    &s.sections[1]
}

/// The present crest at the root's middle.
fn crest_of(site: &Site) -> f64 {
    along(&site.ridge.crest.knots, 0.0)
}

fn crest_plate(site: &Site) -> Option<f64> {
    wall(site, crest_of(site) + 0.01)
}

fn oral_crest_plate(site: &Site) -> Option<f64> {
    oral_wall(site, crest_of(site) + site.ridge.crest.oral_offset.get() + 0.01)
}

/// The plate at the crest as the chair's section reads it, where it shows one there.
fn chair_crest(s: &Surveyed) -> Option<f64> {
    chair(s).plate(&s.before, crest_of(&s.before) + 0.01)
}

/// The level this far below the neck of the tooth.
fn below_neck(site: &Site, down: f64) -> f64 {
    down - site.socket.as_one().neck.get()
}

fn mid(site: &Site) -> f64 {
    0.5 * apex(&site.socket.as_one()).z
}

fn at_4(s: &Surveyed) -> Option<f64> {
    fine(s).plate_below_crest(&s.before, below_neck(&s.before, 4.0))
}

fn fine_mid(s: &Surveyed) -> Option<f64> {
    fine(s).plate(&s.before, mid(&s.before))
}

fn missing_at_4(s: &Surveyed, cause: Complaint) -> Option<f64> {
    if s.cause != cause {
        return None;
    }
    share(fine(s).plate_below_crest(&s.referred, below_neck(&s.referred, 4.0)).is_none())
}

fn has(site: &Site, open: bool) -> bool {
    site.defects_of(Wall::Facial).any(|defect| is_open(defect.kind) == open)
}

/// The plate as drawn at the crest where the wall is open there.
fn open_crest(s: &Surveyed) -> Option<f64> {
    has(&s.before, true).then(|| crest_as_drawn(&s.before))
}

/// The plate at the reference crest as it would be without any defect.
fn crest_as_drawn(site: &Site) -> f64 {
    let root = site.socket.as_one();
    face(&site.ridge.facial, 0.0) - root.y.get() - root.half_fo.get()
}

/// A value of sites whose gum is thin, 1 mm or less, or is not.
fn under_gum(s: &Surveyed, thin: bool, value: f64) -> Option<f64> {
    ((s.before.soft.thickness.get() <= 1.0) == thin).then_some(value)
}

/// Whether a fenestration's middle lies in the apical third.
fn apical(s: &Surveyed) -> Option<f64> {
    let mut windows = s.before.defects_of(Wall::Facial).filter(|defect| !is_open(defect.kind));
    let points = windows.next()?.outline.points();
    let (low, high) = points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
        (low.min(at.y), high.max(at.y))
    });
    let map = Map::of(&s.before.ridge);
    let whole = map.t(Wall::Facial, apex(&s.before.socket.as_one()).z);
    share(f64::midpoint(low, high) >= 2.0 / 3.0 * whole)
}

fn ridge_width(site: &Site) -> f64 {
    let at = |z| face(&site.ridge.facial, z) - face(&site.ridge.oral, z);
    (at(0.0) + at(mid(site)) + at(apex(&site.socket.as_one()).z)) / 3.0
}

fn root_ridge_angle(site: &Site) -> f64 {
    let tip = apex(&site.socket.as_one());
    let middle = |z| f64::midpoint(face(&site.ridge.facial, z), face(&site.ridge.oral, z));
    let ridge = libm::atan2(middle(tip.z) - middle(0.0), tip.z);
    (site.socket.as_one().tilt.radians() - ridge) * (180.0 / core::f64::consts::PI)
}

fn to_canal(site: &Site) -> Option<f64> {
    let run = site.vital.canal.as_ref()?;
    Some(to_segment(apex(&site.socket.as_one()), run.from, run.to) - run.radius.get())
}

/// The foramen distal of the second premolar's middle, one premolar taken as 7 mm.
fn foramen_x(site: &Site) -> Option<f64> {
    let at = site.vital.foramen?;
    match site.tooth.position() {
        5 => Some(at.x),
        4 => Some(at.x - 7.0),
        _ => None,
    }
}

/// From the foramen to the nearest apex of this tooth and of those beside it.
fn nearest_to_foramen(site: &Site) -> Option<f64> {
    let at = site.vital.foramen?;
    let beside = [&site.neighbours.mesial, &site.neighbours.distal];
    let roots = beside.into_iter().filter_map(|one| match one {
        Neighbour::Root(root) => Some(root),
        _ => None,
    });
    let own = site.socket.as_one();
    let apices = roots.chain([&own]).map(|root| (apex(root) - at).length());
    Some(apices.fold(f64::INFINITY, f64::min))
}

fn foramen_below(site: &Site) -> Option<f64> {
    Some(site.vital.foramen?.z - apex(&site.socket.as_one()).z)
}

fn whole_root(site: &Site) -> f64 {
    (site.socket.as_one().length + site.socket.as_one().neck).get()
}

fn crown(site: &Site) -> f64 {
    -site.crown.edge.z - site.socket.as_one().neck.get()
}

/// Bone facial and oral of the root at a share of its depth, defects left out.
fn covers(site: &Site, share: f64) -> [f64; 2] {
    let z = share * apex(&site.socket.as_one()).z;
    let root = root_at(&site.socket.as_one(), z);
    let (facial, oral) = (face(&site.ridge.facial, z), face(&site.ridge.oral, z));
    [facial - root.y - root.half_fo, root.y - root.half_fo - oral]
}

/// Where the root lies, by the site's shape alone: against both plates where no more than 1.5 mm
/// covers it on either side over two thirds of its length; else against the plate on whose side
/// less than a third of the bone lies over the apical half; else in the middle. Two thirds is the
/// survey's own definition, the other two limits are ours.
fn by_shape(site: &Site) -> Sagittal {
    let levels = (0..30).map(|step| covers(site, (f64::from(step) + 0.5) / 30.0));
    let both = levels.filter(|sides| sides.iter().all(|bone| *bone <= 1.5)).count();
    if both >= 20 {
        return Sagittal::Engaged;
    }
    let apical = (0..20).map(|step| covers(site, 0.5 + f64::from(step) / 40.0));
    let [facial, oral] = apical.fold([0.0, 0.0], |sum, one| [sum[0] + one[0], sum[1] + one[1]]);
    match facial / (facial + oral) {
        share if share < 1.0 / 3.0 => Sagittal::Facial,
        share if share > 2.0 / 3.0 => Sagittal::Oral,
        _ => Sagittal::Central,
    }
}
