//! The places of the room.

pub mod bench;
pub mod briefing;
pub mod debrief;
pub mod home;
pub mod limits;
pub mod portfolio;
pub mod protocol;
pub mod review;
