//! What ships as it is in this shop: with what the shop asks for more, and with its own sheets.

use crate::app::state::{ContentContext, SheetsContext, StricterContext};
use std::rc::Rc;
use yew::prelude::*;

#[hook]
pub(in crate::app) fn use_shop_content(
    shipped: &ContentContext,
    stricter: &StricterContext,
    sheets: &SheetsContext,
) -> ContentContext {
    let known = (shipped.clone(), Rc::clone(&stricter.asked), Rc::clone(&sheets.editions));
    let content = use_memo(known, |(content, asked, editions)| {
        let mut content = content.clone();
        if !asked.is_empty() {
            content = ContentContext(Rc::new(content.0.asked_by_shop(asked)));
        }
        if editions.iter().next().is_some() {
            content = ContentContext(Rc::new(content.0.with_own_sheets(editions.iter())));
        }
        content
    });
    (*content).clone()
}
