//! Which skills a kind of case calls for: the share of its draws in which a fault of the skill is one
//! answer away from the plan that proves the case solvable.
//!
//! Measured on the cases of `tests/data/drawn_cases.csv`, 20 of each archetype, drawn in the whole
//! mouth; a test holds the table to that file. A case without its archetype has the share of all draws.

use engine::cases::Archetype;
use engine::rules::Skill;

/// The place of a skill in lists of all of them.
#[must_use]
pub fn place(skill: Skill) -> usize {
    Skill::ALL.iter().position(|one| *one == skill).unwrap_or(0)
}

/// The share of cases of this kind that call for each skill, 0 to 1, in the order of
/// [`Skill::ALL`].
#[must_use]
pub fn shares(archetype: Option<Archetype>) -> [f64; Skill::ALL.len()] {
    let row = archetype.and_then(|one| Archetype::ALL.iter().position(|other| *other == one));
    row.and_then(|row| CALLED.get(row)).unwrap_or(&OF_ALL).map(|percent| f64::from(percent) / 100.0)
}

/// The share of cases of this kind that call for a skill, 0 to 1.
#[must_use]
pub fn share(archetype: Option<Archetype>, skill: Skill) -> f64 {
    shares(archetype)[place(skill)]
}

/// How hard cases of a kind are on average, 0 to 1.
#[must_use]
pub fn hardness(archetype: Archetype) -> f64 {
    let row = Archetype::ALL.iter().position(|other| *other == archetype);
    f64::from(row.and_then(|row| HARD.get(row)).copied().unwrap_or(MIDDLING)) / 100.0
}

/// Over all kinds.
const MIDDLING: u8 = 60;

/// The mean of each kind, in the order of [`Archetype::ALL`]. Percent.
#[rustfmt::skip]
const HARD: [u8; Archetype::ALL.len()] = [
    69, 73, 72, 77, 65, 69, 54, 74, 68, 54, 61, 70, 69, 47, 19, 12, 61, 51, 71, 74, 68, 80, 73, 67, 74, 81,
    70, 21, 21, 21, 22, 74, 21, 23, 22, 19, 21, 45, 21, 72, 74, 73, 75, 71, 68, 74, 63, 72, 68, 55, 65,
];

/// Over all draws: groups alike, archetypes of a group alike. Percent.
const OF_ALL: [u8; Skill::ALL.len()] = [100, 100, 23, 83, 83, 77, 77, 77, 16, 83];

/// In the order of [`Archetype::ALL`], each in the order of [`Skill::ALL`]. Percent.
#[rustfmt::skip]
const CALLED: [[u8; Skill::ALL.len()]; Archetype::ALL.len()] = [
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // intact-thick
    [100, 100, 15, 100, 100, 100, 100, 100, 20, 100], // intact-thin
    [100, 100, 0, 100, 100, 95, 95, 100, 0, 100], // gap-narrow
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // gap-wide
    [100, 100, 0, 100, 100, 50, 50, 100, 100, 100], // defect-v
    [100, 100, 0, 100, 100, 90, 90, 100, 100, 100], // defect-u
    [100, 100, 0, 100, 100, 85, 85, 40, 90, 100], // lost-wall
    [100, 100, 30, 100, 100, 80, 80, 95, 95, 100], // fenestration
    [100, 100, 25, 100, 100, 95, 95, 95, 95, 100], // oral-defect
    [100, 100, 0, 100, 100, 80, 80, 35, 90, 100], // two-walls
    [100, 100, 15, 100, 100, 80, 80, 100, 25, 100], // crestal-loss
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // interproximal-loss
    [100, 100, 15, 100, 100, 90, 90, 100, 25, 100], // chronic-lesion
    [100, 100, 10, 100, 100, 95, 95, 5, 95, 100], // abscess
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // spreading-infection
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // restorable
    [100, 100, 30, 100, 100, 65, 65, 100, 10, 100], // poor-anchorage
    [100, 100, 65, 100, 100, 15, 15, 100, 10, 100], // engaged-root
    [100, 100, 5, 100, 100, 100, 100, 100, 0, 100], // near-canal
    [100, 100, 5, 100, 100, 100, 100, 100, 0, 100], // near-foramen
    [100, 100, 25, 100, 100, 90, 95, 100, 0, 100], // near-sinus
    [100, 100, 0, 100, 100, 95, 95, 100, 5, 100], // near-nasopalatine
    [100, 100, 0, 100, 100, 100, 100, 100, 5, 100], // lingual-undercut
    [100, 100, 5, 100, 100, 75, 75, 100, 5, 100], // tight-space
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // neighbour-implant
    [100, 100, 5, 100, 100, 100, 100, 100, 5, 100], // thin-gum-high-lip
    [100, 100, 25, 100, 100, 100, 100, 100, 0, 100], // recession
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // cancer-dose-antiresorptive
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // poor-sugar
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // high-pressure
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // high-inr
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // recent-stent
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // radiotherapy
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // recent-infarction
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // recent-stroke
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // pregnancy
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // low-counts
    [100, 100, 25, 100, 100, 85, 85, 15, 85, 100], // active-periodontitis
    [100, 100, 100, 0, 0, 0, 0, 0, 0, 0], // growth-unfinished
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // oral-antiresorptive
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // injected-antiresorptive
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // controlled-sugar
    [100, 100, 5, 100, 100, 95, 95, 100, 5, 100], // steady-inr
    [100, 100, 5, 100, 100, 100, 100, 100, 5, 100], // direct-anticoagulant
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // antiplatelets
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // steroids
    [100, 100, 20, 100, 100, 90, 90, 100, 30, 100], // heavy-smoker
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // allergies
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // wide-septum
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // thin-septum
    [100, 100, 0, 100, 100, 100, 100, 100, 0, 100], // two-roots
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_case_without_its_kind_has_the_share_of_all_draws() {
        assert_eq!(share(Some(Archetype::Pregnancy), Skill::Covering), 0.0);
        assert_eq!(share(Some(Archetype::DefectV), Skill::Covering), 1.0);
        let of_all = share(None, Skill::Covering);
        assert!(0.0 < of_all && of_all < 0.5);
    }

    #[test]
    fn every_skill_is_called_for_by_most_cases_of_some_kind() {
        for skill in Skill::ALL {
            assert_eq!(Skill::ALL[place(skill)], skill);
            assert!(Archetype::ALL.iter().any(|kind| share(Some(*kind), skill) >= 0.6));
        }
    }

    #[test]
    fn patients_who_are_not_operated_on_are_the_easy_cases() {
        assert!(hardness(Archetype::Pregnancy) < 0.3);
        assert!(hardness(Archetype::NearNasopalatine) > 0.7);
    }
}
