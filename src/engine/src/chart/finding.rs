//! What a learner writes down of what the examinations showed.

use super::Fact;
use crate::anatomy::{Kind, Site};

/// Something that can be read off films, sections and probes and is written down. No mark hangs on it:
/// the debrief sets it beside the truth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Finding {
    /// What is wrong with the facial wall.
    FacialDefect,
    /// How far the facial defect reaches below the crest line.
    DefectHeight,
    /// How wide it is.
    DefectWidth,
    /// How thick the facial plate is, 1 mm below the crest.
    FacialThickness,
    /// What is wrong with the oral wall.
    OralDefect,
    /// How wide the lesion at the apex is.
    LesionWidth,
    /// Density class of the bone.
    Density,
    /// Class of the socket by its facial side (`ledger: class-elian`).
    SocketClass,
    /// Sagittal position of the root (`ledger: class-kan-root`).
    RootPosition,
    /// Class of a molar's septum for the narrowest usual implant (`ledger: class-molar-septum`).
    SeptumClass,
}

/// What can be written down for a finding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answers {
    /// One of these: key and words.
    OneOf(&'static [(&'static str, &'static str)]),
    /// Millimetres in steps of 0.1, from 0 to this.
    UpTo(u16),
}

/// What was written down: the place in the list, or tenths of a millimetre.
pub type Noted = u16;

const WALL: &[(&str, &str)] = &[
    ("whole", "whole"),
    ("dehiscence-v", "a V-shaped dehiscence"),
    ("dehiscence-u", "a U-shaped dehiscence"),
    ("fenestration", "a fenestration"),
    ("lost-wall", "a lost wall"),
];
const DENSITY: &[(&str, &str)] = &[("d1", "D1"), ("d2", "D2"), ("d3", "D3"), ("d4", "D4")];
const SOCKET: &[(&str, &str)] = &[
    ("type-1", "type 1: gum and facial plate as they should be"),
    ("type-2", "type 2: gum as it should be, plate partly missing"),
    ("type-3", "type 3: both markedly reduced"),
];
const ROOT: &[(&str, &str)] = &[
    ("class-1", "class I: against the facial cortex"),
    ("class-2", "class II: centred"),
    ("class-3", "class III: against the oral cortex"),
    ("class-4", "class IV: two thirds against both"),
];
const SEPTUM: &[(&str, &str)] = &[
    ("class-a", "class A: it contains the implant"),
    ("class-b", "class B: it holds it in part"),
    ("class-c", "class C: it holds next to nothing"),
];

impl Finding {
    /// Every finding, in order.
    pub const ALL: [Self; 10] = [
        Self::FacialDefect,
        Self::DefectHeight,
        Self::DefectWidth,
        Self::FacialThickness,
        Self::OralDefect,
        Self::LesionWidth,
        Self::Density,
        Self::SocketClass,
        Self::RootPosition,
        Self::SeptumClass,
    ];

    /// Its name in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::FacialDefect => "facial-wall",
            Self::DefectHeight => "facial-defect-height",
            Self::DefectWidth => "facial-defect-width",
            Self::FacialThickness => "facial-plate",
            Self::OralDefect => "oral-wall",
            Self::LesionWidth => "lesion-width",
            Self::Density => "density-class",
            Self::SocketClass => "socket-class",
            Self::RootPosition => "root-position",
            Self::SeptumClass => "septum-class",
        }
    }

    /// The finding of a key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|finding| finding.key() == key)
    }

    /// Its name for people; the oral side is named for the jaw where it is shown.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::FacialDefect => "Facial wall",
            Self::DefectHeight => "Facial defect, from the crest line down",
            Self::DefectWidth => "Facial defect, across",
            Self::FacialThickness => "Facial plate, 1 mm below the crest",
            Self::OralDefect => "Oral wall",
            Self::LesionWidth => "Lesion at the apex, across",
            Self::Density => "Bone density",
            Self::SocketClass => "Class of the socket",
            Self::RootPosition => "Root between the plates",
            Self::SeptumClass => "Septum, for an implant of 4.5 mm",
        }
    }

    /// What it is about: what can show the one can show the other.
    #[must_use]
    pub const fn fact(self) -> Fact {
        match self {
            Self::FacialDefect | Self::DefectHeight | Self::DefectWidth | Self::SocketClass => {
                Fact::FacialWall
            }
            Self::FacialThickness => Fact::FacialThickness,
            Self::OralDefect => Fact::OralWall,
            Self::LesionWidth => Fact::ApicalLesion,
            Self::Density => Fact::Density,
            // Only a cut through ridge and root shows how the one stands in the other.
            Self::RootPosition => Fact::RidgeForm,
            Self::SeptumClass => Fact::RootForm,
        }
    }

    /// What can be written down.
    #[must_use]
    pub const fn answers(self) -> Answers {
        match self {
            Self::FacialDefect | Self::OralDefect => Answers::OneOf(WALL),
            Self::DefectHeight => Answers::UpTo(250),
            Self::DefectWidth | Self::LesionWidth => Answers::UpTo(150),
            Self::FacialThickness => Answers::UpTo(60),
            Self::Density => Answers::OneOf(DENSITY),
            Self::SocketClass => Answers::OneOf(SOCKET),
            Self::RootPosition => Answers::OneOf(ROOT),
            Self::SeptumClass => Answers::OneOf(SEPTUM),
        }
    }

    /// Whether there is such a thing at a site: classes of socket and root are those of one root, a
    /// septum that could hold an implant is a molar's.
    #[must_use]
    pub fn applies(self, site: &Site) -> bool {
        let parted = site.socket.furcation().is_some();
        match self {
            Self::SocketClass | Self::RootPosition => !parted,
            Self::SeptumClass => parted && site.tooth.kind() == Kind::Molar,
            _ => true,
        }
    }

    /// Whether this can be written down for it.
    #[must_use]
    pub fn allows(self, noted: Noted) -> bool {
        match self.answers() {
            Answers::OneOf(list) => usize::from(noted) < list.len(),
            Answers::UpTo(most) => noted <= most,
        }
    }

    /// What was written down, in words.
    #[must_use]
    pub fn noted_words(self, noted: Noted) -> String {
        match self.answers() {
            Answers::OneOf(list) => list
                .get(usize::from(noted))
                .map_or_else(String::new, |(_, words)| (*words).to_owned()),
            Answers::UpTo(_) => format!("{:.1} mm", f64::from(noted) / 10.0),
        }
    }

    /// How far a number may lie from the truth and still be read as it is, in tenths of a millimetre:
    /// two steps of a probe's scale, a lesion's blurred edge, and for a plate the half millimetre that
    /// the section report states (ours).
    #[must_use]
    pub const fn tolerance(self) -> Noted {
        match self {
            Self::FacialDefect
            | Self::OralDefect
            | Self::Density
            | Self::SocketClass
            | Self::RootPosition
            | Self::SeptumClass => 0,
            Self::FacialThickness => 5,
            Self::DefectHeight | Self::DefectWidth | Self::LesionWidth => 15,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_finding_has_a_key_of_its_own_and_reads_back_from_it() {
        for finding in Finding::ALL {
            assert_eq!(Finding::from_key(finding.key()), Some(finding));
        }
        assert_eq!(Finding::from_key("colour"), None);
    }

    #[test]
    fn what_is_in_the_list_or_the_range_can_be_written_down_and_has_words() {
        assert_eq!(Finding::FacialDefect.noted_words(2), "a U-shaped dehiscence");
        assert_eq!(Finding::LesionWidth.noted_words(42), "4.2 mm");
        for (finding, most) in [(Finding::FacialDefect, 4), (Finding::FacialThickness, 60)] {
            assert!(finding.allows(most) && !finding.allows(most + 1), "{finding:?}");
        }
    }
}
