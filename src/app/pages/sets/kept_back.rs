//! The answers of a check that asks everybody the same, kept back on a tablet that took it: whether they are, and why.

use super::taken::stand;
use crate::app::hooks::{use_book, use_keys_held};
use crate::app::parts::Unlock;
use crate::app::state::{KeptSet, Origin, Shared, Shop, use_shop};
use crate::exchange::set::Asker;
use crate::learn::check::Stand;
use crate::record::Journal;
use yew::prelude::*;

/// How it stands with the answers of a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app::pages) enum Answers {
    /// They may be seen.
    Open,
    /// They may, since a key is open.
    OpenByKey,
    /// They are kept back.
    KeptBack,
}

impl Answers {
    pub(in crate::app::pages) fn are_kept_back(self) -> bool {
        self == Self::KeptBack
    }
}

/// What decides it for the person at work.
pub(in crate::app::pages) struct Keeping {
    shop: Shop,
    journal: Shared<Journal>,
    signs: bool,
}

#[hook]
pub(in crate::app::pages) fn use_keeping() -> Keeping {
    let shop = use_shop();
    let journal = use_book().book.journal.clone();
    Keeping { shop, journal, signs: use_keys_held().open.is_some() }
}

impl Keeping {
    /// How it stands with the answers of a set; open where it is not here, since nobody is asked it then.
    pub(in crate::app::pages) fn of(&self, kept: Option<&KeptSet>) -> Answers {
        let Some(kept) = kept else { return Answers::Open };
        let nobody = self.shop.settings.person.is_empty();
        let handed_in = !nobody && stand(&self.shop, &self.journal, kept) == Stand::Done;
        let asker = Asker { taken: kept.origin == Origin::Taken, handed_in, signs: false };
        match (kept.set.keeps_back(asker), kept.set.keeps_back(Asker { signs: self.signs, ..asker })) {
            (_, true) => Answers::KeptBack,
            (true, false) => Answers::OpenByKey,
            (false, false) => Answers::Open,
        }
    }
}

/// How it stands with the answers of one set.
#[hook]
pub(in crate::app::pages) fn use_answers(kept: Option<&KeptSet>) -> Answers {
    use_keeping().of(kept)
}

/// Why they are not there, and the way to them for who may sign.
pub(in crate::app::pages) fn kept_back(shop: &Shop, answers: Answers) -> Html {
    let said = match answers {
        Answers::Open => return Html::default(),
        Answers::OpenByKey => "sets.kept-back.open",
        Answers::KeptBack => "sets.kept-back.why",
    };
    html! {
        <section key="kept-back" class="kept-back">
            <p class="kraft" role="status">{ shop.say(said) }</p>
            <details class="hand-on"><summary>{ shop.say("sets.kept-back.key") }</summary><Unlock /></details>
        </section>
    }
}
