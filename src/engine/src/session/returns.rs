//! What the returns tell: the healed site each time that it is seen, and how a late implant seats.
//! Teaching models are called so.

use super::operated::seated;
use super::reports::Report;
use crate::healing::{Healed, healed};
use crate::measure::Measurements;
use crate::plan::choices::Preparation;
use crate::plan::{Decision, Step, prepared_for};
use crate::units::Mm;

/// How much longer a wait is looked ahead for at the last re-entry, weeks: half a year.
const AHEAD: i32 = 26;

/// All that the returns have told, in order.
pub(super) fn reports(m: &Measurements<'_>) -> Vec<Report> {
    let mut returns: Vec<_> = m.plan.later.returns().collect();
    // As it was last found it is measured already.
    let (Some((step, back)), Some(now)) = (returns.pop(), m.healed()) else { return Vec::new() };
    let report = |step, lines| Report::of(step, "The healed site", lines);
    let mut reports = Vec::new();
    let mut before: Option<Healed> = None;
    for (step, back) in returns {
        let Some(then) = healed(m, back.after) else { continue };
        reports.push(report(step, found(&then, before.as_ref(), None)));
        before = Some(then);
    }
    let ahead = (step == Step::LastReEntry).then(|| healed(m, back.after + AHEAD)).flatten();
    reports.push(report(step, found(now, before.as_ref(), ahead.as_ref())));
    reports.extend(seat(m));
    reports
}

/// The decision that answers what is told at this step.
pub(super) const fn answer(step: Step) -> Decision {
    match step {
        Step::ReEntryAgain => Decision::AgainAct,
        Step::LastReEntry => Decision::LastAct,
        Step::LatePlacement => Decision::LateComponent,
        _ => Decision::HealedAct,
    }
}

/// The site as it is found, what a wait since the `last` time has changed, and what a longer one would.
fn found(now: &Healed, last: Option<&Healed>, ahead: Option<&Healed>) -> Vec<String> {
    let [before, width] = now.width.map(Mm::get);
    let margin = (now.crest - now.case.site.crown.margin_z).get();
    let mut lines = vec![
        match now.closed {
            true => "Gum has closed over the socket.".to_owned(),
            false => "Gum has not closed over the socket yet.".to_owned(),
        },
        format!("Bone fills about {:.0} % of the socket.", 10.0 * libm::round(10.0 * now.filled)),
        format!(
            "1 mm below its crest the ridge is {width:.1} mm wide; at the extraction it was {before:.1} mm."
        ),
        format!(
            "The facial crest has come down by {:.1} mm and lies {:.1} mm {} the planned margin.",
            now.lowered.get(),
            margin.abs(),
            if margin < 0.0 { "above" } else { "below" },
        ),
    ];
    lines.extend(last.map(|last| format!("The wait took {}.", lost(last, now))));
    lines.extend(ahead.map(|ahead| {
        format!(
            "Half a year more would take {} and fill {:.0} % more of the socket. What has gone does not come back with time, so no third wait is offered.",
            lost(now, ahead),
            100.0 * (ahead.filled - now.filled),
        )
    }));
    lines.push("How a site heals is a teaching model, and what was drawn here proves no choice right or wrong.".to_owned());
    lines
}

/// Width and height that went between two times.
fn lost(from: &Healed, to: &Healed) -> String {
    let width = (from.width[1] - to.width[1]).get().max(0.0);
    let height = (to.lowered - from.lowered).get().max(0.0);
    format!("{width:.1} mm of width and {height:.1} mm of facial height")
}

/// How the late implant seats, where it stands and how its bed was prepared.
fn seat(m: &Measurements<'_>) -> Option<Report> {
    let torque = m.late_torque()?;
    let late = m.late()?;
    let [margin, crest] = [late.from_margin?, late.from_crest?].map(|depth| {
        let way = if depth < Mm::ZERO { "above" } else { "below" };
        format!("{:.1} mm {way}", depth.get().abs())
    });
    let bed = match prepared_for(m.case.site.density.class) {
        Preparation::Full => "drilled to full width",
        Preparation::UnderByHalf => "drilled half a millimetre under the diameter",
        Preparation::Tapped => "drilled to full width and tapped",
    };
    let mut lines = vec![format!("The bed was {bed}, as its density asks.")];
    lines.extend(seated(Some(torque)));
    lines.push(format!(
        "The platform lies {margin} the planned margin and {crest} the healed facial crest."
    ));
    Some(Report::of(Step::LatePlacement, "Seated", lines))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Refusal, Value};
    use crate::rules::trial::Trial;
    use crate::session::{Event, Mode, Session};

    fn told(trial: &Trial) -> Vec<Report> {
        reports(&Measurements::of(&trial.case, &trial.plan()))
    }

    /// Two waits, then an implant.
    fn waited() -> Trial {
        let mut trial = Trial::late();
        trial.keys(&[
            ("healed-act", "wait"),
            ("healed-act-again", "wait"),
            ("healed-act-last", "place"),
        ]);
        trial
    }

    #[test]
    fn each_return_is_told_with_what_the_wait_took_and_the_last_says_why_none_follows() {
        let told = told(&waited());
        let steps: Vec<Step> = told.iter().map(|report| report.step).collect();
        let all = [Step::ReEntry, Step::ReEntryAgain, Step::LastReEntry, Step::LatePlacement];
        assert_eq!(steps, all);
        let said = |place: usize, words: &str| told[place].lines.join(" ").contains(words);
        assert!(!said(0, "The wait took") && said(1, "The wait took") && said(2, "The wait took"));
        assert!(!said(1, "Half a year more") && said(2, "so no third wait is offered"));
        assert!(
            told.iter().take(3).all(|report| report.lines.join(" ").contains("teaching model"))
        );
    }

    #[test]
    fn the_numbers_of_a_wait_are_those_of_the_model() {
        let trial = waited();
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        // 14 weeks to begin with, then 8 and 8.
        let weeks: Vec<i32> = plan.later.returns().map(|(_, back)| back.after).collect();
        assert_eq!(weeks, [14, 22, 30]);
        let [first, second] = [14, 22].map(|weeks| healed(&m, weeks).unwrap());
        let width = (first.width[1] - second.width[1]).get();
        let words = format!("The wait took {width:.1} mm of width");
        assert!(told(&trial)[1].lines.join(" ").contains(&words), "{words}");
    }

    #[test]
    fn a_late_implant_tells_its_torque_and_both_depths() {
        let trial = Trial::late();
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let lines = told(&trial)[1].lines.join(" ");
        assert!(lines.contains(&format!("{:.0} Ncm", m.late_torque().unwrap().get())), "{lines}");
        // The trial seats it 1 mm below the healed crest.
        assert!(lines.contains("1.0 mm below the healed facial crest"), "{lines}");
        let margin = m.late().unwrap().from_margin.unwrap().get();
        assert!(lines.contains(&format!("{margin:.1} mm below the planned margin")), "{lines}");
    }

    /// Carries everything out up to this step.
    fn before(trial: &Trial, last: Step) -> Session {
        let mut session = Session::open(trial.case.clone(), Mode::Study);
        while let Some(step) = session.due().filter(|step| *step != last) {
            for entry in Decision::ALL.iter().filter(|entry| entry.step == step) {
                let value = trial.draft.value(entry.decision).cloned();
                session.apply(Event::Choose(entry.decision, value)).unwrap();
            }
            session.apply(Event::CarryOut(step)).unwrap();
        }
        session
    }

    fn keys(session: &mut Session, decision: Decision, key: &str) {
        let value = Value::from_key(decision, key).unwrap();
        session.apply(Event::Choose(decision, Some(value))).unwrap();
    }

    #[test]
    fn a_wait_brings_the_learner_back_twice_and_an_implant_can_follow() {
        let trial = waited();
        let mut session = before(&trial, Step::ReEntry);
        for (step, wait, act) in [
            (Step::ReEntry, Decision::PlaceAfter, Decision::HealedAct),
            (Step::ReEntryAgain, Decision::WaitFor, Decision::AgainAct),
        ] {
            assert_eq!(session.due(), Some(step));
            session.apply(Event::Choose(wait, Some(Value::Number(9)))).unwrap();
            session.apply(Event::CarryOut(step)).unwrap();
            // First it is seen, then it is weighed.
            assert!(session.is_asked(act) && session.due() == Some(step));
            keys(&mut session, act, "wait");
            session.apply(Event::CarryOut(step)).unwrap();
            assert!(!session.is_over());
        }
        assert_eq!(session.due(), Some(Step::LastReEntry));
        assert!(matches!(
            Value::from_key(Decision::LastAct, "wait"),
            Err(Refusal::NoSuchAlternative { .. })
        ));
        session.apply(Event::Choose(Decision::WaitForLast, Some(Value::Number(9)))).unwrap();
        session.apply(Event::CarryOut(Step::LastReEntry)).unwrap();
        keys(&mut session, Decision::LastAct, "place");
        session.apply(Event::CarryOut(Step::LastReEntry)).unwrap();
        assert_eq!(session.due(), Some(Step::LatePlacement));
        assert_eq!(session.plan().later.found().unwrap().after, 27);
    }

    #[test]
    fn what_goes_on_a_late_implant_is_asked_once_its_torque_has_been_read() {
        let trial = Trial::late();
        let mut session = before(&trial, Step::LatePlacement);
        assert!(!session.is_asked(Decision::LateComponent));
        for entry in Decision::ALL.iter().filter(|entry| entry.step == Step::LatePlacement) {
            if entry.decision != Decision::LateComponent {
                let value = trial.draft.value(entry.decision).cloned();
                session.apply(Event::Choose(entry.decision, value)).unwrap();
            }
        }
        session.apply(Event::CarryOut(Step::LatePlacement)).unwrap();
        assert!(
            session.is_asked(Decision::LateComponent) && session.plan().later.placement.is_none()
        );
        let last = session.reports().pop().unwrap();
        assert!(last.step == Step::LatePlacement && last.lines.join(" ").contains("Ncm"));
        keys(&mut session, Decision::LateComponent, "healing-abutment");
        session.apply(Event::CarryOut(Step::LatePlacement)).unwrap();
        assert_eq!(session.due(), Some(Step::Restoration));
    }
}
