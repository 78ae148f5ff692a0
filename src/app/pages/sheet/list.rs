//! The shop sheets of this tablet: the one in use, those of the shop's own, those that ship, and one that comes as a file.

use super::file::FromFile;
use super::{counted, differing};
use crate::app::hooks::use_sheets;
use crate::app::parts::{Frame, Picture, icon, unread};
use crate::app::route::Route;
use crate::app::state::{SheetsContext, Shop, use_shop};
use crate::device::clock;
use crate::exchange::OwnSheet;
use crate::rules::sheet::Sheet;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Sheets() -> Html {
    let shop = use_shop();
    let sheets = use_sheets();
    let own: Vec<Html> = sheets.editions.iter().rev().map(|own| edition(&shop, &sheets, own)).collect();
    let shipped = shop.content().sheets.iter().filter(|sheet| sheets.editions.get(&sheet.slug).is_none());
    html! {
        <Frame class="sheet own-sheets" title={shop.say("own.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("own.lead") }</p>
            { unread(&shop, sheets.unread) }
            { in_use(&shop) }
            { being_edited(&shop, &sheets) }
            <section key="own">
                <h2>{ shop.say("own.ours") }</h2>
                <p class="note" hidden={!own.is_empty()}>{ shop.say("own.none") }</p>
                <ul class="rows links">{ for own }</ul>
            </section>
            <section key="shipped">
                <h2>{ shop.say("own.shipped") }</h2>
                <ul class="rows links">{ for shipped.map(|sheet| row(&shop, sheet, AttrValue::default(), true)) }</ul>
            </section>
            <section key="file"><h2>{ shop.say("own.from-file") }</h2><FromFile /></section>
        </Frame>
    }
}

/// The sheet in use, and the way to change it.
fn in_use(shop: &Shop) -> Html {
    let Some(sheet) = shop.sheet() else { return Html::default() };
    let gone = shop.sheet_gone();
    let to = Route::SheetOf { slug: sheet.slug.clone() };
    html! {
        <section key="in-use" class="paper in-use">
            <h2>{ shop.say("own.in-use") }</h2>
            <p class="lead">{ shop.sheet_name(&sheet.slug) }</p>
            <p class="wrong" role="alert" hidden={!gone}>{ if gone { shop.say("own.gone") } else { AttrValue::default() } }</p>
            <a href={to.address()} class="next-step">{ shop.say("own.open") }{ icon(Picture::Go) }</a>
        </section>
    }
}

/// A sheet whose editing was left.
fn being_edited(shop: &Shop, sheets: &SheetsContext) -> Html {
    let Some(draft) = &sheets.draft else { return html! { <span key="draft" hidden=true></span> } };
    html! {
        <section key="draft" class="kraft in-use">
            <h2>{ shop.say("own.editing") }</h2>
            <p hidden={draft.name.is_empty()}><b>{ &draft.name }</b></p>
            <p>{ counted(shop, "own.differs", draft.values.len(), &draft.base) }</p>
            <a href={Route::SheetEdit.address()} class="control">{ shop.say("own.go-on") }</a>
        </section>
    }
}

fn edition(shop: &Shop, sheets: &SheetsContext, own: &OwnSheet) -> Html {
    let made = [("by", own.by.clone()), ("at", clock::local(&own.at))];
    let made = shop.say_with(if own.by.is_empty() { "own.made-at" } else { "own.made" }, &made);
    let about = AttrValue::from(format!("{} {made}", differing(shop, own)));
    match own.sheet(shop.content()) {
        Ok(sheet) => row(shop, &sheet, about, sheets.editions.is_newest(own)),
        Err(_) => {
            let name = [("name", own.name.clone()), ("edition", own.edition.to_string())];
            linked(&own.slug(), shop.say_with("own.edition", &name), about, AttrValue::default())
        }
    }
}

fn row(shop: &Shop, sheet: &Sheet, about: AttrValue, newest: bool) -> Html {
    let used = shop.sheet().is_some_and(|now| now.slug == sheet.slug);
    let mark = match (used, newest) {
        (true, _) => shop.say("own.in-use"),
        (false, false) => shop.say("own.earlier"),
        (false, true) => AttrValue::default(),
    };
    linked(&sheet.slug, shop.sheet_name(&sheet.slug), about, mark)
}

fn linked(slug: &str, name: AttrValue, about: AttrValue, mark: AttrValue) -> Html {
    let to = Route::SheetOf { slug: slug.to_owned() };
    html! {
        <li key={slug.to_owned()}>
            <a href={to.address()} class="row-link">
                <span class="words"><b>{ name }</b><span class="note" hidden={about.is_empty()}>{ &about }</span></span>
                <span class="standing">{ mark }</span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
