//! How fast the engine is, as times and as ratios in the same run: to a mesh boolean, for films to a march,
//! for sweeps to judging one by one:
//! `cargo bench -p tests`. A ratio holds on any machine; the times are this one's.

mod mesh;
mod subjects;

use criterion::{BatchSize, Criterion};
use engine::cases::{changed, difficulty, value_of};
use engine::chart::{Aspect, Case, Change};
use engine::debrief;
use engine::figures::{self, Show};
use engine::imaging::{self, Aim, Noise, Scene, Setting, Slice, View, key};
use engine::measure::{Ground, Measurements};
use engine::plan::{Decision, Value as Choice};
use engine::rules::Known;
use engine::search::{Grid, Sweep, breaks, nearest};
use serde_json::Value;
use std::hint::black_box;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::Duration;
use subjects::Subject;

/// Each row of the table: what is timed, and the most that it may take natively, microseconds.
const ROWS: &[(&str, Option<f64>)] = &[
    ("mesh boolean: gap volume", None),
    ("engine: gap volume", None),
    ("judge one plan", Some(50.0)),
    ("judge one plan on a known site", Some(50.0)),
    ("one frame of a drag: four figures", Some(8000.0)),
    ("one fresh case with its proof", None),
    ("judge one plan of a molar", Some(100.0)),
    ("film of 400 x 300: marched, 960 samples", None),
    ("film of 400 x 300", Some(80_000.0)),
    ("section", Some(16_000.0)),
    ("placements of a sweep: judged one by one", None),
    ("sweep of at least 50,000 placements", Some(100_000.0)),
    ("where a plan breaks: every step asked", None),
    ("where a plan breaks", None),
    ("nearest sound plan to a moved implant", None),
    ("difficulty of a case", None),
];

/// The row of the march that films are held against.
const MARCH: usize = 7;
/// The row of whole plans judged one by one that sweeps are held against.
const ONE_BY_ONE: usize = 10;
/// The row of every value asked that *where a plan breaks* is held against.
const EVERY_STEP: usize = 12;
/// The first row that is held against nothing.
const NEAREST: usize = 14;

fn main() {
    let place = Path::new(env!("CARGO_TARGET_TMPDIR")).join("bench");
    let mut criterion = Criterion::default()
        .output_directory(&place)
        .warm_up_time(Duration::from_millis(500))
        .measurement_time(Duration::from_secs(3))
        .configure_from_args();
    let subjects = subjects::subjects();
    meshes(&mut criterion, &subjects);
    judging(&mut criterion, &subjects);
    drawing(&mut criterion, &subjects);
    criterion.bench_function(ROWS[5].0, |bench| {
        let mut seeds = (0_u64..).map(|seed| seed % 200);
        bench.iter_batched(
            || seeds.next(),
            |seed| seed.map(engine::cases::generate),
            BatchSize::SmallInput,
        );
    });
    let (molar, plan) = subjects::molar();
    criterion.bench_function(ROWS[6].0, |bench| {
        bench.iter(|| debrief::judge(black_box(&molar), black_box(&plan)));
    });
    pictures(&mut criterion, &subjects);
    sweeps(&mut criterion, &subjects);
    explaining(&mut criterion, &subjects);
    criterion.final_summary();
    table(&place);
}

/// Calls `what` with one subject after the other, so that a row is their mean.
fn over(criterion: &mut Criterion, row: usize, subjects: &[Subject], what: impl Fn(&Subject)) {
    criterion.bench_function(ROWS[row].0, |bench| {
        let mut round = subjects.iter().cycle();
        bench.iter_batched(|| round.next(), |subject| subject.map(&what), BatchSize::SmallInput);
    });
}

fn meshes(criterion: &mut Criterion, subjects: &[Subject]) {
    over(criterion, 0, subjects, |subject| {
        black_box(subject.bodies.gap_volume());
    });
    over(criterion, 1, subjects, |subject| {
        black_box(Measurements::of(&subject.case, &subject.plan).gap_volume());
    });
}

fn judging(criterion: &mut Criterion, subjects: &[Subject]) {
    over(criterion, 2, subjects, |subject| {
        black_box(debrief::judge(&subject.case, &subject.plan));
    });
    let grounds: Vec<(Ground, &Subject)> =
        subjects.iter().map(|subject| (Ground::of(&subject.case.site), subject)).collect();
    criterion.bench_function(ROWS[3].0, |bench| {
        let mut round = grounds.iter().cycle();
        bench.iter_batched(
            || round.next(),
            |one| {
                one.map(|(ground, subject)| {
                    let m = Measurements::on(ground, &subject.case, &subject.plan);
                    debrief::judge_by(&m, &m)
                })
            },
            BatchSize::SmallInput,
        );
    });
}

fn drawing(criterion: &mut Criterion, subjects: &[Subject]) {
    over(criterion, 4, subjects, |Subject { case, plan, draft, .. }| {
        let known = Known::of(case, plan);
        let show = Show { case, plan, draft, known: &known, reveal: false, lit: None, px: 360.0 };
        black_box(figures::facial_map(&show));
        black_box(figures::section(&show));
        black_box(figures::gap_clock(&show));
        black_box(figures::gap_profile(&show));
    });
}

/// Every so many pixels one is marched; the row is multiplied to stand for all.
const MARCHED: u32 = 400;

/// Films against a march through the same scenes, and sections.
fn pictures(criterion: &mut Criterion, subjects: &[Subject]) {
    let scenes: Vec<(Scene, &Case)> = subjects
        .iter()
        .map(|Subject { case, plan, .. }| (imaging::scene(case, plan, key(case)), case))
        .collect();
    let mut over = |row: usize, what: &dyn Fn(&Scene, &Case)| {
        criterion.bench_function(ROWS[row].0, |bench| {
            let mut round = scenes.iter().cycle();
            bench.iter_batched(
                || round.next(),
                |one| one.map(|(scene, case)| what(scene, case)),
                BatchSize::SmallInput,
            );
        });
    };
    over(MARCH, &|scene, case| {
        let view = View::of(&case.site, &Aim::usual(&case.site));
        let [columns, rows] = view.pixels;
        let [oral, facial] = scene.depth();
        for pixel in (0..columns * rows).step_by(MARCHED as usize) {
            let (ray, _) = view.ray(f64::from(pixel % columns), f64::from(pixel / columns));
            let span = [facial, oral].map(|y| (y - ray.origin.y) / ray.direction.y);
            black_box(imaging::marched(scene, &ray, span, 960));
        }
    });
    over(MARCH + 1, &|scene, case| {
        let aim = Aim::usual(&case.site);
        black_box(imaging::film(scene, &case.site, &aim, &mut Noise::of(key(case), 0)));
    });
    over(MARCH + 2, &|scene, case| {
        let setting = Setting::usual(Slice::AcrossArch);
        let noise = || Noise::of(key(case), 0);
        black_box(imaging::section(scene, &case.site, &setting, &mut noise(), &mut noise()));
    });
}

/// Every so many placements one is judged by itself; the row is multiplied to stand for all.
const JUDGED: u32 = 997;

/// Sweeps against judging the same placements one by one, each in a whole plan on a known site.
fn sweeps(criterion: &mut Criterion, subjects: &[Subject]) {
    over(criterion, ONE_BY_ONE, subjects, |Subject { case, plan, .. }| {
        let ground = Ground::of(&case.site);
        let grid = Grid::of(&case.site);
        let mut plan = plan.clone();
        for at in (0..grid.len()).step_by(JUDGED as usize).filter_map(|place| grid.at(place)) {
            if let Some(implant) = plan.implant.as_mut() {
                at.put(implant);
            }
            let m = Measurements::on(&ground, case, &plan);
            black_box(debrief::judge_by(&m, &m));
        }
    });
    over(criterion, ONE_BY_ONE + 1, subjects, |Subject { case, plan, .. }| {
        let grid = Grid::of(&case.site);
        assert!(grid.len() >= 50_000);
        black_box(Sweep::of(case, plan).map(|mut sweep| sweep.region(&grid)));
    });
}

/// Of the values of each finding, one in so many is judged by itself; the row is multiplied.
const ASKED: usize = 17;

/// What a debrief looks for: where a plan breaks against asking every value that each finding can
/// have, the nearest sound plan to one whose implant is moved 1 mm facially, and how hard a case is.
fn explaining(criterion: &mut Criterion, subjects: &[Subject]) {
    over(criterion, EVERY_STEP, subjects, |Subject { case, plan, .. }| {
        for aspect in Aspect::ALL.into_iter().filter(|one| value_of(case, *one).is_some()) {
            let [least, most] = aspect.scaled().range;
            for to in (least..=most).step_by(ASKED) {
                if let Ok(other) = changed(case, Change { aspect, to }) {
                    black_box(debrief::judge(&other, plan));
                }
            }
        }
    });
    over(criterion, EVERY_STEP + 1, subjects, |Subject { case, plan, .. }| {
        black_box(breaks(case, plan));
    });
    over(criterion, EVERY_STEP + 2, subjects, |Subject { case, draft, .. }| {
        let mut moved = draft.clone();
        let count = moved.number(Decision::OffsetFacial).unwrap_or_default() + 10;
        if moved.choose(Decision::OffsetFacial, Choice::Number(count)).is_ok() {
            black_box(nearest(case, &moved));
        }
    });
    over(criterion, EVERY_STEP + 3, subjects, |Subject { case, draft, .. }| {
        black_box(difficulty(case, draft));
    });
}

/// What criterion left of each row, beside the mesh boolean's time in the same run.
fn table(place: &Path) {
    let time = |row: usize| {
        let time = micros(place, ROWS[row].0)?;
        Some(match row {
            MARCH => time * f64::from(MARCHED),
            ONE_BY_ONE => time * f64::from(JUDGED),
            EVERY_STEP => time * ASKED as f64,
            _ => time,
        })
    };
    let [mesh, march, one_by_one, every] = [0, MARCH, ONE_BY_ONE, EVERY_STEP].map(time);
    let mut out = std::io::stdout();
    for (row, (name, most)) in ROWS.iter().enumerate() {
        let Some(time) = time(row) else { continue };
        let (reference, word) = match row {
            ..MARCH => (mesh, "the mesh boolean"),
            MARCH..ONE_BY_ONE => (march, "the march"),
            ONE_BY_ONE..EVERY_STEP => (one_by_one, "judging one by one"),
            EVERY_STEP..NEAREST => (every, "asking every step"),
            _ => (None, ""),
        };
        let ratio = reference
            .map_or(String::new(), |reference| format!("1/{:.1} of {word}", reference / time));
        let asked = most.map_or(String::new(), |most| format!("at most {most} asked"));
        let _ = writeln!(out, "{name:<40} {time:>10.1} microseconds  {ratio:<32} {asked}");
    }
}

/// The median of a row, microseconds.
fn micros(place: &Path, name: &str) -> Option<f64> {
    let folder: PathBuf = place.join(name.replace(':', "_"));
    let text = std::fs::read_to_string(folder.join("new/estimates.json")).ok()?;
    let read: Value = serde_json::from_str(&text).ok()?;
    Some(read["median"]["point_estimate"].as_f64()? / 1000.0)
}
