//! What a person remembers, family by family. Each answer is read once; whoever picks looks at families and not at answers.

use super::{Answered, Earlier, Memory, graded};
use std::collections::BTreeMap;

/// How one person remembers everything that was asked.
#[derive(Debug, Clone, Default)]
pub struct Remembered {
    families: BTreeMap<String, Family>,
    /// The family of the latest answer.
    last: Option<String>,
    /// Answers so far.
    answers: usize,
}

#[derive(Debug, Clone)]
struct Family {
    memory: Memory,
    earlier: Earlier,
    /// Place of its latest answer among all.
    latest: usize,
}

impl Remembered {
    /// What a person's answers leave, oldest first.
    #[must_use]
    pub fn of<'a>(history: impl IntoIterator<Item = &'a Answered>) -> Self {
        let mut past = Self::default();
        history.into_iter().for_each(|answer| past.take(answer));
        past
    }

    /// One more answer, later than all before.
    pub fn take(&mut self, answer: &Answered) {
        let latest = self.answers;
        self.answers += 1;
        if self.last.as_ref() != Some(&answer.family) {
            self.last = Some(answer.family.clone());
        }
        if let Some(family) = self.families.get_mut(&answer.family) {
            let grade = graded(answer, &family.earlier);
            family.memory = Memory::after(Some(family.memory), answer.day, grade);
            family.earlier.take(answer);
            family.latest = latest;
        } else {
            let grade = graded(answer, &Earlier::default());
            let memory = Memory::after(None, answer.day, grade);
            let family = Family { memory, earlier: Earlier::of([answer]), latest };
            self.families.insert(answer.family.clone(), family);
        }
    }

    /// The memory of a family; `None` where it was never asked.
    #[must_use]
    pub fn memory(&self, family: &str) -> Option<&Memory> {
        self.families.get(family).map(|family| &family.memory)
    }

    /// How often a family was answered.
    #[must_use]
    pub fn answers(&self, family: &str) -> usize {
        self.families.get(family).map_or(0, |family| family.earlier.answers())
    }

    /// Place of the latest answer of a family among all answers, from 0.
    #[must_use]
    pub fn latest(&self, family: &str) -> Option<usize> {
        self.families.get(family).map(|family| family.latest)
    }

    /// The family of the latest answer of all.
    #[must_use]
    pub fn last(&self) -> Option<&str> {
        self.last.as_deref()
    }

    /// Answers in all.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.answers
    }
}
