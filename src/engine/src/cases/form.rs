//! Parallel forms: for each learner a case of its own in place of the set's, about the same thing and as
//! hard, found from the code that the learner chose. Whoever knows set and code finds the same case.

use super::{Constraints, NoCase, POPULATION, Spread, WHOLE_MOUTH, Within};
use super::{archetype_at, at, difficulty, generate_as, proof};
use crate::anatomy::Jaw;
use crate::chart::{Address, Case};
use crate::hash::Fnv;

/// How far the difficulty of a form may lie from its model's, each way: ours.
pub const AS_HARD: f64 = 0.05;
/// How many seeds are tried.
const MOST_SEEDS: u64 = 8;
/// Seeds stay short enough to be read out.
const SEEDS: u64 = 1_000_000_000;

/// The case that takes the place of the case at `model` for whoever chose this code. Letters' size and
/// what stands around the code do not count.
///
/// # Errors
/// [`NoCase`] where the model's address gives no case, or where no seed has one that is alike.
pub fn form(model: Address, code: &str) -> Result<Case, NoCase> {
    let case = at(model)?;
    let spread = match model.generator {
        POPULATION => Spread::Population,
        WHOLE_MOUTH => Spread::WholeMouth,
        _ => Spread::Teaching,
    };
    let sound = proof(&case);
    let hard = sound.and_then(|sound| difficulty(&case, &sound.draft)).map(|hard| hard.value());
    let within = |hard: f64| Within::new((hard - AS_HARD).max(0.0), (hard + AS_HARD).min(1.0)).ok();
    let constraints = Constraints {
        archetype: (spread != Spread::Population).then(|| archetype_at(model)),
        tooth: None,
        upper: Some(case.site.tooth.jaw() == Jaw::Maxilla),
        aesthetic: Some(case.site.is_aesthetic()),
        difficulty: hard.and_then(within),
    };
    let mut hash = Fnv::new();
    hash.text(&model.to_string());
    hash.text(&code.trim().to_ascii_lowercase());
    let first = hash.value() % SEEDS;
    let mut found = generate_as(spread, first, &constraints);
    for next in 1..MOST_SEEDS {
        if found.is_ok() {
            break;
        }
        found = generate_as(spread, (first + next) % SEEDS, &constraints);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hard(case: &Case) -> f64 {
        difficulty(case, &proof(case).unwrap().draft).unwrap().value()
    }

    #[test]
    fn a_form_is_about_the_same_and_as_hard_and_differs_from_learner_to_learner() {
        let mut addresses = Vec::new();
        for model in ["1.1.2024.2591", "1.1.2024.1397", "1.3.77.0"] {
            let model: Address = model.parse().unwrap();
            let case = at(model).unwrap();
            for code in ["heron", "linnet", "plover"] {
                let other = form(model, code).unwrap();
                assert!((hard(&other) - hard(&case)).abs() <= AS_HARD + 1e-12, "{model} {code}");
                let address = other.address.unwrap();
                assert_eq!(archetype_at(address), archetype_at(model));
                assert_eq!(other.site.tooth.jaw(), case.site.tooth.jaw());
                assert_eq!(other.site.is_aesthetic(), case.site.is_aesthetic());
                addresses.push(address.to_string());
            }
        }
        addresses.sort();
        addresses.dedup();
        assert_eq!(addresses.len(), 9);
    }

    #[test]
    fn a_code_finds_the_same_case_again_however_it_is_written() {
        let model: Address = "1.1.2024.2591".parse().unwrap();
        let first = form(model, "heron").unwrap().address;
        assert_eq!(form(model, "  Heron ").unwrap().address, first);
        assert_ne!(form(model, "herons").unwrap().address, first);
    }

    #[test]
    fn a_population_case_has_forms_too_and_no_case_has_none() {
        let model = generate_as(Spread::Population, 3, &Constraints::default()).unwrap();
        assert!(form(model.address.unwrap(), "heron").is_ok());
        assert!(form("1.9.3.0".parse().unwrap(), "heron").is_err());
    }
}
