//! Sockets of generated cases against the handbook's table, `tests/data/tooth_dimensions.csv`.

use engine::anatomy::Tooth;
use engine::cases::tooth_table::TEETH;
use engine::cases::{Constraints, generate_with};

const TABLE: &str = include_str!("../data/tooth_dimensions.csv");

/// Half of the source's rounding, mm.
const ROUNDING: f64 = 0.25;

/// Cases of each tooth.
const CASES: u32 = 40;

/// One cell of the table: tooth, quantity, value, mark.
fn cells() -> Vec<(u8, &'static str, &'static str, &'static str)> {
    let rows = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.map(|line| {
        let cells: Vec<&str> = line.split(',').collect();
        let [tooth, quantity, value, mark, _] = cells.as_slice() else {
            panic!("found {line}, expected five cells")
        };
        (tooth.parse().expect("a tooth"), *quantity, *value, *mark)
    })
    .collect()
}

fn value(tooth: u8, quantity: &str) -> f64 {
    let found = cells().into_iter().find(|cell| cell.0 == tooth && cell.1 == quantity);
    found.expect("a cell").2.parse().expect("a number")
}

/// Teeth of positions 1 to 5 of the right side: those that have one root here.
fn single_rooted() -> impl Iterator<Item = u8> {
    (11..=15).chain(41..=45)
}

#[test]
fn every_cell_says_how_it_was_established() {
    let marks = ["confirmed", "confirmed (secondary)", "from memory"];
    assert_eq!(cells().len(), 16 * 9);
    for (tooth, quantity, _, mark) in cells() {
        assert!(marks.contains(&mark), "{tooth} {quantity}: {mark}");
    }
}

#[test]
fn the_engine_s_own_table_is_the_handbook_s() {
    for row in TEETH {
        let jaw = if row.jaw == engine::anatomy::Jaw::Maxilla { 10 } else { 40 };
        let tooth = jaw + row.position;
        for (quantity, ours) in [
            ("crown-length", row.crown),
            ("root-length", row.root),
            ("md-crown", row.md),
            ("md-cervix", row.md_neck),
            ("fo-cervix", row.fo_neck),
        ] {
            assert!((ours - value(tooth, quantity)).abs() < 1e-9, "{tooth} {quantity}: {ours}");
        }
    }
}

/// The mean of `read` over generated cases of each tooth lies within the source's rounding and four
/// standard errors of the table's value. `spread` is the standard deviation of a tooth, in mm; the
/// spread of what is read may not exceed it by more than half either.
fn fits(quantity: &str, spread: fn(u8) -> f64, read: fn(&engine::anatomy::RootBody) -> f64) {
    for iso in single_rooted() {
        let tooth = Tooth::new(iso).expect("a tooth");
        let constraints = Constraints { tooth: Some(tooth), ..Constraints::default() };
        let values: Vec<f64> = (1..=u64::from(CASES))
            .map(|seed| generate_with(seed, &constraints).expect("a case"))
            .map(|case| read(case.site.socket.only().expect("one root")))
            .collect();
        let mean = values.iter().sum::<f64>() / f64::from(CASES);
        let squares: f64 = values.iter().map(|one| (one - mean) * (one - mean)).sum();
        let deviation = (squares / f64::from(CASES - 1)).sqrt();
        let slack = ROUNDING + 4.0 * spread(iso) / f64::from(CASES).sqrt();
        let table = value(iso, quantity);
        assert!(
            (mean - table).abs() < slack,
            "{iso} {quantity}: {mean} against {table} +- {slack}"
        );
        assert!(deviation < 1.5 * spread(iso), "{iso} {quantity}: spread {deviation}");
    }
}

#[test]
fn roots_of_generated_cases_are_as_long_as_the_handbook_s() {
    // Spread of root lengths: incisors 1.5 (confirmed: 41, n = 90), canines 1.9, premolars 1.6 mm
    // (engineering, from the range of measured teeth).
    let spread = |iso: u8| match iso % 10 {
        1 | 2 => 1.5,
        3 => 1.9,
        _ => 1.6,
    };
    fits("root-length", spread, |root| root.length.get() + root.neck.get());
}

#[test]
fn sockets_of_generated_cases_widen_to_the_handbook_s_necks() {
    // Spread of crown widths 0.5 to 0.6 mm (from memory); the neck's is taken to be no larger.
    let spread = |iso: u8| if iso % 10 <= 3 { 0.5 } else { 0.6 };
    // Half-widths stand at the crest; the taper law carries them up to the neck.
    fits("md-cervix", spread, |root| {
        let whole = root.length.get() + root.neck.get();
        2.0 * root.half_md.get() / (1.0 - root.neck.get() / whole).powf(root.taper)
    });
}
