//! The healed site, and an implant in it.

use super::threads::moment_outside;
use super::{Measurements, mm, torque_model};
use crate::anatomy::{Bone, Wall};
use crate::events::{self, Turn};
use crate::geometry::{Intervals, Ray};
use crate::healing::{Healed, healed};
use crate::plan::Plan;
use crate::plan::choices::HealedAct;
use crate::units::{Deg, Mm, Ncm};

/// A contour layer laid with a late implant is as thick as the least that is taught, 2 mm (`ledger:
/// graft-contour-overbuild`).
const CONTOUR: Mm = Mm::new(2.0);

impl Measurements<'_> {
    /// The site as it was last found at re-entry; `None` before that. A teaching model.
    pub fn healed(&self) -> Option<&Healed> {
        let found = || healed(self, self.plan.later.found()?.after);
        self.kept.healed.get_or_init(found).as_ref()
    }

    /// Level of the crest on one side, at x = 0, as z.
    pub(crate) fn crest_level(&self, wall: Wall) -> f64 {
        self.ground().solid.crest(Bone::Now, wall, 0.0)
    }

    /// Width between the faces of the ridge at a level, along y. Millimetres.
    pub(crate) fn ridge_width_at(&self, z: f64) -> Option<Mm> {
        let solid = &self.ground().solid;
        mm((solid.face(Wall::Facial, z) - solid.face(Wall::Oral, z)).max(0.0))
    }

    /// What is read off the late implant; `None` without one.
    #[must_use]
    pub fn late(&self) -> Option<&Late> {
        self.in_healed_ridge().map(|(late, _)| late)
    }

    /// What is read off the late implant, and the torque to be expected of it.
    fn in_healed_ridge(&self) -> Option<&(Late, Ncm)> {
        let read = || {
            let placed = self.plan.later.placement.as_ref()?;
            let healed = self.healed()?;
            let implant = Some(placed.implant(&healed.case, healed.crest));
            let plan = Plan { implant, ..Plan::default() };
            let m = Measurements::of(&healed.case, &plan);
            Some((Late::of(&m), self.torque_in(healed, &m)?))
        };
        self.kept.late.get_or_init(read).as_ref()
    }

    /// Torque to be expected in the healed site: what bone has not filled of the old socket holds
    /// nothing.
    fn torque_in(&self, healed: &Healed, late: &Measurements<'_>) -> Option<Ncm> {
        let bodies = self.ground().solid.socket.as_slice();
        let open = |line: &Ray| {
            let coronal = above(line, healed.front.get());
            let socket = bodies.iter().map(|body| body.ray(line));
            socket.fold(Intervals::empty(), |all, one| all.union(&one)).intersection(&coronal)
        };
        let moment = moment_outside(late.ground(), late.drilled()?, open);
        let preparation = late.plan.implant.as_ref()?.preparation;
        Ncm::checked(torque_model(moment, late.case.site.density.hu, preparation)).ok()
    }

    /// Seating torque to be expected of the late implant, by the model of an implant of the day
    /// ([`torque_model`]) on what of its side stands in healed bone, its bed prepared as its density
    /// asks. `None` without one. Newton centimetres; 0 when nothing is engaged.
    #[must_use]
    pub fn late_estimated_torque(&self) -> Option<Ncm> {
        self.in_healed_ridge().map(|(_, torque)| *torque)
    }

    /// Seating torque of the late implant as it shows in this case: the estimate with its chance
    /// ([`events::shown_torque`]). What rules judge by. Newton centimetres, 0 or more.
    #[must_use]
    pub fn late_torque(&self) -> Option<Ncm> {
        let estimate = self.late_estimated_torque()?.get();
        Ncm::checked(events::shown_torque(self.case, estimate, Turn::Late)).ok()
    }

    /// Facial bone beside the late implant, 2 mm below its platform along +y, with 2 mm of contour
    /// layer where one is laid. `None` without one. Millimetres, 0 or more.
    #[must_use]
    pub fn late_facial_bone(&self) -> Option<Mm> {
        let bone = self.late()?.facial?;
        let act = self.plan.later.found()?.act;
        Some(if act == HealedAct::PlaceWithContour { bone + CONTOUR } else { bone })
    }

    /// Least oral bone beside the late implant. `None` without one. Millimetres.
    #[must_use]
    pub fn late_oral_bone(&self) -> Option<Mm> {
        self.late()?.oral
    }

    /// Least distance from the late implant to a neighbouring root. `None` without either. Millimetres.
    #[must_use]
    pub fn late_to_root(&self) -> Option<Mm> {
        self.late()?.to_root
    }

    /// From the tip of the late implant's drill to the inferior alveolar canal. `None` without either.
    /// Millimetres, negative inside.
    #[must_use]
    pub fn late_to_canal(&self) -> Option<Mm> {
        self.late()?.to_canal
    }

    /// Least distance from the implant to a neighbouring root, or to a neighbouring implant.
    fn to_nearest(&self, implant: bool) -> Option<Mm> {
        let sides = [self.to_mesial_neighbour(), self.to_distal_neighbour()];
        let such = sides.into_iter().flatten().filter(|it| it.to_implant == implant);
        such.map(|it| it.distance).reduce(Mm::min)
    }
}

/// Where a line runs coronal of a level, as far as any implant reaches.
fn above(line: &Ray, level: f64) -> Intervals {
    const FAR: f64 = 100.0;
    let (start, rate) = (level - line.origin.z, line.direction.z);
    let met = start / rate;
    match () {
        () if rate > 0.0 => Intervals::one(-FAR, met.clamp(-FAR, FAR)),
        () if rate < 0.0 => Intervals::one(met.clamp(-FAR, FAR), FAR),
        () if start > 0.0 => Intervals::one(-FAR, FAR),
        () => Intervals::empty(),
    }
}

/// What is read off an implant in the healed ridge, each as it is for an implant of the day. Millimetres
/// and degrees; `None` where there is nothing to measure to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Late {
    /// Facial bone 2 mm below the platform, no contour layer counted; 0 or more.
    pub facial: Option<Mm>,
    /// Least oral bone; negative through the cortex.
    pub oral: Option<Mm>,
    /// Least facial bone of the apical third; negative through it.
    pub apical_facial: Option<Mm>,
    /// Least oral bone of the apical third; negative through it.
    pub apical_oral: Option<Mm>,
    /// To the nearer neighbouring root; negative inside.
    pub to_root: Option<Mm>,
    /// To the nearer neighbouring implant; negative inside.
    pub to_implant: Option<Mm>,
    /// From the drill's tip to the inferior alveolar canal; negative inside.
    pub to_canal: Option<Mm>,
    /// From the drill's tip to mental foramen or loop; negative inside the loop.
    pub to_foramen: Option<Mm>,
    /// From the apex to the floor of sinus or nose; negative beyond it.
    pub to_floor: Option<Mm>,
    /// To the nasopalatine canal; negative inside.
    pub to_nasopalatine: Option<Mm>,
    /// Platform below the planned margin, positive apically.
    pub from_margin: Option<Mm>,
    /// Platform below the healed mid-facial crest, positive apically.
    pub from_crest: Option<Mm>,
    /// Platform's facial edge behind the neighbours' facial line; negative when it stands out.
    pub from_line: Option<Mm>,
    /// Angle to the planned crown's axis. Degrees, 0 to 180.
    pub to_crown: Option<Deg>,
}

impl Late {
    /// Of the healed ridge with the implant in it.
    pub(crate) fn of(m: &Measurements<'_>) -> Self {
        Self {
            facial: m.facial_bone_after_grafting(),
            oral: m.oral_bone(),
            apical_facial: m.apical_facial_bone(),
            apical_oral: m.apical_oral_bone(),
            to_root: m.to_nearest(false),
            to_implant: m.to_nearest(true),
            to_canal: m.to_canal(),
            to_foramen: m.to_foramen(),
            to_floor: m.to_floor(),
            to_nasopalatine: m.to_nasopalatine(),
            from_margin: m.depth_from_margin(),
            from_crest: m.depth_from_crest(),
            from_line: m.facial_line_clearance(),
            to_crown: m.angle_to_crown(),
        }
    }
}
