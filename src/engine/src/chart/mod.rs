//! The patient and the case: history, wishes, restoration, and what examinations would read.

mod aspect;
mod case;
mod fact;
mod finding;
mod patient;

pub use aspect::{Aspect, Change, Scaled};
pub use case::{Address, BadAddress, Case, Fragment, Readings, SectionReport, SoundingReading};
pub use fact::{Fact, Source};
pub use finding::{Answers, Finding, Noted};
pub use patient::{
    Allergy, Anticoagulant, Antiresorptive, Bleeding, Complaint, GraftView, Patient, Radiotherapy,
    RecentEvent, Sex, Stent, Steroid, Sugar,
};
