//! What screens are put together from. Parts get values and callbacks and draw them.

mod answer;
mod board;
mod certainty;
mod choices;
mod cut;
mod frame;
mod icon;
mod moments;
mod name;
mod number;
mod order;
mod panel;
mod rail;
mod reasons;
mod result;
mod round;
mod saved;
mod setting;
mod sign;
mod ticket;
mod verdict;
mod wood;

pub(super) use answer::answer_field;
pub(super) use board::{BandRow, board};
pub(super) use certainty::certainty_field;
pub(super) use frame::Frame;
pub(super) use icon::{Picture, icon};
pub(super) use name::NameField;
pub(super) use panel::{Panel, Place, Seen};
pub(super) use reasons::{rules, working};
pub(super) use result::result;
pub(super) use round::round;
pub(super) use setting::{SettingChoice, setting, sheet_setting, unit_settings};
pub(super) use sign::{SignKind, sign};
pub(super) use ticket::card_ticket;
pub(super) use verdict::{Verdict, told};
