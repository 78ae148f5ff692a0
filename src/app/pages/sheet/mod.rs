//! Shop sheets: those that there are, one of them, two beside each other, one being edited, and what changes with it.

mod bar;
mod beside;
mod edit;
mod file;
mod keep;
mod list;
mod one;
mod preview;
mod read;
mod row;
mod save;
mod turned;

pub(in crate::app) use beside::Beside;
pub(in crate::app) use edit::SheetEdit;
pub(in crate::app) use list::Sheets;
pub(in crate::app) use one::SheetOf;
pub(in crate::app) use preview::SheetChanges;
pub(in crate::app) use read::ShopSheet;
pub(in crate::app::pages) use read::table as sheet_table;

use crate::app::state::Shop;
use crate::exchange::{OwnSheet, differences};
use yew::prelude::*;

/// How many values of an edition differ from the sheet that it stands on.
fn differing(shop: &Shop, own: &OwnSheet) -> AttrValue {
    let count = own.sheet(shop.content()).ok().zip(shop.content().sheet(&own.base));
    match count.map(|(sheet, base)| differences(base, &sheet).len()) {
        None => shop.say("own.unusable"),
        Some(count) => counted(shop, "own.differs", count, &own.base),
    }
}

/// So many values, one or more, of a sheet.
fn counted(shop: &Shop, key: &str, count: usize, sheet: &str) -> AttrValue {
    shop.say_with(key, &[("n", count.to_string()), ("sheet", shop.sheet_name(sheet).to_string())])
}
