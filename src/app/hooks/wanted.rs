//! Whether what was begun is still wanted once it is done.

use std::cell::Cell;
use std::rc::Rc;
use yew::prelude::*;

/// Counts what is begun: the last of it is wanted, and nothing of it once the screen is gone.
#[derive(Debug, Clone, Default)]
pub(in crate::app) struct Wanted(Rc<Cell<u32>>);

impl Wanted {
    /// Nothing that was begun is wanted any more.
    pub(in crate::app) fn none(&self) {
        self.0.set(self.0.get().wrapping_add(1));
    }

    /// Begins something in the place of what was begun before; what comes back tells whether it is still wanted.
    pub(in crate::app) fn anew(&self) -> impl Fn() -> bool + 'static {
        self.none();
        let (count, own) = (Rc::clone(&self.0), self.0.get());
        move || count.get() == own
    }
}

/// For what takes its time while somebody may go on.
#[hook]
pub(in crate::app) fn use_wanted() -> Wanted {
    let wanted = (*use_memo((), |()| Wanted::default())).clone();
    use_effect_with((), {
        let wanted = wanted.clone();
        move |()| move || wanted.none()
    });
    wanted
}
