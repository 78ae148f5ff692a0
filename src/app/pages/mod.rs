//! The screens, one a file.

mod asked;
mod assess;
mod band;
mod bench;
mod calculation;
mod card;
mod copy;
mod deal;
mod entry;
mod handed;
mod home;
mod menu;
mod panel;
mod people;
mod practise;
mod record;
mod sheet;
mod verify;
mod who;

pub(super) use asked::{Asked, AskedOf};
pub(super) use assess::{Assess, AssessPerson, Observe};
pub(super) use band::Band;
pub(super) use bench::Bench;
pub(super) use calculation::Calculation;
pub(super) use copy::save_copy;
pub(super) use entry::Entry;
pub(super) use home::Home;
pub(super) use menu::Menu;
pub(super) use panel::Panel;
pub(super) use people::{People, Person};
pub(super) use practise::Practise;
pub(super) use record::Record;
pub(super) use sheet::ShopSheet;
pub(super) use verify::{Verify, VerifyAbout};
pub(super) use who::Who;
