//! Writes a journal as a device would, with cards that need no dealing.

use stepboard::card::{Answer, Mark};
use stepboard::content::Content;
use stepboard::learn::evidence::{Asked, Evidence, evidence};
use stepboard::record::{
    AssessorName, Certainty, Decided, Entry, Event, Exercised, FORMAT, Help, Known, LocalDate, SheetName,
    Stamp, Step, Taught, Turn, Voided, WalkStep, Walked, Way, Within, Wrong,
};

/// The date so many days after 1 January 2027.
pub(crate) fn date(days: u32) -> LocalDate {
    let (mut year, mut month, mut day) = (2027, 1, 1);
    for _ in 0..days {
        (year, month, day) = if LocalDate::new(year, month, day + 1).is_some() {
            (year, month, day + 1)
        } else if month < 12 {
            (year, month + 1, 1)
        } else {
            (year + 1, 1, 1)
        };
    }
    LocalDate::new(year, month, day).expect("a day that exists")
}

/// Ids of the families that give evidence for a competency.
pub(crate) fn families(content: &Content, competency: &str) -> Vec<String> {
    content.evidence_for(competency).map(|family| family.id.clone()).collect()
}

/// What events prove of Ana for a competency, held to what is usual.
pub(crate) fn proof(content: &Content, events: &[Event], competency: &str) -> Evidence {
    let competency = content.competency(competency).expect("ships");
    evidence(events, &Asked::usual(content, "Ana", competency))
}

/// A journal of Ana's.
pub(crate) fn ana() -> Log {
    Log::new("a", "Ana")
}

/// A journal in the making.
#[derive(Debug, Clone)]
pub(crate) struct Log {
    pub(crate) events: Vec<Event>,
    pub(crate) device: String,
    pub(crate) person: String,
    /// Days after 1 January 2027.
    pub(crate) day: u32,
    /// Minute of the day, universal time; goes on by one with each event.
    pub(crate) minute: u32,
    /// Luck at the cards.
    pub(crate) guess: Option<f64>,
    pub(crate) certainty: Certainty,
    pub(crate) help: Help,
    pub(crate) within: Within,
    seed: u32,
}

impl Log {
    pub(crate) fn new(device: &str, person: &str) -> Self {
        Self {
            events: Vec::new(),
            device: device.to_owned(),
            person: person.to_owned(),
            day: 0,
            minute: 8 * 60,
            guess: Some(0.25),
            certainty: Certainty::TestBoard,
            help: Help::None,
            within: Within::Practice,
            seed: 0,
        }
    }

    /// What comes next is on that day, in the morning.
    pub(crate) fn on(&mut self, day: u32) -> &mut Self {
        (self.day, self.minute) = (day, 8 * 60);
        self
    }

    fn stamp(&mut self) -> Stamp {
        self.minute += 1;
        let (hour, minute) = (self.minute / 60, self.minute % 60);
        let date = date(self.day);
        Stamp {
            format: FORMAT,
            sequence: u64::try_from(self.events.len()).expect("few") + 1,
            device: self.device.clone(),
            at: format!("{date}T{hour:02}:{minute:02}:00.000Z"),
            date: Some(date),
            person: self.person.clone(),
        }
    }

    pub(crate) fn step(&mut self, attempt: &str, step: Step) -> &mut Self {
        let stamp = self.stamp();
        self.events.push(Turn { stamp, attempt: attempt.to_owned(), step }.into());
        self
    }

    /// Opens a check; what is answered next belongs to it.
    pub(crate) fn open(&mut self, attempt: &str, competencies: &[&str]) -> &mut Self {
        let competencies = competencies.iter().map(|slug| (*slug).to_owned()).collect();
        self.within = Within::Check { attempt: attempt.to_owned(), set: "a-set".to_owned() };
        self.step(attempt, Step::Opened { set: "a-set".to_owned(), competencies, taking: None })
    }

    pub(crate) fn taught(&mut self, family: &str) -> &mut Self {
        let stamp = self.stamp();
        self.events.push(Taught { stamp, family: family.to_owned(), by: "RM".to_owned() }.into());
        self
    }

    pub(crate) fn voids(&mut self, wrong: Wrong, reason: &str) -> &mut Self {
        let stamp = Stamp { person: String::new(), ..self.stamp() };
        let by = AssessorName { number: "i-1".to_owned(), name: "Ilse".to_owned() };
        self.events.push(Voided { stamp, wrong, reason: reason.to_owned(), by, from: None }.into());
        self
    }

    /// Something happens on a walk of a job; the walk goes by the name of the job and of how it is walked.
    pub(crate) fn walks(&mut self, walk: &str, job: &str, step: WalkStep) -> &mut Self {
        let (walk, job) = (walk.to_owned(), job.to_owned());
        let stamp = self.stamp();
        self.events.push(Walked { stamp, walk, job, step }.into());
        self
    }

    /// A decision on a walk of one's own that says of families whether they were right; a wrong one broke the rule.
    pub(crate) fn decides(&mut self, walk: &str, job: &str, says: &[(&str, Option<&str>)]) -> &mut Self {
        let of_it = |one: &&Walked| one.walk == walk && one.decided().is_some();
        let before = self.events.iter().filter_map(Event::walked).filter(of_it).count();
        let nth = u32::try_from(before + 1).expect("few decisions");
        self.walks(walk, job, WalkStep::Decided(Box::new(Decided { nth, ..decided(says) })))
    }

    /// An answer to a card that nobody answered before.
    pub(crate) fn answer(&mut self, family: &str, right: bool) -> &mut Self {
        self.seed += 1;
        self.again(family, right)
    }

    /// An answer to the card that was answered last, if it was of that family.
    pub(crate) fn again(&mut self, family: &str, right: bool) -> &mut Self {
        let entry = Entry {
            stamp: self.stamp(),
            family: family.to_owned(),
            version: 1,
            seed: self.seed,
            sheet: SheetName { slug: "nitrocellulose".to_owned(), hash: "00".to_owned() },
            answer: Answer::term("koa"),
            certainty: self.certainty,
            mark: if right { Mark::Right } else { Mark::Wrong },
            guess: self.guess,
            active_seconds: Some(20),
            help: self.help,
            within: self.within.clone(),
        };
        self.events.push(entry.into());
        self
    }

    /// Answers of families by turns, right but for the places named.
    pub(crate) fn answers(&mut self, families: &[String], count: usize, wrong: &[usize]) -> &mut Self {
        for nth in 0..count {
            self.answer(&families[nth % families.len()], !wrong.contains(&nth));
        }
        self
    }
}

/// A decision on a walk of one's own, see [`Log::decides`].
pub(crate) fn decided(says: &[(&str, Option<&str>)]) -> Decided {
    let exercised = says.iter().map(|(family, broke)| Exercised {
        family: (*family).to_owned(),
        version: 1,
        broke: broke.iter().map(|rule| (*rule).to_owned()).collect(),
    });
    let exercised: Vec<Exercised> = exercised.collect();
    let mut broke: Vec<String> = exercised.iter().flat_map(|one| one.broke.clone()).collect();
    broke.dedup();
    Decided {
        way: Way::Own,
        again: false,
        sheet: SheetName { slug: "nitrocellulose".to_owned(), hash: "00".to_owned() },
        nth: 1,
        decision: serde_json::json!({ "wait": "morning" }),
        known: Known { day: 1, hour: 8.0, ..Known::default() },
        broke,
        exercised,
        over: false,
    }
}
