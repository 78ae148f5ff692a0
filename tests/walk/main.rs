//! Walks: right ones and wrong ones, what is refused, what is kept, and laws over random decisions.

#[path = "../support/mod.rs"]
mod support;

mod again;
mod by_hand;
mod case;
mod colour;
mod command;
mod conditions;
mod counts;
mod crew;
mod cut;
mod damp;
mod earlier_finish;
mod evidence;
mod excepted;
mod first;
mod inspect;
mod journalled;
mod kept;
mod later;
mod laws;
mod look;
mod marked;
mod planted;
mod refused;
mod rework;
mod right;
mod room;
mod schedule;
mod shows;
mod steps;
mod suggested;
mod weather;
mod windows;
mod woods;
mod wrong;
