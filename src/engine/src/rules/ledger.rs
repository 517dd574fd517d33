//! Every entry of the evidence ledger, and what became of it: a rule, an explanation, or left out for a
//! reason.

/// What became of an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// At least one rule names it.
    Rule,
    /// A fact that no decision can break; this is what the explanations say of it, with its source.
    Explanation(&'static str),
    /// Left out, for this reason.
    Left(&'static str),
}

/// One entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Entry {
    /// Its id, as rules name it.
    pub id: &'static str,
    /// What became of it.
    pub standing: Standing,
}

const fn rule(id: &'static str) -> Entry {
    Entry { id, standing: Standing::Rule }
}

const fn explains(id: &'static str, fact: &'static str) -> Entry {
    Entry { id, standing: Standing::Explanation(fact) }
}

const fn left(id: &'static str, why: &'static str) -> Entry {
    Entry { id, standing: Standing::Left(why) }
}

/// The entries of the ledger of published evidence, in its order.
pub static ENTRIES: &[Entry] = &[
    rule("timing-class-definitions"),
    explains(
        "loading-class-definitions",
        "Restoration is timed apart from placement: immediate loading is in contact within a \
        week, immediate restoration out of contact within a week, early is one week to two \
        months, conventional later (Gallucci 2018, confirmed). A provisional out of contact on \
        day three is an immediate restoration.",
    ),
    rule("iip-criteria-conjunction"),
    rule("iip-risk-tiers"),
    rule("iip-recession-variability"),
    rule("iip-apical-anchorage"),
    rule("iip-stability-gate"),
    rule("iip-acute-infection"),
    rule("iip-chronic-periapical"),
    rule("iip-soft-tissue-phenotype"),
    rule("iip-gingival-margin"),
    rule("iip-facial-wall-defect"),
    rule("arp-indication"),
    rule("early-placement-alternative"),
    rule("growth-complete"),
    rule("med-mronj-oncology"),
    rule("med-mronj-osteoporosis"),
    rule("med-diabetes"),
    rule("med-blood-pressure"),
    rule("med-warfarin-type"),
    rule("med-doac"),
    rule("med-antiplatelet"),
    rule("med-radiotherapy"),
    rule("med-smoking"),
    rule("med-asa-and-events"),
    rule("med-pregnancy"),
    rule("med-immunosuppression"),
    rule("med-periodontitis"),
    rule("class-elian"),
    rule("class-eds"),
    rule("class-kan-root"),
    rule("class-facial-defect-shape"),
    rule("class-peri-implant-defect"),
    explains(
        "class-other-socket-schemes",
        "Other schemes sort sockets by facial bone, by treatment, by infection or by patient and \
        form together; a review of ten found none complete (Juodzbalys 2019, confirmed).",
    ),
    rule("class-molar-septum"),
    explains(
        "class-seibert",
        "A healed ridge that has lost width is class I, height class II, both class III (Seibert \
        1983, confirmed (secondary)). It is a name without a figure: what is judged after healing \
        is the bone that is left beside the implant, and whether a wide ridge is held back.",
    ),
    explains(
        "class-gap-location",
        "One map of gap locations holds that only a gap on the oral side alone asks for facial \
        augmentation (Deporter & Ketabi 2021, confirmed); the reviews on gap grafting \
        contradict it.",
    ),
    explains(
        "plate-thin-prevalence",
        "A thin or absent facial plate is the normal finding in the front of the upper jaw: 1 mm \
        or less in 87 % of anterior sites, 2 mm in 3 % (Huynh-Ba 2010, confirmed).",
    ),
    rule("plate-thin-resorption"),
    explains(
        "unassisted-resorption",
        "In six months an untreated socket loses 3.79 +/- 0.23 mm of width and 1.24 +/- 0.11 mm \
        of facial height (Tan 2012, confirmed).",
    ),
    rule("facial-bone-target"),
    rule("extraction-plate-protection"),
    rule("socket-debridement"),
    rule("gap-target"),
    rule("gap-over-2-graft"),
    rule("gap-2-or-less"),
    explains(
        "gap-graft-benefit",
        "Grafting the gap spares 0.59 mm (0.41 to 0.78) of width and 0.58 mm (0.28 to 0.88) of \
        recession on average, and no height of bone (Seyssens 2022, 15 trials, confirmed).",
    ),
    explains(
        "gap-plate-interaction",
        "Thick plates and larger gaps fill better, premolars better than incisors (Ferrus 2010, \
        93 sites, confirmed).",
    ),
    explains(
        "implant-does-not-preserve-plate",
        "An implant in the socket does not stop the facial wall from shrinking (Botticelli 2004, \
        confirmed; 56 % facially and 30 % orally at four months from memory).",
    ),
    rule("gap-slow-filler"),
    rule("ctg-adjunct"),
    rule("pos-adjacent-tooth"),
    rule("pos-inter-implant"),
    rule("pos-facial-clearance"),
    rule("pos-palatal-lingual-bone"),
    rule("pos-depth-from-margin"),
    rule("pos-depth-from-crest"),
    rule("pos-axis"),
    rule("pos-fenestration"),
    rule("pos-ian-canal"),
    rule("pos-mental-foramen"),
    rule("pos-sinus-nasal"),
    rule("pos-nasopalatine"),
    rule("pos-lingual-cortex"),
    rule("dim-diameter"),
    rule("dim-length"),
    rule("papilla-contact-crest"),
    rule("torque-immediate-restoration"),
    rule("torque-transmucosal"),
    rule("torque-submerged"),
    rule("torque-upper"),
    explains(
        "isq-bands",
        "Resonance figures below 60 are low, 60 to 69 medium, 70 and more high (Sennerby 2013, \
        confirmed (secondary)), but in 495 implants the figure at placement did not predict success \
        (confirmed): it is never the only gate.",
    ),
    rule("micromotion-limit"),
    explains(
        "bone-density-classes",
        "Classes D1 above 1250, D2 850 to 1250, D3 350 to 850, D4 150 to 350 Hounsfield units \
        hold for medical scanners only; grey values of cone-beam sections are not Hounsfield \
        units (Lekholm & Zarb 1985, Misch, confirmed (secondary)).",
    ),
    rule("density-adapted-prep"),
    rule("drilling-heat"),
    rule("stability-rescue-data"),
    rule("flapless-conditions"),
    rule("flap-required"),
    rule("flapless-benefit"),
    rule("flap-base-ratio"),
    rule("flap-vertical-site"),
    rule("flap-edges-on-bone"),
    rule("flap-papilla"),
    rule("flap-type-choice"),
    rule("flap-tension"),
    left(
        "flap-midcrestal",
        "how a healed ridge is opened is no decision here. Many cut along the middle of its crest, a \
        band of few vessels, and release at the front end (Kleinheinz 2005, 1 to 2 mm from memory); \
        a study in dogs confirmed the band and preferred other cuts (1998, confirmed).",
    ),
    rule("graft-material-choice"),
    rule("graft-autograft"),
    rule("graft-fdba-dfdba"),
    rule("graft-turnover-time"),
    rule("graft-particle-size"),
    rule("graft-volume"),
    rule("graft-fill-height"),
    rule("graft-contour-overbuild"),
    rule("graft-hydration-compaction"),
    explains(
        "arp-effect-size",
        "Ridge preservation spares 1.86 mm (1.44 to 2.28) of width against extraction alone and \
        never abolishes the loss (Bassir 2018, confirmed).",
    ),
    rule("graft-not-in-pus"),
    rule("graft-origin-consent"),
    rule("membrane-indication"),
    rule("membrane-margin"),
    rule("membrane-tooth-distance"),
    rule("membrane-fit"),
    rule("membrane-fixation"),
    rule("membrane-dptfe-open"),
    rule("membrane-titanium-reinforced"),
    rule("membrane-resorption-window"),
    rule("membrane-exposure-management"),
    explains(
        "membrane-exposure-cost",
        "An exposed barrier costs gain: the crest went from 3.4 to 6.0 mm closed and from 3.6 to \
        5.0 exposed (Eskan 2017, confirmed).",
    ),
    explains(
        "membrane-complication-rate",
        "Complications come in 16.8 % (10.6 to 25.4) of guided regeneration, 18.3 % with \
        resorbable and 17.6 % with other membranes (Lim 2018, confirmed).",
    ),
    rule("close-open-v-primary-arp"),
    rule("close-gbr-primary"),
    rule("suture-choice-removal"),
    rule("component-choice"),
    rule("provisional-occlusion"),
    rule("load-healing-time"),
    rule("antibiotic-prophylaxis"),
    rule("antibiotic-postop"),
    rule("antiseptic-hygiene"),
    rule("review-schedule"),
    rule("dx-2d-limits"),
    rule("dx-cbct-indication"),
    rule("dx-cbct-thin-plate"),
    explains(
        "dx-cbct-bias",
        "Sections err in either direction: 0.52 against true 0.40 mm on teeth, too much or too \
        little beside implants (cadaver study, Vanderstuyft 2019, confirmed); a voxel of 0.2 mm \
        or less is wanted.",
    ),
    rule("dx-bone-sounding"),
    rule("dx-recheck-after-extraction"),
    rule("dx-consent-fallback"),
    rule("rescue-no-stability"),
    rule("rescue-plate-fracture"),
    rule("rescue-membrane-exposure"),
    rule("rescue-sinus-perforation"),
    rule("rescue-floor-of-mouth-bleed"),
    rule("rescue-simple-bleed"),
    rule("rescue-nerve"),
    rule("rescue-infection"),
    rule("rescue-root-fragment-drop"),
];

/// Entries of our own: what the course of care asks without a published figure, with the sentence
/// that each stands for.
pub static OWN: &[(&str, &str)] = &[
    ("care-keep-or-extract", "a tooth that can be restored is kept, one that cannot is not"),
    ("care-disease-today", "postponing the implant never postpones the disease"),
    ("care-referral", "a referral goes to who can help"),
    ("care-interim", "what is worn meanwhile presses on nothing and is really there"),
    ("care-both-ways", "holding back without a reason is judged as placing against one is"),
    ("common-practice", "habits of the trade without a source"),
];

/// The entry with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Entry> {
    ENTRIES.iter().find(|entry| entry.id == id)
}

/// The name under which the page finds [`text`] among the long texts of the rules; no rule bears it.
pub const FACTS: &str = "facts";

/// Entries that explain, each with what it says.
pub fn facts() -> impl Iterator<Item = (&'static str, &'static str)> {
    ENTRIES.iter().filter_map(|entry| match entry.standing {
        Standing::Explanation(fact) => Some((entry.id, fact)),
        Standing::Rule | Standing::Left(_) => None,
    })
}

/// Entries that were left out, each with the reason.
pub fn left_out() -> impl Iterator<Item = (&'static str, &'static str)> {
    ENTRIES.iter().filter_map(|entry| match entry.standing {
        Standing::Left(why) => Some((entry.id, why)),
        Standing::Rule | Standing::Explanation(_) => None,
    })
}

/// Every explanation, then every entry that was left out with its reason, in the small Markdown of the
/// long texts.
#[cfg(feature = "prose")]
#[must_use]
pub fn text() -> String {
    let list = |entries: &mut dyn Iterator<Item = (&str, &str)>| -> String {
        entries.map(|(id, said)| format!("- {id}: {said}\n")).collect()
    };
    let (facts, left) = (list(&mut facts()), list(&mut left_out()));
    format!("## Facts behind the rules\n{facts}\n## Left out, and why\n{left}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules;
    use std::collections::BTreeSet;

    fn named_by_rules() -> BTreeSet<&'static str> {
        rules::all().map(|rule| rule.ledger).collect()
    }

    #[test]
    fn ids_are_unique() {
        let ids: BTreeSet<_> =
            ENTRIES.iter().map(|entry| entry.id).chain(OWN.iter().map(|(id, _)| *id)).collect();
        assert_eq!(ids.len(), ENTRIES.len() + OWN.len());
    }

    #[test]
    fn every_rule_names_an_entry_that_stands_as_a_rule() {
        for rule in rules::all() {
            let own = OWN.iter().any(|(id, _)| *id == rule.ledger);
            let standing = find(rule.ledger).map(|entry| entry.standing);
            assert!(own || standing == Some(Standing::Rule), "{}: {}", rule.id, rule.ledger);
        }
    }

    #[test]
    fn every_entry_that_stands_as_a_rule_has_one_and_no_other_has() {
        let named = named_by_rules();
        for entry in ENTRIES {
            let is_rule = entry.standing == Standing::Rule;
            assert_eq!(named.contains(entry.id), is_rule, "{}", entry.id);
        }
        for (id, _) in OWN {
            assert!(named.contains(id), "{id}");
        }
    }

    #[test]
    fn what_is_left_out_has_a_reason_and_what_explains_has_a_source_mark() {
        for entry in ENTRIES {
            match entry.standing {
                Standing::Rule => {}
                Standing::Explanation(fact) => assert!(fact.contains("confirmed"), "{}", entry.id),
                Standing::Left(why) => assert!(why.len() > 20, "{}", entry.id),
            }
        }
    }

    #[test]
    fn the_text_lists_every_fact_and_every_reason_once_and_no_rule() {
        assert!(rules::find(FACTS).is_none());
        let text = text();
        for entry in ENTRIES {
            let listed = text.matches(&format!("- {}: ", entry.id)).count();
            let (Standing::Explanation(said) | Standing::Left(said)) = entry.standing else {
                assert_eq!(listed, 0, "{}", entry.id);
                continue;
            };
            assert_eq!(listed, 1, "{}", entry.id);
            assert!(text.contains(&format!("- {}: {said}\n", entry.id)), "{}", entry.id);
        }
        let (facts, left) = text.split_once("\n## Left out, and why\n").unwrap();
        assert!(facts.contains("- isq-bands: ") && left.contains("- flap-midcrestal: "));
    }
}
