use super::*;
use crate::past::Sure;
use crate::trial::{attempt, observed, rule};
use engine::rules::Zone;

/// Attempts at a tooth, of which the first `wrong` of `all` fail the skill.
fn at(tooth: u8, skill: Skill, [wrong, all]: [u64; 2]) -> Vec<Past> {
    let of = |place: u64| {
        let mut past = attempt(place);
        past.tooth = Tooth::new(tooth).unwrap();
        let zone = if place < wrong { Zone::Compromising } else { Zone::Ideal };
        past.observed.push(observed(rule(skill), zone));
        past
    };
    (0..all).map(of).collect()
}

fn of(pasts: &[Past]) -> (Option<Remark>, u32) {
    remark(&pasts.iter().collect::<Vec<_>>())
}

fn answers(percent: u8, [right, all]: [u32; 2]) -> Vec<Past> {
    let mut past = attempt(0);
    past.sure = (0..all).map(|n| Sure { step: Step::Flap, percent, right: n < right }).collect();
    vec![past]
}

#[test]
fn a_planted_lean_to_one_jaw_is_found_with_its_numbers() {
    let mut pasts = at(36, Skill::Covering, [7, 8]);
    pasts.extend(at(16, Skill::Covering, [1, 14]));
    let (found, compared) = of(&pasts);
    let found = found.unwrap();
    assert_eq!(found.what, What::Jaw(Skill::Covering, Jaw::Mandible));
    assert_eq!((found.here, found.elsewhere, compared), ([7, 8], [1, 14], 1));
    let says = found.says();
    assert!(says.starts_with("Covering with a membrane: 7 of your 8 attempts with a fault were at teeth of the lower jaw."), "{says}");
    assert!(says.contains("There 7 of 8 had one, in the upper jaw 1 of 14."), "{says}");
}

#[test]
fn the_same_share_of_faults_on_both_sides_or_too_few_of_them_make_no_remark() {
    let mut even = at(36, Skill::Covering, [3, 10]);
    even.extend(at(16, Skill::Covering, [3, 10]));
    assert_eq!(of(&even), (None, 1));
    let mut few = at(36, Skill::Covering, [4, 4]);
    few.extend(at(16, Skill::Covering, [0, 40]));
    assert_eq!(of(&few), (None, 0), "four at one jaw are too few to compare");
    assert_eq!(of(&[]), (None, 0));
}

#[test]
fn each_comparison_more_raises_the_bar_for_all() {
    // Back against front and lower against upper teeth at once, in the same attempts.
    let mut two = at(36, Skill::Covering, [5, 8]);
    two.extend(at(11, Skill::Covering, [0, 9]));
    let (found, compared) = of(&two);
    assert_eq!(compared, 2);
    let alone = fisher([5, 8], [0, 9]);
    assert!((found.unwrap().chance - 2.0 * alone).abs() < 1e-12);
}

#[test]
fn a_step_that_fails_when_it_is_hurried_is_told() {
    let rule = rule(Skill::ReadingWalls);
    let pasts: Vec<Past> = (0..16_u64)
        .map(|place| {
            let mut past = attempt(place);
            let zone = if place < 7 { Zone::Unsafe } else { Zone::Ideal };
            past.observed.push(observed(rule, zone));
            past.spent = vec![(rule.step, 1000 * (10 + place))];
            past
        })
        .collect();
    let (found, _) = of(&pasts);
    let found = found.unwrap();
    assert_eq!(
        (found.what, found.here, found.elsewhere),
        (What::Quick(rule.step, true), [7, 8], [0, 8])
    );
    assert!(found.says().contains("7 of your 7 attempts with a fault in it were quicker"));
}

#[test]
fn faults_of_the_sure_and_right_answers_of_the_unsure_are_told_and_fitting_ones_are_not() {
    let (sure, _) = of(&answers(100, [12, 20]));
    assert_eq!(sure.unwrap().here, [8, 20]);
    assert!(
        sure.unwrap()
            .says()
            .starts_with("You were 90 or 100 % sure of 20 steps, and 8 of them had a fault")
    );
    let (unsure, _) = of(&answers(50, [15, 15]));
    assert_eq!((unsure.unwrap().what, unsure.unwrap().here), (What::Unsure, [15, 15]));
    assert_eq!(of(&answers(90, [18, 20])), (None, 1));
    assert_eq!(of(&answers(75, [0, 40])), (None, 0), "three of four is neither");
    assert_eq!(of(&answers(100, [0, 9])), (None, 0), "nine answers are too few");
}

#[test]
fn learners_without_any_lean_rarely_get_a_remark() {
    // A hundred learners whose faults fall where chance puts them, at jaws, fronts, paces and
    // confidences that chance puts as well.
    let mut state = 1_u64;
    let mut chance = |below: u64| {
        state =
            state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % below
    };
    let mut remarks = 0;
    for _ in 0..100 {
        let pasts: Vec<Past> = (0..40)
            .map(|place| {
                let mut past = attempt(place);
                past.tooth =
                    Tooth::new([11, 16, 31, 36][usize::try_from(chance(4)).unwrap()]).unwrap();
                for skill in Skill::ALL {
                    let zone = if chance(10) < 3 { Zone::Suboptimal } else { Zone::Ideal };
                    past.observed.push(observed(rule(skill), zone));
                }
                past.spent = Step::ALL.iter().map(|step| (*step, 1000 + chance(90_000))).collect();
                past.sure = (0..3)
                    .map(|_| Sure { step: Step::Flap, percent: 90, right: chance(10) < 9 })
                    .collect();
                past
            })
            .collect();
        let (found, compared) = of(&pasts);
        assert!(compared > 20, "{compared}");
        remarks += u32::from(found.is_some());
    }
    assert!(remarks <= 5, "{remarks} of 100");
}
