//! Carries what a folder asks over HTTP, with a clock of its own, and stops in the middle now and then.

use crate::http::Client;
use crate::proxy::Dice;
use std::collections::BTreeMap;
use stepboard::exchange::folder::{Aside, Folder, Name, News, Refusal, Shelves, Step, Stop};

/// The files of a tablet in memory.
#[derive(Debug, Default)]
pub(crate) struct Tablet {
    pub(crate) own: BTreeMap<Name, String>,
    pub(crate) taken: BTreeMap<Name, String>,
}

impl Shelves for Tablet {
    fn text(&self, name: &Name) -> Option<String> {
        self.own.get(name).cloned()
    }

    fn has(&self, name: &Name) -> bool {
        self.taken.contains_key(name)
    }
}

/// What happened until nothing was left to do.
#[derive(Debug, Default)]
pub(crate) struct Told {
    pub(crate) refused: BTreeMap<Name, Refusal>,
    pub(crate) aside: BTreeMap<Name, Aside>,
    pub(crate) stops: Vec<Stop>,
    pub(crate) restarts: u32,
    pub(crate) waits: u32,
}

/// How often it stops in the middle: one step in so many, and what is stored is as old as that many steps.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Restarts {
    pub(crate) one_in: u64,
    pub(crate) store_every: u64,
}

/// Works until everything has arrived, was refused, or came. Whoever is asked to do something about a stop says "go on".
pub(crate) fn work(
    folder: &mut Folder,
    tablet: &mut Tablet,
    client: &mut Client,
    dice: &mut Dice,
    restarts: Restarts,
) -> Told {
    let mut told = Told::default();
    let mut now = 1_800_000_000_000;
    let mut stored = serde_json::to_string(folder).expect("state");
    let mut looked = 0;
    for step in 1_u64.. {
        assert!(step < 2_000_000, "it does not come to an end: {:?}", told.stops.last());
        now += 20;
        if step.is_multiple_of(restarts.store_every) {
            stored = serde_json::to_string(folder).expect("state");
        }
        let asked = folder.next(now, tablet);
        // The tablet dies before or after the server was asked; it goes on from what was stored last.
        let dies = dice.one_in(restarts.one_in);
        let news = match asked {
            Step::Ask(ask) => {
                let heard = client.carry(&ask);
                if dies { Vec::new() } else { folder.heard(now, dice.next(), heard, tablet) }
            }
            Step::Told(news) => vec![news],
            Step::Wait(until) => {
                told.waits += 1;
                let waits = folder.outbox().waiting() > 0 || folder.coming() > 0;
                // Listed twice with nothing to fetch any more: all is done.
                if !waits && looked >= 2 {
                    return told;
                }
                now = until;
                Vec::new()
            }
            Step::Stopped => {
                told.stops.push(folder.stopped().expect("why").clone());
                folder.hurry();
                Vec::new()
            }
            Step::Busy => panic!("nothing is on its way"),
        };
        for one in news {
            match one {
                News::Come(name, text) => {
                    assert!(tablet.taken.insert(name, text).is_none(), "fetched twice");
                }
                // An answer that makes no sense is told, and whoever reads it says "once more".
                News::Refused(name, Refusal::Status(status)) => {
                    assert_eq!(status, 409, "only what was injected");
                    folder.again(&name);
                }
                News::Refused(name, why) => {
                    told.refused.insert(name, why);
                }
                News::SetAside(name, why) => {
                    told.aside.insert(name, why);
                }
                News::Looked(wanted) => looked = if wanted == 0 { looked + 1 } else { 0 },
                News::Proven | News::Arrived(_) | News::Stopped(_) => {}
            }
        }
        if dies {
            *folder = serde_json::from_str(&stored).expect("what was stored");
            told.restarts += 1;
        }
    }
    told
}
