//! Writes random classes, judges and rated performances with what the crate `learning` makes of them,
//! for `check_class.py`: `export-class FOLDER`.

use learning::class::{
    Agreement, Angoff, Answer, Answers, Borderline, Components, Items, Rated, Reliability, Share,
    spearman_brown,
};
use learning::parameters::DEPENDABLE;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use serde_json::{Value, json};
use std::path::PathBuf;
use std::{env, fs, io};

const CLASSES: usize = 300;
const STANDARDS: usize = 200;

fn main() -> io::Result<()> {
    let folder = env::args().nth(1).map(PathBuf::from).ok_or_else(|| {
        io::Error::new(io::ErrorKind::InvalidInput, "say into which folder: export-class FOLDER")
    })?;
    fs::create_dir_all(&folder)?;
    let mut random = ChaCha8Rng::seed_from_u64(27);
    let classes: Vec<Value> = (0..CLASSES).map(|_| class(&mut random)).collect();
    fs::write(folder.join("classes.json"), json!(classes).to_string())?;
    let judged: Vec<Value> = (0..STANDARDS).map(|_| judged(&mut random)).collect();
    fs::write(folder.join("judged.json"), json!(judged).to_string())?;
    let rated: Vec<Value> = (0..STANDARDS).map(|_| rated(&mut random)).collect();
    fs::write(folder.join("rated.json"), json!(rated).to_string())
}

fn below(random: &mut ChaCha8Rng, count: u32) -> u32 {
    u32::try_from(random.next_u64() % u64::from(count)).expect("below the count")
}

fn pick<T: Copy>(random: &mut ChaCha8Rng, list: &[T]) -> T {
    list[below(random, u32::try_from(list.len()).expect("short")) as usize]
}

/// A class of any size: few items make many ties, some items are right for all or wrong for all, and
/// some of the answers are missing.
fn drawn(random: &mut ChaCha8Rng) -> Answers {
    let most = pick(random, &[3, 10, 40, 150]);
    let persons = 1 + below(random, most);
    let items = 1 + below(random, 12);
    let missing = pick(random, &[0, 0, 3, 15, 50]);
    let planted = pick(random, &[&[0, 30, 60, 80, 100, 150, 200][..], &[30, 60, 80, 100, 150]]);
    let easy: Vec<u32> = (0..items).map(|_| pick(random, planted)).collect();
    let weight = pick(random, &[0, 1, 2]);
    let mut cells = Vec::new();
    for _ in 0..persons {
        let able = below(random, 101) * weight / 2;
        for easy in &easy {
            let chance = match easy {
                0 => 0,
                200 => 200,
                _ => (able + easy * (4 - weight) / 4).clamp(5, 195),
            };
            let (reached, right) = (below(random, 100) >= missing, below(random, 200) < chance);
            cells.push(match (reached, right) {
                (false, _) => Answer::NotReached,
                (true, true) => Answer::Right,
                (true, false) => Answer::Wrong,
            });
        }
    }
    let (persons, items) = (persons as usize, items as usize);
    Answers::of(persons, items, &|person, item| cells[person * items + item])
}

fn class(random: &mut ChaCha8Rng) -> Value {
    let answers = drawn(random);
    let cell = |answer: &Answer| match answer {
        Answer::Right => json!(1),
        Answer::Wrong => json!(0),
        Answer::NotReached => Value::Null,
    };
    let rows = (0..answers.persons())
        .map(|person| answers.row(person).iter().map(cell).collect::<Vec<_>>());
    json!({
        "answers": rows.collect::<Vec<_>>(),
        "items": items(&answers),
        "persons": Share::of_persons(&answers).iter().map(|one| share(*one)).collect::<Vec<_>>(),
        "reliability": Reliability::of(&answers.complete()).map(|one| json!({
            "persons": one.persons,
            "left-out": one.left_out,
            "alpha": one.alpha,
            "spread": one.spread,
            "error": one.error,
            "doubled": spearman_brown(one.alpha, 2.0),
        })),
        "agreement": Agreement::of(&answers).map(|one| json!({
            "persons": one.persons,
            "left-out": one.left_out,
            "found": one.found,
            "by-chance": one.by_chance,
            "beyond-chance": one.beyond_chance(),
        })),
        "components": Components::of(&answers).map(|one| components(&one)),
    })
}

fn items(answers: &Answers) -> Vec<Value> {
    let of = |item: &learning::class::Item| {
        json!({
            "difficulty": share(item.difficulty),
            "corrected": item.corrected,
            "upper-lower": item.upper_lower,
            "alpha-without": item.alpha_without,
        })
    };
    Items::of(answers).each.iter().map(of).collect()
}

fn share(share: Share) -> Value {
    json!([share.right, share.all(), share.value(), share.band()])
}

fn components(found: &Components) -> Value {
    let parts = [found.persons, found.cases, found.rest];
    let over = [1, 4, 9];
    json!({
        "answered": found.answered,
        "missing": found.missing,
        "estimates": parts.map(|part| part.estimate()),
        "values": parts.map(|part| part.value()),
        "set-to-zero": parts.map(|part| part.is_set_to_zero()),
        "phi": over.map(|cases| found.phi(cases)),
        "relative": over.map(|cases| found.relative(cases)),
        "needed": DEPENDABLE.map(|dependable| found.needed(dependable)),
    })
}

fn judged(random: &mut ChaCha8Rng) -> Value {
    let (judges, items) = (1 + below(random, 9), 1 + below(random, 20));
    let chance = |_| f64::from(below(random, 21)) / 20.0;
    let flat: Vec<f64> = (0..judges * items).map(chance).collect();
    let judges: Vec<Vec<f64>> = flat.chunks(items as usize).map(<[f64]>::to_vec).collect();
    let found = Angoff::of(judges.clone()).expect("chances");
    json!({
        "judges": judges,
        "means": found.means(),
        "sums": found.sums(),
        "cut": found.cut(),
        "error": found.error(),
    })
}

fn rated(random: &mut ChaCha8Rng) -> Value {
    let steps = pick(random, &[1, 2, 4, 6]);
    let rated: Vec<Rated> = (0..1 + below(random, 60))
        .map(|_| {
            let rating = u8::try_from(1 + below(random, steps)).expect("a step");
            let mark = f64::from(u32::from(rating) * 10 + below(random, 400) / 10).min(100.0);
            Rated { rating, mark }
        })
        .collect();
    let at = pick(random, &[0.5, 2.0, 2.5]);
    json!({
        "rated": rated.iter().map(|one| json!([one.rating, one.mark])).collect::<Vec<_>>(),
        "at": at,
        "found": Borderline::of(&rated, at).ok().map(|one| json!({
            "slope": one.slope,
            "intercept": one.intercept,
            "cut": one.cut,
            "explained": one.explained,
            "scatter": one.scatter,
            "error": one.error,
            "is-drawn-out": one.is_drawn_out,
        })),
    })
}
