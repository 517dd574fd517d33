//! What is drawn is as long as what is measured.

use super::*;

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
