//! The engine's attenuation coefficients and Hounsfield numbers against the tables in `tests/data`.

use engine::anatomy::Density;
use engine::cases::class_of;
use engine::geometry::P3;
use engine::imaging::materials::{ALL, Beam, Coefficients, Material, ROWS, WATER};
use engine::imaging::{Noise, Setting, Slice, scene, section};
use engine::plan::Plan;
use engine::rules::trial::Trial;
use engine::units::Mm;

const TABLE: &str = include_str!("../data/attenuation.csv");
const CLASSES: &str = include_str!("../data/hounsfield_classes.csv");
const TISSUES: &str = include_str!("../data/hounsfield_tissues.csv");

/// Material, coefficients at 40 and 60 keV, mark.
fn rows() -> Vec<(&'static str, [f64; 2], &'static str)> {
    let rows = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.map(|line| {
        let cells: Vec<&str> = line.splitn(6, ',').collect();
        let [name, _, low, high, mark, _] = cells.as_slice() else {
            panic!("found {line}, expected six cells")
        };
        let number = |text: &str| text.parse().expect("a number");
        (*name, [number(low), number(high)], *mark)
    })
    .collect()
}

#[test]
fn the_engine_s_coefficients_are_those_of_the_table_to_the_last_figure() {
    let ours = ROWS.into_iter().chain([("water", WATER)]);
    assert_eq!(rows().len(), ROWS.len() + 1);
    for (name, values) in ours {
        let row = rows().into_iter().find(|row| row.0 == name);
        assert_eq!(row.map(|row| row.1), Some(values), "{name}");
    }
}

#[test]
fn every_coefficient_says_how_it_was_established() {
    for (name, _, mark) in rows() {
        assert!(["computed", "ours"].contains(&mark), "{name}: {mark}");
    }
}

/// What a scene's marrow bone measures on a section, as the mean of many places deep in it.
fn measured(hu: f64) -> f64 {
    let mut case = Trial::plain().case;
    case.site.density = Density { hu, class: class_of(hu) };
    let scene = scene(&case, &Plan::default(), [7; 32]);
    let setting = Setting { at: Mm::new(20.0), ..Setting::usual(Slice::AcrossAxis) };
    let noise = |exposure| Noise::of([7; 32], exposure);
    let taken = section(&scene, &case.site, &setting, &mut noise(0), &mut noise(1));
    let places = (0..taken.pixels[1]).flat_map(|row| (0..taken.pixels[0]).map(move |c| (c, row)));
    let (mut sum, mut count) = (0.0, 0.0);
    // Every fifth is enough, and next to each other they are not independent.
    for ((column, row), hu) in places.zip(&taken.hounsfield).step_by(5) {
        let at = taken.point(f64::from(column), f64::from(row));
        // Five spreads of the blur away from anything else.
        let near = [-1.0, 0.0, 1.0].map(|off| P3 { y: at.y + off, ..at });
        if near.iter().all(|at| scene.material(*at) == Material::Spongiosa) {
            sum += hu;
            count += 1.0;
        }
    }
    assert!(count > 200.0, "{count} places in marrow bone");
    sum / count
}

#[test]
fn sites_of_each_class_measure_within_their_class_on_a_section() {
    let rows = CLASSES.lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut found = Vec::new();
    for row in rows {
        let cells: Vec<&str> = row.split(',').collect();
        let [name, from, to, _] = cells.as_slice() else { panic!("{row}") };
        let ours = |class: &str| if class == "d5" { "d4".to_owned() } else { class.to_owned() };
        let bound = |cell: &str, open: f64| cell.parse::<f64>().unwrap_or(open);
        let (low, high) = (bound(from, 60.0), bound(to, 1450.0));
        for hu in [low + 1.0, f64::midpoint(low, high), high] {
            let class = format!("{:?}", class_of(hu)).to_lowercase();
            assert_eq!(class, ours(name), "{hu}");
        }
        let hu = f64::midpoint(low, high);
        let measured = measured(hu);
        assert!(low < measured && measured <= high, "{name}: {hu} measures {measured}");
        found.push((hu, measured));
    }
    assert_eq!(found.len(), 5);
    // The variation of marrow bone has no mean of its own beyond what a section samples of it.
    for (hu, measured) in found {
        assert!((hu - measured).abs() < 0.06 * (hu + 1000.0), "{hu} {measured}");
    }
}

#[test]
fn tissues_have_the_published_hounsfield_numbers() {
    let own = Coefficients::at(Beam::ConeBeam, &Density { hu: 365.0, class: class_of(365.0) });
    let named = ALL.into_iter().zip(ROWS);
    let hounsfield: Vec<(&str, f64)> =
        named.map(|(one, row)| (row.0, own.hounsfield(own.of(one)))).collect();
    let rows = TISSUES.lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut count = 0;
    for row in rows {
        let cells: Vec<&str> = row.split(',').collect();
        let [name, low, high, _] = cells.as_slice() else { panic!("{row}") };
        let bound = |cell: &str| cell.parse::<f64>().expect("a number");
        let (_, found) = hounsfield.iter().find(|one| one.0 == *name).expect("a material");
        assert!(bound(low) - 5.0 <= *found && *found <= bound(high) + 5.0, "{name}: {found}");
        count += 1;
    }
    assert_eq!(count, 5);
}
