//! What a person remembers, family by family. Each answer is read once; whoever picks looks at families and not at answers.

use super::{Answered, Earlier, Memory, graded};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// How one person remembers everything that was asked. As JSON it is what a pick looks at, without the usual times: read from
/// there it takes no more answers.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Remembered {
    families: BTreeMap<String, Family>,
    /// What is known of earlier answers, by family.
    #[serde(skip)]
    earlier: BTreeMap<String, Earlier>,
    /// The family of the latest answer.
    last: Option<String>,
    /// Answers so far.
    answers: usize,
}

#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Family {
    memory: Memory,
    /// How often it was answered.
    answers: usize,
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
        if let Some((family, earlier)) =
            self.families.get_mut(&answer.family).zip(self.earlier.get_mut(&answer.family))
        {
            let grade = graded(answer, earlier);
            family.memory = Memory::after(Some(family.memory), answer.day, grade);
            earlier.take(answer);
            (family.answers, family.latest) = (family.answers + 1, latest);
        } else {
            let grade = graded(answer, &Earlier::default());
            let memory = Memory::after(None, answer.day, grade);
            self.families.insert(answer.family.clone(), Family { memory, answers: 1, latest });
            self.earlier.insert(answer.family.clone(), Earlier::of([answer]));
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
        self.families.get(family).map_or(0, |family| family.answers)
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
