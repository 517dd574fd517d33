//! The places of the room.

pub mod bench;
pub mod briefing;
pub mod class;
pub mod debrief;
pub mod desk;
pub mod given;
pub mod guide;
pub mod home;
pub mod keeping;
pub mod limits;
pub mod own;
pub mod portfolio;
pub mod protocol;
pub mod review;
pub mod rule;
pub mod sitting;
pub mod teach;
pub mod today;
