//! Effects that several screens need.

mod air;
mod backing;
mod contexts;
mod crew;
mod crew_others;
mod crew_shelf;
mod crew_view;
mod draft;
mod folder;
mod idle;
mod keeper;
mod keys;
mod lock;
mod naming;
mod office;
mod reading;
mod route;
mod second_tap;
mod sets;
mod sheets;
mod shop_content;
mod size;
mod stamped;
mod standings;
mod told;
mod version;
mod walk_journal;
mod walks;
mod wanted;
mod watching;
mod writer;

pub(super) use air::use_kept_air;
pub(super) use backing::use_backing;
pub(super) use contexts::{
    use_air, use_book, use_crew, use_desk, use_everything, use_folder, use_keys_held, use_lock, use_people,
    use_sets, use_settings, use_sheets, use_signed, use_stricter, use_walks, use_watching,
};
pub(super) use crew::{Around, save_results, use_kept_crew};
pub(super) use crew_view::theirs;
pub(super) use folder::use_kept_folder;
pub(super) use idle::use_idle;
pub(super) use keeper::{Keeper, use_keeper};
pub(super) use keys::{use_enter, use_keys};
pub(super) use lock::use_kept_lock;
pub(super) use naming::{Naming, use_naming};
pub(super) use office::{use_kept_keys, use_kept_people, use_kept_signed, use_kept_stricter};
pub(super) use reading::{is_short, use_kept_front};
pub(super) use route::{use_before_menu, use_coming, use_route};
pub(super) use second_tap::use_second_tap;
pub(super) use sets::use_kept_sets;
pub(super) use sheets::use_kept_sheets;
pub(super) use shop_content::use_shop_content;
pub(super) use size::use_size;
pub(super) use stamped::use_stamped;
pub(super) use standings::use_standings;
pub(super) use told::{now, use_told};
pub(super) use version::use_new_version;
pub(super) use walk_journal::{use_inspected_journal, use_walk_journal, write_let_go};
pub(super) use walks::use_kept_walks;
pub(super) use wanted::{Wanted, use_wanted};
pub(super) use watching::use_kept_watching;
