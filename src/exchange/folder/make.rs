//! Makes the folder where it is not there, and those that it lies in.

/// Which folders are to be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Make {
    /// The next to be made, so many steps outwards.
    next: Option<usize>,
    /// How far outwards folders were asked for.
    outermost: usize,
    /// Whether all were made since the last file arrived.
    done: bool,
}

impl Make {
    /// The folder that is to be made next, so many steps outwards.
    pub(super) const fn next(self) -> Option<usize> {
        self.next
    }

    /// The folder is not there. False where it was made already: then making it does not help.
    pub(super) const fn begin(&mut self) -> bool {
        if self.done {
            return false;
        }
        *self = Self { next: Some(0), outermost: 0, done: false };
        true
    }

    /// That one is there now; the next one inwards is made, or all are.
    pub(super) const fn made(&mut self, outwards: usize) {
        self.next = outwards.checked_sub(1);
        self.done = self.next.is_none();
    }

    /// That one cannot be made before the one that it lies in. False where there is none or it was asked for already.
    pub(super) const fn outwards(&mut self, outwards: usize, all: usize) -> bool {
        let more = outwards + 1;
        if more >= all || more <= self.outermost {
            return false;
        }
        self.outermost = more;
        self.next = Some(more);
        true
    }
}
