//! Whole instruments, measured on their lines and their pixels. Where no source is named: common practice, no source.

#![allow(
    clippy::as_conversions,
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    clippy::indexing_slicing,
    reason = "a test stops where something is wrong"
)]

#[path = "../support/looks.rs"]
mod looks;

mod drawn;
mod finish;
mod loupe;
mod measure;
mod outlines;
