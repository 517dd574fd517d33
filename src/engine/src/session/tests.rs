use super::*;
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

#[test]
fn an_attempt_replays_to_the_same_debrief() {
    let trial = Trial::plain();
    let session = played(&trial, Mode::Study);
    let attempt = Attempt::of(&session);
    let text = serde_json::to_string(&attempt).unwrap();
    let read: Attempt = serde_json::from_str(&text).unwrap();
    let events = read.read_events().unwrap();
    let again = Session::replay(trial.case, read.mode, &events).unwrap();
    assert_eq!(Attempt::of(&again), attempt);
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

#[test]
fn an_attempt_of_a_later_format_is_refused_without_damage() {
    let session = played(&Trial::plain(), Mode::Study);
    let later = Attempt { format: ATTEMPT_FORMAT + 1, ..Attempt::of(&session) };
    assert!(later.read_events().unwrap_err().to_string().contains("newer version"));
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
