//! How far one apprentice is in one competency: cards, demonstrations, papers, what comes before, what is signed.

use super::Member;
use crate::content::{Competency, Content};
use crate::learn::evidence::{Asked as Known, Evidence, evidence_among};
use crate::learn::observation::{Asked, Shown, shown};
use crate::record::{Journal, LocalDate, Placed};
use crate::signoff::{Book, Standing, When};
use crate::terms;

terms! {
    /// How far it is. Text: `app.assess.far.<slug>`.
    Far {
        /// Nothing on this side bars signing.
        Ready = "ready",
        /// Some of it was watched.
        Watched = "watched",
        /// The cards suffice.
        Known = "known",
        /// It stands signed.
        Signed = "signed",
        /// The cards do not suffice yet, and nothing was watched.
        Cards = "cards",
    }
}

/// What everything is read from, now.
#[derive(Debug, Clone, Copy)]
pub struct Source<'a> {
    /// The content.
    pub content: &'a Content,
    /// The journal of this device.
    pub journal: &'a Journal,
    /// Events that knowledge evidence is taken from: those of the journal, or more where something was done on other tablets,
    /// under the names that are used here.
    pub knowledge: &'a Placed<'a>,
    /// The sign-off book, where one is begun.
    pub book: Option<&'a Book>,
    /// The day in the shop.
    pub today: LocalDate,
    /// The moment.
    pub now: &'a When,
}

/// How far one apprentice is in one competency.
#[derive(Debug, Clone, PartialEq)]
pub struct Ready<'a> {
    /// Which.
    pub competency: &'a Competency,
    /// What the cards prove.
    pub evidence: Evidence,
    /// What was watched and what is on file.
    pub shown: Shown<'a>,
    /// Whether it stands signed.
    pub signed: bool,
    /// Slugs of those that come before it and do not stand signed.
    pub needs: Vec<&'a str>,
    /// Slugs of those whose cards come before it and do not suffice.
    pub needs_knowledge: Vec<&'a str>,
}

impl<'a> Source<'a> {
    /// How far somebody is in a competency.
    #[must_use]
    pub fn ready(&self, member: &'a Member, competency: &'a Competency) -> Ready<'a> {
        let events = self.journal.events();
        let after = self.book.and_then(|book| last_signed(book, member, &competency.slug));
        let asked = Asked { subject: member.number.text(), competency, after, today: self.today };
        let unsigned = |slug: &&String| !self.stands(member, slug);
        let unknown = |slug: &&String| {
            unsigned(slug)
                && self.content.competency(slug).is_none_or(|one| !self.known(member, one).suffices())
        };
        Ready {
            competency,
            evidence: self.known(member, competency),
            shown: shown(events, &asked),
            signed: self.stands(member, &competency.slug),
            needs: competency.needs.iter().filter(unsigned).map(String::as_str).collect(),
            needs_knowledge: competency.needs_knowledge.iter().filter(unknown).map(String::as_str).collect(),
        }
    }

    fn known(&self, member: &Member, competency: &Competency) -> Evidence {
        let asked = Known::usual(self.content, &member.journal, competency);
        evidence_among(self.knowledge, &Known { unreadable: self.journal.unreadable(), ..asked })
    }

    fn stands(&self, member: &Member, slug: &str) -> bool {
        let all = self.content.shipped();
        self.book.is_some_and(|book| {
            matches!(book.standing(&member.number, slug, all, self.now), Standing::Held(_))
        })
    }
}

/// The day on which it was last signed for, whether that still counts or not.
#[must_use]
pub fn last_signed(book: &Book, member: &Member, slug: &str) -> Option<LocalDate> {
    let theirs = book.sign_offs().iter().map(|entry| &entry.credential);
    let of = theirs.filter(|one| one.subject == member.number && one.achievement.slug == slug);
    of.filter_map(|one| one.from.date()).max()
}

impl Ready<'_> {
    /// How far it is.
    #[must_use]
    pub fn far(&self) -> Far {
        let known = self.evidence.suffices();
        let before = self.needs.is_empty() && self.needs_knowledge.is_empty();
        match () {
            () if known && before && self.shown.missing.is_empty() => Far::Ready,
            () if !self.shown.demonstrations.is_empty() && !self.signed => Far::Watched,
            () if self.signed => Far::Signed,
            () if known => Far::Known,
            () => Far::Cards,
        }
    }
}
