//! What stands behind a sign-off of one apprentice, put together from cards, demonstrations, papers and the book.

use super::{Member, Ready, Source};
use crate::content::{Args, Competency, Profile, Texts};
use crate::learn::evidence::Evidence;
use crate::record::LocalDate;
use crate::signoff::{Request, Told, Watched, When, Wording};

/// What stands behind a sign-off.
#[derive(Debug, Clone, PartialEq)]
pub struct Signing<'a> {
    /// Whose work.
    pub member: &'a Member,
    /// How far they are.
    pub ready: Ready<'a>,
    /// Name of the sign-off that the new one takes the place of, whether its time has run out or not.
    pub replaces: Option<String>,
}

/// What whoever signs adds to it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Own {
    /// Name of the sign-off, see [`crate::signoff::credential_id`].
    pub id: String,
    /// Now.
    pub at: When,
    /// The day in the shop.
    pub today: LocalDate,
    /// When it runs out.
    pub until: When,
    /// Why it is signed though the knowledge evidence is not sufficient; empty where no reason is given.
    pub reason: String,
}

impl<'a> Signing<'a> {
    /// What stands behind a sign-off of somebody for a competency.
    #[must_use]
    pub fn of(source: &Source<'a>, member: &'a Member, competency: &'a Competency) -> Self {
        let stands = source.book.and_then(|book| book.stands_for(&member.number, &competency.slug));
        let replaces = stands.map(|entry| entry.credential.id.clone());
        Self { member, ready: source.ready(member, competency), replaces }
    }

    /// The knowledge evidence in words, as it stands on a sign-off.
    #[must_use]
    pub fn knowledge(&self, texts: &Texts) -> Told {
        told(&self.ready.evidence, texts)
    }

    /// What whoever signs asks for, in the words of a language.
    #[must_use]
    pub fn request(&self, own: Own, texts: &Texts) -> Request<'a> {
        let Ready { competency, evidence, shown, needs, needs_knowledge, .. } = &self.ready;
        let competency: &'a Competency = competency;
        let without = |all: &[String], missing: &[&str]| {
            all.iter().filter(|slug| !missing.contains(&slug.as_str())).cloned().collect()
        };
        let Watched { criteria, observed, unsettled, on_file } = Watched::of(shown, competency, texts);
        let reason = own.reason.trim();
        let reasoned =
            || Told { name: texts.get("sign-off.reason").to_owned(), narrative: reason.to_owned() };
        Request {
            id: own.id,
            subject: self.member.number.clone(),
            competency,
            wording: wording(competency, texts),
            held: without(&competency.needs, needs),
            known: without(&competency.needs_knowledge, needs_knowledge),
            call: evidence.state.call,
            open_critical: u32::try_from(evidence.hazards.len()).unwrap_or(u32::MAX),
            knowledge: self.knowledge(texts),
            reason: (!reason.is_empty()).then(reasoned),
            criteria,
            observed,
            unsettled,
            on_file,
            at: own.at,
            today: own.today,
            until: own.until,
        }
    }
}

fn wording(competency: &Competency, texts: &Texts) -> Wording {
    let slug = &competency.slug;
    let said = |key: &str, named: &[(&str, String)]| {
        let args: Args = named.iter().map(|(name, value)| ((*name).to_owned(), value.clone())).collect();
        texts.fill(&format!("sign-off.{key}"), &args)
    };
    let reached = match competency.profile {
        Profile::Safety => "reached-safety",
        Profile::Ordinary => "reached",
    };
    let counts =
        [("demonstrations", competency.demonstrations.to_string()), ("days", competency.days.to_string())];
    Wording {
        version: texts.get("sign-off.version").to_owned(),
        name: texts.get(&format!("competency.{slug}")).to_owned(),
        description: said("may", &[("may", texts.get(&format!("may.{slug}")).to_owned())]),
        criteria: said(reached, &counts),
    }
}

/// The knowledge evidence in words, with the count of what could not be read.
fn told(evidence: &Evidence, texts: &Texts) -> Told {
    let state = &evidence.state;
    let since = evidence.sufficient_since.filter(|_| evidence.suffices());
    let args = Args::from([
        ("right".to_owned(), state.right.to_string()),
        ("answers".to_owned(), state.answers.to_string()),
        ("day".to_owned(), since.map(|day| day.to_string()).unwrap_or_default()),
        ("unreadable".to_owned(), evidence.unreadable.to_string()),
        ("by".to_owned(), evidence.supervised.as_ref().map(|by| by.name.clone()).unwrap_or_default()),
    ]);
    let keys = [
        (state.answers == 0, "knowledge-none"),
        (state.answers > 0, "knowledge"),
        (since.is_some(), "knowledge-since"),
        (evidence.supervised.is_some(), "knowledge-supervised"),
        (evidence.supervised.is_none() && state.answers > 0, "knowledge-alone"),
        (evidence.unreadable > 0, "knowledge-unreadable"),
    ];
    let said = keys.iter().filter(|(stands, _)| *stands);
    let said: Vec<String> = said.map(|(_, key)| texts.fill(&format!("sign-off.{key}"), &args)).collect();
    Told { name: texts.get("sign-off.cards").to_owned(), narrative: said.join(" ") }
}
