//! Every shipped set is a test of itself: its files load, its cases are found, each case has a sound
//! plan, and every expectation that the set writes down comes true.

use engine::cases;
use engine::debrief::{PlanWord, judge};
use engine::measure::Measurements;
use engine::plan::{Decision, Draft, Plan};
use engine::scenario::{self, PlanSource, Set};
use engine::units::Mm;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../scenarios")
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|why| panic!("{}: {why}", path.display()))
}

/// Files of the folder whose name ends like this, in order.
fn files(ending: &str) -> Vec<PathBuf> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder())
        .expect("the folder of sets")
        .map(|entry| entry.expect("a file of it").path())
        .filter(|path| path.to_string_lossy().ends_with(ending))
        .collect();
    files.sort();
    files
}

fn name(path: &Path) -> String {
    path.file_name().expect("a file").to_string_lossy().into_owned()
}

fn sets() -> Vec<(String, Set)> {
    files(".set.toml")
        .into_iter()
        .map(|path| {
            let set = scenario::parse_set(&read(&path));
            (name(&path), set.unwrap_or_else(|faults| panic!("{}:\n{faults}", path.display())))
        })
        .collect()
}

#[test]
fn there_are_at_least_six_sets_with_forty_different_cases_for_both_levels_and_both_modes() {
    let sets = sets();
    assert!(sets.len() >= 6);
    let mut sources: Vec<String> = sets
        .iter()
        .flat_map(|(_, set)| &set.cases)
        .map(|case| format!("{:?}", case.source))
        .collect();
    let all = sources.len();
    sources.sort();
    sources.dedup();
    assert_eq!(sources.len(), all, "a case stands in two sets");
    assert!(all >= 40, "{all}");
    for level in [scenario::Level::Student, scenario::Level::Resident] {
        assert!(sets.iter().any(|(_, set)| set.level == level), "{level:?}");
    }
    for mode in [scenario::Mode::Study, scenario::Mode::Assessment] {
        assert!(sets.iter().any(|(_, set)| set.mode == mode), "{mode:?}");
    }
}

#[test]
fn every_expectation_of_every_set_comes_true_and_every_case_has_a_sound_plan() {
    let mut unmet = Vec::new();
    for (file, set) in sets() {
        for (place, set_case) in set.cases.iter().enumerate() {
            let here = format!("{file}, case {}", place + 1);
            let case = set_case.case(set.local()).unwrap_or_else(|why| panic!("{here}: {why}"));
            let Some(proof) = cases::proof(&case) else {
                unmet.push(format!("{here}: no sound plan was found"));
                continue;
            };
            let plan = Plan::from_draft(&proof.draft, &case).unwrap();
            assert_eq!(PlanWord::of(&judge(&case, &plan)), PlanWord::Sound, "{here}");
            assert!(!set_case.expect.is_empty(), "{here}: expects nothing");
            for (number, expect) in set_case.expect.iter().enumerate() {
                let base: Draft = match &expect.plan {
                    PlanSource::Proof => proof.draft.clone(),
                    PlanSource::File(name) => plan_file(name),
                    PlanSource::Choices(draft) => draft.clone(),
                };
                if let Err(faults) = expect.check(&case, &base) {
                    for fault in faults {
                        unmet.push(format!(
                            "{here} ({:?}), expectation {}: {fault}",
                            case.title,
                            number + 1
                        ));
                    }
                }
            }
        }
    }
    assert!(unmet.is_empty(), "\n{}", unmet.join("\n"));
}

fn plan_file(name: &str) -> Draft {
    let text = read(&folder().join(name));
    scenario::parse_plan(&text).unwrap_or_else(|faults| panic!("{name}:\n{faults}"))
}

#[test]
fn every_plan_file_loads_and_says_that_it_is_synthetic() {
    let files = files(".plan.toml");
    assert!(files.len() >= 3);
    for path in files {
        plan_file(&name(&path));
        assert!(read(&path).starts_with(scenario::HEADER), "{}", path.display());
    }
}

#[test]
fn the_template_of_a_plan_is_the_catalogue_as_it_stands() {
    let path = folder().join("template.plan.toml");
    if std::env::var_os("WALLWISE_UPDATE_TEMPLATE").is_some() {
        std::fs::write(&path, scenario::plan_template()).expect("the template is written");
    }
    let text = read(&path);
    assert_eq!(
        text,
        scenario::plan_template(),
        "the catalogue has changed: write the template anew with WALLWISE_UPDATE_TEMPLATE=1"
    );
    let draft = scenario::parse_plan(&text).unwrap_or_else(|faults| panic!("{faults}"));
    for entry in Decision::ALL {
        assert!(draft.value(entry.decision).is_some(), "{}", entry.key);
    }
}

#[test]
fn the_template_of_a_case_loads_and_shows_every_part_that_a_case_may_have() {
    let text = read(&folder().join("template.case.toml"));
    let case = scenario::parse_case(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let vital = &case.site.vital;
    assert!(vital.floor.is_some() && vital.canal.is_some() && vital.loop_.is_some());
    assert!(vital.foramen.is_some() && vital.nasopalatine.is_some());
    assert!(!case.site.defects.is_empty());
    let patient = &case.patient;
    assert!(patient.sugar.is_some() && patient.anticoagulant.is_some());
    assert!(patient.stent.is_some() && patient.antiresorptive.is_some());
    assert!(patient.radiotherapy.is_some() && patient.event.is_some());
    assert!(patient.pregnancy_week.is_some() && patient.bleeding.is_some());
    assert!(patient.steroid.is_some() && !patient.allergies.is_empty());
    let sections = &case.readings.sections;
    assert!(sections.canal.is_some() && sections.foramen.is_some() && sections.floor.is_some());
    assert!(case.readings.film_floor.is_some() && case.readings.film_lesion.is_some());
    bare_keys(&text);
}

#[test]
fn the_template_of_a_molar_loads_and_has_a_septum_between_its_roots() {
    let text = read(&folder().join("template.molar.case.toml"));
    let case = scenario::parse_case(&text).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(case.site.socket.names().len(), 2);
    let plan = Plan::default();
    let septum = Measurements::of(&case, &plan).septum_mesiodistal(Mm::new(2.0));
    assert!(septum > Some(Mm::new(2.0)), "{septum:?}");
    // What the tool writes of it is the file, but for what people are told at its head.
    let lines = |text: &str| -> Vec<String> {
        text.lines().filter(|line| !line.starts_with('#')).map(str::to_owned).collect()
    };
    let key = |line: &String| line.split("  #").next().unwrap_or("").to_owned();
    let (ours, written) = (lines(&text), lines(&scenario::write_case(&case)));
    assert_eq!(
        ours.iter().map(key).collect::<Vec<_>>(),
        written.iter().map(key).collect::<Vec<_>>()
    );
    bare_keys(&text);
}

/// Every key that a template shows has its meaning beside it.
fn bare_keys(text: &str) {
    let bare: Vec<&str> = text
        .lines()
        .filter(|line| line.contains(" = ") && !line.contains('#'))
        .filter(|line| !line.starts_with("format") && !line.starts_with("kind = \"case\""))
        .collect();
    assert!(bare.is_empty(), "{bare:?}");
}
