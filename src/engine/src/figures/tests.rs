//! What holds for every figure, and what each promises.

use super::*;
use crate::anatomy::{Defect, DefectKind, Profile, Tooth, Tube, Wall};
use crate::geometry::{Outline, P2, P3};
use crate::measure::{Measurements, Opening};
use crate::plan::{Decision, Plan, Value, steps};
use crate::rules::Known;
use crate::rules::trial::Trial;
use crate::units::{Deg, Mm};

const FIGURES: [fn(&Show<'_>) -> Figure; 4] = [section, facial_map, gap_clock, gap_profile];

/// A trial with its first steps carried out.
fn carried(trial: &Trial, count: usize) -> Plan {
    let mut plan = Plan::default();
    for step in steps(&trial.draft).into_iter().take(count) {
        plan.carry_out(step, &trial.draft, &trial.case).unwrap();
    }
    plan
}

fn draw(trial: &Trial, done: usize, reveal: bool, px: f64, of: fn(&Show<'_>) -> Figure) -> Figure {
    let plan = carried(trial, done);
    let known = Known::of(&trial.case, &plan);
    let show = Show {
        case: &trial.case,
        plan: &plan,
        draft: &trial.draft,
        known: &known,
        reveal,
        lit: None,
        px,
    };
    of(&show)
}

fn dehiscence() -> Defect {
    let outline = Outline::new(vec![[-22, -10], [22, -10], [22, 0], [8, 60], [-8, 60], [-22, 0]]);
    Defect { wall: Wall::Facial, kind: DefectKind::DehiscenceV, outline: outline.unwrap() }
}

/// A facial dehiscence under flap, membrane, graft and contour layer.
fn covered() -> Trial {
    let mut trial = Trial::plain();
    trial.case.site.defects = vec![dehiscence()];
    trial.keys(&[
        ("flap-design", "trapezoidal"),
        ("papillae", "left"),
        ("periosteal-release", "yes"),
        ("membrane", "native-collagen"),
        ("trim", "rounded"),
        ("fold", "facial-only"),
        ("fixation", "tucked"),
        ("act-order", "membrane-first"),
        ("needle-path", "crest-outward"),
    ]);
    trial.outline(Decision::FlapOutline, &[[-90, -15], [90, -15], [105, 130], [-105, 130]]);
    trial.outline(Decision::MembraneOutline, &[[-50, -5], [50, -5], [50, 90], [-50, 90]]);
    trial.number(Decision::ContourLayer, 15).number(Decision::OralElevation, 30);
    trial
}

fn lower() -> Trial {
    let mut trial = Trial::plain();
    trial.case.site.tooth = Tooth::new(35).unwrap();
    trial.case.site.vital.canal = Some(Tube {
        from: P3::new(-12.0, -2.0, 16.0),
        to: P3::new(12.0, -1.0, 16.5),
        radius: Mm::new(1.4),
    });
    trial.case.site.vital.foramen = Some(P3::new(-3.0, 4.0, 14.0));
    trial.keys(&[("sensation-check", "yes")]);
    trial
}

fn trials() -> Vec<Trial> {
    let mut trials = vec![Trial::plain(), covered(), lower()];
    for seed in 1..=5 {
        let mut drawn = covered();
        drawn.case = crate::cases::generate(seed).unwrap();
        drawn.keys(&[("sensation-check", "yes")]);
        trials.push(drawn);
    }
    trials
}

/// Every figure of every trial, before anything, once the tooth is out, at the end and revealed.
fn every(px: f64) -> Vec<(String, Figure)> {
    let mut all = Vec::new();
    for (number, trial) in trials().iter().enumerate() {
        for (done, reveal) in [(0, false), (5, false), (10, true)] {
            for of in FIGURES {
                let figure = draw(trial, done, reveal, px, of);
                all.push((
                    format!("trial {number}, {} after {done}, {reveal}", figure.name),
                    figure,
                ));
            }
        }
    }
    all
}

fn points(item: &Item) -> Vec<P2> {
    match item {
        Item::Path { rings, .. } => rings.concat(),
        Item::Circle { middle, radius, .. } => vec![
            P2::new(middle.x - radius, middle.y - radius),
            P2::new(middle.x + radius, middle.y + radius),
        ],
        Item::Words { at, .. } => vec![*at],
    }
}

fn holds_ink(figure: &Figure, wanted: Ink) -> bool {
    figure.items.iter().any(|item| ink(item) == wanted)
}

fn ink(item: &Item) -> Ink {
    match item {
        Item::Path { ink, .. } | Item::Circle { ink, .. } | Item::Words { ink, .. } => *ink,
    }
}

fn words(figure: &Figure) -> Vec<&str> {
    let items = figure.items.iter();
    items
        .filter_map(|item| match item {
            Item::Words { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect()
}

/// Lines of an ink that are one straight stretch.
fn stretches(figure: &Figure, wanted: Ink) -> Vec<[P2; 2]> {
    let items = figure.items.iter().filter(|item| ink(item) == wanted);
    items
        .filter_map(|item| match item {
            Item::Path { rings, .. } => Some([*rings[0].first()?, *rings[0].last()?]),
            _ => None,
        })
        .collect()
}

fn length([a, b]: [P2; 2]) -> f64 {
    libm::hypot(a.x - b.x, a.y - b.y)
}

#[test]
fn every_point_is_finite_and_inside_its_window() {
    for px in [360.0, 900.0] {
        for (name, figure) in every(px) {
            let Window { least, most } = figure.window;
            for item in &figure.items {
                for at in points(item) {
                    let inside = (least.x - 1e-6..=most.x + 1e-6).contains(&at.x)
                        && (least.y - 1e-6..=most.y + 1e-6).contains(&at.y);
                    assert!(inside, "{name}: {at:?} of {item:?}");
                }
            }
            assert!(
                figure.handles.iter().all(|handle| least.x <= handle.at.x && handle.at.x <= most.x)
            );
        }
    }
}

#[test]
fn words_lie_on_the_sheet_and_never_on_each_other() {
    for px in [360.0, 900.0] {
        for (name, figure) in every(px) {
            let boxes: Vec<(f64, f64, f64, f64, &str)> = figure
                .items
                .iter()
                .filter_map(|item| match item {
                    Item::Words { at, anchor, height, text: words, .. } => {
                        let wide = text::width(words, *height);
                        let left = match anchor {
                            Anchor::Start => at.x,
                            Anchor::Middle => at.x - 0.5 * wide,
                            Anchor::End => at.x - wide,
                        };
                        Some((left, left + wide, at.y - height, at.y, words.as_str()))
                    }
                    _ => None,
                })
                .collect();
            for (place, a) in boxes.iter().enumerate() {
                assert!(
                    a.0 >= figure.window.least.x && a.1 <= figure.window.most.x,
                    "{name}: {a:?}"
                );
                for b in &boxes[place + 1..] {
                    let apart = a.1 <= b.0 || b.1 <= a.0 || a.3 <= b.2 || b.3 <= a.2;
                    assert!(apart, "{name} at {px} px: {a:?} and {b:?}");
                }
            }
        }
    }
}

#[test]
fn what_a_figure_says_has_sentences_and_no_bare_sign() {
    for (name, figure) in every(360.0) {
        assert!(figure.says.ends_with('.'), "{name}: {}", figure.says);
        let texts = words(&figure).into_iter().chain([figure.says.as_str(), figure.title.as_str()]);
        for text in texts {
            let mut pairs = text.chars().zip(text.chars().skip(1));
            let signed = pairs.any(|(a, b)| a == '-' && b.is_ascii_digit());
            assert!(!signed, "{name}: {text}");
        }
    }
}

#[test]
fn before_anything_is_seen_no_figure_tells_one_truth_from_another() {
    let plain = Trial::plain();
    let mut other = covered();
    other.draft = plain.draft.clone();
    let site = &mut other.case.site;
    site.ridge.facial = Profile { knots: vec![P2::new(-8.0, 3.1), P2::new(30.0, 3.4)] };
    site.ridge.oral = Profile { knots: vec![P2::new(-8.0, -3.6), P2::new(30.0, -5.0)] };
    site.ridge.crest.knots = vec![P2::new(-9.0, -1.0), P2::new(9.0, 1.5)];
    site.socket.roots[0].length = Mm::new(15.0);
    site.socket.roots[0].tilt = Deg::new(14.0);
    site.socket.roots[0].half_fo = Mm::new(2.2);
    site.soft.thickness = Mm::new(0.6);
    site.vital = lower().case.site.vital;
    for of in FIGURES {
        let (a, b) = (draw(&plain, 0, false, 360.0, of), draw(&other, 0, false, 360.0, of));
        assert_eq!(a, b, "{} gives the truth away", a.name);
    }
}

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
fn the_facial_gap_is_drawn_as_long_as_it_is_measured() {
    for (facial, depth, tilt) in [(-12, 10, -8), (0, 5, 0), (-6, 20, 6), (-10, -15, -4)] {
        let mut trial = Trial::plain();
        trial
            .number(Decision::OffsetFacial, facial)
            .number(Decision::Depth, depth)
            .number(Decision::Tilt, tilt);
        let figure = draw(&trial, 10, true, 360.0, section);
        let plan = trial.plan();
        let gap = Measurements::of(&trial.case, &plan).facial_gap().unwrap().width.get();
        let drawn = stretches(&figure, Ink::Dimension);
        let found = drawn
            .iter()
            .any(|line| (line[0].y - line[1].y).abs() < 1e-9 && (length(*line) - gap).abs() < 1e-9);
        assert!(found, "{gap}: {drawn:?}");
        assert!(figure.says.contains(&format!("{gap:.1} mm")), "{}", figure.says);
    }
}

#[test]
fn depth_and_plate_are_drawn_as_long_as_they_are_measured() {
    let trial = Trial::plain();
    let plan = trial.plan();
    let m = Measurements::of(&trial.case, &plan);
    let figure = draw(&trial, 10, true, 360.0, section);
    let drawn: Vec<f64> = stretches(&figure, Ink::Dimension).into_iter().map(length).collect();
    for wanted in [m.depth_from_margin().unwrap(), m.facial_plate().unwrap()] {
        assert!(
            drawn.iter().any(|length| (length - wanted.get()).abs() < 1e-6),
            "{wanted}: {drawn:?}"
        );
    }
}

#[test]
fn margins_on_the_map_are_drawn_as_long_as_they_are_measured() {
    for apical in [75, 90, 110] {
        let mut trial = covered();
        trial.outline(
            Decision::MembraneOutline,
            &[[-50, -5], [45, -5], [52, 40], [40, apical], [-40, apical - 4]],
        );
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let (membrane, flap) = (m.membrane_margin().unwrap(), m.flap_beyond_membrane().unwrap());
        let figure = draw(&trial, 10, true, 360.0, facial_map);
        let drawn: Vec<f64> = stretches(&figure, Ink::Dimension).into_iter().map(length).collect();
        let asked = [
            membrane.mesial,
            membrane.distal,
            membrane.apical,
            flap.mesial,
            flap.distal,
            flap.apical,
        ];
        for margin in asked.into_iter().flatten() {
            let found = drawn.iter().any(|length| (length - margin.get()).abs() < 1e-6);
            assert!(found, "{margin}: {drawn:?}");
        }
    }
}

#[test]
fn a_membrane_that_ends_short_is_drawn_as_a_fault_and_said() {
    let mut trial = covered();
    trial.outline(Decision::MembraneOutline, &[[-50, -5], [50, -5], [50, 40], [-50, 40]]);
    let figure = draw(&trial, 10, true, 360.0, facial_map);
    let short = stretches(&figure, Ink::Fault).into_iter().map(length);
    assert!(short.into_iter().any(|length| (length - 2.0).abs() < 1e-6));
    assert!(figure.says.contains("2.0 mm short apically"), "{}", figure.says);
}

#[test]
fn the_clock_draws_each_gap_as_long_as_it_is_measured() {
    let mut trial = Trial::plain();
    trial.number(Decision::Tilt, 0).number(Decision::Tip, 0);
    let plan = trial.plan();
    let m = Measurements::of(&trial.case, &plan);
    let figure = draw(&trial, 10, true, 360.0, gap_clock);
    let drawn: Vec<f64> = stretches(&figure, Ink::Dimension).into_iter().map(length).collect();
    let mut seen = 0;
    for (_, opening) in m.gap_around(Mm::ZERO, 12) {
        let Opening::Bone(gap) = opening else { panic!("the walls are whole") };
        if gap > Mm::ZERO {
            seen += 1;
            assert!(
                drawn.iter().any(|length| (length - gap.get()).abs() < 1e-9),
                "{gap}: {drawn:?}"
            );
        }
    }
    assert!(seen >= 5);
    let facial = format!("{:.1}", m.facial_gap().unwrap().width.get());
    assert!(words(&figure).contains(&facial.as_str()));
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
fn the_profile_has_a_row_for_each_tenth_and_its_edge_stands_at_the_gap() {
    let trial = Trial::plain();
    let plan = trial.plan();
    let known = Known::of(&trial.case, &plan);
    let show = Show {
        case: &trial.case,
        plan: &plan,
        draft: &trial.draft,
        known: &known,
        reveal: true,
        lit: None,
        px: 360.0,
    };
    let rows = gap_rows(&show);
    assert_eq!(rows.len(), 131);
    assert!((rows[57].depth.get() - 5.7).abs() < 1e-9);
    let figure = gap_profile(&show);
    let Opening::Bone(widest) = rows[57].facial else { panic!("{:?}", rows[57]) };
    let edge = figure.items.iter().find_map(|item| match item {
        Item::Path { rings, closed: false, ink: Ink::Outline } => Some(&rings[0]),
        _ => None,
    });
    let at = edge.unwrap().iter().find(|at| (at.y + 5.7).abs() < 1e-9).unwrap();
    assert!((at.x - 1.1 - widest.get()).abs() < 1e-9, "{at:?} {widest}");
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

/// Moves a handle by one count of its decision and asks the figure where it stands then.
fn moved(trial: &Trial, of: fn(&Show<'_>) -> Figure, handle: usize, across: bool) -> (f64, f64) {
    const COUNTS: i32 = 2;
    let before = draw(trial, 5, false, 360.0, of);
    let taken = &before.handles[handle];
    let (decision, rate) = if across { taken.across } else { taken.down }.unwrap();
    let mut next = trial.clone();
    match taken.vertex {
        Some((_, vertex)) => {
            let mut tenths = next.draft.outline(decision).unwrap().tenths().to_vec();
            tenths[vertex][usize::from(!across)] += COUNTS;
            next.draft.choose(decision, Value::Outline(Outline::new(tenths).unwrap())).unwrap();
        }
        None => {
            let count = next.draft.number(decision).unwrap();
            next.number(decision, count + COUNTS);
        }
    }
    let after = draw(&next, 5, false, 360.0, of);
    let (a, b) = (taken.at, after.handles[handle].at);
    let gone = if across { b.x - a.x } else { b.y - a.y };
    (gone, f64::from(COUNTS) / rate)
}

#[test]
fn a_handle_goes_where_its_counts_say() {
    let trial = covered();
    for (of, handle, across) in [
        (section as fn(&Show<'_>) -> Figure, 0, true),
        (section, 0, false),
        (section, 1, true),
        (gap_clock, 0, true),
        (gap_clock, 0, false),
        (facial_map, 1, true),
        (facial_map, 1, false),
    ] {
        for iso in [11, 21, 31, 41] {
            let mut turned = trial.clone();
            turned.case.site.tooth = Tooth::new(iso).unwrap();
            turned.keys(&[("sensation-check", "yes")]);
            let (gone, promised) = moved(&turned, of, handle, across);
            let off = (gone - promised).abs();
            assert!(
                off < 0.02 * promised.abs() && promised != 0.0,
                "{iso} {handle}: {gone} {promised}"
            );
        }
    }
}

#[test]
fn what_has_been_carried_out_cannot_be_taken_hold_of() {
    let trial = covered();
    for of in FIGURES {
        assert!(draw(&trial, 10, false, 360.0, of).handles.is_empty());
    }
    let open = draw(&trial, 4, false, 360.0, facial_map);
    let corners = |wanted| {
        let vertices = open.handles.iter().filter_map(|handle| handle.vertex);
        vertices.filter(|(decision, _)| *decision == wanted).count()
    };
    assert_eq!((corners(Decision::FlapOutline), corners(Decision::MembraneOutline)), (4, 4));
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
    let rule = crate::rules::all()
        .find(|rule| rule.reads.contains(&Decision::MembraneOutline))
        .expect("a rule reads the membrane's outline");
    let faults = |show: &Show<'_>| {
        facial_map(show).items.iter().filter(|item| ink(item) == Ink::Fault).count()
    };
    assert!(faults(&lit(Some(rule.id))) > faults(&lit(None)));
    assert_eq!(faults(&lit(Some("no-such-rule"))), faults(&lit(None)));
}

#[test]
fn the_same_state_gives_the_same_figure() {
    for of in FIGURES {
        assert_eq!(draw(&covered(), 10, true, 360.0, of), draw(&covered(), 10, true, 360.0, of));
    }
}
