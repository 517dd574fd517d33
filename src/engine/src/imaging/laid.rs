//! How a scene is laid: from a site, and from what of a plan has been carried out.

use super::bone::{crest_beyond, jawbone};
use super::crowns;
use super::marrow::Marrow;
use super::materials::{self, Material};
use super::path::Materials;
use super::scene::{Scene, rimmed};
use super::shape::{Shape, Window};
use super::sheet::Sheet;
use super::teeth::{self, CrownForm, Standing, ToothForm};
use super::turned::Turned;
use crate::anatomy::{Site, Solid, Wall, solid};
use crate::chart::Case;
use crate::geometry::{Capsule, Knot, P2, P3, Stack, V3, polygon};
use crate::measure::{CONTOUR_FALL, Measurements};
use crate::plan::choices::ClosureKind;
use crate::plan::{Component, Plan};
use crate::solids::contour_base;

/// Width of the ligament space, mm (0.15 to 0.38, confirmed (secondary)).
pub const LIGAMENT: f64 = 0.22;
/// Thickness of lamina dura, mm (0.2 to 0.4, from memory).
pub const LAMINA: f64 = 0.3;
/// Half-width of a root's canal over the root's, at the neck (ours; it narrows with age).
const PULP: f64 = 0.2;
/// The same of the chamber of several roots over their trunk's, and dentine between its floor and the
/// furcation, mm (ours).
const CHAMBER: f64 = 0.4;
const FLOOR: f64 = 1.5;

const LAMINA_DURA: &str = "lamina dura";
const SPONGIOSA: Materials = Materials::of(&[Material::Spongiosa]);
const HARD: Materials = Materials::of(&[Material::Dentine, Material::Enamel]);
/// Enamel ends where the root begins, however the crown leans.
const NOT_DENTINE: Materials = Materials::of(&[
    Material::Air,
    Material::Soft,
    Material::Spongiosa,
    Material::Cortical,
    Material::Enamel,
    Material::Ceramic,
]);

/// When a film or a section is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Time {
    /// As soon as what has been carried out is done.
    Operation,
    /// Half a year later: marrow bone has grown where the clot was, lamina dura round the lost roots is
    /// gone, gum has closed, and an implant with a time for it carries its crown.
    FollowUp,
}

/// How far apical of the crest a socket fills with bone, mm: left to itself (radiographic loss of height
/// 1.53, confirmed), beside an implant without a graft (0.78, confirmed (secondary)).
const SETTLED: [f64; 2] = [1.53, 0.78];

/// Lays the scene of a case as it stands after what has been carried out; an empty plan is the case as
/// it comes. `key` seeds the variation of marrow bone.
#[must_use]
pub fn scene(case: &Case, plan: &Plan, key: [u8; 32]) -> Scene {
    scene_at(case, plan, Time::Operation, key)
}

/// The same at a time. Loss of width is left out: a film does not show it.
#[must_use]
pub fn scene_at(case: &Case, plan: &Plan, time: Time, key: [u8; 32]) -> Scene {
    let site = &case.site;
    let mut scene = Scene::new(site.density.clone(), Marrow::of(key));
    let sides = [-1.0, 1.0].map(|sign| teeth::beside(site, sign));
    let own = teeth::own(site);
    let out = plan.extraction.is_some();
    let healed = out && time == Time::FollowUp;
    let mut laying = Laying { scene: &mut scene, site, plan, case, time };
    laying.jaw(&sides);
    laying.laminae((!healed).then_some(&own), &sides);
    laying.canals();
    if !healed {
        laying.lesion();
    }
    let filling = plan.graft_laid().and_then(|graft| materials::graft(graft.material));
    laying.windows(filling);
    for standing in sides.iter().flatten() {
        laying.standing(standing);
    }
    if out {
        laying.socket(&own, filling);
        laying.contour(filling);
        laying.fixture(&own.crown);
    } else {
        laying.tooth(&own);
    }
    scene
}

struct Laying<'a> {
    scene: &'a mut Scene,
    site: &'a Site,
    plan: &'a Plan,
    case: &'a Case,
    time: Time,
}

impl Laying<'_> {
    fn lay(&mut self, name: &'static str, shape: Shape, only: Materials, to: Material) -> usize {
        self.scene.lay(name, shape, only, to)
    }

    fn jaw(&mut self, sides: &[Vec<Standing>; 2]) {
        let middles = [0, 1].map(|side| sides[side].get(1).and_then(first_root));
        let jaw = jawbone(self.site, &crest_beyond(self.site, middles));
        let gum = self.lay("gum", jaw.gum, Materials::ALL, Material::Soft);
        let bone = self.lay("bone", jaw.bone, Materials::ALL, Material::Cortical);
        self.scene.nest(bone, gum);
        let marrow = self.lay("marrow", jaw.core, Materials::ALL, Material::Spongiosa);
        self.scene.nest(marrow, bone);
        if let Some(cavity) = jaw.cavity {
            let cavity = self.lay("cavity", cavity, Materials::ALL, Material::Air);
            self.scene.nest(cavity, bone);
        }
    }

    /// Lamina dura round every root; it stays when a tooth comes out, until the socket has healed.
    fn laminae(&mut self, own: Option<&ToothForm>, sides: &[Vec<Standing>; 2]) {
        let beside = sides.iter().flatten().filter_map(|standing| match standing {
            Standing::Tooth(tooth) => Some(tooth),
            Standing::Implant(..) => None,
        });
        let shells: Vec<Stack> = own
            .into_iter()
            .chain(beside)
            .flat_map(ToothForm::bodies)
            .map(|body| grown(body, LIGAMENT + LAMINA))
            .collect();
        for shell in shells {
            self.lay(LAMINA_DURA, Shape::Root(shell), SPONGIOSA, Material::Cortical);
        }
    }

    /// Canals with their rims, and the way out to the foramen.
    fn canals(&mut self) {
        let vital = &self.site.vital;
        let tubes = [&vital.canal, &vital.loop_, &vital.nasopalatine];
        let mut tubes: Vec<Capsule> = tubes.into_iter().flatten().map(solid::capsule).collect();
        if let Some(foramen) = vital.foramen {
            // From the face in to where the nerve comes from.
            let inner = vital.canal.as_ref().or(vital.loop_.as_ref());
            let behind = P3 { y: foramen.y - 3.0, z: foramen.z + 1.0, ..foramen };
            let radius = inner.map_or(1.2, |tube| tube.radius.get());
            let to = inner.map_or(behind, |tube| tube.from);
            tubes.push(Capsule { ends: [P3 { y: foramen.y + 1.0, ..foramen }, to], radius });
        }
        for tube in &tubes {
            let rim = Capsule { radius: rimmed(tube.radius), ..*tube };
            self.lay("rim of a canal", Shape::Tube(rim), SPONGIOSA, Material::Cortical);
        }
        for tube in tubes {
            self.lay("canal", Shape::Tube(tube), Materials::BONE, Material::Soft);
        }
    }

    /// The hollow of a lesion.
    fn lesion(&mut self) {
        let solid = Solid::of(self.site);
        // The last hollow of a site with a lesion is the lesion: a ball, where the others are tubes.
        if let Some(ball) = solid.hollows.last().filter(|last| last.ends[0] == last.ends[1]) {
            self.lay("lesion", Shape::Tube(*ball), Materials::BONE, Material::Soft);
        }
    }

    fn windows(&mut self, filling: Option<Material>) {
        for cut in Solid::of(self.site).cuts {
            let plane = self.site.socket.plane(cut.wall);
            let window = Window { wall: cut.wall, shadow: cut.shadow, plane };
            let to = filling.unwrap_or(Material::Soft);
            self.lay("wall defect", Shape::Window(window), Materials::BONE, to);
        }
    }

    fn standing(&mut self, standing: &Standing) {
        match standing {
            Standing::Tooth(tooth) => self.tooth(tooth),
            Standing::Implant(implant, crown) => {
                let crown = crowns::enamel(crown);
                self.lay("crown", Shape::Crown(crown), Materials::ALL, Material::Ceramic);
                let cone = implant.cone();
                let post = [P2::new(0.3, 0.8 * cone.near), P2::new(3.0, 0.6 * cone.near)];
                let body = Turned::implant(&cone, &post);
                self.lay("implant", Shape::Turned(body), Materials::ALL, Material::Titanium);
            }
        }
    }

    fn tooth(&mut self, tooth: &ToothForm) {
        let first = self.scene.layers().len();
        let mut placed = Vec::new();
        for body in tooth.bodies() {
            let lamina = self.lamina_of(body);
            let space = Shape::Root(grown(body, LIGAMENT));
            let space = self.lay("ligament", space, Materials::BONE, Material::Soft);
            if let Some(lamina) = lamina {
                self.scene.nest(space, lamina);
            }
            let root = Shape::Root(body.clone());
            let root = self.lay("root", root, Materials::ALL, Material::Dentine);
            self.scene.nest(root, space);
            placed.push(root);
        }
        let enamel = Shape::Crown(crowns::enamel(&tooth.crown));
        self.lay("enamel", enamel, NOT_DENTINE, Material::Enamel);
        let dentine = crowns::dentine(&tooth.crown);
        self.lay("dentine", Shape::Crown(dentine), Materials::ALL, Material::Dentine);
        self.pulp(tooth, &placed);
        self.scene.group(first);
    }

    /// Chamber and canals; `placed` holds the layers of the tooth's bodies.
    fn pulp(&mut self, tooth: &ToothForm, placed: &[usize]) {
        let into_crown = 0.28 * (tooth.crown.neck - tooth.crown.edge).length();
        if let Some(trunk) = &tooth.trunk {
            let chamber = Shape::Root(chamber(trunk, into_crown));
            self.lay("pulp", chamber, HARD, Material::Soft);
        }
        let roots = placed.iter().skip(usize::from(tooth.trunk.is_some()));
        for (root, place) in tooth.roots.iter().zip(roots) {
            let canal = self.lay("pulp", Shape::Root(pulp(root)), HARD, Material::Soft);
            self.scene.nest(canal, *place);
            // Up into the crown, or into the chamber.
            let up = if tooth.trunk.is_some() { FLOOR + 0.5 } else { into_crown };
            self.lay("pulp", Shape::Tube(horn(root, up)), HARD, Material::Soft);
        }
    }

    /// The layer of lamina dura round a root.
    fn lamina_of(&self, root: &Stack) -> Option<usize> {
        self.scene.layers().iter().position(|layer| {
            layer.name == LAMINA_DURA
                && matches!(&layer.shape, Shape::Root(shell) if shell.frame == root.frame)
        })
    }

    /// The room that the roots leave: clot in bone, graft up to its level, nothing above the crest
    /// unless it is closed over; later bone up to where it settles, under gum.
    fn socket(&mut self, own: &ToothForm, filling: Option<Material>) {
        let closed = self.plan.closure.as_ref().is_some_and(|c| c.kind == ClosureKind::Primary);
        let level = self.plan.graft_laid().map_or(0.0, |graft| -graft.fill.get());
        let [alone, beside_implant] = SETTLED;
        let settled = match (filling, self.plan.implant_in_place()) {
            (Some(_), _) => level.max(0.0),
            (None, Some(_)) => beside_implant,
            (None, None) => alone,
        };
        for body in own.bodies() {
            let socket = Shape::Root(body.clone());
            self.lay("socket", socket, Materials::BONE, Material::Soft);
            let soft = Materials::of(&[Material::Soft]);
            if self.time == Time::FollowUp {
                let healed = Shape::Below(body.clone(), settled);
                self.lay("healed socket", healed, soft, Material::Spongiosa);
            } else if !closed {
                let orifice = Shape::Above(body.clone(), 0.0);
                self.lay("orifice", orifice, soft, Material::Air);
            }
            if let Some(filling) = filling {
                let level = if self.time == Time::FollowUp { settled } else { level };
                self.lay("graft", Shape::Below(body.clone(), level), Materials::ALL, filling);
            }
        }
    }

    /// The layer outside the facial wall, as thick on the map as it was measured.
    fn contour(&mut self, filling: Option<Material>) {
        let Some(thickness) = self.plan.graft_laid().and_then(|graft| graft.contour) else {
            return;
        };
        let m = Measurements::of(self.case, self.plan);
        let solid = &m.ground().solid;
        let base = contour_base(self.site);
        let Some((s, t)) = box_of(&base) else { return };
        let height = |x: f64, z: f64| {
            let at = P2::new(x, solid.map.t(Wall::Facial, z));
            let near = base.iter().map(|one| polygon::signed_distance(one, at));
            let within = near.fold(f64::MIN, f64::max).min(0.0);
            thickness.get() * (1.0 + within / CONTOUR_FALL).max(0.0)
        };
        let from = P2::new(s[0] - CONTOUR_FALL, 0.0);
        let to = P2::new(s[1] + CONTOUR_FALL, solid.map.z(Wall::Facial, t[1]) + CONTOUR_FALL);
        let facial = solid.face_knots(Wall::Facial);
        if let (Some(filling), Some(sheet)) = (filling, Sheet::of(facial, from, to, height)) {
            let outside = Materials::of(&[Material::Soft, Material::Air]);
            self.lay("contour layer", Shape::Sheet(sheet), outside, filling);
        }
    }

    /// The implant in place and what stands on it.
    fn fixture(&mut self, form: &CrownForm) {
        let m = Measurements::of(self.case, self.plan);
        let Some(cone) = m.seated().copied() else { return };
        let margin = self.site.crown.margin_z.get();
        let rise = (cone.frame.origin.z - margin).max(0.8);
        let near = cone.near;
        let component = self.plan.component();
        let planned = self.plan.later.restoration.is_some();
        let restored = planned && self.time == Time::FollowUp;
        let neck = cone.frame.origin + cone.frame.along * -rise;
        let mut crown = |name, material| {
            let form = crowns::enamel(&CrownForm { neck, ..*form });
            self.lay(name, Shape::Crown(form), Materials::ALL, material);
            vec![P2::new(0.5 * rise, 0.8 * near), P2::new(rise + 3.0, 0.55 * near)]
        };
        let above = match component {
            Some(_) if restored => crown("crown", Material::Ceramic),
            None => Vec::new(),
            Some(Component::CoverScrew) => vec![P2::new(0.5, 0.8 * near)],
            Some(Component::HealingAbutment) => {
                vec![P2::new(0.4 * rise, 0.9 * near), P2::new(rise + 0.6, 1.12 * near)]
            }
            Some(Component::CustomAbutment) => {
                vec![P2::new(0.4 * rise, near), P2::new(rise + 0.4, 1.4 * near)]
            }
            Some(Component::Provisional(_)) => crown("provisional", Material::Acrylic),
        };
        let body = Turned::implant(&cone, &above);
        self.lay("implant", Shape::Turned(body), Materials::ALL, Material::Titanium);
    }
}

/// x of the first root of what stands there.
fn first_root(standing: &Standing) -> Option<f64> {
    match standing {
        Standing::Tooth(tooth) => tooth.roots.first().map(|root| root.frame.origin.x),
        Standing::Implant(..) => None,
    }
}

/// Least and greatest s and t of some outlines.
fn box_of(outlines: &[Vec<P2>]) -> Option<([f64; 2], [f64; 2])> {
    let all: Vec<P2> = outlines.iter().flatten().copied().collect();
    let s = polygon::extent(&all, |p| p.x)?;
    let t = polygon::extent(&all, |p| p.y)?;
    Some(([s.from, s.to], [t.from, t.to]))
}

/// A root grown by a width all round.
fn grown(stack: &Stack, by: f64) -> Stack {
    let (a, b) = (stack.across, stack.facial);
    let share = |s: f64| 0.5 * ((a * s + by) / (a + by) + (b * s + by) / (b + by));
    let knots: Vec<Knot> =
        stack.knots().iter().map(|knot| Knot { at: knot.at, share: share(knot.share) }).collect();
    let base = knots.last().map_or(0.0, |knot| knot.at);
    Stack::new(stack.frame, a + by, b + by, knots, stack.last_level() - base + by)
}

/// The canal of a root.
fn pulp(stack: &Stack) -> Stack {
    let (first, last) = (stack.first_level(), stack.last_level());
    let knots = vec![
        Knot { at: first, share: 1.0 },
        Knot { at: 0.5 * last, share: 0.62 },
        Knot { at: 0.92 * last, share: 0.28 },
    ];
    let [across, facial] = canal(stack);
    Stack::new(stack.frame, across, facial, knots, 0.06 * last)
}

/// The chamber of several roots: from the crown down to its floor.
fn chamber(trunk: &Stack, into_crown: f64) -> Stack {
    let (first, last) = (trunk.first_level(), trunk.last_level());
    let knots = vec![
        Knot { at: first - into_crown, share: 1.0 },
        Knot { at: first, share: 0.95 },
        Knot { at: (last - FLOOR).max(first + 0.3), share: 0.8 },
    ];
    let [across, facial] = [trunk.across, trunk.facial].map(|half| CHAMBER * half);
    Stack::new(trunk.frame, across, facial, knots, 0.0)
}

/// Half-widths of the canal at the neck.
fn canal(stack: &Stack) -> [f64; 2] {
    [stack.across, stack.facial].map(|half| (PULP * half).max(0.25))
}

/// The chamber, from the neck up into the crown.
fn horn(stack: &Stack, chamber: f64) -> Capsule {
    let [radius, _] = canal(stack);
    let at = |level: f64| stack.frame.point(V3::new(0.0, 0.0, stack.first_level() + level));
    Capsule { ends: [at(radius), at(radius - chamber)], radius }
}
