//! Diagnostics and consent.

mod consent_without_fallback;
mod film_without_a_question;
mod loss_on_sounding_called_whole;
mod no_section_near_the_canal;
mod phenotype_judged_by_eye;
mod section_trusted_for_a_thin_plate;
mod sections_without_a_question;
mod socket_not_reprobed;
mod wall_declared_whole_on_film_alone;
mod wall_loss_never_seen;
mod wall_not_sounded;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &wall_declared_whole_on_film_alone::RULE,
    &film_without_a_question::RULE,
    &sections_without_a_question::RULE,
    &section_trusted_for_a_thin_plate::RULE,
    &loss_on_sounding_called_whole::RULE,
    &phenotype_judged_by_eye::RULE,
    &wall_not_sounded::RULE,
    &consent_without_fallback::RULE,
    &socket_not_reprobed::RULE,
    &wall_loss_never_seen::RULE,
    &no_section_near_the_canal::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("wall-declared-whole-on-film-alone", include_str!("wall_declared_whole_on_film_alone.md")),
    ("film-without-a-question", include_str!("film_without_a_question.md")),
    ("sections-without-a-question", include_str!("sections_without_a_question.md")),
    ("section-trusted-for-a-thin-plate", include_str!("section_trusted_for_a_thin_plate.md")),
    ("loss-on-sounding-called-whole", include_str!("loss_on_sounding_called_whole.md")),
    ("phenotype-judged-by-eye", include_str!("phenotype_judged_by_eye.md")),
    ("wall-not-sounded", include_str!("wall_not_sounded.md")),
    ("consent-without-fallback", include_str!("consent_without_fallback.md")),
    ("socket-not-reprobed", include_str!("socket_not_reprobed.md")),
    ("wall-loss-never-seen", include_str!("wall_loss_never_seen.md")),
    ("no-section-near-the-canal", include_str!("no_section_near_the_canal.md")),
];
