//! The section of a healed site: what the teaching model left of the ridge, what it was, and the
//! implant that is put into it.

use super::{Cutting, several};
use crate::anatomy::{Lesion, Wall};
use crate::chart::Case;
use crate::figures::believed::{Believed, Sight};
use crate::figures::curve::smooth_line;
use crate::figures::scene::{Scene, mm};
use crate::figures::sheet::Margin;
use crate::figures::show::directed;
use crate::figures::{Figure, Ink, Show};
use crate::geometry::P2;
use crate::healing::Healed;
use crate::measure::{Ground, Measurements};
use crate::plan::choices::{GrainSize, HealedAct, LateComponent};
use crate::plan::{Decision, LatePlacement, Plan};
use crate::units::{Deg, Mm};
use std::borrow::Cow;

/// A contour layer: as thick as the least that is taught, over 6 mm from the crest and thinning out
/// over its last 3.
const LAYER: f64 = 2.0;
const LAYER_REACH: f64 = 6.0;
const LAYER_FALL: f64 = 3.0;
/// Facial bone is measured so far below the platform, mm.
const BELOW_PLATFORM: f64 = 2.0;

/// The section of the site as re-entry found it, the old outline dashed behind it; `None` until a
/// learner has come back to it. Everything but the healed ridge is drawn as far as it has been seen.
#[must_use]
pub fn healed_section(show: &Show<'_>) -> Option<Figure> {
    let found = Measurements::of(show.case, show.plan);
    let healed = found.healed()?;
    let was = Scene::of(show);
    let placed = placed(show);
    let now = settled(show, &was, healed, placed.as_ref());
    let (mut cutting, window) = Cutting::of(&was, several::below(&was));
    let open = socket_left(&cutting, &now, healed.front.get());
    let dashed = former(&cutting);
    let sheet = {
        cutting.crown_over(now.body());
        cutting.levels();
        cutting.sheet
    };
    let mut cutting = Cutting {
        scene: &now,
        sheet,
        down: was.down(),
        apical: cutting.apical,
        below: several::below(&now),
    };
    cutting.healed_ground(&was, healed.closed, open);
    for line in dashed {
        let line = cutting.put_all(&line);
        cutting.sheet.line(&line, Ink::Dashed);
    }
    let profile = cutting.put_all(&cutting.profile());
    cutting.sheet.line(&profile, Ink::Outline);
    let contour = show
        .plan
        .later
        .found()
        .is_some_and(|found| found.act == HealedAct::PlaceWithContour && now.body().is_some());
    if contour {
        cutting.contour_layer();
    }
    let moved = [Decision::LateFacial, Decision::LateDepth, Decision::LateTilt];
    // Chosen on the torque of what stands there already.
    let chosen = placed.as_ref().and(show.draft.one(Decision::LateComponent));
    let component = chosen.map(|chosen: LateComponent| chosen.into());
    let is_open = show.plan.later.placement.is_none() && !show.reveal;
    cutting.implant_under(component, is_open.then_some(moved));
    cutting.healed_notes(contour);
    cutting.sides();
    let says = cutting.healed_words(healed, &was, contour);
    let layout = cutting.layout(window);
    Some(cutting.sheet.finish("healed", now.title("Healed section"), says, layout))
}

/// The late implant: as it was placed, or as it is being tried once its size is chosen.
fn placed(show: &Show<'_>) -> Option<LatePlacement> {
    if show.plan.later.placement.is_some() {
        return show.plan.later.placement.clone();
    }
    if !show.asked(Decision::LateDiameter) {
        return None;
    }
    let place = |decision| show.tenths(decision).unwrap_or(Mm::ZERO);
    let tilt = show.draft.number(Decision::LateTilt).unwrap_or(0);
    Some(LatePlacement {
        diameter: show.tenths(Decision::LateDiameter)?,
        length: show.tenths(Decision::LateLength)?,
        facial: place(Decision::LateFacial),
        depth: place(Decision::LateDepth),
        tilt: Deg::new(f64::from(tilt)),
        component: show.draft.one(Decision::LateComponent).unwrap_or(LateComponent::CoverScrew),
    })
}

/// The healed ridge and the implant in it, beside what has been seen of everything else.
fn settled<'a>(
    show: &Show<'a>,
    was: &Scene<'_>,
    healed: &Healed,
    placed: Option<&LatePlacement>,
) -> Scene<'a> {
    let mut site = was.site().clone();
    site.ridge = healed.case.site.ridge.clone();
    site.socket = healed.case.site.socket.clone();
    site.defects.clear();
    site.lesion = Lesion::None;
    let case = Case { site, ..healed.case.clone() };
    let ground = Ground::of(&case.site);
    let implant = placed.map(|placed| placed.implant(&case, healed.crest));
    let mut believed = Believed::of(show);
    believed.site = Cow::Owned(case.site.clone());
    believed.ridge = Sight::Seen;
    Scene { show: *show, believed, plan: Plan { implant, ..Plan::default() }, case, ground }
}

/// The ridge and socket as they were, as lines in (y, z), down to where the socket ended.
fn former(cutting: &Cutting<'_, '_>) -> Vec<Vec<P2>> {
    let end = cutting.below.deepest;
    let sides = [Wall::Facial, Wall::Oral].into_iter();
    sides
        .flat_map(|wall| {
            let mut edge = cutting.edge(wall);
            edge.retain(|at| at.y <= end);
            [edge, cutting.wall(wall)]
        })
        .collect()
}

/// What bone has not filled of the old socket, as a ring in (y, z), down to this level.
fn socket_left(cutting: &Cutting<'_, '_>, now: &Scene<'_>, end: f64) -> Vec<P2> {
    let top = now.crest(Wall::Facial).max(now.crest(Wall::Oral));
    if end - top < 0.3 {
        return Vec::new();
    }
    let (mut facial, mut oral) = (Vec::new(), Vec::new());
    for z in Cutting::levels_between(top, end) {
        if let (Some(out), Some(inward)) =
            (cutting.inner(Wall::Facial, z), cutting.inner(Wall::Oral, z))
        {
            let solid = &now.ground.solid;
            facial.push(P2::new(out.min(solid.face(Wall::Facial, z)), z));
            oral.push(P2::new(inward.max(solid.face(Wall::Oral, z)), z));
        }
    }
    facial.extend(oral.into_iter().rev());
    facial
}

impl Cutting<'_, '_> {
    /// The healed ridge from its apical end facially over the crest to its apical end orally.
    fn profile(&self) -> Vec<P2> {
        let mut line: Vec<P2> = self.edge(Wall::Facial).into_iter().rev().collect();
        line.extend(self.edge(Wall::Oral));
        line
    }

    /// Gum, bone, what must not be hurt, and the part of the old socket that bone has not filled.
    fn healed_ground(&mut self, was: &Scene<'_>, closed: bool, open: Vec<P2>) {
        let thick = self.scene.site().soft.thickness.get();
        let profile = self.profile();
        let crest = self.scene.crest(Wall::Facial).min(self.scene.crest(Wall::Oral));
        let [facial, oral] = [Wall::Facial, Wall::Oral].map(|wall| {
            let edge = self.edge(wall);
            let out = if wall == Wall::Facial { thick } else { -thick };
            edge.into_iter().map(|at| P2::new(at.x + out, at.y)).collect::<Vec<P2>>()
        });
        let mut gum: Vec<P2> = facial.iter().rev().copied().collect();
        if let (true, Some(a), Some(b)) = (closed, facial.first(), oral.first()) {
            // Round over the crest, as thick there as on the faces.
            let over = crest - thick;
            let across = [
                *a,
                P2::new(0.75 * a.x + 0.25 * b.x, over),
                P2::new(0.25 * a.x + 0.75 * b.x, over),
                *b,
            ];
            gum.extend(smooth_line(&across, 8));
            gum.extend(oral);
            gum.extend(profile.iter().rev().copied());
            let gum = self.put_all(&gum);
            self.sheet.area(vec![gum], Ink::Gum);
        } else {
            for (wall, outer) in [(Wall::Facial, facial), (Wall::Oral, oral)] {
                let mut ring = outer;
                ring.extend(self.edge(wall).into_iter().rev());
                let ring = self.put_all(&ring);
                self.sheet.area(vec![ring], Ink::Gum);
            }
        }
        self.bone_in(&[profile]);
        self.structures();
        if !open.is_empty() && was.tooth_is_out() {
            let open = self.put_all(&open);
            self.sheet.area(vec![open], Ink::Socket);
        }
    }

    /// The contour layer outside the healed facial face.
    fn contour_layer(&mut self) {
        let crest = self.scene.crest(Wall::Facial);
        let levels = Self::levels_between(crest, crest + LAYER_REACH);
        let face = |z: f64| self.scene.ground.solid.face(Wall::Facial, z);
        let mut ring: Vec<P2> = levels.iter().map(|z| P2::new(face(*z), *z)).collect();
        ring.extend(levels.iter().rev().map(|z| {
            let left = ((crest + LAYER_REACH - z) / LAYER_FALL).clamp(0.0, 1.0);
            P2::new(face(*z) + LAYER * left, *z)
        }));
        self.strew(ring, GrainSize::Small, None);
    }

    fn healed_notes(&mut self, contour: bool) {
        self.note_levels();
        self.note_structures();
        let crest = self.scene.crest(Wall::Oral);
        let face = self.scene.ground.solid.face(Wall::Oral, crest + 2.0);
        let at = self.put(face, crest + 2.0);
        self.sheet.note(Margin::Left, at, "healed ridge\ndashed: as it was", Ink::Words);
        if let Some(body) = self.scene.body() {
            self.note_implant(&body);
            self.note_depth(&body);
            let line = body.generator(body.frame.facial);
            let start = line.at(BELOW_PLATFORM);
            let bone = self.scene.measured().facial_bone_after_grafting();
            if let Some(bone) = bone {
                let to = self.put(start.y + bone.get(), start.z);
                self.sheet.dimension(self.put(start.y, start.z), to, Ink::Dimension);
                let words = format!("facial bone {}", mm(bone));
                self.sheet.note(Margin::Right, to, words, Ink::Words);
            }
        }
        if contour {
            let z = self.scene.crest(Wall::Facial) + 1.0;
            let face = self.scene.ground.solid.face(Wall::Facial, z);
            let at = self.put(face + 0.8 * LAYER, z);
            self.sheet.note(Margin::Right, at, "contour layer", Ink::Words);
        }
    }

    /// The healed section in sentences.
    fn healed_words(&self, healed: &Healed, was: &Scene<'_>, contour: bool) -> String {
        let weeks = self.scene.show.plan.later.found().map_or(0, |found| found.after);
        let [before, width] = healed.width.map(mm);
        let mut said = vec![
            format!(
                "The ridge cut from facial to {}, through the middle of tooth {}, {weeks} weeks after the extraction: a teaching model of what it healed to.",
                self.scene.oral(),
                self.scene.tooth()
            ),
            "Dashed lines show ridge and socket as they were.".to_owned(),
            format!(
                "The facial crest has come down by {}; 1 mm below it the ridge is {width} wide, where it was {before}.",
                mm(healed.lowered)
            ),
            format!(
                "Bone fills about {:.0} % of the socket, from its apex up.",
                10.0 * libm::round(10.0 * healed.filled)
            ),
        ];
        if !was.believed.ridge.is_seen() {
            said.push(
                "The ridge as it was had not been seen; its dashed outline is a supposition."
                    .to_owned(),
            );
        }
        said.extend(self.late_words(contour));
        said.extend(self.say_structures());
        said.join(" ")
    }

    fn late_words(&self, contour: bool) -> Option<String> {
        let implant = self.scene.implant()?;
        let tooth = self.scene.tooth();
        let place =
            directed(Decision::LateFacial, implant.facial.get(), "on the tooth's axis", tooth);
        let lean = directed(Decision::LateTilt, implant.tilt.get(), "upright", tooth);
        let m = self.scene.measured();
        let bone = m.facial_bone_after_grafting().map(mm)?;
        let outside = if contour { ", under a contour layer of 2.0 mm" } else { "" };
        Some(format!(
            "An implant of {:.1} by {} stands {place}, {lean}. Facial bone beside it, {BELOW_PLATFORM:.1} mm below its platform, is {bone}{outside}; its least oral bone is {}.",
            implant.diameter.get(),
            mm(implant.length),
            m.oral_bone().map_or_else(|| "not measured".to_owned(), mm)
        ))
    }
}
