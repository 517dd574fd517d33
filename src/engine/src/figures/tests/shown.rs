//! What is drawn when, and how.

use super::*;
use crate::rules;

#[test]
fn a_defect_is_drawn_once_it_has_been_seen_and_not_before() {
    let mut trial = covered();
    // Sounding, sections and probing of the socket left out: nothing shows the wall before the flap.
    trial.keys(&[
        ("examinations", "look film"),
        ("wall-reading", "unsure"),
        ("wall-ground", "film"),
        ("socket-probing", "nothing"),
    ]);
    for (of, missing) in [
        (section as fn(&Show<'_>) -> Figure, Ink::Lost),
        (facial_map, Ink::Defect),
        (gap_clock, Ink::Lost),
    ] {
        let unseen = draw(&trial, 4, false, 360.0, of);
        assert!(!holds_ink(&unseen, missing), "{}", unseen.name);
        let bare = draw(&trial, 5, false, 360.0, of);
        assert!(holds_ink(&bare, missing), "{} under the raised flap", bare.name);
        let revealed = draw(&trial, 0, true, 360.0, of);
        assert!(holds_ink(&revealed, missing), "{} in the debrief", revealed.name);
    }
}

#[test]
fn a_direction_without_bone_is_marked_open() {
    let figure = draw(&covered(), 10, true, 360.0, gap_clock);
    assert!(words(&figure).contains(&"open"));
    assert!(figure.says.contains("facially open"), "{}", figure.says);
    let whole = draw(&Trial::plain(), 10, true, 360.0, gap_clock);
    assert!(!words(&whole).contains(&"open"));
}

#[test]
fn a_left_tooth_is_the_mirror_image_of_its_right_twin() {
    let right = covered();
    let mut left = covered();
    left.case.site.tooth = Tooth::new(21).unwrap();
    for of in [facial_map as fn(&Show<'_>) -> Figure, gap_clock] {
        let (a, b) = (draw(&right, 10, true, 360.0, of), draw(&left, 10, true, 360.0, of));
        for wanted in [Ink::Tooth, Ink::Implant, Ink::Defect, Ink::Membrane] {
            let of_ink = |figure: &Figure, sign: f64| {
                let items = figure.items.iter().filter(|item| ink(item) == wanted);
                let mut xs: Vec<f64> = items.flat_map(points).map(|at| sign * at.x).collect();
                xs.sort_by(f64::total_cmp);
                xs
            };
            let (a, b) = (of_ink(&a, -1.0), of_ink(&b, 1.0));
            assert_eq!(a.len(), b.len());
            assert!(a.iter().zip(&b).all(|(a, b)| (a - b).abs() < 1e-9), "{wanted:?}");
        }
    }
    let says = |trial: &Trial| draw(trial, 10, true, 360.0, section).items.len();
    assert_eq!(says(&right), says(&left), "the section is not mirrored");
}

#[test]
fn upper_roots_point_up_and_lower_roots_down() {
    for (trial, sign) in [(Trial::plain(), -1.0), (lower(), 1.0)] {
        let figure = draw(&trial, 3, true, 360.0, section);
        let root = figure.items.iter().find(|item| ink(item) == Ink::Tooth).unwrap();
        let deepest = points(root).iter().map(|at| sign * at.y).fold(f64::MIN, f64::max);
        assert!((deepest - 11.0).abs() < 0.05, "{deepest}");
    }
}

#[test]
fn bare_threads_are_drawn_only_where_a_wall_is_missing() {
    assert!(!holds_ink(&draw(&Trial::plain(), 10, true, 360.0, section), Ink::ThreadExposed));
    let figure = draw(&covered(), 10, true, 360.0, section);
    assert!(holds_ink(&figure, Ink::ThreadExposed) && holds_ink(&figure, Ink::Thread));
    assert!(words(&figure).contains(&"threads without"), "{:?}", words(&figure));
}

#[test]
fn grains_lie_in_the_gap_at_true_size() {
    let figure = draw(&Trial::plain(), 10, true, 360.0, section);
    let grains: Vec<&Vec<P2>> = figure
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Path { rings, ink: Ink::Grain, .. } => Some(rings),
            _ => None,
        })
        .flatten()
        .collect();
    assert!(grains.len() > 10);
    for grain in grains {
        let across = grain
            .iter()
            .flat_map(|a| grain.iter().map(move |b| libm::hypot(a.x - b.x, a.y - b.y)))
            .fold(0.0, f64::max);
        // 0.25 to 1.0 mm was chosen; a chip's corners lie on its circle or a little within.
        assert!((0.15..=1.0 + 1e-9).contains(&across), "{across}");
        assert!(grain.iter().all(|at| at.x < 3.05), "beyond the facial wall: {grain:?}");
    }
}

#[test]
fn the_lit_rule_shows_in_the_ink_of_faults() {
    let trial = covered();
    let plan = trial.plan();
    let known = Known::of(&trial.case, &plan);
    let lit = |id| Show {
        case: &trial.case,
        plan: &plan,
        draft: &trial.draft,
        known: &known,
        reveal: true,
        lit: id,
        px: 360.0,
    };
    let rule = rules::all()
        .find(|rule| rule.reads.contains(&Decision::MembraneOutline))
        .expect("a rule reads the membrane's outline");
    let faults = |show: &Show<'_>| {
        facial_map(show).items.iter().filter(|item| ink(item) == Ink::Fault).count()
    };
    assert!(faults(&lit(Some(rule))) > faults(&lit(None)));
}

#[test]
fn a_canal_is_named_with_its_distance_and_lit_with_its_rule() {
    let trial = lower();
    let plan = trial.plan();
    let known = Known::of(&trial.case, &plan);
    let show = |lit| Show {
        case: &trial.case,
        plan: &plan,
        draft: &trial.draft,
        known: &known,
        reveal: true,
        lit,
        px: 360.0,
    };
    let distance = Measurements::of(&trial.case, &plan).to_canal().unwrap();
    let figure = section(&show(None));
    let said = format!("to the inferior alveolar canal it is {distance:.1}");
    assert!(figure.says.contains(&said), "{said}: {}", figure.says);
    let inked = |figure: &Figure, wanted| {
        figure.items.iter().any(|item| {
            matches!(item, Item::Words { text, .. } if text.starts_with("inferior"))
                && ink(item) == wanted
        })
    };
    assert!(inked(&figure, Ink::Words));
    assert!(inked(&section(&show(rules::find("drill-too-near-the-canal"))), Ink::Fault));
    assert!(inked(&section(&show(rules::find("gap-too-narrow"))), Ink::Words));
}

#[test]
fn a_structure_that_nobody_has_looked_for_is_not_named() {
    let mut trial = lower();
    trial.keys(&[("examinations", "look film bone-sounding"), ("wall-ground", "sounding")]);
    for of in FIGURES {
        let figure = draw(&trial, 4, false, 360.0, of);
        assert!(!holds_ink(&figure, Ink::Vital), "{}", figure.name);
        assert!(!figure.says.contains("canal"), "{}", figure.says);
    }
}

#[test]
fn the_neighbours_distances_stand_beside_them_on_the_clock() {
    let trial = Trial::plain();
    let plan = trial.plan();
    let m = Measurements::of(&trial.case, &plan);
    let figure = draw(&trial, 10, true, 360.0, gap_clock);
    for near in [m.to_mesial_neighbour().unwrap(), m.to_distal_neighbour().unwrap()] {
        let wanted = format!("{:.1} mm away", near.distance.get());
        assert!(words(&figure).contains(&wanted.as_str()), "{wanted}: {:?}", words(&figure));
    }
}
