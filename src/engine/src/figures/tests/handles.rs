//! What can be taken hold of, and where it goes.

use super::*;

/// Moves a handle by one count of its decision and asks the figure where it stands then.
fn moved(trial: &Trial, of: fn(&Show<'_>) -> Figure, handle: usize, across: bool) -> (f64, f64) {
    const COUNTS: i32 = 2;
    let grips = |trial: &Trial| -> Vec<Handle> {
        let handles = draw(trial, 5, false, 360.0, of).handles;
        handles.into_iter().filter(|handle| !handle.makes).collect()
    };
    let before = grips(trial);
    let taken = &before[handle];
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
    let (a, b) = (taken.at, grips(&next)[handle].at);
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
        let grips = open.handles.iter().filter(|handle| !handle.makes);
        let vertices = grips.filter_map(|handle| handle.vertex);
        vertices.filter(|(decision, _)| *decision == wanted).count()
    };
    assert_eq!((corners(Decision::FlapOutline), corners(Decision::MembraneOutline)), (4, 4));
}

#[test]
fn an_edge_has_a_handle_in_its_middle_where_a_finger_has_room_for_it() {
    let map = draw(&covered(), 4, false, 360.0, facial_map);
    let corners: Vec<&Handle> = map.handles.iter().filter(|handle| !handle.makes).collect();
    for edge in map.handles.iter().filter(|handle| handle.makes) {
        let (decision, vertex) = edge.vertex.unwrap();
        let ends: Vec<P2> = corners
            .iter()
            .filter(|corner| {
                corner.vertex == Some((decision, vertex))
                    || corner.vertex == Some((decision, (vertex + 1) % 4))
            })
            .map(|corner| corner.at)
            .collect();
        let middle = P2::new(0.5 * (ends[0].x + ends[1].x), 0.5 * (ends[0].y + ends[1].y));
        assert!(length([middle, edge.at]) < 1e-9);
        assert!(length([ends[0], ends[1]]) >= 34.0 * map.pixel);
    }
    assert_eq!(map.handles.iter().filter(|handle| handle.makes).count(), 8);
    // What is small on the sheet has none.
    let mut small = covered();
    small.outline(Decision::MembraneOutline, &[[-15, -5], [15, -5], [15, 20], [-15, 20]]);
    let map = draw(&small, 4, false, 360.0, facial_map);
    assert_eq!(map.handles.iter().filter(|handle| handle.makes).count(), 4);
}
