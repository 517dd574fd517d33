//! What the operation itself tells, once a step of it is carried out: how the bone feels, what is to
//! be filled, and how the flap's edges come together. Teaching models are called so.

use super::reports::Report;
use super::returns;
use crate::anatomy::{DensityClass, Wall};
use crate::chart::{Case, Fact, Fragment, Source};
use crate::events::{self, Exposure, Infection, Lost, Pulled, Tear};
use crate::measure::{FORCE_AT_EASE, Ground, Measurements};
use crate::plan::choices::Course;
use crate::plan::{Decision, Plan, Step};
use crate::rules::Known;
use crate::units::{Mm3, Ncm, Newton, comparable};

/// The least amount that can be opened, mm3: amounts are told in its multiples.
const DOSE: f64 = 50.0;

/// All that the operation has told, in order: of `plan`, the acts included whose findings are still to
/// be weighed, and of `concluded`, which holds finished steps only, where weighing still decides what
/// is found.
pub(super) fn operation(case: &Case, plan: &Plan, concluded: &Plan) -> Vec<Report> {
    if plan.extraction.is_none() {
        return Vec::new();
    }
    let ground = Ground::of(&case.site);
    let [acted, concluded] = [plan, concluded].map(|plan| Measurements::on(&ground, case, plan));
    let mut reports = Vec::new();
    reports.extend(broken_plate(case));
    reports.extend(lost_tip(case, plan));
    if plan.implant.is_some() {
        reports.push(Report::of(Step::Implant, "The pilot", vec![pilot(case)]));
    }
    if concluded.plan.implant.is_some() {
        let torque = concluded.first_torque().or_else(|| concluded.seating_torque());
        let seated = Report::of(Step::Implant, "Seated", seated(torque));
        reports.push(Report { weighed_in: Step::Seating, ..seated });
    }
    if acted.first_torque().is_some() {
        let again = seated(acted.seating_torque());
        reports.push(Report::of(Step::Seating, "Seated again", again));
    }
    reports.extend(torn(&acted));
    reports.extend(to_fill(&acted));
    reports.extend(edges(&concluded));
    reports.extend(afterwards(&acted).into_iter().map(|(_, report)| report));
    reports.extend(returns::reports(&acted));
    reports
}

/// What came by chance to a whole plan on a case, in order, each with the decision that answers it:
/// for the tool.
#[must_use]
pub fn happened(case: &Case, plan: &Plan) -> Vec<(Decision, Report)> {
    let now = events::after(case, plan);
    let m = Measurements::of(&now, plan);
    let early = [
        (Decision::BrokenPlate, broken_plate(&now)),
        (Decision::LostTip, lost_tip(&now, plan)),
        (Decision::TornLining, torn(&m)),
    ];
    let early = early.into_iter().filter_map(|(answer, report)| Some((answer, report?)));
    let late =
        returns::reports(&m).into_iter().map(|report| (returns::answer(report.step), report));
    early.chain(afterwards(&m)).chain(late).collect()
}

/// A piece of the plate that broke at extraction.
fn broken_plate(case: &Case) -> Option<Report> {
    let held = match case.broken? {
        Fragment::OnPeriosteum => "It hangs on its periosteum.",
        Fragment::Loose => "It is loose: nothing holds it.",
    };
    let broke = "A piece of the facial plate broke away with the root (by chance; how likely it was is a teaching model).";
    let lines = [broke, held].map(ToOwned::to_owned).to_vec();
    Some(Report::of(Step::Extraction, "The facial plate", lines))
}

/// A tip of the root that was pushed out of sight.
fn lost_tip(case: &Case, plan: &Plan) -> Option<Report> {
    let done = plan.extraction.as_ref()?;
    let pulled = Pulled { technique: done.technique, sectioning: done.sectioning };
    let whither = match events::lost_tip(case, pulled)? {
        Lost::Sinus => "Above the socket lies the sinus, and the tip is not to be seen.",
        Lost::Canal => "Under the socket runs the canal, and the tip is not to be seen.",
    };
    let broke = "The tip of the root broke off and gave way under the instrument (by chance; how likely it was is a teaching model).";
    let lines = [broke, whither].map(ToOwned::to_owned).to_vec();
    Some(Report::of(Step::Extraction, "The root", lines))
}

/// A torn lining, as drilling shows it.
fn torn(m: &Measurements<'_>) -> Option<Report> {
    m.plan.implant.as_ref()?;
    let size = match events::torn_lining(m)? {
        Tear::Small => "The tear is under 5 mm.",
        Tear::Middling => "The tear is 5 to 10 mm.",
        Tear::Large => "The tear is more than 10 mm.",
    };
    let lines = [
        "Bubbles rise from the bed: the lining of the sinus is torn (by chance; a teaching model).",
        size,
    ];
    Some(Report::of(Step::Implant, "The sinus", lines.map(ToOwned::to_owned).to_vec()))
}

/// What comes up once the wound is closed.
fn afterwards(m: &Measurements<'_>) -> Vec<(Decision, Report)> {
    let mut reports = Vec::new();
    let mut tell = |answer: Decision, title: &str, lines: &[&str]| {
        let mut lines: Vec<String> = lines.iter().map(|line| (*line).to_owned()).collect();
        lines.push("That it came is chance; how likely it was is a teaching model.".to_owned());
        reports.push((answer, Report::of(answer.step(), title, lines)));
    };
    let done = m.plan.closure.as_ref();
    if done.is_some_and(|closure| events::bleeds_again(m.case, closure.bleeding)) {
        tell(
            Decision::BleedsAgain,
            "Before the patient leaves",
            &["It bleeds again from the wound."],
        );
    }
    if done.is_some() && events::floor_swells(m) {
        let swells = "The floor of the mouth swells, the tongue rises, and swallowing is hard.";
        tell(Decision::SwollenFloor, "Under the tongue", &[swells]);
    }
    if m.plan.returns.is_none() {
        return reports;
    }
    if events::stays_numb(m) {
        let lip = "The anaesthetic has worn off, and lip and chin are numb on this side.";
        tell(Decision::NumbLip, "The next day", &[lip]);
    }
    if let Some(look) = events::exposed_membrane(m) {
        let look = match look {
            Exposure::Small => "The wound has opened over 3 mm or less; no pus.",
            Exposure::Wide => "The wound has opened over more than 3 mm; no pus.",
            Exposure::Pus => "The wound has opened, and pus comes from under the membrane.",
        };
        tell(Decision::BareMembrane, "At review", &["The membrane lies bare.", look]);
    }
    if let Some(look) = events::infected(m) {
        let look = match look {
            Infection::Local => "The gum is swollen and pus comes from the wound; no fever.",
            Infection::Spreading => "The swelling spreads to the face, and there is fever.",
        };
        tell(Decision::Infected, "On the fifth day", &["The wound hurts and throbs.", look]);
    }
    reports
}

pub(super) fn seated(torque: Option<Ncm>) -> Vec<String> {
    match torque {
        Some(torque) => vec![
            format!("It seats at {:.0} Ncm (a teaching model).", torque.get()),
            if torque.get() < 10.0 {
                "It turns under the finger.".to_owned()
            } else {
                "It does not rock.".to_owned()
            },
        ],
        None => Vec::new(),
    }
}

/// What is empty from the crest down, in the socket or beside the implant, and what is missing from
/// walls that were probed or laid bare; `None` while the tooth stands.
fn to_fill(m: &Measurements<'_>) -> Option<Report> {
    m.plan.extraction.as_ref()?;
    let (beside, space) = match m.gap_volume() {
        Some(gap) => (" beside the implant", gap),
        None => ("", m.socket_volume()?),
    };
    let mut lines = vec![format!("Empty space{beside} from the crest down: {}.", amount(space))];
    let tooth = m.case.site.tooth;
    for (wall, name) in [(Wall::Facial, "facial"), (Wall::Oral, tooth.oral_word())] {
        let gone = m.wall_volume_of(wall).filter(|gone| gone.get() > 0.0);
        if let Some(gone) = gone.filter(|_| extent_is_known(m, wall)) {
            lines.push(format!("Missing from the {name} wall, beside that: {}.", amount(gone)));
        }
    }
    let step = if m.seated().is_some() { Step::Implant } else { Step::Extraction };
    Some(Report { step, weighed_in: Step::Graft, title: "To be filled".to_owned(), lines })
}

/// How far a defect reaches is known once its wall was probed from the socket or lies bare: sounding
/// and sections tell that there is one.
fn extent_is_known(m: &Measurements<'_>, wall: Wall) -> bool {
    let fact = match wall {
        Wall::Facial => Fact::FacialWall,
        Wall::Oral => Fact::OralWall,
    };
    let known = Known::of(m.case, m.plan);
    [Source::SocketProbing, Source::Reflection].iter().any(|source| known.has_used(*source, fact))
}

/// A volume as graft is opened.
fn amount(volume: Mm3) -> String {
    let doses = (volume.get() / DOSE).round();
    if doses < 1.0 {
        "less than 0.05 cc".to_owned()
    } else {
        format!("about {:.2} cc", doses * DOSE / 1000.0)
    }
}

/// How the bone feels to the first drill: what the bed is prepared by. A teaching model: that a class
/// of density has one feel is ours.
fn pilot(case: &Case) -> String {
    let felt = match case.site.density.class {
        DensityClass::D1 => "has to be pressed and cuts slowly: dense bone",
        DensityClass::D2 => "meets steady resistance: firm, dense bone",
        DensityClass::D3 => "meets a thin rind and little beneath: soft bone",
        DensityClass::D4 => "sinks in almost by itself: very soft bone",
    };
    format!("The pilot drill {felt} (a teaching model).")
}

/// How the edges come together, once nothing that they have to reach over can change any more: what
/// closing would take, whether or not it is then chosen.
fn edges(m: &Measurements<'_>) -> Option<Report> {
    let step = before_closure(m.plan)?;
    let force = m.force_to_close()?;
    let lines = vec![
        format!("Brought together, the edges meet at {} (a teaching model).", newton(force)),
        if comparable(force.get()) <= FORCE_AT_EASE.get() {
            "They lie together without pull.".to_owned()
        } else {
            "They do not stay together without pull.".to_owned()
        },
    ];
    Some(Report { step, weighed_in: Step::Closure, title: "The edges".to_owned(), lines })
}

/// The last act before closure; `None` while there is one to come.
fn before_closure(plan: &Plan) -> Option<Step> {
    if plan.graft.is_some() {
        return Some(Step::Graft);
    }
    let to_come = matches!(plan.course()?, Course::PlaceToday | Course::GraftAndReturn);
    if plan.extraction.is_none() || to_come {
        return None;
    }
    Some(match (&plan.seating, &plan.flap) {
        (Some(_), _) => Step::Seating,
        (None, Some(_)) => Step::Flap,
        (None, None) => Step::Extraction,
    })
}

/// Two places, or three where two would put a force on the limit that is not there.
fn newton(force: Newton) -> String {
    let two = format!("{:.2}", force.get());
    let on_the_limit = two == format!("{:.2}", FORCE_AT_EASE.get());
    if on_the_limit && comparable(force.get()) != FORCE_AT_EASE.get() {
        format!("{:.3} N", force.get())
    } else {
        format!("{two} N")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::{defect, repaired};
    use crate::rules::trial::Trial;

    fn after(trial: &Trial, last: Step) -> Plan {
        let mut plan = Plan::default();
        for step in crate::plan::steps(&trial.draft) {
            plan.carry_out(step, &trial.draft, &trial.case).unwrap();
            if step == last {
                break;
            }
        }
        plan
    }

    fn told(
        trial: &Trial,
        last: Step,
        tell: fn(&Measurements<'_>) -> Option<Report>,
    ) -> Option<Report> {
        tell(&Measurements::of(&trial.case, &after(trial, last)))
    }

    fn filled(trial: &Trial, last: Step) -> Vec<String> {
        told(trial, last, to_fill).unwrap().lines
    }

    #[test]
    fn what_is_to_be_filled_is_told_in_the_steps_of_the_amount() {
        let mut trial = Trial::plain();
        assert_eq!(told(&trial, Step::Intention, to_fill), None);
        let plan = after(&trial, Step::Implant);
        let m = Measurements::of(&trial.case, &plan);
        let [socket, gap] =
            [m.socket_volume(), m.gap_volume()].map(|volume| amount(volume.unwrap()));
        assert_ne!(socket, gap);
        let said = filled(&trial, Step::Extraction);
        assert_eq!(said, [format!("Empty space from the crest down: {socket}.")]);
        let said = filled(&trial, Step::Implant);
        assert_eq!(said, [format!("Empty space beside the implant from the crest down: {gap}.")]);
        // An implant that came out again leaves the socket as it was.
        trial.keys(&[("seating-act", "remove-and-graft"), ("socket-seal", "open")]);
        let said = filled(&trial, Step::Seating);
        assert_eq!(said, [format!("Empty space from the crest down: {socket}.")]);
        let amounts =
            [(12.0, "less than 0.05 cc"), (25.0, "about 0.05 cc"), (276.0, "about 0.30 cc")];
        for (volume, said) in amounts {
            assert_eq!(amount(Mm3::new(volume)), said);
        }
    }

    #[test]
    fn the_pilot_tells_soft_bone_from_dense_as_the_rules_of_preparation_do() {
        let mut trial = Trial::plain();
        let classes = [DensityClass::D1, DensityClass::D2, DensityClass::D3, DensityClass::D4];
        for (class, feels) in classes.into_iter().zip(["dense", "dense", "soft", "soft"]) {
            trial.case.site.density.class = class;
            let told = pilot(&trial.case);
            assert!(told.contains(&format!("{feels} bone")) && told.contains("teaching model"));
            let soft = trial.zone(crate::rules::find("soft-bone-fully-prepared").unwrap());
            assert_eq!(soft.is_some(), feels == "soft", "{told}");
        }
    }

    #[test]
    fn what_a_wall_lacks_is_told_only_of_a_wall_that_was_probed_or_laid_bare() {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceV));
        trial.keys(&[("socket-probing", "nothing"), ("flap-design", "no-flap")]);
        assert_eq!(filled(&trial, Step::Flap).len(), 1);
        trial.keys(&[("socket-probing", "facial-only")]);
        let said = filled(&trial, Step::Flap);
        assert!(said[1].starts_with("Missing from the facial wall, beside that: "), "{said:?}");
        trial.keys(&[
            ("socket-probing", "nothing"),
            ("flap-design", "envelope"),
            ("papillae", "left"),
            ("periosteal-release", "no"),
        ]);
        trial.outline(Decision::FlapOutline, &[[-80, 0], [80, 0], [100, 120], [-100, 120]]);
        assert_eq!(filled(&trial, Step::Flap).len(), 2);
    }

    #[test]
    fn the_force_that_is_told_before_closure_is_the_force_that_closing_is_judged_by() {
        let mut trial = repaired();
        for (released, feels) in [("yes", "lie together"), ("no", "do not stay together")] {
            trial.keys(&[("periosteal-release", released), ("closure", "primary")]);
            assert_eq!(told(&trial, Step::Seating, edges), None);
            let told = told(&trial, Step::Graft, edges).unwrap();
            let judged = Measurements::of(&trial.case, &trial.plan()).closing_force().unwrap();
            assert!(told.lines[0].contains(&newton(judged)), "{told:?}");
            assert!(told.lines[0].contains("teaching model") && told.lines[1].contains(feels));
        }
    }

    #[test]
    fn an_extraction_that_nothing_follows_is_told_at_once() {
        let mut trial = Trial::plain();
        trial.course("let-heal");
        let told = told(&trial, Step::Extraction, edges).unwrap();
        assert_eq!((told.step, told.weighed_in), (Step::Extraction, Step::Closure));
    }

    #[test]
    fn a_force_that_is_not_on_the_limit_never_reads_so() {
        for (force, said) in
            [(0.083, "0.08 N"), (0.1, "0.10 N"), (0.102, "0.102 N"), (0.12, "0.12 N")]
        {
            assert_eq!(newton(Newton::new(force)), said);
        }
    }
}
