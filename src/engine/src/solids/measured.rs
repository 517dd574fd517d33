//! Each measurement as an expression over primitives, with the value that the engine gives it.

use super::contour::{FALL, base};
use super::parts::bottom;
use super::recipe::{Body, Entry};
use super::ridge::WINDOW;
use crate::anatomy::{Beside, Bone, Floor, Tube, Wall};
use crate::geometry::{Cone, P2, P3, Stack, V3, polygon};
use crate::measure::{Measurements, Opening};
use crate::units::{Deg, Mm, Mm2, Mm3, Ratio};

/// How far rays look, mm.
const FAR: f64 = 60.0;

/// Whether the facial wall is there is seen this far apical of the crest, mm.
const BELOW_CREST: f64 = 0.1;

/// Collects entries; knows what primitives there are and whether x is mirrored.
pub(super) struct Writer<'a> {
    pub(super) m: &'a Measurements<'a>,
    names: Vec<String>,
    pub(super) mirrored: bool,
    entries: Vec<Entry>,
}

/// Joins names by a sign; `nothing` where there are none.
fn joined<'s>(names: impl Iterator<Item = &'s String>, sign: &str) -> String {
    let list: Vec<&str> = names.map(String::as_str).collect();
    if list.is_empty() { "nothing".to_owned() } else { list.join(sign) }
}

impl<'a> Writer<'a> {
    pub(super) fn new(m: &'a Measurements<'a>, names: Vec<String>) -> Self {
        let mirrored = m.case.site.tooth.is_mirrored();
        Self { m, names, mirrored, entries: Vec::new() }
    }

    pub(super) fn has(&self, name: &str) -> bool {
        self.names.iter().any(|known| known == name)
    }

    /// Solids that expressions share.
    pub(super) fn bodies(&self) -> Vec<Body> {
        let those = |start: &'static str| {
            joined(self.names.iter().filter(move |name| name.starts_with(start)), " + ")
        };
        let structures = ["neighbour_", "canal", "loop", "nasopalatine", "lesion", "floor"];
        let stands = |name: &&String| structures.iter().any(|start| name.starts_with(start));
        let around = joined(self.names.iter().filter(stands), " + ");
        let trunk = if self.has("trunk") { "trunk + " } else { "" };
        let socket = format!("{trunk}{}", those("root_"));
        vec![
            Body { name: "socket", expression: socket },
            Body { name: "lost", expression: those("cut_") },
            Body { name: "around", expression: around },
            Body { name: "whole", expression: "ridge - socket - around".to_owned() },
            Body { name: "bone", expression: "whole - lost".to_owned() },
        ]
    }

    pub(super) fn put(
        &mut self,
        name: &'static str,
        value: Option<f64>,
        unit: &'static str,
        expression: String,
    ) {
        if value.is_some() {
            self.entries.push(Entry { name, expression, value, unit });
        }
    }

    pub(super) fn length(&mut self, name: &'static str, value: Option<Mm>, expression: String) {
        self.put(name, value.map(Mm::get), Mm::UNIT, expression);
    }

    fn volume(&mut self, name: &'static str, value: Option<Mm3>, expression: String) {
        self.put(name, value.map(Mm3::get), Mm3::UNIT, expression);
    }

    /// A point as it stands in the files.
    pub(super) fn point(&self, at: P3) -> String {
        let x = if self.mirrored { -at.x } else { at.x };
        // Adding nothing turns a negative zero into a plain one.
        format!("{:?}, {:?}, {:?}", x + 0.0, at.y + 0.0, at.z + 0.0)
    }

    pub(super) fn ray(&self, from: P3, way: V3) -> String {
        format!("{}, {}", self.point(from), self.point(P3::new(way.x, way.y, way.z)))
    }

    /// All measurements that have a value on this case and plan.
    pub(super) fn entries(mut self) -> Vec<Entry> {
        self.site();
        self.plates();
        self.volumes();
        self.threads();
        self.neighbours();
        self.structures();
        self.gaps();
        self.position();
        self.levels();
        self.walls();
        self.models();
        super::covered::write(self.m, &mut self.entries);
        self.entries
    }

    fn site(&mut self) {
        let socket = &self.m.ground().solid.socket;
        let Some(coronal) = socket.coronal() else { return };
        self.length("socket-width", self.m.socket_width(), self.across_socket(coronal));
        let crossing =
            self.m.ground().solid.map.point(P2::new(0.0, -self.m.ground().solid.map.across()));
        let facial = self.m.ground().solid.map.point(P2::new(0.0, 0.0));
        let area = polygon::signed_area(self.m.ground().orifice());
        let section = format!(
            "section_area({}, {}, {})",
            self.coronal(),
            self.point(facial),
            self.point(crossing)
        );
        self.put("orifice-area", Some(area), Mm2::UNIT, section);
        let lesion = self.m.ground().solid.hollows.last().filter(|_| self.has("lesion"));
        let start = lesion.map_or(0.0, |ball| ball.radius);
        // The mesh of the ridge ends somewhere, the ridge does not.
        let within = |from: P3, along: V3, length: &Mm| {
            let end = from + along * (start + length.get());
            end.z < bottom(&self.m.case.site) - 0.1 && end.x.abs() < WINDOW[1] - 0.1
        };
        let mut stretches = Vec::new();
        let mut ends = true;
        for (root, beyond) in socket.roots().iter().zip(self.m.bone_beyond_apices()) {
            let (apex, along) = (root.apex(), root.frame.along);
            stretches.push(format!("stretch(bone, {}, {start:?})", self.ray(apex, along)));
            ends &= within(apex, along, &beyond);
        }
        let least = format!("least({})", stretches.join(", "));
        let beyond = self.m.bone_beyond_apex().filter(|_| ends);
        let under =
            self.m.bone_under_furcation().zip(socket.furcation().and_then(|z| socket.between(z)));
        let under = under.filter(|(height, from)| within(*from, V3::APICAL, height));
        self.length("bone-beyond-apex", beyond, least);
        if let Some((height, from)) = under {
            let stretch = format!("stretch(whole, {}, 0.0)", self.ray(from, V3::APICAL));
            self.length("bone-under-furcation", Some(height), stretch);
        }
        self.septum();
    }

    /// The body that crosses the crest.
    fn coronal(&self) -> &'static str {
        if self.has("trunk") { "trunk" } else { "root_1" }
    }

    /// Width of the socket.
    pub(super) fn across_socket(&self, root: &Stack) -> String {
        let origin = root.frame.origin;
        let before = P3::new(origin.x, origin.y - FAR, origin.z);
        format!("chord(socket, {}, {:?})", self.ray(before, V3::FACIAL), 2.0 * FAR)
    }

    fn plates(&mut self) {
        let ground = self.m.ground();
        let socket = &self.m.case.site.socket;
        for (name, wall, way, value) in [
            ("facial-plate", Wall::Facial, V3::FACIAL, self.m.facial_plate()),
            ("oral-plate", Wall::Oral, -V3::FACIAL, self.m.oral_plate()),
        ] {
            let level = ground.solid.crest(Bone::Now, wall, 0.0) + 1.0;
            let (middle, slope) = socket.plane(wall);
            let chord = |x| {
                let from = P3::new(x, middle + slope * level, level);
                format!("chord(bone, {}, {FAR:?})", self.ray(from, way))
            };
            let over: Vec<String> =
                ground.solid.socket.over(wall, level).into_iter().map(chord).collect();
            self.length(name, value, format!("least({})", over.join(", ")));
        }
    }

    fn volumes(&mut self) {
        let m = self.m;
        self.volume("socket-volume", m.socket_volume(), "volume(socket & apical)".to_owned());
        self.volume("wall-volume", m.wall_volume(), "volume(whole & lost)".to_owned());
        let seated = m.seated().is_some();
        if seated {
            let gap = "volume((socket & apical) - implant)".to_owned();
            self.volume("gap-volume", m.gap_volume(), gap);
        }
        let contour = if self.has("contour") { "volume(contour)" } else { "volume(nothing)" };
        self.volume("contour-volume", m.contour_volume(), contour.to_owned());
        if let Some(thickness) = m.plan.graft_laid().and_then(|graft| graft.contour) {
            let count = base(&m.case.site).len();
            let names: Vec<String> = (1..=count).map(|i| format!(", contour_base_{i}")).collect();
            let layer = format!("layer({:?}, {FALL:?}{})", thickness.get(), names.concat());
            self.volume("contour-volume-on-the-map", m.contour_volume(), layer);
        }
        let level = if self.has("fill") { "fill" } else { "apical" };
        let taken = if seated { " - implant" } else { "" };
        let whole = format!("volume((socket & {level}){taken}) + volume(whole & lost) + {contour}");
        self.volume("volume-to-graft", m.volume_to_graft(), whole);
    }

    fn threads(&mut self) {
        let Some(threads) = self.m.threads() else { return };
        for (name, word, value) in [
            ("threads-engaged", "engaged", threads.engaged),
            ("threads-facing-bone", "facing", threads.facing_bone),
            ("threads-exposed", "open", threads.exposed),
        ] {
            self.put(name, Some(value.get()), Mm2::UNIT, format!("{word}(implant, bone)"));
        }
        let anchored = "anchored(implant, bone)".to_owned();
        self.length("anchorage-beyond-apex", self.m.anchorage_beyond_apex(), anchored);
        if let Some(cone) = self.m.seated() {
            let line = cone.generator(-cone.frame.facial);
            // The engine counts along the axis, a ray along the side.
            let arc = line.direction.length();
            let ray = self.ray(line.origin, line.direction * (1.0 / arc));
            let side = format!("chord(bone, {ray}, {:?}) * {:?}", cone.length * arc, 1.0 / arc);
            self.length("oral-engagement", self.m.oral_engagement(), side);
        }
    }

    fn neighbours(&mut self) {
        let found = [self.m.to_mesial_neighbour(), self.m.to_distal_neighbour()];
        for (side, found) in found.into_iter().enumerate() {
            let (name, body) = [
                ("to-mesial-neighbour", "neighbour_mesial"),
                ("to-distal-neighbour", "neighbour_distal"),
            ][side];
            let way = if (side == 0) == self.mirrored { -1 } else { 1 };
            let expression = format!("apart(implant, {body}, {way})");
            self.length(name, found.map(|found| found.distance), expression);
        }
        let solid = &self.m.ground().solid;
        if let [Beside::Root(mesial), Beside::Root(distal)] = &solid.beside {
            // From outside each neighbour's row of the crest inwards, along x through its own axis.
            let from = |x: f64, y: f64| P3::new(x, y, 0.0);
            let left = self.ray(from(-FAR, mesial.frame.origin.y), V3::DISTAL);
            let right = self.ray(from(FAR, distal.frame.origin.y), -V3::DISTAL);
            let room = format!(
                "{:?} - leaves(neighbour_mesial, {left}) - leaves(neighbour_distal, {right})",
                2.0 * FAR
            );
            self.length(
                "mesiodistal-room",
                self.m.mesiodistal_room(),
                format!("most(0.0, {room})"),
            );
        }
    }

    fn structures(&mut self) {
        let vital = &self.m.case.site.vital;
        let tube = |body: &str, tube: &Tube| {
            let ends = format!("{}, {}", self.point(tube.from), self.point(tube.to));
            format!("to_tube({body}, {:?}, {ends})", tube.radius.get())
        };
        let canal = vital.canal.as_ref().map(|found| tube("bed", found));
        let nasopalatine = vital.nasopalatine.as_ref().map(|found| tube("implant", found));
        let middle = vital.foramen.map(|at| format!("to_point(bed, {})", self.point(at)));
        let turn = vital.loop_.as_ref().map(|found| tube("bed", found));
        let foramen: Vec<String> = [middle, turn].into_iter().flatten().collect();
        let foramen = format!("least({})", foramen.join(", "));
        let floor = vital.floor.as_ref().map(|&Floor { z, rise, .. }| {
            let rise = if self.mirrored { -rise } else { rise };
            format!("to_plane(implant, {:?}, {rise:?})", z.get())
        });
        self.apices();
        let m = self.m;
        self.length("to-canal", m.to_canal(), canal.unwrap_or_default());
        self.length("to-nasopalatine", m.to_nasopalatine(), nasopalatine.unwrap_or_default());
        self.length("to-foramen", m.to_foramen(), foramen);
        self.length("to-floor", m.to_floor(), floor.unwrap_or_default());
    }

    /// From the apices of the socket to what lies beyond them.
    fn apices(&mut self) {
        let m = self.m;
        let roots = m.ground().solid.socket.roots();
        let least = |each: &dyn Fn(P3) -> String| {
            let all: Vec<String> = roots.iter().map(|root| each(root.apex())).collect();
            format!("least({})", all.join(", "))
        };
        if self.has("floor") {
            // Up to where the floor's solid begins; from within it, back to where it ends.
            let floor = least(&|apex| {
                let [on, back] = [V3::APICAL, -V3::APICAL].map(|way| self.ray(apex, way));
                format!("first(floor, {on}) - leaves(floor, {back})")
            });
            self.length("apex-to-floor", m.apex_to_floor(), floor);
        }
        if let Some(canal) = &m.case.site.vital.canal {
            let ends = format!("{}, {}", self.point(canal.from), self.point(canal.to));
            let canal = least(&|apex| {
                let at = self.point(apex);
                format!("point_to_tube({at}, {:?}, {ends})", canal.radius.get())
            });
            self.length("apex-to-canal", m.apex_to_canal(), canal);
        }
    }

    fn gaps(&mut self) {
        let Some(cone) = self.m.seated() else { return };
        let width = self.m.facial_gap().map(|gap| gap.width);
        self.length("facial-gap", width, self.across_gap(cone));
        let line = self.outward_from(cone, BELOW_CREST);
        let present = self.m.facial_gap().map(|gap| f64::from(u8::from(gap.wall_present)));
        self.put("facial-wall-present", present, Ratio::UNIT, format!("meets(bone, {line})"));
        for (turn, depth) in [(0.0, 0.0), (70.0, 1.0), (130.0, 0.3), (180.0, 2.5), (290.0, 0.6)] {
            if let Some(Opening::Bone(gap)) = self.m.gap(Deg::new(turn), Mm::new(depth)) {
                let side = cone.frame.radial(Deg::new(turn));
                let from = cone.axis_at(depth) + side * cone.radius(depth);
                let first = format!("first(bone, {})", self.ray(from, side));
                self.length("gap-in-one-direction", Some(gap), first);
            }
        }
    }

    /// Width of the facial gap.
    pub(super) fn across_gap(&self, cone: &Cone) -> String {
        format!("most(0.0, leaves(socket, {}))", self.outward_from(cone, f64::MIN))
    }

    /// A ray facially from the implant's most facial line in the sagittal plane of its axis: at the
    /// platform or, where that stands higher, at the crest; and not less than `below` apical of that.
    fn outward_from(&self, cone: &Cone, below: f64) -> String {
        let crest = self.m.ground().solid.crest(Bone::Now, Wall::Facial, 0.0);
        let line = cone.generator(cone.frame.facial);
        let depth = ((crest - line.origin.z) / line.direction.z).clamp(0.0, cone.length);
        let at = line.at(depth);
        self.ray(P3::new(at.x, at.y, at.z.max(crest + below)), V3::FACIAL)
    }

    fn position(&mut self) {
        let Some(implant) = self.m.plan.implant_in_place() else { return };
        let crown = &self.m.case.site.crown;
        let angles = [implant.tilt, implant.tip, crown.tilt, crown.tip].map(Deg::get);
        let [a, b, c, d] = angles;
        let angle = format!("angle({a:?}, {b:?}, {c:?}, {d:?})");
        self.put("angle-to-crown", self.m.angle_to_crown().map(Deg::get), Deg::UNIT, angle);
    }
}
