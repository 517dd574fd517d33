//! How sections can lie, how one is cut, and what that is called.

use engine::anatomy::{Jaw, Site};
use engine::chart::Case;
use engine::imaging::{self, Noise, Scene, Section, Setting, Slice};
use engine::plan::Plan;
use engine::units::Mm;

/// The ways a section can lie, each with what it is called and how far it can be moved.
pub const SLICES: [(Slice, &str, [f64; 2]); 3] = [
    (Slice::AcrossArch, "across the arch", [-12.0, 12.0]),
    (Slice::AlongArch, "along the arch", [-12.0, 8.0]),
    (Slice::AcrossAxis, "across the axis", [-4.0, 24.0]),
];
/// The streams of the exposure's noise and of the scanner's own.
const EXPOSURE: u32 = 1;
const SCANNER: u32 = 1000;

/// The scene of a case as it came.
pub fn laid(case: &Case) -> Scene {
    imaging::scene(case, &Plan::default(), imaging::key(case))
}

/// Cuts it.
pub fn cut(scene: &Scene, case: &Case, slice: Slice, at: f64) -> Section {
    let key = imaging::key(case);
    let setting = Setting { at: Mm::new(at), ..Setting::usual(slice) };
    let (mut scanner, mut noise) = (Noise::of(key, SCANNER), Noise::of(key, EXPOSURE));
    imaging::section(scene, &case.site, &setting, &mut scanner, &mut noise)
}

/// Where a section lies.
pub fn place_in_words(slice: Slice, at: f64, case: &Case) -> String {
    let oral = case.site.tooth.oral_word();
    let [more, less] = match slice {
        Slice::AcrossArch => ["distal", "mesial"],
        Slice::AlongArch => ["facial", oral],
        Slice::AcrossAxis => ["apical", "coronal"],
    };
    match at {
        at if at > 0.0 => format!("{at:.1} mm {more}"),
        at if at < 0.0 => format!("{:.1} mm {less}", -at),
        _ => "through the middle".to_owned(),
    }
}

/// What a section shows, for who cannot see it.
pub fn says(slice: Slice, site: &Site) -> String {
    let oral = site.tooth.oral_word();
    let up = if site.tooth.jaw() == Jaw::Maxilla { "Apical is up" } else { "Apical is down" };
    let sides = match slice {
        Slice::AcrossArch => format!("{up}, facial on the right, {oral} on the left"),
        Slice::AlongArch => format!("{up}, the patient's right on the left"),
        Slice::AcrossAxis => {
            format!("Facial is on top, {oral} below, the patient's right on the left")
        }
    };
    format!(
        "Cone-beam section. {sides}. Plates thinner than about 1 mm fade. The readings stand under What I know."
    )
}
