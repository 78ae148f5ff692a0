//! Scenario sets as they stand in files: what a set asks, and how it is taken and judged.

use super::{Content, FamilyInfo};
use crate::rules::term::{Stage, Term};
use crate::terms;
use serde::{Deserialize, Serialize};

/// A scenario set that ships, on a shop sheet that ships. Text: `set.<slug>`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioSet {
    /// Slug of the set.
    pub slug: String,
    /// Slug of the shop sheet it is dealt on.
    pub sheet: String,
    /// What it asks.
    pub task: Task,
}

terms! {
    /// How hard the cards are, by what a card asks for. Who takes them plays no part in it. Text: `app.sets.hard.<slug>`.
    Hard {
        /// All is told on every card; those come first on which an answer is picked from a list.
        Easy = "easy",
        /// Cards as they fall.
        Usual = "usual",
        /// Those come first on which an answer is made and not picked: a number, an order, all that apply, a place, a
        /// diagnosis, a face sprayed.
        Made = "hard",
    }
    /// What a set is for. Text: `app.sets.purpose.<slug>`.
    Purpose {
        /// Each answer is told at once.
        Practise = "practise",
        /// Answers are told once all are given.
        Check = "check",
    }
}

/// When a set is passed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PassRule {
    /// Least number of right answers; `least` in files, which hold no right answer.
    #[serde(rename = "least")]
    pub right: u32,
    /// Whether a wrong answer about safety that would have been done on the job fails it, whatever else was right.
    pub safety: bool,
}

impl PassRule {
    /// The rule that wants the same share of another number of cards, to the nearest card and one at least.
    #[must_use]
    pub fn of_cards(self, before: u32, after: u32) -> Self {
        let [right, before, after] = [self.right, before.max(1), after.max(1)].map(u64::from);
        let right = (right * after + before / 2) / before;
        Self { right: u32::try_from(right.clamp(1, after)).unwrap_or(self.right), ..self }
    }
}

/// What a set asks, and how it is taken and judged. A family is drawn from when its stage, a competency of its or the family
/// itself is named.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Task {
    /// How many cards are dealt.
    pub count: u32,
    /// Bands whose families it draws from.
    #[serde(default)]
    pub stages: Vec<Stage>,
    /// Slugs of competencies whose families it draws from.
    #[serde(default)]
    pub competencies: Vec<String>,
    /// Families it draws from besides.
    #[serde(default)]
    pub families: Vec<String>,
    /// Job tickets: where the situation of a card is a ticket, it is one of these; with none named, any.
    #[serde(default)]
    pub tickets: Vec<String>,
    /// Whether cards that show a panel, or a face to be sprayed, are left out.
    #[serde(default)]
    pub no_pictures: bool,
    /// How hard the cards are.
    #[serde(default)]
    pub hard: Hard,
    /// What it is for.
    #[serde(default)]
    pub purpose: Purpose,
    /// Everybody gets the cards of this number; with none, each person and each attempt gets others.
    #[serde(default)]
    pub same_seed: Option<u32>,
    /// When it is passed; with none, nothing is said of passing.
    #[serde(default)]
    pub pass: Option<PassRule>,
}

/// What is not allowed in a task.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaskProblem {
    /// Member with points between names and places: `families.2`.
    pub place: String,
    /// What stands there.
    pub found: String,
    /// What is allowed.
    pub allowed: Allowed,
}

/// What is allowed at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Allowed {
    /// Whole numbers from one to another.
    Span(u32, u32),
    /// The names of a list of the content, and none twice: the list and its names.
    Names(&'static str, Vec<String>),
    /// At least one stage with cards, or a family, or a competency: the stages with cards.
    Something(Vec<&'static str>),
}

#[allow(clippy::derivable_impls, reason = "the macro takes no default")]
impl Default for Hard {
    fn default() -> Self {
        Self::Usual
    }
}

#[allow(clippy::derivable_impls, reason = "the macro takes no default")]
impl Default for Purpose {
    fn default() -> Self {
        Self::Practise
    }
}

impl Task {
    /// Greatest number of cards in a set: more is nobody's work at one go. Common practice, no source.
    pub const COUNT_MOST: u32 = 60;

    /// The families it draws from, in the order of content.
    #[must_use]
    pub fn families_of<'a>(&self, content: &'a Content) -> Vec<&'a FamilyInfo> {
        let named = |family: &&FamilyInfo| {
            self.stages.contains(&family.stage)
                || self.families.contains(&family.id)
                || family.competencies.iter().any(|slug| self.competencies.contains(slug))
        };
        let shows = |family: &&FamilyInfo| !(self.no_pictures && family.is_pictured());
        content.families.iter().filter(named).filter(shows).collect()
    }

    /// What is not allowed in it, with so many cards beside those that are dealt; of a list that is longer than all that it may
    /// name, its length alone.
    #[must_use]
    pub fn problems(&self, content: &Content, others: u32) -> Vec<TaskProblem> {
        let mut problems = Vec::new();
        let mut refuse = |place: String, found: String, allowed| {
            problems.push(TaskProblem { place, found, allowed });
        };
        let (least, most) = (u32::from(others == 0), Self::COUNT_MOST.saturating_sub(others));
        if !(least..=most).contains(&self.count) {
            refuse("count".to_owned(), self.count.to_string(), Allowed::Span(least, most));
        }
        let families = content.families.iter().map(|one| one.id.clone()).collect();
        let competencies = content.competencies.iter().map(|one| one.slug.clone()).collect();
        let tickets = content.tickets.iter().map(|one| one.slug.clone()).collect();
        let stages: Vec<String> = self.stages.iter().map(|stage| stage.slug().to_owned()).collect();
        let all_stages = Stage::ALL.iter().map(|stage| stage.slug().to_owned()).collect();
        let lists: [(&str, _, &Vec<String>, Vec<String>); 4] = [
            ("stages", "stage", &stages, all_stages),
            ("competencies", "competency", &self.competencies, competencies),
            ("families", "card family", &self.families, families),
            ("tickets", "ticket", &self.tickets, tickets),
        ];
        for (place, what, named, known) in lists {
            // One problem, not one an entry: a hostile file may name the same a hundred thousand times.
            if named.len() > known.len() {
                let most = u32::try_from(known.len()).unwrap_or(u32::MAX);
                refuse(place.to_owned(), named.len().to_string(), Allowed::Span(0, most));
                continue;
            }
            for (nth, name) in named.iter().enumerate() {
                if !known.contains(name) || named.iter().take(nth).any(|before| before == name) {
                    refuse(format!("{place}.{nth}"), name.clone(), Allowed::Names(what, known.clone()));
                }
            }
        }
        if self.count > 0 && self.families_of(content).is_empty() {
            let with_cards = |stage: &&Stage| content.families.iter().any(|family| family.stage == **stage);
            let stages = Stage::ALL.iter().filter(with_cards).map(|stage| stage.slug()).collect();
            refuse("stages".to_owned(), "nothing that deals cards".to_owned(), Allowed::Something(stages));
        }
        if let Some(pass) = self.pass {
            let most = self.count.saturating_add(others);
            if !(1..=most).contains(&pass.right) {
                refuse("pass.least".to_owned(), pass.right.to_string(), Allowed::Span(1, most));
            }
        }
        problems
    }
}
