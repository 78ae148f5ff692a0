//! Two shop sheets beside each other: the values in which they differ.

use crate::app::parts::{Column, Frame, differ_table};
use crate::app::route::Route;
use crate::app::state::use_shop;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct BesideProps {
    pub(in crate::app) slug: String,
    pub(in crate::app) other: String,
}

#[component]
pub(in crate::app) fn Beside(props: &BesideProps) -> Html {
    let shop = use_shop();
    let column = |slug: &str| {
        let sheet = shop.content().sheet(slug)?;
        Some(Column { name: shop.sheet_name(slug), sheet })
    };
    let table = column(&props.slug).zip(column(&props.other));
    let back = Route::SheetOf { slug: props.slug.clone() };
    html! {
        <Frame class="sheet own-sheets" title={shop.say("own.beside")} back={Some(back)} cautions={shop.cautions_for(&[])}>
            <section key="table" class="paper">
                { match &table {
                    Some((one, other)) => differ_table(&shop, one, other),
                    None => html! { <p key="none">{ shop.say("own.no-such") }</p> },
                } }
            </section>
        </Frame>
    }
}
