//! What holds for every figure of every state.

use super::*;

#[test]
fn every_point_is_finite_and_inside_its_window() {
    for px in [230.0, 287.0, 360.0, 900.0] {
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
    for px in [230.0, 287.0, 360.0, 900.0] {
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
            let signed =
                pairs.any(|(a, b)| (a == '-' || a == '+') && (b.is_ascii_digit() || b == ' '));
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
    let root = site.socket.only_mut().unwrap();
    (root.length, root.tilt, root.half_fo) = (Mm::new(15.0), Deg::new(14.0), Mm::new(2.2));
    site.soft.thickness = Mm::new(0.6);
    site.vital = lower().case.site.vital;
    for of in FIGURES {
        let (a, b) = (draw(&plain, 0, false, 360.0, of), draw(&other, 0, false, 360.0, of));
        assert_eq!(a, b, "{} gives the truth away", a.name);
    }
}

#[test]
fn the_same_state_gives_the_same_figure() {
    for of in FIGURES {
        assert_eq!(draw(&covered(), 10, true, 360.0, of), draw(&covered(), 10, true, 360.0, of));
    }
}
