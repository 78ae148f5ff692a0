//! What a screen of a check shows, worked out once an event.

use super::super::deal;
use crate::app::state::Shop;
use crate::content::World;
use crate::learn::check::{Course, Now, Sitting, sheet_of};
use crate::record::{Draft, Journal, LocalDate, Placed, SheetName, Standing};

/// A check of this tablet that is not closed.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct View {
    pub(super) set: String,
    pub(super) person: String,
    /// Number of its latest step, and whether it was left with it.
    pub(super) step: u64,
    pub(super) left: bool,
    /// Cards done today, and the seconds that they took.
    pub(super) today: u32,
    pub(super) seconds: u32,
    pub(super) done: bool,
    pub(super) over: bool,
    /// Whether cards of its scenario set come first.
    pub(super) of_set: bool,
    /// Whether its answers stand on a sheet that is not on this tablet.
    pub(super) sheet_gone: bool,
    /// The next card.
    pub(super) next: Option<Draft>,
    /// From which day each competency wants answers again, where it wants none today.
    from: Vec<(String, LocalDate)>,
    /// Families and seeds that were answered in it.
    answered: Vec<(String, u32)>,
}

impl View {
    pub(super) fn of(shop: &Shop, journal: &Journal, attempt: &str, now: Now) -> Option<Self> {
        let (content, device) = (shop.content(), shop.settings.device.as_str());
        let placed = Placed::of(journal.events());
        let sitting = Sitting::among(content, &placed, device, attempt, now)?;
        let set = sitting.attempt.set;
        let answers = placed.answers(attempt, device);
        let sheet = sheet_of(content, set, &answers, shop.sheet());
        let person = sitting.attempt.person.to_owned();
        let draft = |sheet| {
            let card = sitting.next(&World { content, sheet })?;
            let draft = Draft::new(&person, &card, SheetName::of(sheet), None, sitting.today);
            Some(Draft { attempt: Some(attempt.to_owned()), ..draft })
        };
        let next = sheet.and_then(draft);
        let from = |course: &Course<'_>| Some((course.competency.slug.clone(), course.from?));
        Some(Self {
            set: set.to_owned(),
            step: sitting.attempt.step,
            left: sitting.attempt.standing == Standing::Left,
            today: sitting.today,
            seconds: sitting.seconds,
            done: sitting.is_done(),
            over: sitting.is_over(),
            of_set: sitting.attempt.set_left() > 0,
            sheet_gone: sheet.is_none(),
            next,
            from: sitting.courses.iter().filter_map(from).collect(),
            answered: sitting.cards.iter().map(|(family, seed)| ((*family).to_owned(), *seed)).collect(),
            person,
        })
    }

    /// From which day a competency wants answers again, where it wants none today.
    pub(super) fn from(&self, competency: &str) -> Option<LocalDate> {
        self.from.iter().find(|(slug, _)| slug == competency).map(|(_, day)| *day)
    }

    /// Whether a card on the desk is one of this check that waits for its answer and can still be dealt.
    pub(super) fn waits(&self, shop: &Shop, attempt: &str, draft: &Draft) -> bool {
        let card = (draft.card.family.clone(), draft.card.seed);
        draft.attempt.as_deref() == Some(attempt)
            && draft.person == self.person
            && !self.done
            && !self.sheet_gone
            && !self.answered.contains(&card)
            && deal::again(shop, &draft.card).is_some()
    }
}
