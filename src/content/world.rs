//! What a rule may look things up in while a card or a calculation is worked: content and one shop sheet.

use super::{Content, Ticket};
use crate::rules::fault::Fault;
use crate::rules::hazard::Solvent;
use crate::rules::mixing::Cup;
use crate::rules::sequence::job::{Job, Part};
use crate::rules::sheet::Sheet;
use crate::rules::verdict::CannotJudge;
use crate::rules::wood::Wood;

/// Content and the shop sheet in use.
#[derive(Debug, Clone, Copy)]
pub struct World<'a> {
    /// The checked content.
    pub content: &'a Content,
    /// The shop sheet in use.
    pub sheet: &'a Sheet,
}

impl<'a> World<'a> {
    /// The wood with that slug.
    ///
    /// # Errors
    /// [`CannotJudge`] when no such wood is known.
    pub fn wood(&self, slug: &str) -> Result<&'a Wood, CannotJudge> {
        self.content.wood(slug).ok_or_else(|| CannotJudge::without("wood"))
    }

    /// The efflux cup with that slug.
    ///
    /// # Errors
    /// [`CannotJudge`] when no such cup is known.
    pub fn cup(&self, slug: &str) -> Result<&'a Cup, CannotJudge> {
        self.content.cup(slug).ok_or_else(|| CannotJudge::without("cup"))
    }

    /// The ticket with that slug.
    ///
    /// # Errors
    /// [`CannotJudge`] when no such ticket is known.
    pub fn ticket(&self, slug: &str) -> Result<&'a Ticket, CannotJudge> {
        self.content.ticket(slug).ok_or_else(|| CannotJudge::without("ticket"))
    }

    /// A ticket as the order checker takes it, done on the shop sheet in use.
    ///
    /// # Errors
    /// [`CannotJudge`] when a wood of the ticket is not known.
    pub fn job(&self, ticket: &Ticket) -> Result<Job, CannotJudge> {
        let parts: Result<Vec<Part>, CannotJudge> =
            ticket.parts.iter().map(|part| self.wood(&part.wood).map(Part::of)).collect();
        Ok(Job {
            parts: parts?,
            look: ticket.look,
            class: ticket.class,
            colour: ticket.colour,
            water_dye: false,
            shaded: ticket.shaded,
            binding: ticket.binding,
            filler: ticket.filler,
            coating: self.sheet.coating(),
            melts: Job::melting(self.sheet.coating()),
        })
    }

    /// The solvent with that slug.
    ///
    /// # Errors
    /// [`CannotJudge`] when no such solvent is known.
    pub fn solvent(&self, slug: &str) -> Result<&'a Solvent, CannotJudge> {
        self.content.solvent(slug).ok_or_else(|| CannotJudge::without("solvent"))
    }

    /// The fault with that id.
    ///
    /// # Errors
    /// [`CannotJudge`] when no such fault is known.
    pub fn fault(&self, id: &str) -> Result<&'a Fault, CannotJudge> {
        self.content.fault(id).ok_or_else(|| CannotJudge::without("fault"))
    }

    /// Whether a ticket is work for the shop sheet in use: its own sheet, or one of the same coating where no ticket
    /// names the sheet.
    #[must_use]
    pub fn does(&self, ticket: &Ticket) -> bool {
        let named = self.content.tickets.iter().any(|one| one.sheet == self.sheet.slug);
        if named {
            return ticket.sheet == self.sheet.slug;
        }
        self.content.sheet(&ticket.sheet).is_some_and(|sheet| sheet.coating() == self.sheet.coating())
    }
}
