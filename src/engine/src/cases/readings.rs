//! What examinations would read at a site, errors included.
//!
//! A section gives every distance within its stated error and does not show a plate under 0.5 to
//! 0.6 mm. Sounding reads off by more than 1 mm, too shallow, in 12 % (190 teeth, Kan 2003,
//! confirmed). A film measures length and floor and may show a lesion; it never shows the facial
//! wall, so nothing here reads it off a film.

use super::draw::{Draws, Field, Stream, halves, tenths};
use super::shape::{along, apices, deepest, face, socket_at, to_segment};
use crate::anatomy::{Defect, Jaw, Lesion, Map, Site, Tube, Wall};
use crate::chart::{Case, Complaint, Patient, Readings, SectionReport, SoundingReading};
use crate::geometry::P3;
use crate::measure::Measurements;
use crate::plan::Plan;
use crate::units::Mm;

/// How much bone beyond an apex a section of small field shows, mm (ours).
const FIELD: f64 = 20.0;

/// Before anything has been read: what a case holds while its readings are drawn.
pub(super) fn unread() -> Readings {
    let none = SoundingReading { depth: Mm::ZERO };
    Readings {
        sections: SectionReport {
            error: Mm::ZERO,
            facial_plate: None,
            oral_plate: None,
            ridge_width: [Mm::ZERO; 3],
            concavity: Mm::ZERO,
            undercut: Mm::ZERO,
            canal: None,
            foramen: None,
            loop_length: None,
            floor: None,
            nasopalatine: None,
            beyond_apex: Mm::ZERO,
            lesion: None,
            density: crate::anatomy::DensityClass::D3,
        },
        sounding: [none; 4],
        probing: [Mm::ZERO; 6],
        film_root_length: Mm::ZERO,
        film_floor: None,
        film_lesion: None,
    }
}

pub(super) fn draw(draws: &Draws, case: &Case) -> Readings {
    let Case { site, patient, .. } = case;
    let mut film = draws.stream(Field::Film);
    let length = site.socket.as_one().length.get();
    let film_root_length = Mm::new(tenths(length + film.normal_within(0.0, 0.4, -1.0, 1.0)));
    let floor = to_floor(site);
    let film_error = film.normal_within(0.0, 0.4, -1.0, 1.0);
    let shows = film.unit();
    Readings {
        sections: sections(draws, case),
        sounding: sounding(draws, site),
        probing: probing(draws, site, patient),
        film_root_length,
        film_floor: floor.filter(|f| *f < 12.0).map(|f| Mm::new(tenths(f + film_error))),
        film_lesion: film_lesion(site, shows),
    }
}

/// Whether a point of the wall lies under a defect.
pub(super) fn covers(map: &Map, defect: &Defect, x: f64, z: f64) -> bool {
    let t = map.t(defect.wall, z);
    let points = defect.outline.points();
    let next = points.iter().cycle().skip(1);
    let crossings = points
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.y > t) != (b.y > t) && x < a.x + (b.x - a.x) * (t - a.y) / (b.y - a.y));
    crossings.count() % 2 == 1
}

/// Level of the bone that a probe meets at `x` on a wall: the crest, or the end of a defect that is
/// open to it.
fn bone_level(site: &Site, wall: Wall, x: f64) -> f64 {
    let offset = if wall == Wall::Oral { site.ridge.crest.oral_offset.get() } else { 0.0 };
    let mut z = along(&site.ridge.crest.knots, x) + offset;
    let start = z.max(0.0);
    let map = Map::of(&site.ridge);
    // Steps of the map's grid, down to the apex at most.
    let mut next = start + 0.05;
    let deepest = deepest(site);
    while next < deepest
        && site.defects.iter().any(|defect| defect.wall == wall && covers(&map, defect, x, next))
    {
        z = next;
        next += 0.1;
    }
    z
}

fn sections(draws: &Draws, case: &Case) -> SectionReport {
    let site = &case.site;
    // What is really there is measured where everything is measured; no plan has been carried out.
    let plan = Plan::default();
    let m = Measurements::of(case, &plan);
    let truth = |length: Option<Mm>| length.map_or(0.0, Mm::get);
    let mut stream = draws.stream(Field::SectionError);
    let error = tenths(stream.between(0.25, 0.55));
    let threshold = stream.between(0.5, 0.6);
    let mut noise = draws.stream(Field::Sections);
    // Every distance within the stated error, to a tenth; rounding stays inside it too.
    let mut read = |truth: f64| {
        let off = noise.normal_within(0.0, error / 2.0, 0.05 - error, error - 0.05);
        Mm::new(tenths(truth + off))
    };
    let end = deepest(site);
    let width = |z: f64| face(&site.ridge.facial, z) - face(&site.ridge.oral, z);
    let thin = |plate: f64| (plate >= threshold).then_some(plate);
    let facial_plate = thin(truth(m.facial_plate())).map(&mut read);
    let oral_plate = thin(truth(m.oral_plate())).map(&mut read);
    let ridge_width = [width(0.0), width(0.5 * end), width(end)].map(&mut read);
    let concavity = read(concavity(site)).max(Mm::ZERO);
    let undercut = match site.tooth.jaw() {
        Jaw::Maxilla => Mm::ZERO,
        Jaw::Mandible => read(truth(m.lingual_undercut())).max(Mm::ZERO),
    };
    let vital = &site.vital;
    let tube = |tube: &Tube| {
        nearest_apex(site, |tip| to_segment(tip, tube.from, tube.to)) - tube.radius.get()
    };
    let canal = vital.canal.as_ref().map(tube).map(&mut read);
    let to_foramen = |at: P3| nearest_apex(site, |tip| (tip - at).length());
    let foramen = vital.foramen.map(to_foramen).map(&mut read);
    let loop_length = vital
        .foramen
        .map(|_| vital.loop_.as_ref().map_or(Mm::ZERO, |run| read((run.to - run.from).length())));
    let floor = to_floor(site).map(&mut read);
    let nasopalatine = vital.nasopalatine.as_ref().map(|run| read(root_to_tube(site, run)));
    // A field ends somewhere: what goes on beyond it reads as its length.
    let beyond_apex = read(truth(m.bone_beyond_apex()).min(FIELD)).max(Mm::ZERO);
    let lesion = across(&site.lesion).map(&mut read);
    SectionReport {
        error: Mm::new(error),
        facial_plate,
        oral_plate,
        ridge_width,
        concavity,
        undercut,
        canal,
        foramen,
        loop_length,
        floor,
        nasopalatine,
        beyond_apex,
        lesion,
        density: grey_class(&mut noise, site.density.hu),
    }
}

/// The least of a distance over the apices: of several roots the nearest is told.
fn nearest_apex(site: &Site, distance: impl Fn(P3) -> f64) -> f64 {
    apices(site).iter().map(|tip| distance(*tip)).fold(f64::INFINITY, f64::min)
}

/// How large a lesion is, where there is one.
const fn across(lesion: &Lesion) -> Option<f64> {
    match lesion {
        Lesion::None => None,
        Lesion::Chronic { diameter }
        | Lesion::Abscess { diameter }
        | Lesion::Spreading { diameter } => Some(diameter.get()),
    }
}

/// A class guessed from grey values, which are not Hounsfield units: scale 0.8 to 1.2 (nine
/// machines, Oliveira-Santos et al. 2025, confirmed).
fn grey_class(stream: &mut Stream, hu: f64) -> crate::anatomy::DensityClass {
    super::around::class_of(hu * stream.between(0.8, 1.2))
}

/// Apex to the floor, of several the nearest; negative when a root stands in it.
pub(super) fn to_floor(site: &Site) -> Option<f64> {
    let floor = site.vital.floor.as_ref()?;
    let apart = |tip: &P3| floor.z.get() + floor.rise * tip.x - tip.z;
    apices(site).iter().map(apart).reduce(f64::min)
}

/// Least distance of the root's surface to a tube, over its length.
pub(super) fn root_to_tube(site: &Site, tube: &Tube) -> f64 {
    let deepest = deepest(site);
    (0..=20)
        .flat_map(|step| {
            let z = deepest * f64::from(step) / 20.0;
            socket_at(site, z).into_iter().map(move |at| {
                let axis = P3::new(at.x, at.y, z);
                to_segment(axis, tube.from, tube.to)
                    - tube.radius.get()
                    - at.half_md.min(at.half_fo)
            })
        })
        .fold(f64::INFINITY, f64::min)
}

/// How far the facial face lies inside the line from the crest to its most facial point beyond the
/// apex (8 mm on at most).
pub(super) fn concavity(site: &Site) -> f64 {
    let far = deepest(site) + 8.0;
    let knots = &site.ridge.facial.knots;
    let from = face(&site.ridge.facial, 0.0);
    let to = face(&site.ridge.facial, far);
    let inside = knots.iter().filter(|knot| 0.0 < knot.x && knot.x < far);
    inside.map(|knot| from + (to - from) * knot.x / far - knot.y).fold(0.0, f64::max)
}

/// Mesial, middle and distal on the facial side, then the middle of the oral side.
pub(super) fn sounding(draws: &Draws, site: &Site) -> [SoundingReading; 4] {
    let mut stream = draws.stream(Field::Sounding);
    let half = site.coronal().half_md.get();
    let places =
        [(Wall::Facial, -0.75), (Wall::Facial, 0.0), (Wall::Facial, 0.75), (Wall::Oral, 0.0)];
    places.map(|(wall, share)| {
        let shallow = stream.chance(SHALLOW);
        let far = stream.between(FAR[0], FAR[1]);
        let near = stream.normal_within(0.0, NEAR, NEAREST[0], NEAREST[1]);
        let depth = from_margin_to_bone(site, wall, share * half);
        SoundingReading { depth: on_the_scale(depth + if shallow { -far } else { near }) }
    })
}

/// Share of soundings that read too shallow by more than 1 mm (190 teeth, Kan 2003, confirmed), and by
/// how much, mm (ours).
pub(crate) const SHALLOW: f64 = 0.12;
/// See [`SHALLOW`].
pub(crate) const FAR: [f64; 2] = [1.1, 2.0];
/// Spread of the rest and the most that it is off, mm (ours: within a step and a half of the scale).
pub(crate) const NEAR: f64 = 0.35;
/// See [`NEAR`].
pub(crate) const NEAREST: [f64; 2] = [-0.9, 0.7];

/// A depth as it stands on a probe's scale: to half a millimetre, and never less than 1.
pub(crate) fn on_the_scale(depth: f64) -> Mm {
    Mm::new(halves(depth).max(1.0))
}

/// From the gum's margin down to the bone at `x` along one wall, mm, as it really is. The margin follows
/// the crest at the line angles.
pub(crate) fn from_margin_to_bone(site: &Site, wall: Wall, x: f64) -> f64 {
    bone_level(site, wall, x) - gum_margin(site, x)
}

/// Level of the gum's margin at `x`: it rises with the crest as it was, and a little more beside the
/// papilla.
pub(crate) fn gum_margin(site: &Site, x: f64) -> f64 {
    site.soft.margin_z.get() + 1.25 * along(&site.ridge.crest.unharmed, x)
}

/// Pockets: shallow where only bone is missing (the gum still clings to the root), deep and narrow
/// along a split root, deep beside lost interproximal bone.
fn probing(draws: &Draws, site: &Site, patient: &Patient) -> [Mm; 6] {
    let mut stream = draws.stream(Field::Probing);
    let margin = site.soft.margin_z.get();
    let half = site.coronal().half_md.get();
    let sick = patient.complaint == Complaint::Periodontitis;
    let split = patient.complaint == Complaint::RootFracture;
    let places = [
        (Wall::Facial, -1.0),
        (Wall::Facial, 0.0),
        (Wall::Facial, 1.0),
        (Wall::Oral, -1.0),
        (Wall::Oral, 0.0),
        (Wall::Oral, 1.0),
    ];
    places.map(|(wall, side)| {
        let healthy = if side == 0.0 { 1.8 } else { 2.5 };
        let noise = stream.normal_within(0.0, 0.4, -0.9, 0.9);
        let x = side * half;
        let before = along(&site.ridge.crest.unharmed, x);
        let sunk = along(&site.ridge.crest.knots, x) - before;
        // A pocket ends about 1 mm coronal of bone.
        let open = bone_level(site, wall, 0.0) - margin - 1.0;
        let depth = if split && side == 0.0 && open > 4.0 {
            open
        } else if sick {
            healthy + 1.0 + sunk
        } else {
            healthy + 0.8 * sunk
        };
        Mm::new(halves(depth + noise).max(1.0))
    })
}

/// Whether and how large a lesion shows on film: size decides more than anything (129 roots, over
/// 90 % found, confirmed); half of those 2 mm across, all from 4 mm up (ours). It reads smaller than
/// it is.
fn film_lesion(site: &Site, shows: f64) -> Option<Mm> {
    let diameter = across(&site.lesion)?;
    let odds = ((diameter - 1.0) / 3.0).clamp(0.0, 1.0);
    (shows < odds).then(|| Mm::new(tenths(0.85 * diameter)))
}
