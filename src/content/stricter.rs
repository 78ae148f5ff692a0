//! What a shop asks for more than the content does before somebody is signed off. More is always allowed and less never
//! is: a sign-off of one shop must hold in the eyes of every other program with the same content.

use super::{Competency, Content, Criterion};
use crate::terms;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Criteria that a shop may add to one competency. Our own limit: each is judged at every demonstration.
pub const OWN_CRITERIA_MOST: usize = 12;
/// Characters of such a criterion. Our own limit: it is read at the booth.
pub const OWN_CRITERION_MOST: usize = 160;
/// Bytes of the hash in the name of a criterion: enough for a dozen of them.
const NAME_BYTES: usize = 5;

/// A criterion of the shop's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnCriterion {
    /// What is seen, in words.
    pub text: String,
    /// Whether the demonstration fails where it fails.
    pub critical: bool,
}

/// What a shop asks for one competency.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stricter {
    /// Slug of the competency.
    pub competency: String,
    /// Demonstrations, at least those of the content.
    pub demonstrations: u32,
    /// Separate days, at least those of the content and at most as many as demonstrations.
    pub days: u32,
    /// Months until it is shown anew, at most those of the content.
    pub expires_months: u32,
    /// Criteria besides those of the content.
    pub criteria: Vec<OwnCriterion>,
    /// Who asks for it: name and shop number.
    pub by: String,
    /// Since when, as ISO 8601 text in universal time.
    pub at: String,
}

terms! {
    /// Why it cannot be asked. Text: `app.asked.not.<slug>`.
    NotStricter {
        /// The content has no such competency.
        Unknown = "unknown",
        /// Fewer demonstrations than the content asks for, or more than anybody can show.
        Demonstrations = "demonstrations",
        /// Fewer days than the content asks for, or more than demonstrations.
        Days = "days",
        /// No month, or more than the content allows.
        Months = "months",
        /// Too many criteria, one that stands twice, or one whose text is empty, too long or does not show as it is.
        Criteria = "criteria",
    }
}

impl Stricter {
    /// What the content itself asks.
    #[must_use]
    pub fn of(competency: &Competency) -> Self {
        Self {
            competency: competency.slug.clone(),
            demonstrations: competency.demonstrations,
            days: competency.days,
            expires_months: competency.expires_months,
            criteria: Vec::new(),
            by: String::new(),
            at: String::new(),
        }
    }

    /// The competency as it is then asked.
    ///
    /// # Errors
    /// [`NotStricter`], the first that is in the way.
    pub fn applied(&self, shipped: &Competency) -> Result<Competency, NotStricter> {
        let Self { demonstrations, days, expires_months, .. } = *self;
        let unfit = [
            (self.competency != shipped.slug, NotStricter::Unknown),
            (
                !(shipped.demonstrations..=Competency::DEMONSTRATIONS_MOST).contains(&demonstrations),
                NotStricter::Demonstrations,
            ),
            (!(shipped.days..=demonstrations).contains(&days), NotStricter::Days),
            (!(1..=shipped.expires_months).contains(&expires_months), NotStricter::Months),
            (!self.criteria_fit(), NotStricter::Criteria),
        ];
        if let Some((_, why)) = unfit.into_iter().find(|(unfit, _)| *unfit) {
            return Err(why);
        }
        let mut asked = Competency { demonstrations, days, expires_months, ..shipped.clone() };
        let own = |one: &OwnCriterion| Criterion { id: self.id(one), critical: one.critical };
        asked.criteria.extend(self.criteria.iter().map(own));
        Ok(asked)
    }

    /// The id of a criterion: of its text, so that another text is another criterion.
    fn id(&self, one: &OwnCriterion) -> String {
        let hash = Sha256::digest(one.text.as_bytes());
        let name: String = hash.iter().take(NAME_BYTES).map(|byte| format!("{byte:02x}")).collect();
        format!("{}-own-{name}", self.competency)
    }

    fn criteria_fit(&self) -> bool {
        let fits = |(place, one): (usize, &OwnCriterion)| {
            let twice = self.criteria.iter().take(place).any(|before| before.text == one.text);
            let length = one.text.chars().count();
            let plain = one.text.trim() == one.text && !one.text.chars().any(char::is_control);
            (1..=OWN_CRITERION_MOST).contains(&length) && plain && !twice
        };
        self.criteria.len() <= OWN_CRITERIA_MOST && self.criteria.iter().enumerate().all(fits)
    }
}

impl Content {
    /// The content with what a shop asks for more; of several for one competency the last. What does not fit, as after
    /// the content itself came to ask for more, is left out.
    #[must_use]
    pub fn asked_by_shop(&self, asked: &[Stricter]) -> Self {
        let mut content = self.clone();
        content.came = self.shipped().to_vec();
        content.competencies.clone_from(&content.came);
        for shipped in self.shipped() {
            let latest = asked.iter().rev().find(|one| one.competency == shipped.slug);
            let Some((one, applied)) = latest.and_then(|one| Some((one, one.applied(shipped).ok()?))) else {
                continue;
            };
            for texts in content.texts.values_mut() {
                for own in &one.criteria {
                    texts.insert(format!("criterion.{}", one.id(own)), own.text.clone());
                }
            }
            for competency in content.competencies.iter_mut().filter(|known| known.slug == applied.slug) {
                *competency = applied.clone();
            }
        }
        content
    }

    /// The competencies as the content has them, whatever a shop asks for more: signed files are held to these.
    #[must_use]
    pub fn shipped(&self) -> &[Competency] {
        if self.came.is_empty() { &self.competencies } else { &self.came }
    }
}
