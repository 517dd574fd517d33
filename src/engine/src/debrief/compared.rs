//! What was written down, beside what is there and what the examinations could have shown.

use crate::anatomy::{DefectKind, DensityClass, Lesion, Wall};
use crate::chart::{Answers, Case, Finding, Noted};
use crate::measure::{Measurements, RootClass, SeptumClass};
use crate::plan::Plan;
use crate::rules::{Knowledge, Known};
use crate::units::Mm;

/// One finding, compared. No mark hangs on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Compared {
    /// Which.
    pub finding: Finding,
    /// What was written down; `None` where nothing was.
    pub noted: Option<Noted>,
    /// What is there; `None` where there is nothing to measure, as of a defect that is not.
    pub truth: Option<Noted>,
    /// What that comes to.
    pub remark: Remark,
}

/// What a reading comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Remark {
    /// Read as it is, off something that shows it.
    Read,
    /// So it is, but nothing that was done could show it.
    Guessed(Knowledge),
    /// Something that was done showed it, and it was read otherwise.
    Misread(Knowledge),
    /// It is otherwise, and nothing that was done could show it.
    BeyondSight(Knowledge),
    /// Something that was done showed it, and nothing was written down.
    LeftOut(Knowledge),
}

impl Remark {
    /// In words, to the reader.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Read => "Read as it is.".to_owned(),
            Self::Guessed(knowledge) => {
                format!(
                    "So it is, but none of your examinations could show it: {}.",
                    knowledge.words()
                )
            }
            Self::Misread(knowledge) => format!("Misread: it was {}.", knowledge.words()),
            Self::BeyondSight(knowledge) => {
                format!("None of your examinations could show this: {}.", knowledge.words())
            }
            Self::LeftOut(knowledge) => format!("Not written down: it was {}.", knowledge.words()),
        }
    }
}

/// Compares what was written down at the examination with the case: everything that was written, and
/// of the rest what is out of order and was shown.
#[must_use]
pub fn compared(case: &Case, plan: &Plan, notes: &[(Finding, Noted)]) -> Vec<Compared> {
    // What was known when it was written: later acts show more.
    let examined =
        Plan { chart: plan.chart.clone(), examined: plan.examined.clone(), ..Plan::default() };
    let known = Known::of(case, &examined);
    let measured = Measurements::of(case, &examined);
    Finding::ALL
        .into_iter()
        .filter(|finding| finding.applies(&case.site))
        .filter_map(|finding| {
            let truth = truth(finding, case, &measured);
            let noted = notes.iter().find(|(one, _)| *one == finding).map(|(_, noted)| *noted);
            let remark = remark(finding, noted, truth, known.fact(finding.fact()))?;
            Some(Compared { finding, noted, truth, remark })
        })
        .collect()
}

fn remark(
    finding: Finding,
    noted: Option<Noted>,
    truth: Option<Noted>,
    knowledge: Knowledge,
) -> Option<Remark> {
    let seen = matches!(knowledge, Knowledge::Seen(_));
    let Some(noted) = noted else {
        let worth_it = truth.is_some_and(|truth| is_out_of_order(finding, truth));
        return (seen && worth_it).then_some(Remark::LeftOut(knowledge));
    };
    // Where there is nothing, nothing is what a number should say.
    let right = noted.abs_diff(truth.unwrap_or(0)) <= finding.tolerance();
    Some(match (right, seen) {
        (true, true) => Remark::Read,
        (true, false) => Remark::Guessed(knowledge),
        (false, true) => Remark::Misread(knowledge),
        (false, false) => Remark::BeyondSight(knowledge),
    })
}

/// Whether a reader should write it down unasked.
const fn is_out_of_order(finding: Finding, truth: Noted) -> bool {
    match finding {
        Finding::FacialDefect
        | Finding::OralDefect
        | Finding::LesionWidth
        | Finding::SocketClass => truth > 0,
        _ => false,
    }
}

/// What is there, as it would be written down.
fn truth(finding: Finding, case: &Case, m: &Measurements<'_>) -> Option<Noted> {
    let tenths = |length: Mm| {
        let Answers::UpTo(most) = finding.answers() else { return 0 };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to it")]
        let tenths = libm::round(length.get() * 10.0).clamp(0.0, f64::from(most)) as Noted;
        tenths
    };
    match finding {
        Finding::FacialDefect => Some(worst_defect(case, Wall::Facial)),
        Finding::OralDefect => Some(worst_defect(case, Wall::Oral)),
        Finding::DefectHeight => m.facial_defect_depth().map(tenths),
        Finding::DefectWidth => m.facial_defect_width().map(tenths),
        Finding::FacialThickness => m.facial_plate().map(tenths),
        Finding::LesionWidth => match case.site.lesion {
            Lesion::None => Some(0),
            Lesion::Chronic { diameter }
            | Lesion::Abscess { diameter }
            | Lesion::Spreading { diameter } => Some(tenths(diameter)),
        },
        Finding::Density => Some(match case.site.density.class {
            DensityClass::D1 => 0,
            DensityClass::D2 => 1,
            DensityClass::D3 => 2,
            DensityClass::D4 => 3,
        }),
        Finding::SocketClass => Some(socket_class(case)),
        Finding::RootPosition => m.root_class().map(|class| match class {
            RootClass::I => 0,
            RootClass::II => 1,
            RootClass::III => 2,
            RootClass::IV => 3,
        }),
        Finding::SeptumClass => m.septum_class_for_usual().map(|class| match class {
            SeptumClass::A => 0,
            SeptumClass::B => 1,
            SeptumClass::C => 2,
        }),
    }
}

/// How far apical of its twin a gum's margin lies that is markedly reduced, mm (ours; the source has no
/// millimetres).
const REDUCED: f64 = 2.0;

/// Place in the list of the socket's class: plate whole; missing in part under a gum as it should be;
/// both reduced. Receded gum over a whole plate is none of the three, and nearest to the first.
fn socket_class(case: &Case) -> Noted {
    if case.site.defects_of(Wall::Facial).next().is_none() {
        return 0;
    }
    let below = crate::units::comparable(case.site.soft.margin_below_twin.get());
    if below >= REDUCED { 2 } else { 1 }
}

/// The place in the list of the defect of a wall that takes most of it.
fn worst_defect(case: &Case, wall: Wall) -> Noted {
    let kinds = case.site.defects_of(wall).map(|defect| match defect.kind {
        DefectKind::DehiscenceV => 1,
        DefectKind::DehiscenceU => 2,
        DefectKind::Fenestration => 3,
        DefectKind::LostWall => 4,
    });
    // A fenestration beside a dehiscence is the lesser of the two.
    kinds.max_by_key(|kind| [0, 2, 3, 1, 4][usize::from(*kind)]).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Source;
    use crate::plan::choices::Examination;
    use crate::rules::regeneration::defect;
    use crate::rules::trial::Trial;

    /// A U-shaped defect, and what was done to see it.
    fn examined(examinations: &str) -> (Case, Plan) {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceU));
        trial.keys(&[("examinations", examinations), ("film-question", "root-and-apex")]);
        let plan = trial.plan();
        (trial.case, plan)
    }

    fn said(case: &Case, plan: &Plan, finding: Finding, noted: Option<Noted>) -> Option<Remark> {
        let notes: Vec<_> = noted.into_iter().map(|noted| (finding, noted)).collect();
        compared(case, plan, &notes)
            .into_iter()
            .find(|one| one.finding == finding)
            .map(|one| one.remark)
    }

    #[test]
    fn what_no_examination_could_show_is_told_apart_from_what_was_misread() {
        let (case, plan) = examined("look film");
        let by = Source::Examination(Examination::BoneSounding);
        let missed = Knowledge::CouldHaveBeenSeenBy(by);
        let wall = Finding::FacialDefect;
        assert_eq!(said(&case, &plan, wall, Some(0)), Some(Remark::BeyondSight(missed)));
        assert_eq!(said(&case, &plan, wall, Some(2)), Some(Remark::Guessed(missed)));
        assert_eq!(said(&case, &plan, wall, None), None);
        let (case, plan) = examined("look film bone-sounding");
        let seen = Knowledge::Seen(by);
        assert_eq!(said(&case, &plan, wall, Some(0)), Some(Remark::Misread(seen)));
        assert_eq!(said(&case, &plan, wall, Some(2)), Some(Remark::Read));
        assert_eq!(said(&case, &plan, wall, None), Some(Remark::LeftOut(seen)));
        // The socket that was probed later showed it too, and too late.
        assert!(plan.extraction.is_some());
    }

    #[test]
    fn classes_are_compared_with_what_sections_and_probe_could_show() {
        let (mut case, plan) = examined("look film");
        let by = |examination| Knowledge::CouldHaveBeenSeenBy(Source::Examination(examination));
        let root = Finding::RootPosition;
        let truth = |case: &Case, plan: &Plan, finding, noted| {
            let all = compared(case, plan, &[(finding, noted)]);
            all.into_iter().find(|one| one.finding == finding).unwrap().truth.unwrap()
        };
        let is = truth(&case, &plan, root, 0);
        let sections = by(Examination::Sections);
        assert_eq!(said(&case, &plan, root, Some(is)), Some(Remark::Guessed(sections)));
        let other = (is + 1) % 4;
        assert_eq!(said(&case, &plan, root, Some(other)), Some(Remark::BeyondSight(sections)));
        // A defect under gum as it should be is the trap; receded gum tells it.
        let socket = Finding::SocketClass;
        assert_eq!(truth(&case, &plan, socket, 0), 1);
        let sounding = by(Examination::BoneSounding);
        assert_eq!(said(&case, &plan, socket, Some(0)), Some(Remark::BeyondSight(sounding)));
        case.site.soft.margin_below_twin = Mm::new(2.0);
        assert_eq!(truth(&case, &plan, socket, 0), 2);
        case.site.defects.clear();
        assert_eq!(truth(&case, &plan, socket, 0), 0);
        assert!(!Finding::SeptumClass.applies(&case.site));
    }

    #[test]
    fn a_septum_is_classed_by_its_room_for_the_narrowest_usual_implant() {
        let molar = Trial::molar();
        let plan = molar.plan();
        let m = Measurements::of(&molar.case, &plan);
        let room = m.septum_room(Mm::new(2.0)).unwrap().get();
        let class = if room >= 4.5 {
            0
        } else if room >= 1.5 {
            1
        } else {
            2
        };
        let all = compared(&molar.case, &plan, &[(Finding::SeptumClass, class)]);
        let septum = all.iter().find(|one| one.finding == Finding::SeptumClass).unwrap();
        assert_eq!(septum.truth, Some(class));
        assert!(all.iter().all(|one| one.finding != Finding::RootPosition));
    }

    #[test]
    fn a_number_is_right_within_its_tolerance_and_not_beyond() {
        let (case, plan) = examined("look bone-sounding");
        let height = Measurements::of(&case, &plan).facial_defect_depth().unwrap();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few mm")]
        let truth = (height.get() * 10.0).round() as Noted;
        let remark = |noted| said(&case, &plan, Finding::DefectHeight, Some(noted)).unwrap();
        assert_eq!([truth - 15, truth, truth + 15].map(remark), [Remark::Read; 3]);
        assert!(matches!(remark(truth + 16), Remark::Misread(_)));
    }

    #[test]
    fn of_a_whole_wall_no_height_is_missing_and_nought_is_right() {
        let trial = Trial::plain();
        let plan = trial.plan();
        let all = compared(&trial.case, &plan, &[(Finding::DefectHeight, 0)]);
        assert_eq!(all.len(), 1);
        assert_eq!((all[0].truth, all[0].noted), (None, Some(0)));
        assert!(matches!(all[0].remark, Remark::Read | Remark::Guessed(_)));
    }
}
