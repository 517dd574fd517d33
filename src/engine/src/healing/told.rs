//! The fan in words, as a table, and what stands beside it.

use super::fan::{Arm, Fan, Illustration, Quantity, Unknown, Whose};
use super::model::Treatment;
use crate::units::Mm;

/// What it is and what it is not: stands wherever the fan is shown.
pub const LABEL: &str = "An illustration of a teaching model: no forecast, no promise, and no judgement on any plan. Each band holds what eight of ten drawn patients lose with a site like this one; one in ten loses less, one in ten more. The line in it is the median, which is nobody's course.";

/// What the model does not know.
pub const LIMITS: &[&str] = &[
    "Less bone lost is no reason to place an implant at once: whether a site allows one is judged by the rules, never by these bands.",
    "Of the site it reads the sort of tooth, the jaw, and the facial plate 1 mm below the crest. A wall that is lost counts as a plate of no thickness; no source measured how such sockets heal, grafted or not.",
    "The spread from patient to patient is ours: reviews tell means and how sure they are of them.",
    "Some loss is certain in it, 0.2 mm at least (ours): where a graft keeps more than would have gone, band and line lie there.",
    "Membrane, seal, material, a layer outside the wall, gum grafts, flap, sutures, smoking, disease, chance after the extraction: none of them moves a band.",
    "An implant at once is known between whole walls only. No source speaks of molars there: they are taken as they come. What goes on the oral side is the same in everyone.",
    "Where an implant is placed in the healed site, the band ends: what comes then is not in the model.",
];

/// Where its numbers come from, and whether they were read there.
pub const SOURCES: &[&str] = &[
    "Width left to heal, 3.6 mm, molars 4.6: means of 3.79 in Tan 2012 and 3.87 in Van der Weijden 2009 (both confirmed). Two thirds in the first three months: Schropp 2003 (confirmed, secondary).",
    "Facial height left to heal, more under a thinner plate: means of 1.24 in Tan 2012 and 1.71 in Couso-Queiruga 2021 (both confirmed). Upper front teeth under 1 mm of plate lose about 7.5 mm in Chappuis 2013 (confirmed by its successor of 2015); that 4 of 10 do is ours.",
    "A grafted socket keeps 1.7 mm of width: 1.86 in Bassir 2018; and 1.5 mm of height: 1.47 in Vignoletti 2012 (both confirmed).",
    "Beside an implant at once 1.4 mm of facial width and 0.9 of height: 1.07 and 0.78, with and without grafts, and 0.62 of oral width in Lee 2014 (confirmed, secondary). A grafted gap keeps 0.45 mm of width: 1.1 against 1.6 lost in Sanz 2017 (confirmed); of height 0.25 (ours).",
    "Thin plates and front teeth lose more beside an implant, premolars less: Ferrus 2010 (confirmed); by how much, 1.5, 0.6 and 0.8 times, is ours.",
];

impl Quantity {
    /// What has gone, as a title.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Width => "Width that the ridge loses",
            Self::Facial => "Height that the facial crest loses",
        }
    }

    /// Its key for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Width => "width",
            Self::Facial => "facial-height",
        }
    }
}

impl Whose {
    /// Its key for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Yours => "yours",
            Self::Nearest => "nearest-sound",
            Self::Untreated => "untreated",
        }
    }

    /// A few letters, for a label.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Yours => "yours",
            Self::Nearest => "nearest sound",
            Self::Untreated => "untreated",
        }
    }
}

impl Treatment {
    /// Its key for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Nothing => "left-to-heal",
            Self::Preserved => "grafted-socket",
            Self::Implant => "implant",
            Self::GraftedImplant => "implant-and-grafted-gap",
        }
    }

    /// What is done.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Nothing => "extracted and left to heal",
            Self::Preserved => "the socket grafted",
            Self::Implant => "an implant at once, its gap left to the clot",
            Self::GraftedImplant => "an implant at once, its gap grafted",
        }
    }
}

impl Unknown {
    /// Its key for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::ToothKept => "tooth-kept",
            Self::WallMissing => "wall-missing",
        }
    }

    /// Why there is no band.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::ToothKept => {
                "no tooth is taken out, and nothing else heals in this model: no band"
            }
            Self::WallMissing => {
                "an implant at once where a wall is missing; how much bone goes then was not published, so there is no band, which does not mean that little goes"
            }
        }
    }
}

impl Illustration {
    /// Whose a treatment is; a sound plan is not told apart from the nearest sound one.
    fn whose(&self, arm: &Arm) -> String {
        let name = |whose: &Whose| match whose {
            Whose::Yours if self.sound => Some("yours, sound as it is"),
            Whose::Yours => Some("yours"),
            Whose::Nearest if self.sound => None,
            Whose::Nearest => Some("the nearest sound plan"),
            Whose::Untreated => Some("no treatment"),
        };
        let names: Vec<&str> = arm.whose.iter().filter_map(name).collect();
        let alike = if names.len() > 1 { " (the model cannot tell them apart)" } else { "" };
        let (last, others) = names.split_last().unwrap_or((&"", &[]));
        match others {
            [] => format!("{last}{alike}"),
            others => format!("{} and {last}{alike}", others.join(", ")),
        }
    }

    /// Whose a treatment is, what is done, and where the model ends.
    #[must_use]
    pub fn words(&self, arm: &Arm) -> String {
        let whose = crate::casing::capital(&self.whose(arm));
        match &arm.fan {
            Err(unknown) => format!("{whose}: {}.", unknown.words()),
            Ok(fan) => {
                let what = fan.treatment.words();
                let end = fan.until.map_or_else(String::new, |weeks| {
                    format!("; after {weeks} weeks an implant is placed, and there the band ends")
                });
                format!("{whose}: {what}{end}.")
            }
        }
    }

    /// The labels of a band, one under the other.
    pub fn labels(&self, arm: &Arm) -> impl Iterator<Item = &'static str> {
        let merged = self.sound;
        let apart = move |one: &&Whose| !(merged && **one == Whose::Nearest);
        arm.whose.iter().filter(apart).map(|one| one.label())
    }

    /// A quantity in words: what eight of ten lose, and the median, at 1, 3, 6 and 12 months.
    #[must_use]
    pub fn says(&self, quantity: Quantity) -> String {
        let at = |fan: &Fan, month: i32| {
            let [low, middle, high] = fan.lost(quantity, f64::from(month)).map(Mm::get);
            format!("after {month} months {low:.1} to {high:.1} mm, median {middle:.1}")
        };
        let arm = |arm: &Arm| {
            let Ok(fan) = &arm.fan else { return self.words(arm) };
            let months = fan.months().filter(|month| [3, 6, 12].contains(month));
            let told: Vec<String> = months.map(|month| at(fan, month)).collect();
            let end = || {
                let [low, middle, high] = fan.lost(quantity, fan.last()).map(Mm::get);
                format!("there {low:.1} to {high:.1} mm, median {middle:.1}")
            };
            let told = told.into_iter().chain(fan.until.map(|_| end()));
            format!("{} It loses {}.", self.words(arm), told.collect::<Vec<_>>().join("; "))
        };
        let arms: Vec<String> = self.arms.iter().map(arm).collect();
        format!("{}, in eight of ten drawn patients. {}", quantity.title(), arms.join(" "))
    }
}

/// Every month of every band: millimetres lost, 10th, 50th and 90th percentile.
#[must_use]
pub fn csv(shown: &Illustration) -> String {
    let mut text = "quantity,whose,months,p10-mm,p50-mm,p90-mm\n".to_owned();
    for quantity in Quantity::ALL {
        for arm in &shown.arms {
            let Ok(fan) = &arm.fan else { continue };
            let whose: Vec<&str> = arm.whose.iter().map(|whose| whose.key()).collect();
            for month in fan.months() {
                let [low, middle, high] = fan.lost(quantity, f64::from(month)).map(Mm::get);
                text.push_str(&format!(
                    "{},{},{month},{low:.2},{middle:.2},{high:.2}\n",
                    quantity.key(),
                    whose.join("+"),
                ));
            }
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::super::illustration;
    use super::*;
    use crate::rules::regeneration::preserved;
    use crate::rules::trial::Trial;

    fn shown() -> Illustration {
        let (mine, nearest) = (Trial::plain(), preserved());
        illustration(&mine.case, &mine.plan(), Some(&nearest.plan()))
    }

    #[test]
    fn a_sound_plan_is_said_to_be_the_nearest_itself_and_what_is_alike_is_said_to_be() {
        let plain = Trial::plain();
        let own = illustration(&plain.case, &plain.plan(), Some(&plain.plan()));
        let words: Vec<String> = own.arms.iter().map(|arm| own.words(arm)).collect();
        assert_eq!(
            words,
            [
                "Yours, sound as it is: an implant at once, its gap grafted.",
                "No treatment: extracted and left to heal."
            ]
        );
        assert_eq!(own.labels(&own.arms[0]).collect::<Vec<_>>(), ["yours"]);
        let mut other = Trial::plain();
        other.keys(&[("technique", "rock-facially")]);
        let alike = illustration(&plain.case, &other.plan(), Some(&plain.plan()));
        assert!(
            alike.words(&alike.arms[0]).starts_with(
                "Yours and the nearest sound plan (the model cannot tell them apart): an implant"
            ),
            "{}",
            alike.words(&alike.arms[0])
        );
        assert_eq!(alike.labels(&alike.arms[0]).collect::<Vec<_>>(), ["yours", "nearest sound"]);
    }

    #[test]
    fn words_and_table_say_what_the_fan_holds() {
        let shown = shown();
        let untreated = shown.arms.last().unwrap().fan.unwrap();
        let [low, middle, high] = untreated.lost(Quantity::Width, 6.0).map(Mm::get);
        let says = shown.says(Quantity::Width);
        let said = format!("after 6 months {low:.1} to {high:.1} mm, median {middle:.1}");
        assert!(says.contains(&said), "{said}: {says}");
        let row = format!("\nwidth,untreated,6,{low:.2},{middle:.2},{high:.2}\n");
        let table = csv(&shown);
        assert!(table.contains(&row), "{row}: {table}");
        let known: usize =
            shown.arms.iter().filter_map(|arm| arm.fan.ok()).map(|fan| fan.months().count()).sum();
        assert_eq!(table.lines().count(), 1 + 2 * known);
    }

    #[test]
    fn each_source_carries_its_mark() {
        for source in SOURCES {
            let marked = ["confirmed", "ours"].iter().any(|mark| source.contains(mark));
            assert!(marked, "{source}");
        }
    }
}
