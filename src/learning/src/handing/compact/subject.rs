//! What numbers in a kept state are about: what is said of one subject teaches nothing about another.
//! A text takes three of them.

pub const ATTEMPTS: u16 = 1;
pub const EVENTS: u16 = 2;
pub const ID: u16 = 3;
pub const AT: u16 = 6;
pub const ADDRESS: u16 = 9;
pub const SET: u16 = 12;
pub const LOCAL: u16 = 15;
pub const SITTING: u16 = 18;
pub const RULE_SET: u16 = 21;
pub const VERDICTS: u16 = 24;
pub const THERE: u16 = 27;
pub const MODE: u16 = 28;
pub const NUMBER: u16 = 29;
pub const HELP: u16 = 30;
pub const BEGUN: u16 = 31;
pub const ENDED: u16 = 32;
pub const WHEN: u16 = 33;
pub const STEP: u16 = 34;
pub const WALL: u16 = 35;
pub const ALONG: u16 = 36;
pub const AIM: u16 = 37;
pub const FINDING: u16 = 38;
pub const RULE: u16 = 39;
pub const REASON: u16 = 42;
pub const SURE: u16 = 45;
pub const CORNERS: u16 = 46;
pub const STAYS: u16 = 47;
pub const CORNER: u16 = 48;
pub const TAKEN_BACK: u16 = 49;
pub const OPENED_BEFORE: u16 = 50;
pub const LIMIT: u16 = 51;
pub const LIMIT_FROM: u16 = 52;
pub const MINUTES: u16 = 53;
/// And what kind of event came before, up to seven.
pub const KIND: u16 = 56;
/// And the finding.
pub const READ: u16 = 64;
/// And where the decision before stands.
pub const ONWARD: u16 = 0x400;
/// And where the decision stands.
pub const ANSWER: u16 = 0x800;
