//! What all figures of one state of affairs share: the site to draw, the plan with its preview, the
//! implant as a body, and the measurements that are written beside it.

use super::believed::Believed;
use super::lit::Part;
use super::{Ink, Show};
use crate::anatomy::{Bone, Site, Tooth, Wall};
use crate::chart::{Case, Fact};
use crate::geometry::Cone;
use crate::measure::{Ground, Measurements, cone_of};
use crate::plan::{Implant, Plan};
use crate::units::Mm;

/// What all figures of one state of affairs share.
#[derive(Debug)]
pub(super) struct Scene<'a> {
    /// What is asked for.
    pub show: Show<'a>,
    /// The site as it may be drawn.
    pub believed: Believed<'a>,
    /// What has been carried out, and a preview of what is chosen.
    pub plan: Plan,
    /// The case with the site as it may be drawn: what is measured for a figure before the debrief
    /// is measured on it.
    pub case: Case,
    /// What is known of its site whatever the plan.
    pub ground: Ground,
}

impl<'a> Scene<'a> {
    /// Of what is asked for.
    pub(super) fn of(show: &Show<'a>) -> Self {
        let believed = Believed::of(show);
        let case = Case { site: believed.site.clone().into_owned(), ..show.case.clone() };
        let ground = Ground::of(&case.site);
        Self { show: *show, believed, plan: show.preview(), case, ground }
    }

    /// Measurements of the plan with its preview on the site as it may be drawn.
    pub(super) fn measured(&self) -> Measurements<'_> {
        Measurements::on(&self.ground, &self.case, &self.plan)
    }

    /// The site to draw.
    pub(super) fn site(&self) -> &Site {
        &self.case.site
    }

    /// Level of the crest on one side, at the tooth's middle.
    pub(super) fn crest(&self, wall: Wall) -> f64 {
        self.ground.solid.crest(Bone::Now, wall, 0.0)
    }

    /// Whether the tooth is out.
    pub(super) fn tooth_is_out(&self) -> bool {
        self.plan.extraction.is_some()
    }

    /// The implant in place or being tried.
    pub(super) fn implant(&self) -> Option<&Implant> {
        self.plan.implant_in_place()
    }

    /// Its body: the cone over its threads.
    pub(super) fn body(&self) -> Option<Cone> {
        self.implant().map(cone_of)
    }

    /// Whether a fact may be shown.
    pub(super) fn sees(&self, fact: Fact) -> bool {
        self.show.reveal || self.show.known.is_seen(fact)
    }

    /// The ink of a part: that of a fault when a fault that is lit is about it.
    pub(super) fn ink(&self, part: Part, otherwise: Ink) -> Ink {
        if self.show.lights(part) { Ink::Fault } else { otherwise }
    }

    /// Which tooth: it names the sides.
    pub(super) const fn tooth(&self) -> Tooth {
        self.show.case.site.tooth
    }

    /// *palatal* or *lingual*.
    pub(super) const fn oral(&self) -> &'static str {
        self.show.case.site.tooth.oral_word()
    }

    /// What stands over a figure: its name, then the tooth.
    pub(super) fn title(&self, what: &str) -> String {
        let tooth = self.show.case.site.tooth;
        format!("{what}: {tooth}, {}", tooth.words())
    }

    /// 1 where apical is drawn downwards, -1 where it is drawn upwards.
    pub(super) fn down(&self) -> f64 {
        match self.show.case.site.tooth.jaw() {
            crate::anatomy::Jaw::Maxilla => -1.0,
            crate::anatomy::Jaw::Mandible => 1.0,
        }
    }

    /// 1 where distal is drawn to the right, -1 where it is drawn to the left: as seen from in front.
    pub(super) fn right(&self) -> f64 {
        if self.show.case.site.tooth.is_mirrored() { -self.down() } else { self.down() }
    }
}

/// A length with its unit, to a tenth.
pub(super) fn mm(length: Mm) -> String {
    // A tenth that rounds to nothing has no sign.
    let tenths = libm::round(length.get() * 10.0) / 10.0;
    format!("{:.1} mm", if tenths == 0.0 { 0.0 } else { tenths })
}
