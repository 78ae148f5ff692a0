//! What every paper ends with: room for two names, the code, how it is checked, and what it is not.

use super::Checked;
use crate::app::state::Shop;
use crate::device::clock;
use crate::signoff::{Code, Credential, grouped};
use yew::prelude::*;

pub(super) fn signatures(shop: &Shop, one: &Credential) -> Html {
    let assessor = [("name", one.assessor.name.clone()), ("number", one.assessor.number.text().to_owned())];
    let holder = [("number", one.subject.text().to_owned())];
    html! {
        <div key="signatures" class="signatures together">
            <p>{ shop.say_with("paper.assessor", &assessor) }</p>
            <p>{ shop.say_with("paper.holder-line", &holder) }</p>
        </div>
    }
}

pub(super) fn code(shop: &Shop, checked: &Checked<'_>) -> Html {
    html! {
        <div key="code" class="together">
            <p class="over">{ shop.say("paper.code") }</p>
            <p class="digits code">{ Code::new(checked.one, checked.hash).to_string() }</p>
            <p class="small">{ shop.say("paper.how") }</p>
            <p class="small">{ shop.say_with("paper.root", &[("fingerprint", grouped(&checked.list.root.fingerprint()))]) }</p>
        </div>
    }
}

pub(super) fn foot(shop: &Shop, checked: &Checked<'_>) -> Html {
    let by = [
        ("day", clock::day(checked.on)),
        ("number", checked.list.number.to_string()),
        ("issued", clock::day(&checked.list.issued)),
    ];
    html! {
        <footer class="small">
            <p>{ shop.say("paper.no-licence") }</p>
            <p>{ shop.say_with("paper.checked", &by) }</p>
        </footer>
    }
}
