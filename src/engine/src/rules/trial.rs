//! A case and a plan to try rules on: an upper right central incisor with an intact wall of ordinary
//! thickness, a healthy patient, and a plan that places an implant today.

use super::{Judging, Known, Reading, Rule, Zone};
use crate::anatomy::{
    Crest, Density, DensityClass, Lesion, LipLine, Neighbour, Neighbours, PlannedCrown, Profile,
    Ridge, RootBody, Roots, Site, Socket, SoftTissue, Tooth, Vital,
};
use crate::chart::{
    Case, Complaint, GraftView, Patient, Readings, SectionReport, Sex, SoundingReading,
};
use crate::geometry::{P2, P3};
use crate::measure::Measurements;
use crate::plan::{Decision, Draft, Plan, Step, Value};
use crate::units::{Deg, Mm};

/// A case and a draft that tests bend to what they need.
#[derive(Debug, Clone)]
pub struct Trial {
    /// The case.
    pub case: Case,
    /// The choices.
    pub draft: Draft,
}

impl Trial {
    /// Intact wall, healthy patient, an implant today.
    #[must_use]
    pub fn plain() -> Self {
        let mut trial = Self { case: plain_case(), draft: Draft::empty() };
        trial.keys(PLACING_TODAY);
        for (decision, count) in [
            (Decision::Diameter, 40),
            (Decision::Length, 130),
            (Decision::OffsetFacial, -12),
            (Decision::OffsetDistal, 0),
            (Decision::Depth, 10),
            (Decision::Tilt, -8),
            (Decision::Tip, 0),
            (Decision::OralElevation, 0),
            (Decision::GraftAmount, 50),
            (Decision::FillLevel, 0),
            (Decision::AntisepticDays, 10),
            (Decision::SuturesOut, 8),
            (Decision::RestoreAfter, 16),
            (Decision::WaitFor, 8),
            (Decision::WaitForLast, 8),
            (Decision::LateDiameter, 35),
            (Decision::LateLength, 100),
            (Decision::LateFacial, -15),
            (Decision::LateDepth, 10),
            (Decision::LateTilt, 0),
            (Decision::UncoverAfter, 16),
            (Decision::RecallEvery, 6),
        ] {
            trial.number(decision, count);
        }
        trial
    }

    /// The same site left to heal for 14 weeks, with an implant placed in what is left.
    #[must_use]
    pub fn late() -> Self {
        let mut trial = Self::plain();
        trial.course("let-heal").keys(&[("healed-act", "place")]);
        trial
    }

    /// A lower first molar of average size in a broad straight ridge, sectioned, with an implant of
    /// 4.5 mm in the middle of its septum.
    ///
    /// # Panics
    /// Never: the tooth has a row.
    #[must_use]
    pub fn molar() -> Self {
        let mut trial = Self::plain();
        let site = &mut trial.case.site;
        site.tooth = Tooth::new(46).expect("a tooth");
        let row = crate::cases::PartedRow::of(site.tooth).expect("a row");
        site.socket = Socket::Parted(row.average(1.8).expect("an average tooth"));
        let face = |out: f64| Profile {
            knots: [(-8.0, 6.2), (0.0, 6.2), (6.0, 6.8), (12.0, 7.6), (30.0, 8.0)]
                .map(|(z, y)| P2::new(z, out * y))
                .to_vec(),
        };
        (site.ridge.facial, site.ridge.oral) = (face(1.0), face(-1.0));
        let crest: Vec<P2> = [(-14.0, 0.0), (-7.0, -1.5), (0.0, 0.0), (7.0, -1.5), (14.0, 0.0)]
            .map(|(x, z)| P2::new(x, z))
            .to_vec();
        site.ridge.crest = Crest { knots: crest.clone(), unharmed: crest, oral_offset: Mm::ZERO };
        let Neighbours { mesial, distal } = &mut site.neighbours;
        for (side, neighbour) in [(-1.0, mesial), (1.0, distal)] {
            if let Neighbour::Root(root) = neighbour {
                root.x = Mm::new(side * 10.5);
            }
        }
        site.soft.lip = LipLine::Low;
        trial.keys(&[("sectioning", "sectioned"), ("sensation-check", "yes"), ("entry", "septum")]);
        for (decision, count) in [
            (Decision::Diameter, 45),
            (Decision::Length, 100),
            (Decision::OffsetFacial, 0),
            (Decision::Tilt, 0),
        ] {
            trial.number(decision, count);
        }
        trial
    }

    /// Moves the roots of a lower molar mesially and distally by a factor: apart or together.
    pub fn roots_moved_by(&mut self, factor: f64) -> &mut Self {
        if let Socket::Parted(parted) = &mut self.case.site.socket
            && let Roots::MesialDistal(two) = &mut parted.roots
        {
            for root in two {
                root.x = root.x * factor;
            }
        }
        self
    }

    /// Chooses alternatives by key: `("course", "place-today")`; several are separated by spaces.
    ///
    /// # Panics
    /// When a key is unknown: a mistake in a test.
    pub fn keys(&mut self, choices: &[(&str, &str)]) -> &mut Self {
        for (decision, keys) in choices {
            let decision = Decision::from_key(decision).expect(decision);
            let value = Value::from_key(decision, keys).or_else(|_| {
                Value::from_keys(decision, &keys.split_whitespace().collect::<Vec<_>>())
            });
            self.draft.choose(decision, value.expect(keys)).expect(keys);
        }
        self
    }

    /// Chooses a count of steps.
    ///
    /// # Panics
    /// When the number is not allowed: a mistake in a test.
    pub fn number(&mut self, decision: Decision, count: i32) -> &mut Self {
        self.draft.choose(decision, Value::Number(count)).expect("an allowed number");
        self
    }

    /// Chooses an outline, in tenths of a millimetre.
    ///
    /// # Panics
    /// When the vertices are no outline: a mistake in a test.
    pub fn outline(&mut self, decision: Decision, tenths: &[[i32; 2]]) -> &mut Self {
        let outline = crate::geometry::Outline::new(tenths.to_vec()).expect("an outline");
        self.draft.choose(decision, Value::Outline(outline)).expect("an outline decision");
        self
    }

    /// Changes the course and answers what that course asks beside it: pain is relieved, the patient
    /// is seen within a week and goes to a specialist; an implant follows in the middle of the window
    /// that the course names, and a collagen plug seals a grafted socket.
    ///
    /// # Panics
    /// When the key is unknown: a mistake in a test.
    pub fn course(&mut self, key: &str) -> &mut Self {
        self.keys(&[
            ("course", key),
            ("today", "relieve-pain"),
            ("by-when", "week"),
            ("refer-to", "specialist"),
            ("socket-seal", "collagen-plug"),
        ]);
        let weeks = match key {
            "return-early" => 6,
            "let-heal" => 14,
            _ => 18,
        };
        self.number(Decision::PlaceAfter, weeks)
    }

    /// Everything carried out.
    ///
    /// # Panics
    /// When something is undecided: a mistake in a test.
    #[must_use]
    pub fn plan(&self) -> Plan {
        match Plan::from_draft(&self.draft, &self.case) {
            Ok(plan) => plan,
            Err(refusals) => panic!(
                "{}",
                refusals.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ")
            ),
        }
    }

    /// What the rule reads, `None` when it does not apply.
    #[must_use]
    pub fn reading(&self, rule: &Rule) -> Option<Reading> {
        let plan = self.plan();
        let case = crate::events::after(&self.case, &plan);
        let case = if rule.step < Step::Extraction { &self.case } else { &*case };
        let m = Measurements::of(case, &plan);
        let known = Known::of(case, &plan);
        (rule.measure)(&Judging { case, plan: &plan, m: &m, known: &known })
    }

    /// The zone of what the rule reads.
    #[must_use]
    pub fn zone(&self, rule: &Rule) -> Option<Zone> {
        rule.zone_of(self.reading(rule)?)
    }
}

/// The zone of a number under a rule's bands, for tests at, just under and just over a limit.
///
/// # Panics
/// When the rule has no bands: a mistake in a test.
#[must_use]
pub fn zone_at(rule: &Rule, value: f64) -> Zone {
    rule.zone_of(Reading::Number(value)).expect("a rule with bands")
}

const PLACING_TODAY: &[(&str, &str)] = &[
    ("requests", "allergies blood-pressure graft-views plaque-and-bleeding"),
    ("drugs", "leave"),
    ("advice", ""),
    (
        "examinations",
        "look probing mobility percussion sensibility occlusal-contacts phenotype-test film sections bone-sounding",
    ),
    ("film-question", "root-and-apex"),
    ("sections-question", "plate-and-ridge"),
    ("wall-reading", "whole"),
    ("wall-ground", "sounding-and-sections"),
    ("course", "place-today"),
    ("margin-plan", "as-it-is"),
    ("screw-channel", "straight"),
    ("guidance", "guided"),
    ("antibiotic-before", "none"),
    ("interim", "bonded"),
    ("consent", "options risks stop-conditions graft-origin fallback"),
    ("flap-first", "no"),
    ("technique", "luxate-and-rotate"),
    ("sectioning", "whole"),
    ("debridement", "curette-and-irrigate"),
    ("socket-probing", "all-walls"),
    ("broken-plate", "keep"),
    ("lost-tip", "image-and-refer"),
    ("after-extraction", "carry-on"),
    ("flap-design", "no-flap"),
    ("after-flap", "carry-on"),
    ("entry", "oral-slope"),
    ("preparation", "under-prepared"),
    ("drilling", "cooled-moderate"),
    ("torn-lining", "patch"),
    ("pilot-film", "yes"),
    ("seating-film", "yes"),
    ("seating-act", "leave"),
    ("second-act", "leave"),
    ("component", "healing-abutment"),
    ("graft-material", "mineralised-allograft"),
    ("grain-size", "0.25-1.0"),
    ("wetting", "saline"),
    ("packing", "layers"),
    ("tissue-graft", "none"),
    ("membrane", "none"),
    ("closure", "open"),
    ("suture-size", "5-0"),
    ("suture-material", "monofilament"),
    ("bleeding", "pressure checked"),
    ("instructions", "written emergency-number analgesia no-pressure"),
    ("antiseptic", "chlorhexidine"),
    ("antibiotic-after", "none"),
    ("reviews", "two-weeks six-weeks four-months restoration yearly"),
    ("seat-check", "film"),
    ("bleeds-again", "press"),
    ("swollen-floor", "press-and-call"),
    ("numb-lip", "same-day"),
    ("bare-membrane", "rinse-and-keep"),
    ("healed-act", "augment"),
    ("healed-act-again", "augment"),
    ("healed-act-last", "augment"),
    ("late-component", "cover-screw"),
    ("hold-test", "tested"),
    ("band-care", "split"),
    ("recall-exam", "plaque probing film contacts"),
    ("infected-wound", "drain"),
];

fn plain_case() -> Case {
    Case {
        address: None,
        title: "An intact wall".to_owned(),
        site: plain_site(),
        patient: plain_patient(),
        readings: plain_readings(),
        chance: None,
        broken: None,
        local: crate::rules::Given::NONE,
    }
}

/// Upper right central incisor: tooth widths of the handbook table, plates of 1.2 mm at the crest.
fn plain_site() -> Site {
    let root = |x: f64, half_md: f64| RootBody {
        x: Mm::new(x),
        y: Mm::ZERO,
        tilt: Deg::ZERO,
        tip: Deg::ZERO,
        length: Mm::new(11.0),
        neck: Mm::new(2.0),
        half_md: Mm::new(half_md),
        half_fo: Mm::new(3.0),
        taper: 0.3,
    };
    let profile = |knots: &[(f64, f64)]| Profile {
        knots: knots.iter().map(|&(z, y)| P2::new(z, y)).collect(),
    };
    let crest = [(-12.0, 0.0), (-5.0, -2.5), (0.0, 0.0), (5.0, -2.5), (12.0, 0.0)]
        .map(|(x, z)| P2::new(x, z))
        .to_vec();
    Site {
        tooth: Tooth::new(11).expect("a tooth"),
        socket: Socket::one(root(0.0, 3.2)),
        ridge: Ridge {
            facial: profile(&[
                (-8.0, 4.2),
                (0.0, 4.2),
                (5.5, 3.5),
                (11.0, 2.6),
                (14.0, 3.0),
                (30.0, 6.0),
            ]),
            oral: profile(&[(-8.0, -4.2), (0.0, -4.2), (5.5, -6.2), (11.0, -8.5), (30.0, -12.0)]),
            crest: Crest { knots: crest.clone(), unharmed: crest, oral_offset: Mm::ZERO },
        },
        defects: vec![],
        neighbours: Neighbours {
            mesial: Neighbour::Root(root(-8.7, 3.2)),
            distal: Neighbour::Root(root(7.7, 2.4)),
        },
        vital: Vital::default(),
        density: Density { hu: 700.0, class: DensityClass::D3 },
        lesion: Lesion::None,
        soft: SoftTissue {
            thickness: Mm::new(1.2),
            keratinised: Mm::new(4.6),
            margin_z: Mm::new(-3.0),
            margin_below_twin: Mm::ZERO,
            contact_to_crest: [Mm::new(4.5), Mm::new(4.5)],
            lip: LipLine::Middle,
        },
        crown: PlannedCrown {
            margin_z: Mm::new(-3.0),
            edge: P3::new(0.0, 0.5, -13.0),
            tilt: Deg::ZERO,
            tip: Deg::ZERO,
            width: Mm::new(8.5),
        },
    }
}

fn plain_patient() -> Patient {
    Patient {
        name: "Ada Lindqvist".to_owned(),
        age: 46,
        sex: Sex::Female,
        complaint: Complaint::CrownFracture,
        wish: "A tooth that does not show that it was replaced.".to_owned(),
        asa: 1,
        growth_complete: true,
        cigarettes: 0,
        sugar: None,
        pressure: [124, 78],
        pressure_symptoms: false,
        anticoagulant: None,
        antiplatelets: 0,
        stent: None,
        antiresorptive: None,
        radiotherapy: None,
        event: None,
        pregnancy_week: None,
        bleeding: None,
        steroid: None,
        bleeding_score: 12,
        allergies: vec![],
        graft_view: GraftView::Any,
        parafunction: false,
        opening: Mm::new(45.0),
    }
}

fn plain_readings() -> Readings {
    let sounding = |depth: f64| SoundingReading { depth: Mm::new(depth) };
    Readings {
        sections: SectionReport {
            error: Mm::new(0.3),
            facial_plate: Some(Mm::new(1.2)),
            oral_plate: Some(Mm::new(1.3)),
            ridge_width: [Mm::new(8.4), Mm::new(9.7), Mm::new(11.1)],
            concavity: Mm::new(1.0),
            undercut: Mm::ZERO,
            canal: None,
            foramen: None,
            loop_length: None,
            floor: None,
            nasopalatine: None,
            beyond_apex: Mm::new(9.0),
            lesion: None,
            density: DensityClass::D3,
        },
        sounding: [sounding(3.0), sounding(3.0), sounding(3.0), sounding(3.0)],
        probing: [
            Mm::new(2.5),
            Mm::new(2.0),
            Mm::new(2.5),
            Mm::new(2.5),
            Mm::new(2.0),
            Mm::new(2.5),
        ],
        film_root_length: Mm::new(11.2),
        film_floor: None,
        film_lesion: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_plain_trial_can_be_carried_out_whole() {
        let plan = Trial::plain().plan();
        assert!(plan.implant_in_place().is_some() && plan.returns.is_some());
    }
}
