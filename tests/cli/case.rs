//! `wallwise case`: the same case by every way in, and everything that can be written of it.

use std::fs;

use serde_json::Value;

use super::tool::{done, folder, json, path, wallwise};

/// A drawn case, by its seed.
const SEED: &str = "7";
/// A tooth that can be restored: whoever takes it out has lost a sound plan.
const KEPT: &str = "9";

#[test]
fn a_bare_seed_prints_truth_readings_and_one_sound_plan_under_the_caution() {
    let text = done(&["case", SEED]);
    for expected in
        ["Not clinical advice", "\nAddress 1.", "The chart, unasked", "One sound plan", "[chart]"]
    {
        assert!(text.contains(expected), "expected {expected} in\n{text}");
    }
}

#[test]
fn an_address_gives_the_case_of_its_seed_to_the_letter() {
    let by_seed = json(&["case", SEED, "--json"]);
    let address = by_seed["address"].as_str().expect("a drawn case has an address");
    assert_eq!(json(&["case", address, "--json"]), by_seed);
    let other = json(&["case", "8", "--json"]);
    assert_ne!(other["case"], by_seed["case"], "another seed is another case");
}

#[test]
fn json_says_what_the_case_file_says_and_a_case_file_gives_its_case_back() {
    let written = done(&["case", SEED, "--toml"]);
    assert!(written.starts_with("# synthetic, not for treatment"), "{written}");
    let printed = json(&["case", SEED, "--json"]);
    // Read by the library alone, not by our reader.
    let read: Value = toml::from_str(&written).expect("the case file is TOML");
    assert_eq!(read, printed["case"]);
    assert!(printed["caution"].as_str().is_some_and(|said| said.contains("Not clinical advice")));

    let file = folder("case-file").join("case.toml");
    fs::write(&file, &written).expect("written");
    let back = json(&["case", path(&file), "--json"]);
    assert_eq!(back["case"], printed["case"]);
    assert_eq!(back["address"], Value::Null, "a case that may be edited has no address");
}

#[test]
fn a_plan_is_printed_as_a_file_with_a_comment_for_every_key() {
    let plan = done(&["case", SEED, "--plan"]);
    assert!(plan.starts_with("# synthetic, not for treatment"), "{plan}");
    assert!(plan.contains("kind = \"plan\""), "{plan}");
    let keys = plan.lines().skip(3).filter(|line| line.contains(" = "));
    assert!(keys.clone().count() > 20, "{plan}");
    for line in keys {
        assert!(line.contains("  # "), "{line}");
    }
}

#[test]
fn each_of_the_five_figures_is_written_as_a_drawing_that_describes_itself() {
    let folder = folder("figures");
    let mut drawn = Vec::new();
    for name in ["facial-map", "section", "gap-clock", "gap-profile", "healed"] {
        let file = folder.join(name).with_extension("svg");
        let ran = wallwise(&["case", SEED, "--figure", name, path(&file)]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(0), ""), "{}", ran.talk);
        let svg = fs::read_to_string(&file).expect("the figure is there");
        assert!(svg.starts_with("<svg ") && svg.trim_end().ends_with("</svg>"), "{name}: {svg}");
        assert!(svg.contains("<title"), "{name} has no words");
        assert!(!svg.contains("NaN") && !svg.contains("inf\""), "{name} has a number that is none");
        drawn.push(svg);
    }
    drawn.dedup();
    assert_eq!(drawn.len(), 5, "five different figures");
    // The sound plan of this case places today; the healed site is that of a plan that comes back.
    assert!(drawn[4].contains("weeks after the extraction"), "{}", drawn[4]);
    let wrong = wallwise(&["case", SEED, "--figure", "gap-clok", path(&folder.join("x.svg"))]);
    assert_eq!(wrong.code, Some(2));
    assert!(wrong.talk.contains("found the figure \"gap-clok\""), "{}", wrong.talk);
    assert!(wrong.talk.contains("hint: the figures are facial-map, section"), "{}", wrong.talk);
    assert!(!folder.join("x.svg").exists());
}

#[test]
fn a_tooth_that_every_sound_plan_keeps_has_no_healed_site_to_draw() {
    let folder = folder("kept");
    let file = folder.join("healed.svg");
    let kept = wallwise(&["case", KEPT, "--figure", "healed", path(&file)]);
    assert_eq!(kept.code, Some(2), "{}", kept.talk);
    assert!(kept.talk.contains("no sound plan that comes back to a healed site"), "{}", kept.talk);
    assert!(!file.exists());
}

#[test]
fn solids_are_written_with_a_recipe_that_names_each_of_them() {
    let folder = folder("solids");
    let ran = wallwise(&["case", SEED, "--mesh", path(&folder)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(0), ""), "{}", ran.talk);
    assert!(ran.talk.contains("and recipe.json into"), "{}", ran.talk);
    let recipe = fs::read_to_string(folder.join("recipe.json")).expect("the recipe is there");
    assert!(recipe.contains("not for treatment"), "{recipe}");
    let recipe: Value = serde_json::from_str(&recipe).expect("the recipe is JSON");
    let primitives = recipe["primitives"].as_array().expect("a list of solids");
    assert!(primitives.len() >= 3, "bone, root and implant at least");
    let mut meshes = 0;
    for entry in fs::read_dir(&folder).expect("the folder is there") {
        let name = entry.expect("an entry").file_name().to_string_lossy().into_owned();
        if name == "recipe.json" {
            continue;
        }
        meshes += 1;
        let mesh = fs::read(folder.join(&name)).expect("a solid");
        assert!(mesh.len() > 100, "{name} is empty");
        let stem = name.split('.').next().unwrap_or_default();
        let named = primitives.iter().any(|one| one["name"].as_str() == Some(stem));
        assert!(named, "{name} is not in the recipe");
    }
    assert_eq!(meshes, primitives.len());
    let measured = recipe["measurements"].as_array().expect("a list of measurements");
    assert!(measured.iter().all(|one| one["expression"].is_string()), "{measured:?}");
}

/// A picture without its ruler, and the ruler.
struct Picture {
    size: [usize; 2],
    grey: Vec<u8>,
    ruler: Vec<u8>,
    /// From pixel to pixel, mm.
    pitch: f64,
}

fn picture(file: &std::path::Path) -> Picture {
    const RULER: usize = 16;
    let bytes = std::io::Cursor::new(fs::read(file).expect("the picture is there"));
    let mut reader = png::Decoder::new(bytes).read_info().expect("a PNG");
    let mut grey = vec![0; reader.output_buffer_size().expect("a size")];
    let shape = reader.next_frame(&mut grey).expect("a picture");
    assert_eq!(shape.color_type, png::ColorType::Grayscale);
    let info = reader.info();
    let texts: Vec<(&str, &str)> = info
        .uncompressed_latin1_text
        .iter()
        .map(|chunk| (chunk.keyword.as_str(), chunk.text.as_str()))
        .collect();
    assert!(texts.contains(&("Comment", "synthetic, not for treatment")), "{texts:?}");
    let dims = info.pixel_dims.expect("a scale");
    assert_eq!((dims.unit, dims.xppu), (png::Unit::Meter, dims.yppu));
    let pitch = 1000.0 / f64::from(dims.xppu);
    let scale = texts.iter().find(|text| text.0 == "Scale").expect("a scale in words").1;
    let said: f64 = scale.split(' ').next().and_then(|word| word.parse().ok()).expect("a number");
    assert!((said - pitch).abs() < 1e-4, "{said} {pitch}");
    let [wide, tall] = [shape.width, shape.height].map(|side| side as usize);
    let ruler = grey.split_off((tall - RULER) * wide);
    Picture { size: [wide, tall - RULER], grey, ruler, pitch }
}

fn written(folder: &std::path::Path, option: &str, name: &str) -> Picture {
    let file = folder.join(name).with_extension("png");
    let ran = wallwise(&["case", SEED, option, name, path(&file)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(0), ""), "{}", ran.talk);
    picture(&file)
}

#[test]
fn films_are_written_as_pictures_of_the_site_before_and_after() {
    let folder = folder("films");
    let times = ["before", "extracted", "after", "follow-up"];
    let films = times.map(|when| written(&folder, "--film", when));
    for Picture { size, grey, .. } in &films {
        assert!(size.iter().all(|side| (200..=420).contains(side)), "{size:?}");
        let middling = grey.iter().filter(|grey| (40..220).contains(*grey)).count();
        assert!(middling > grey.len() / 4, "{middling} of {}", grey.len());
    }
    // A tooth before, titanium after, its crown later: each film shows what the one before it does not.
    assert!(films.windows(2).all(|pair| pair[0].grey != pair[1].grey));
    let white = |film: &Picture| film.grey.iter().filter(|grey| **grey > 250).count();
    let [_, extracted, after, later] = films.each_ref().map(white);
    assert!(after > extracted + 1000 && later > after + 1000, "{extracted} {after} {later}");
}

#[test]
fn sections_are_written_as_pictures_that_reach_from_air_to_enamel() {
    let folder = folder("sections");
    for name in ["along-arch", "across-arch", "across-axis"] {
        let Picture { size: [wide, tall], grey, pitch, .. } = written(&folder, "--section", name);
        assert!(grey.contains(&255) && grey.contains(&0), "{name}");
        assert_eq!(pitch, 0.2);
        let millimetres = [wide, tall].map(|side| side as f64 * pitch);
        assert!(millimetres.iter().all(|side| (29.0..=41.0).contains(side)), "{millimetres:?}");
    }
}

#[test]
fn each_picture_has_a_ruler_of_ten_millimetres_at_its_own_scale() {
    let folder = folder("rulers");
    for (option, name) in [("--film", "before"), ("--section", "across-arch")] {
        let Picture { size: [wide, _], ruler, pitch, .. } = written(&folder, option, name);
        // The third row is the line from end to end, the fifth has a tick for each millimetre.
        let lit = |row: usize| {
            let row = ruler[row * wide..(row + 1) * wide].iter().enumerate();
            row.filter(|pixel| *pixel.1 == 255).map(|pixel| pixel.0).collect::<Vec<_>>()
        };
        let (line, ticks) = (lit(2), lit(4));
        let length = (line[line.len() - 1] - line[0]) as f64 * pitch;
        assert!((length - 10.0).abs() < pitch, "{name}: {length}");
        assert_eq!(ticks.len(), 11, "{name}");
    }
}

#[test]
fn a_picture_that_does_not_exist_is_refused_with_those_that_do() {
    let folder = folder("no-pictures");
    for (option, says) in [("--film", "before, extracted"), ("--section", "along-arch, across")] {
        let file = folder.join("x.png");
        let ran = wallwise(&["case", SEED, option, "sideways", path(&file)]);
        assert_eq!(ran.code, Some(2));
        assert!(ran.talk.contains("sideways") && ran.talk.contains(says), "{}", ran.talk);
        assert!(!file.exists());
    }
    let ran = wallwise(&["case", SEED, "--film", "before", path(&folder.join("none/x.png"))]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.talk.contains("cannot write") && ran.talk.contains("x.png"), "{}", ran.talk);
}

#[test]
fn two_forms_of_result_at_once_are_refused() {
    for pair in [["--json", "--toml"], ["--toml", "--plan"], ["--json", "--plan"]] {
        let ran = wallwise(&["case", SEED, pair[0], pair[1]]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{pair:?}");
        assert!(ran.talk.contains("cannot be used with"), "{}", ran.talk);
    }
}
