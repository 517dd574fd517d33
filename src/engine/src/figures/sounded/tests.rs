use super::*;
use crate::anatomy::Tooth;
use crate::chart::Case;
use crate::figures::{Item, text};
use crate::rules::trial::Trial;

fn at(tenths: i8, depth: f64) -> Sounded {
    let spot = Spot { wall: Wall::Facial, tenths };
    Sounded { spot, depth: Mm::new(depth), chosen: true }
}

fn spot(tenths: i8) -> Spot {
    at(tenths, 0.0).spot
}

/// The figure of a case in which nothing but the bone was examined.
fn of(case: &Case, all: &[Sounded], at: Spot, px: f64) -> Figure {
    let mut trial = Trial::plain();
    trial.keys(&[("examinations", "look bone-sounding")]);
    let plan = trial.plan();
    sounded(&case.site, &Known::of(case, &plan), all, at, px)
}

fn lines(figure: &Figure, wanted: Ink) -> Vec<Vec<P2>> {
    let lines = figure.items.iter().filter_map(|item| match item {
        Item::Path { rings, ink, .. } if *ink == wanted => Some(rings[0].clone()),
        _ => None,
    });
    lines.collect()
}

fn lengths(figure: &Figure) -> Vec<f64> {
    lines(figure, Ink::Mark).iter().map(|line| (line[0].y - line[1].y).abs()).collect()
}

/// Every word of a figure with the rectangle that it takes: left, right, top, bottom.
fn boxes(figure: &Figure) -> Vec<(String, [f64; 4])> {
    let words = figure.items.iter().filter_map(|item| match item {
        Item::Words { at, anchor, height, text, .. } => {
            let wide = text::width(text, *height);
            let before = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => 0.5,
                Anchor::End => 1.0,
            };
            let left = at.x - before * wide;
            Some((text.clone(), [left, left + wide, at.y - height, at.y + 0.25 * height]))
        }
        _ => None,
    });
    words.collect()
}

#[test]
fn each_place_of_the_side_is_drawn_as_deep_as_it_was_read() {
    let case = Trial::plain().case;
    let oral = Sounded { spot: Spot { wall: Wall::Oral, tenths: 0 }, ..at(0, 9.0) };
    let all = [at(0, 3.5), at(-20, 6.0), oral];
    let figure = of(&case, &all, spot(5), 400.0);
    let mut found = lengths(&figure);
    found.sort_by(f64::total_cmp);
    assert!((found[0] - 3.5).abs() < 1e-9 && (found[1] - 6.0).abs() < 1e-9, "{found:?}");
    assert_eq!(found.len(), 2);
    assert!(figure.says.contains("2.0 mm mesially, 6.0 mm"), "{}", figure.says);
    assert_eq!(lengths(&of(&case, &all, oral.spot, 400.0)).len(), 1);
}

#[test]
fn of_several_readings_at_a_place_the_deepest_is_drawn_and_all_are_told() {
    let case = Trial::plain().case;
    let figure = of(&case, &[at(0, 3.0), at(0, 5.5), at(0, 5.0)], spot(5), 400.0);
    assert_eq!(lengths(&figure).len(), 1);
    assert!((lengths(&figure)[0] - 5.5).abs() < 1e-9);
    assert!(figure.says.contains("3.0 mm and 5.5 mm and 5.0 mm"), "{}", figure.says);
    assert_eq!(boxes(&figure).iter().filter(|(words, _)| words == "5.5").count(), 1);
}

#[test]
fn no_number_lies_on_another_word_however_often_and_wherever_bone_is_sounded() {
    let mut rounds: Vec<Vec<Sounded>> = vec![vec![], vec![at(0, 3.5)]];
    rounds.push([-26, 0, 26].map(|place| at(place, 3.5)).to_vec());
    rounds.push((-3..=3).map(|place| at(place, 10.5)).collect());
    rounds.push((-16..=16).map(|place| at(2 * place, 3.0 + f64::from(place + 16) / 4.0)).collect());
    rounds.push((-16..=16).map(|place| at(place, 4.0)).collect());
    for iso in [11, 21, 31, 41, 46] {
        let mut case = Trial::plain().case;
        case.site.tooth = Tooth::new(iso).unwrap();
        for (round, px) in rounds.iter().flat_map(|round| [(round, 200.0), (round, 420.0)]) {
            let figure = of(&case, round, spot(0), px);
            let all = boxes(&figure);
            for (place, (words, [left, right, top, bottom])) in all.iter().enumerate() {
                let window = figure.window;
                assert!(*left >= window.least.x && *right <= window.most.x, "{words} at {px} px");
                assert!(*top >= window.least.y && *bottom <= window.most.y, "{words} at {px} px");
                for (other, [l, r, t, b]) in &all[place + 1..] {
                    let apart = *right <= *l || r <= left || *bottom <= *t || b <= top;
                    assert!(apart, "{iso}, {px} px, {} readings: {words} on {other}", round.len());
                }
            }
        }
    }
}

#[test]
fn what_is_deeper_than_the_crest_is_expected_is_hatched_and_nothing_else() {
    let case = Trial::plain().case;
    let hatched = |all: &[Sounded]| lines(&of(&case, all, spot(0), 400.0), Ink::Lost).len();
    assert_eq!(hatched(&[]), 0);
    assert_eq!(hatched(&[at(-20, 3.5), at(0, 3.5), at(20, 3.5)]), 0);
    assert_eq!(hatched(&[at(-20, 6.0), at(0, 3.0), at(20, 6.0)]), 2);
    assert_eq!(hatched(&[at(-20, 3.0), at(0, 7.5), at(20, 3.0)]), 1);
}

#[test]
fn a_point_of_the_figure_is_the_place_it_is_drawn_at_in_every_quadrant() {
    for iso in [11, 21, 31, 41] {
        let mut case = Trial::plain().case;
        case.site.tooth = Tooth::new(iso).unwrap();
        let figure = of(&case, &[at(13, 3.0)], spot(0), 400.0);
        let x = lines(&figure, Ink::Mark)[0][0].x;
        assert_eq!(sounded_at(&case.site, Wall::Facial, x), spot(13), "{iso}");
        assert_eq!(sounded_at(&case.site, Wall::Oral, f64::NAN).tenths, 0);
        let far = sounded_at(&case.site, Wall::Facial, 900.0);
        assert_eq!(far.tenths.abs(), Spot::reach(&case.site));
    }
}

#[test]
fn what_no_probe_has_met_and_no_test_has_shown_is_not_drawn() {
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::defect;
    let whole = Trial::plain().case;
    let mut lost = whole.clone();
    lost.site.defects.push(defect(Wall::Facial, DefectKind::LostWall));
    lost.site.soft.thickness = Mm::new(0.6);
    let [a, b] = [&whole, &lost].map(|case| of(case, &[at(10, 4.0)], spot(10), 400.0));
    assert_eq!(a, b);
    assert!(a.says.contains("was not tested"), "{}", a.says);
    // Once the gum was tested it is drawn as thick as it is, and the wall still is not.
    let mut tested = Trial::plain();
    tested.keys(&[("examinations", "look bone-sounding phenotype-test")]);
    let plan = tested.plan();
    let drawn =
        |case: &Case| sounded(&case.site, &Known::of(case, &plan), &[at(10, 4.0)], spot(10), 400.0);
    assert_ne!(drawn(&whole), drawn(&lost));
    lost.site.soft.thickness = whole.site.soft.thickness;
    assert_eq!(drawn(&whole), drawn(&lost));
}
