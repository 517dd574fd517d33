use super::*;
use crate::cases::{Constraints, Spread, generate_as};
use crate::debrief::{hash_of, judge};
use crate::plan::Decision;
use crate::rules::trial::Trial;

/// Answers and carries out everything, step by step, as a learner would.
fn played(trial: &Trial, mode: Mode) -> Session {
    let mut session = Session::open(trial.case.clone(), mode);
    while let Some(step) = session.due() {
        for entry in Decision::ALL.iter().filter(|entry| entry.step == step) {
            if let Some(value) = trial.draft.value(entry.decision) {
                session.apply(Event::Choose(entry.decision, Some(value.clone()))).unwrap();
            }
        }
        session.apply(Event::CarryOut(step)).unwrap();
    }
    session
}

#[test]
fn a_step_with_an_undecided_choice_cannot_be_carried_out() {
    let mut session = Session::open(Trial::plain().case, Mode::Study);
    let refused = session.apply(Event::CarryOut(Step::Chart)).unwrap_err();
    assert!(
        matches!(refused, Refusal::Undecided { ref missing, .. } if missing.contains(&Decision::Requests))
    );
    assert!(session.events().is_empty());
}

#[test]
fn steps_come_in_order_and_the_past_is_kept() {
    let trial = Trial::plain();
    let mut session = Session::open(trial.case.clone(), Mode::Study);
    let early = session.apply(Event::CarryOut(Step::Flap)).unwrap_err();
    assert_eq!(early, Refusal::OutOfOrder { asked: Step::Flap, due: Some(Step::Chart) });
    let session = played(&trial, Mode::Study);
    let mut later = session.clone();
    let value = trial.draft.value(Decision::Drugs).cloned();
    let past = later.apply(Event::Choose(Decision::Drugs, value)).unwrap_err();
    assert_eq!(past, Refusal::Past { decision: Decision::Drugs });
}

/// Its events as they are stored.
fn stored(session: &Session) -> String {
    let written: Vec<Written> = session.events().iter().map(Event::written).collect();
    serde_json::to_string(&written).unwrap()
}

/// What is stored, read.
fn read(text: &str) -> Vec<Event> {
    let written: Vec<Written> = serde_json::from_str(text).unwrap();
    written.iter().map(|one| Event::try_from(one).unwrap()).collect()
}

/// Hash of the verdicts of its plan on its case as it was opened.
fn hash(session: &Session) -> u64 {
    hash_of(&judge(session.opened(), session.plan()))
}

#[test]
fn an_attempt_replays_to_the_same_debrief() {
    let trial = Trial::plain();
    let session = played(&trial, Mode::Study);
    let again = Session::replay(trial.case, Mode::Study, &read(&stored(&session))).unwrap();
    assert_eq!(again.plan(), session.plan());
    assert_eq!(hash(&again), hash(&session));
    assert!(again.debrief(None).is_some());
}

#[test]
fn assessment_holds_every_verdict_back_until_the_end() {
    let trial = Trial::plain();
    let mut session = Session::open(trial.case.clone(), Mode::Assessment);
    for decision in [Decision::Requests, Decision::Drugs, Decision::Advices] {
        session.apply(Event::Choose(decision, trial.draft.value(decision).cloned())).unwrap();
    }
    session.apply(Event::CarryOut(Step::Chart)).unwrap();
    assert!(session.verdicts().is_empty() && session.debrief(None).is_none());
}

#[test]
fn what_was_not_asked_for_is_not_told() {
    let mut trial = Trial::plain();
    trial.keys(&[("requests", "allergies")]);
    let session = played(&trial, Mode::Study);
    let told = session.reports();
    let told: Vec<_> = told.iter().filter(|report| report.step == Step::Chart).collect();
    assert_eq!(told[0].lines, ["No known allergies."]);
    assert!(!session.view().history.iter().any(|line| line.contains("pressure")));
}

/// Answers what is asked in the step that is due, of a trial's choices.
fn answer(session: &mut Session, trial: &Trial) {
    for decision in session.view().missing {
        let value = trial.draft.value(decision).cloned();
        assert!(value.is_some(), "the trial has no answer to {}", decision.key());
        session.apply(Event::Choose(decision, value)).unwrap();
    }
}

#[test]
fn a_finding_is_shown_before_it_has_to_be_weighed() {
    let trial = Trial::plain();
    let mut session = Session::open(trial.case.clone(), Mode::Study);
    let mut paused = Vec::new();
    while let Some(step) = session.due() {
        while !session.view().missing.is_empty() {
            answer(&mut session, &trial);
        }
        let told = session.reports().len();
        session.apply(Event::CarryOut(step)).unwrap();
        if session.weighing() == Some(step) {
            paused.push(step);
            let view = session.view();
            assert!(
                step == Step::Flap || session.reports().len() > told,
                "{step:?} tells what it found"
            );
            assert!(view.missing.iter().all(|decision| decision.weighs_findings()));
            assert!(!session.verdicts().iter().any(|verdict| verdict.rule.step == step));
            answer(&mut session, &trial);
            session.apply(Event::CarryOut(step)).unwrap();
        }
        assert_eq!(session.weighing(), None);
        assert_eq!(session.shown(), session.plan());
    }
    let weighed = [Step::Chart, Step::Examination, Step::Extraction, Step::Flap, Step::Implant];
    assert_eq!(paused, weighed);
    // Stopping to look changes no verdict.
    let straight = played(&trial, Mode::Study);
    assert_eq!(session.plan(), straight.plan());
    let again = Session::replay(trial.case, Mode::Study, session.events()).unwrap();
    assert_eq!(again.plan(), straight.plan());
}

#[test]
fn an_act_whose_finding_is_out_stays_as_it_was() {
    let trial = Trial::plain();
    let mut session = Session::open(trial.case.clone(), Mode::Study);
    let requests = trial.draft.value(Decision::Requests).cloned();
    session.apply(Event::Choose(Decision::Requests, requests)).unwrap();
    assert!(!session.is_asked(Decision::Drugs));
    session.apply(Event::CarryOut(Step::Chart)).unwrap();
    assert!(session.is_asked(Decision::Drugs) && session.due() == Some(Step::Chart));
    let more = session.apply(Event::Choose(Decision::Requests, Some(Value::Many(0)))).unwrap_err();
    assert_eq!(more, Refusal::Past { decision: Decision::Requests });
    let early = session.apply(Event::CarryOut(Step::Chart)).unwrap_err();
    assert!(
        matches!(early, Refusal::Undecided { ref missing, .. } if missing.contains(&Decision::Drugs))
    );
}

/// The plain trial under a title with which its plate breaks and comes away loose.
fn breaking() -> Trial {
    let mut trial = Trial::plain();
    trial.keys(&[("technique", "lever-on-facial-plate"), ("broken-plate", "remove")]);
    let pulled = events::Pulled::in_draft(&trial.draft).unwrap();
    let cases = (0..1000).map(|n| Case { title: n.to_string(), ..trial.case.clone() });
    trial.case = cases
        .into_iter()
        .find(|case| events::broken_plate(case, pulled) == Some(crate::chart::Fragment::Loose))
        .unwrap();
    trial
}

#[test]
fn a_plate_that_breaks_is_told_then_answered_and_stays_broken_on_replay() {
    let trial = breaking();
    let mut session = Session::open(trial.case.clone(), Mode::Study);
    let told = |session: &Session| {
        session.reports().iter().any(|report| report.title == "The facial plate")
    };
    while let Some(step) = session.due() {
        assert_eq!(told(&session), session.plan().extraction.is_some());
        while !session.view().missing.is_empty() {
            answer(&mut session, &trial);
        }
        if step != Step::Extraction {
            assert!(!session.view().missing.contains(&Decision::BrokenPlate));
        }
        session.apply(Event::CarryOut(step)).unwrap();
        if session.weighing() == Some(step) {
            let asked = session.view().missing.contains(&Decision::BrokenPlate);
            assert_eq!(asked, step == Step::Extraction);
            assert_eq!(told(&session), step >= Step::Extraction);
            answer(&mut session, &trial);
            session.apply(Event::CarryOut(step)).unwrap();
        }
    }
    // What is shown from there on is the site as it was left; what is stored is the case as it was.
    assert_eq!(session.case().site.defects.len(), 1);
    assert!(session.opened().site.defects.is_empty());
    assert_eq!(*session.opened(), trial.case);
    let again = Session::replay(trial.case, Mode::Study, &read(&stored(&session))).unwrap();
    assert_eq!(hash(&again), hash(&session));
    assert_eq!(again.case(), session.case());
    assert!(told(&again));
    // The wall was whole when it was examined, and is judged so; it is not when it is placed in.
    let zone = |id: &str| {
        session.verdicts().iter().find(|verdict| verdict.rule.id == id).map(|verdict| verdict.zone)
    };
    use crate::rules::Zone;
    assert_eq!(zone("broken-plate-misjudged"), Some(Zone::Ideal));
    assert!(zone("implant-in-a-lost-facial-wall").is_some_and(Zone::is_fault));
    assert!(!zone("wall-declared-whole-on-film-alone").is_some_and(Zone::is_fault));
}

#[test]
fn what_goes_on_a_second_implant_is_asked_on_its_own_torque() {
    let mut trial = Trial::plain();
    trial.keys(&[("seating-act", "seat-longer")]);
    let mut session = Session::open(trial.case.clone(), Mode::Study);
    while session.due() != Some(Step::Seating) {
        let step = session.due().unwrap();
        while !session.view().missing.is_empty() {
            answer(&mut session, &trial);
        }
        session.apply(Event::CarryOut(step)).unwrap();
    }
    let choose = |session: &mut Session, decision| {
        let value = trial.draft.value(decision).cloned();
        session.apply(Event::Choose(decision, value)).unwrap();
    };
    let titled = |session: &Session, title: &str| {
        session.reports().iter().filter(|report| report.title == title).count()
    };
    choose(&mut session, Decision::SeatingAct);
    assert!(!session.is_asked(Decision::Component) && !session.is_asked(Decision::SecondAct));
    session.apply(Event::CarryOut(Step::Seating)).unwrap();
    assert_eq!(session.weighing(), Some(Step::Seating));
    assert_eq!([titled(&session, "Seated"), titled(&session, "Seated again")], [1, 1]);
    assert_eq!(session.shown().implant.as_ref().unwrap().length.get(), 15.0);
    assert!(session.is_settled(Decision::SeatingAct));
    answer(&mut session, &trial);
    session.apply(Event::CarryOut(Step::Seating)).unwrap();
    assert_eq!(session.shown(), session.plan());
    assert_eq!(session.plan().implant.as_ref().unwrap().length.get(), 15.0);
}

#[test]
fn whoever_answers_what_is_asked_comes_to_the_end_whatever_happens() {
    let mut met = std::collections::BTreeSet::new();
    for seed in 1..=60_u64 {
        let spread = if seed.is_multiple_of(2) { Spread::WholeMouth } else { Spread::Teaching };
        let case = generate_as(spread, seed, &Constraints::default()).unwrap();
        for turn in 0..8 {
            // Answers that were drawn beforehand, given only as each is asked.
            let drawn = wander(case.clone(), 1000 * seed + turn);
            let mut session = Session::open(case.clone(), Mode::Study);
            while let Some(step) = session.due() {
                while let Some(decision) = session.view().missing.first().copied() {
                    if decision.answers_chance() {
                        met.insert(decision.key());
                    }
                    let value = drawn.draft().value(decision).cloned();
                    session.apply(Event::Choose(decision, value)).unwrap();
                }
                let acts = session.apply(Event::CarryOut(step));
                assert!(acts.is_ok(), "{:?} {turn} {step:?}: {acts:?}", case.address);
            }
            assert!(session.is_over(), "{:?} {turn}", case.address);
        }
    }
    // Every rescue was asked for on the way.
    for decision in Decision::ALL.iter().filter(|entry| entry.decision.answers_chance()) {
        assert!(met.contains(decision.decision.key()), "{} {met:?}", decision.decision.key());
    }
}
