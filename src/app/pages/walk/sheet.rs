//! The shop sheet of a walk, laid beside its ticket: a group of values is read when it is opened.

use crate::app::pages::sheet::sheet_table;
use crate::app::state::{Shared, use_shop};
use crate::content::SettingGroup;
use crate::rules::term::Term;
use crate::walk::Walk;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct SheetAtHandProps {
    pub(super) walk: Shared<Walk>,
}

#[component]
pub(super) fn SheetAtHand(props: &SheetAtHandProps) -> Html {
    let shop = use_shop();
    let sheet = &props.walk.start().sheet;
    let open = use_state(|| None::<SettingGroup>);
    let group = |group: &SettingGroup| {
        let (group, set) = (*group, open.setter());
        let onclick = move |_: MouseEvent| set.set(Some(group));
        let read = *open == Some(group);
        html! {
            <details key={group.slug()} name="walk-sheet">
                <summary {onclick}>{ shop.text(&format!("setting-group.{}", group.slug())) }</summary>
                { if read { sheet_table(&shop, sheet, group) } else { Html::default() } }
            </details>
        }
    };
    let named = [("sheet", shop.sheet_name(&sheet.slug).to_string())];
    html! {
        <details key="sheet" class="walk-sheet">
            <summary>{ shop.say_with("walk.sheet-at-hand", &named) }</summary>
            { for SettingGroup::ALL.iter().map(group) }
        </details>
    }
}
