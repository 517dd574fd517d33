//! Another case of the same kind.

use super::{Constraints, NoCase, Spread, archetype_at, at, generate_as};
use crate::chart::{Address, Case};

/// The case of the next seed that is of the same kind: of the same archetype, or at the same tooth
/// where cases have none. The same one every time.
///
/// # Errors
/// [`NoCase`], where the address gives no case.
pub fn kin(address: Address) -> Result<Case, NoCase> {
    let drawn = Address { changed: None, ..address };
    let spread = Spread::ALL.into_iter().find(|spread| spread.generator() == address.generator);
    let spread = spread.ok_or(NoCase::Generator { found: address.generator })?;
    let asked = match spread {
        Spread::Population => {
            Constraints { tooth: Some(at(drawn)?.site.tooth), ..Constraints::default() }
        }
        _ => Constraints { archetype: Some(archetype_at(drawn)), ..Constraints::default() },
    };
    generate_as(spread, address.seed.wrapping_add(1), &asked)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kin_is_another_case_of_the_same_kind_and_the_same_one_every_time() {
        for spread in Spread::ALL {
            let case = generate_as(spread, 40, &Constraints::default()).unwrap();
            let address = case.address.unwrap();
            let next = kin(address).unwrap();
            let found = next.address.unwrap();
            assert_ne!(found, address);
            match spread {
                Spread::Population => assert_eq!(next.site.tooth, case.site.tooth),
                _ => assert_eq!(archetype_at(found), archetype_at(address)),
            }
            assert_eq!(kin(address).unwrap(), next);
        }
    }

    #[test]
    fn an_address_of_a_later_generator_is_refused_and_the_last_seed_has_kin() {
        let refused = kin("1.9.3.0".parse().unwrap()).unwrap_err();
        assert!(refused.to_string().contains("generator 9"));
        let last = generate_as(Spread::Teaching, u64::MAX, &Constraints::default()).unwrap();
        assert_eq!(kin(last.address.unwrap()).unwrap().address.unwrap().seed, 0);
    }
}
