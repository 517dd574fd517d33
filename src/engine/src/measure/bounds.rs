//! Bounds of measurements, for searches that decide many implants on one site.
//!
//! What is found here is what the measurement of the same name lies between, never a measurement of its
//! own: whoever asks turns to [`Measurements`](super::Measurements) where a bound does not decide. Each
//! bound is cautious by rounding errors only, so who compares it leaves room of [`CLOSE`].

use super::clearance::bed;
use super::ground::{AROUND, Ground};
use super::reaches::Reaches;
use super::threads::held_on;
use crate::anatomy::{Beside, Bone, Site, Tube, Wall};
use crate::geometry::convex::Convex;
use crate::geometry::{Cap, Cone, Frusta, Stack, ToPoint, Witness};

/// How far a measurement may lie outside its bounds, mm: far above what rounding does to either, and
/// above half the step of comparisons.
pub(crate) const CLOSE: f64 = 0.01;

/// Where more wall than this is left beyond a hollow it need not be measured, mm: more than rules ask
/// for.
const PLENTY: f64 = 1.1;

/// Where a measurement lies. Its own unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Span {
    pub least: f64,
    pub most: f64,
}

impl Span {
    const fn at(value: f64) -> Self {
        Self { least: value, most: value }
    }

    /// Of the lesser of two measurements.
    pub(crate) const fn lesser(self, other: Self) -> Self {
        Self { least: self.least.min(other.least), most: self.most.min(other.most) }
    }

    const fn less(self, by: f64) -> Self {
        Self { least: self.least - by, most: self.most - by }
    }
}

/// How much trouble a bound is worth.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub(crate) enum Care {
    /// From what is known already; whether it is more than this matters, and not by how much.
    Quick(f64),
    /// Worked out for this implant.
    Closer,
    /// As well as it can be.
    Thorough,
}

/// What is kept of a site for bounds.
#[derive(Debug)]
pub(crate) struct Bounds<'a> {
    ground: &'a Ground,
    site: &'a Site,
    /// Of the mesial and the distal neighbour; of a root its frusta and its cap.
    beside: [[Witness; 2]; 2],
    nasopalatine: Witness,
    canal: Witness,
    foramen: [Witness; 2],
    /// Level of the oral crest at an x.
    crest: Option<(f64, f64)>,
    /// What was last looked at beside an implant: several rules ask for the same.
    walls: [Option<Beheld>; 3],
    reaches: Reaches,
}

/// Stretches of an implant beside which a wall is looked at.
#[derive(Debug, Clone, Copy)]
enum Stretch {
    Oral,
    ApicalFacial,
    ApicalOral,
}

/// The way to the face beside a stretch.
#[derive(Debug, Clone, Copy)]
struct Beheld {
    cone: Cone,
    /// The least of it, mm.
    room: f64,
    /// Where the least thickness lies, once that was asked.
    found: Option<Span>,
}

impl<'a> Bounds<'a> {
    pub(crate) fn of(ground: &'a Ground, site: &'a Site) -> Self {
        Self {
            ground,
            site,
            beside: Default::default(),
            nasopalatine: Witness::default(),
            canal: Witness::default(),
            foramen: Default::default(),
            crest: None,
            walls: [None; 3],
            reaches: Reaches::of(&ground.solid),
        }
    }

    /// [`oral_bone`](super::Measurements::oral_bone); `None` where that is none.
    pub(crate) fn oral_bone(&mut self, cone: &Cone, care: Care) -> Option<Span> {
        let x = cone.frame.origin.x;
        let crest = match self.crest {
            Some((at, crest)) if at == x => crest,
            _ => super::bone::oral_start(&self.ground.solid, x),
        };
        self.crest = Some((x, crest));
        let from = super::bone::depth_of(cone, crest);
        (cone.end().z >= crest).then(|| self.wall(cone, Stretch::Oral, from, care))
    }

    /// [`apical_facial_bone`](super::Measurements::apical_facial_bone) and its oral twin.
    pub(crate) fn apical_bone(&mut self, cone: &Cone, wall: Wall, care: Care) -> Span {
        let stretch = match wall {
            Wall::Facial => Stretch::ApicalFacial,
            Wall::Oral => Stretch::ApicalOral,
        };
        self.wall(cone, stretch, super::bone::apical_third(cone), care)
    }

    /// The least thickness from a depth to the apex. The way to the face is never shorter than what wall
    /// and socket there are on it; where it is whole, it is as long.
    fn wall(&mut self, cone: &Cone, stretch: Stretch, from: f64, care: Care) -> Span {
        let solid = &self.ground.solid;
        let wall = if matches!(stretch, Stretch::ApicalFacial) { Wall::Facial } else { Wall::Oral };
        let side = super::bone::outward(wall);
        let line = cone.generator(cone.frame.facial * side);
        let ends = || (line.at(from), line.at(cone.length));
        let kept = &mut self.walls[stretch as usize];
        let beheld = match kept {
            Some(beheld) if beheld.cone == *cone => beheld,
            _ => {
                let (a, b) = ends();
                let room = solid.least_inside(wall, a, b);
                kept.insert(Beheld { cone: *cone, room, found: None })
            }
        };
        let room = beheld.room;
        if room <= 0.0 {
            return Span::at(room);
        }
        if care >= Care::Closer {
            let (a, b) = ends();
            let stands = || self.reaches.leave_wall(solid, cone, wall, (from, cone.length));
            let beyond = |outmost| solid.least_face(wall, [a.z, b.z]) - outmost;
            let found = || match solid.hollow_beside(wall, a, b) {
                Some(f64::NEG_INFINITY) if stands() => Span::at(room),
                // Beyond hollows there is wall as far as the face.
                Some(outmost) if beyond(outmost) > PLENTY && stands() => {
                    Span { least: room.min(beyond(outmost)), most: room }
                }
                _ => {
                    let least = super::bone::least_beside(solid, cone, wall, from, cone.length);
                    Span::at(least.unwrap_or(0.0))
                }
            };
            return *beheld.found.get_or_insert_with(found);
        }
        Span { least: 0.0, most: room }
    }

    /// The distance to the nearer neighbour of those that are implants, or of those that are roots;
    /// `None` where there is none.
    pub(crate) fn neighbour(&mut self, cone: &Cone, implants: bool, care: Care) -> Option<Span> {
        let sides = self.ground.solid.beside.iter().zip(&mut self.beside);
        let spans = sides.filter_map(|(beside, [first, second])| match beside {
            Beside::Root(root) if !implants => Some(to_root(first, second, cone, root, care)),
            Beside::Implant(other) if implants => Some(parted(first, cone, other, care)),
            _ => None,
        });
        spans.reduce(Span::lesser)
    }

    /// [`to_nasopalatine`](super::Measurements::to_nasopalatine); `None` where there is none.
    pub(crate) fn nasopalatine(&mut self, cone: &Cone, care: Care) -> Option<Span> {
        let tube = self.site.vital.nasopalatine.as_ref()?;
        Some(to_tube(&mut self.nasopalatine, cone, tube, care))
    }

    /// [`to_canal`](super::Measurements::to_canal); `None` where there is none.
    pub(crate) fn canal(&mut self, cone: &Cone, care: Care) -> Option<Span> {
        let tube = self.site.vital.canal.as_ref()?;
        Some(to_tube(&mut self.canal, &bed(cone), tube, care))
    }

    /// [`to_foramen`](super::Measurements::to_foramen); `None` where there is none.
    pub(crate) fn foramen(&mut self, cone: &Cone, care: Care) -> Option<Span> {
        let bed = bed(cone);
        let [first, second] = &mut self.foramen;
        let vital = &self.site.vital;
        let middle = vital.foramen.map(|middle| span(first, &bed, &middle, care));
        let turn = vital.loop_.as_ref().map(|tube| to_tube(second, &bed, tube, care));
        [middle, turn].into_iter().flatten().reduce(Span::lesser)
    }

    /// [`to_floor`](super::Measurements::to_floor); `None` where there is none.
    pub(crate) fn floor(&self, cone: &Cone) -> Option<Span> {
        self.ground.solid.to_floor(cone).map(Span::at)
    }

    /// [`oral_engagement`](super::Measurements::oral_engagement).
    pub(crate) fn oral_engagement(&self, cone: &Cone) -> Span {
        let line = cone.generator(-cone.frame.facial);
        let held = self.ground.solid.bone(Bone::Now, &line, 0.0, cone.length).length();
        Span { least: held - CLOSE, most: held + CLOSE }
    }

    /// [`anchorage_beyond_apex`](super::Measurements::anchorage_beyond_apex): no generator is held for
    /// less than all are.
    pub(crate) fn anchorage(&self, cone: &Cone, care: Care) -> Span {
        let step = if care < Care::Thorough { AROUND / 2 } else { 1 };
        let around = self.ground.around.iter().step_by(step);
        let held = around.map(|turn| held_on(self.ground, cone, *turn));
        Span { least: 0.0, most: held.fold(f64::INFINITY, f64::min) }
    }
}

fn to_root(frusta: &mut Witness, cap: &mut Witness, cone: &Cone, root: &Stack, care: Care) -> Span {
    let (side, end): (Frusta<'_>, Cap<'_>) = (root.frusta(), root.cap());
    parted(frusta, cone, &side, care).lesser(parted(cap, cone, &end, care))
}

fn to_tube(witness: &mut Witness, body: &impl ToPoint, tube: &Tube, care: Care) -> Span {
    let radius = tube.radius.get();
    let care = match care {
        Care::Quick(enough) => Care::Quick(enough + radius),
        other => other,
    };
    span(witness, body, &[tube.from, tube.to], care).less(radius)
}

/// Of a distance that goes on below 0 where the bodies overlap.
fn parted(witness: &mut Witness, body: &impl ToPoint, other: &impl Convex, care: Care) -> Span {
    let span = span(witness, body, other, care);
    if span.least <= 0.0 { Span { least: f64::NEG_INFINITY, ..span } } else { span }
}

fn span(witness: &mut Witness, body: &impl ToPoint, other: &impl Convex, care: Care) -> Span {
    match care {
        Care::Quick(enough) => {
            let least = witness.at_least(body, enough).max(0.0);
            let most = if least >= enough { f64::INFINITY } else { witness.at_most(body) };
            Span { least, most }
        }
        Care::Closer | Care::Thorough => Span::at(witness.learn(body, other)),
    }
}
