//! Writes what is handed in about sittings at sets, with manifests and archives of packages, for
//! `check_handing.py` and `handing.test.mjs`: `export-handing FOLDER`.

use engine::cases::{Constraints, Spread, generate_as, proof};
use engine::debrief::hash_of;
use engine::plan::{Plan, is_asked};
use engine::session::{Event, Mode, Session, wander};
use learning::handing::compact::{Kept, fit};
use learning::handing::manifest::{Mastery, Package, manifest};
use learning::handing::outcome::{CaseOutcome, Outcome};
use learning::handing::scorm::{Edition, writes};
use learning::handing::xapi::{Speaker, statements};
use learning::handing::zip::{Entry, zip};
use learning::past::Past;
use learning::record::{Done, Head};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::{env, fs, io};

const SITTINGS: u64 = 24;
const ARCHIVES: u64 = 40;
/// Some morning, milliseconds since 1970.
const START: u64 = 1_795_500_000_000;
const HOUR: u64 = 60 * 60 * 1000;

fn main() -> io::Result<()> {
    let folder = env::args().nth(1).map(PathBuf::from).ok_or_else(|| {
        io::Error::new(io::ErrorKind::InvalidInput, "say into which folder: export-handing FOLDER")
    })?;
    fs::create_dir_all(&folder)?;
    let mut random = ChaCha8Rng::seed_from_u64(85);
    let sittings: Vec<Value> = (0..SITTINGS).map(|seed| sitting(seed, &mut random)).collect();
    fs::write(folder.join("sittings.json"), json!(sittings).to_string())?;
    fs::write(folder.join("manifests.json"), json!(manifests(&mut random)).to_string())?;
    archives(&folder, &mut random)
}

fn below(random: &mut ChaCha8Rng, count: u64) -> u64 {
    random.next_u64() % count
}

/// A sitting at a set of one to six cases, all of them over, or the last one open or untouched.
fn sitting(seed: u64, random: &mut ChaCha8Rng) -> Value {
    let count = 1 + below(random, 6);
    let mut outcome = Outcome::new(&format!("learner-{seed:04x}"), "walls-1", "Walls <1> & \"2\"");
    let mut all = Vec::new();
    for number in 1..=count {
        let name = format!("case-{number}");
        if number == count && seed % 4 == 3 {
            outcome.cases.push(CaseOutcome::untouched(&name, ""));
            continue;
        }
        let open = number == count && seed % 4 == 2;
        let (case, kept) = attempt(&name, seed * 10 + number, open, random);
        outcome.cases.push(case);
        all.push(kept);
    }
    if seed.is_multiple_of(3) {
        // Chance does something unsafe in nearly every case: without it marks decide.
        outcome.cases.iter_mut().for_each(|case| case.hurts.clear());
    }
    outcome.pass = [None, Some(50), Some(90)][(seed / 2 % 3) as usize];
    outcome.hash = learning::handing::outcome::hash_of("walls-1");
    outcome.place = format!("#/set/walls-1/{count}");
    (outcome.session, outcome.total) = (below(random, 9 * HOUR), below(random, 99 * HOUR));
    let speaker = Speaker {
        base: "https://example.org/room",
        home: "https://example.org",
        registration: "6b8b4567-327b-43c6-a432-66334873f1a2",
        language: ["en", "en-GB", "de"][(seed % 3) as usize],
        now: START,
    };
    let told = |edition: Edition| {
        let kept = fit(&all, edition.most_kept()).expect("these attempts can be written");
        let outcome = Outcome { kept, ..outcome.clone() };
        writes(&outcome, edition).expect("these values are within their limits")
    };
    json!({
        "complete": outcome.is_complete(),
        "mark": outcome.mark(),
        "success": format!("{:?}", outcome.success()).to_lowercase(),
        "hurts": outcome.hurts(),
        "pass": outcome.pass,
        "older": told(Edition::Older),
        "newer": told(Edition::Newer),
        "statements": statements(&outcome, &speaker)
            .expect("these statements can be said")
            .iter()
            .map(|one| serde_json::from_str(one).expect("a statement is JSON"))
            .collect::<Vec<Value>>(),
    })
}

/// An attempt by chance or by the plan that proves its case, as it is handed in and as it is kept.
fn attempt(name: &str, seed: u64, open: bool, random: &mut ChaCha8Rng) -> (CaseOutcome, Kept) {
    let case =
        generate_as(Spread::WholeMouth, seed, &Constraints::default()).expect("cases are drawn");
    let sound = proof(&case).expect("teaching cases are solvable").draft;
    let reference = Plan::from_draft(&sound, &case).ok();
    let mut session = if below(random, 2) == 0 {
        wander(case.clone(), seed)
    } else {
        let mut session = Session::open(case.clone(), Mode::Assessment);
        while let Some(step) = session.due() {
            for (decision, value) in sound.iter().filter(|(one, _)| one.step() == step) {
                if is_asked(decision, session.draft(), session.opened()) {
                    // What is settled stays as it is.
                    let _ = session.apply(Event::Choose(decision, Some(value.clone())));
                }
            }
            if session.apply(Event::CarryOut(step)).is_err() {
                break;
            }
        }
        session
    };
    if open {
        let first = &session.events()[..session.events().len() / 2];
        session = Session::replay(case, session.mode(), first).expect("a beginning replays");
    }
    let begun = START + seed % 10 * HOUR;
    let mut now = begun;
    let events: Vec<Done> = session
        .events()
        .iter()
        .map(|event| {
            now += 500 + below(random, 20_000);
            Done { at: Some(now), what: event.written() }
        })
        .collect();
    let id = format!("{begun:011x}-{:08x}", below(random, 1 << 32));
    let mut head = Head::begin(id, format!("#/set/walls-1/{seed}"), &session, 1, begun);
    head.ended = session.is_over().then_some(now);
    head.verdicts = format!("{:016x}", hash_of(&session.verdicts()));
    let past = Past::of(head.clone(), &events, &session);
    let mark = session.debrief(reference.as_ref()).and_then(|told| told.mark.percent());
    (CaseOutcome::of(name, &past, &session, &events, mark), Kept { head, events })
}

/// Manifests of both editions, with what stands in them.
fn manifests(random: &mut ChaCha8Rng) -> Vec<Value> {
    let masteries =
        [("none", Mastery::None), ("content", Mastery::Content(65)), ("host", Mastery::Host(100))];
    let editions = [("older", Edition::Older), ("newer", Edition::Newer)];
    let mut all = Vec::new();
    for (edition, of) in editions {
        for (says, mastery) in masteries {
            let names: Vec<String> =
                (0..1 + below(random, 30)).map(|number| name(number, random)).collect();
            let files: Vec<&str> = names.iter().map(String::as_str).collect();
            let title = "Walls & <gaps>: \"1.5 mm\" – 'Öffnung'";
            let package = Package {
                identifier: "walls-1.set",
                title,
                files: &files,
                opens: files[0],
                mastery,
            };
            let text = manifest(&package, of).expect("this package can be listed");
            all.push(json!({
                "edition": edition, "mastery": says, "title": title, "files": files, "text": text,
            }));
        }
    }
    all
}

fn name(number: u64, random: &mut ChaCha8Rng) -> String {
    let folder = ["", "pkg/", "pkg/deep.er/"][below(random, 3) as usize];
    let ending = ["js", "wasm", "html", "css"][below(random, 4) as usize];
    format!("{folder}file_{number}-{:x}.{ending}", below(random, 1 << 40))
}

/// Archives of random files, with what they hold as hexadecimal digits.
fn archives(folder: &Path, random: &mut ChaCha8Rng) -> io::Result<()> {
    let mut lists = Vec::new();
    for archive in 0..ARCHIVES {
        let count = below(random, 30);
        let files: Vec<(String, Vec<u8>)> = (0..count)
            .map(|number| {
                let longest = [0, 1, 40, 3000][below(random, 4) as usize];
                let bytes = (0..below(random, longest + 1)).map(|_| random.next_u64() as u8);
                let bytes: Vec<u8> = bytes.collect();
                (name(number, random), bytes)
            })
            .collect();
        let entries: Vec<Entry<'_>> =
            files.iter().map(|(name, bytes)| Entry { name, bytes }).collect();
        let bytes = zip(&entries).expect("these files can be archived");
        fs::write(folder.join(format!("archive-{archive}.zip")), bytes)?;
        let hex = |bytes: &[u8]| bytes.iter().map(|byte| format!("{byte:02x}")).collect::<String>();
        let list: Vec<Value> =
            files.iter().map(|(name, bytes)| json!([name, hex(bytes)])).collect();
        lists.push(json!(list));
    }
    fs::write(folder.join("archives.json"), json!(lists).to_string())
}
