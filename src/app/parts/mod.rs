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
mod rail;
mod reasons;
mod round;
mod saved;
mod setting;
mod sign;
mod ticket;
mod verdict;
mod wood;

pub(super) use answer::AnswerField;
pub(super) use board::{BandRow, Board};
pub(super) use certainty::CertaintyField;
pub(super) use frame::Frame;
pub(super) use icon::{Icon, Picture};
pub(super) use name::NameField;
pub(super) use reasons::{Rules, Working};
pub(super) use round::Round;
pub(super) use setting::{Setting, SettingChoice, SheetSetting, UnitSettings};
pub(super) use sign::{Sign, SignKind};
pub(super) use ticket::CardTicket;
pub(super) use verdict::Verdict;
