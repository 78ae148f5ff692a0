//! A run: a job worked operation by operation, saved, replayed, handed over.

use super::act::Act;
use super::air::{AirLog, Outside};
use super::before::{self, Made, Now, Wrong};
use super::defect::{Cause, Defect};
use super::effect;
use super::hidden::{self, Hidden};
use super::layer::Layer;
use super::lying::Lying;
use super::part::PartState;
use super::ready::{Waiting, waiting};
use crate::quantity::{Fraction, Hours, Micrometres};
use crate::rules::drying::waits::coat_setting;
use crate::rules::film::{coats_for, sheet_coat};
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::job::Job;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::sequence::plan::{Plan, Told};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{ColourPlan, Look, WorkClass};
use crate::rules::verdict::CannotJudge;
use serde::{Deserialize, Serialize};

/// All that a run needs to be worked again.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Saved {
    /// The job.
    pub job: Job,
    /// The shop sheet.
    pub sheet: Sheet,
    /// The air of the room.
    pub air: AirLog,
    /// What was done.
    pub acts: Vec<Act>,
    /// Whether the work was handed over.
    pub handed_over: bool,
    /// Parts that were stripped to the wood, in order.
    #[serde(default)]
    pub stripped: Vec<Stripped>,
}

/// A part stripped to the wood: the finish comes off, and what was wrong in it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stripped {
    /// The part, by place in the job.
    pub part: usize,
    /// Operations that had been done.
    pub after: usize,
    /// Hours from the operation before it until the wood was bare.
    pub took: Hours,
}

/// A film as it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Film {
    /// What was laid.
    pub operation: Operation,
    /// Coats of it.
    pub coats: u32,
    /// Dry film.
    pub dry: Micrometres,
    /// Hours since its last coat.
    pub age: Hours,
    /// Share of its solvent still in it: it ranks films, it decides nothing.
    pub solvent_left: Fraction,
}

/// A job being worked.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    saved: Saved,
    now: f64,
    /// Hours of `now` that were waited since the last operation.
    idle: f64,
    parts: Vec<PartState>,
    defects: Vec<Defect>,
    unsure: Vec<usize>,
}

/// A part after an operation: its state, what was hidden and showed, what was found and left.
struct Worked {
    part: usize,
    state: PartState,
    met: Vec<Hidden>,
    made: Vec<Made>,
}

/// Does an operation to one part.
fn work(part: usize, mut state: PartState, now: &Now<'_>) -> Worked {
    let met = hidden::uncover(&mut state, now);
    let made = before::check(&state, now);
    effect::apply(&mut state, now);
    Worked { part, state, met, made }
}

/// Whether something is found on a part that another reckoning of the same operation does not find there.
fn finds_more(strict: &[Worked], worked: &[Worked]) -> bool {
    let mut pairs = strict.iter().zip(worked);
    pairs.any(|(strict, worked)| {
        strict.met.iter().any(|one| !worked.met.contains(one))
            || strict.made.iter().any(|one| !worked.made.contains(one))
    })
}

impl Run {
    /// A job not begun. Its clock stands at 0.
    #[must_use]
    pub fn start(job: Job, sheet: Sheet, air: AirLog) -> Self {
        let parts = job.parts.iter().cloned().map(PartState::new).collect();
        let saved = Saved { job, sheet, air, acts: Vec::new(), handed_over: false, stripped: Vec::new() };
        Self { saved, now: 0.0, idle: 0.0, parts, defects: Vec::new(), unsure: Vec::new() }
    }

    /// Works a saved run again.
    ///
    /// # Errors
    /// [`CannotJudge`] when one of its operations leaves something untold.
    pub fn replay(saved: Saved) -> Result<Self, CannotJudge> {
        let mut run = Self::start(saved.job, saved.sheet, saved.air);
        let mut stripped = saved.stripped.into_iter().peekable();
        for (place, act) in saved.acts.into_iter().enumerate() {
            while let Some(one) = stripped.next_if(|one| one.after <= place) {
                run.strip(one.part, one.took);
            }
            run.act(act)?;
        }
        for one in stripped {
            run.strip(one.part, one.took);
        }
        if saved.handed_over {
            run.hand_over();
        }
        Ok(run)
    }

    /// Works a whole plan and hands the work over.
    ///
    /// # Errors
    /// [`CannotJudge`] when a step leaves something untold.
    pub fn of_plan(job: &Job, plan: &Plan, sheet: &Sheet, air: &AirLog) -> Result<Self, CannotJudge> {
        let mut run = Self::start(job.clone(), sheet.clone(), air.clone());
        for step in &plan.steps {
            run.act(step.clone().into())?;
        }
        run.hand_over();
        Ok(run)
    }

    /// What was done so far, to be kept and worked again.
    #[must_use]
    pub const fn saved(&self) -> &Saved {
        &self.saved
    }

    /// Hours since the job began.
    #[must_use]
    pub fn now(&self) -> Hours {
        Hours::saturating(self.now)
    }

    /// Every defect that showed so far, in the order in which it did.
    #[must_use]
    pub fn defects(&self) -> &[Defect] {
        &self.defects
    }

    /// Operations, by place in the run, of which nobody can say whether their wait was over: some of it fell in air in
    /// which the sheet gives no estimate.
    #[must_use]
    pub fn unsure(&self) -> &[usize] {
        &self.unsure
    }

    /// Operations done, in order.
    #[must_use]
    pub fn operations(&self) -> Vec<Operation> {
        self.saved.acts.iter().map(|act| act.step.operation).collect()
    }

    /// The films on a part, from the wood up.
    #[must_use]
    pub fn films(&self, part: usize) -> Vec<Film> {
        let Some(state) = self.parts.get(part) else { return Vec::new() };
        let wait = |operation| self.saved.sheet.get(coat_setting(operation));
        let film = |layer: &Layer| Film {
            operation: layer.operation,
            coats: layer.coats,
            dry: layer.dry,
            age: Hours::saturating(self.now - layer.ended),
            solvent_left: layer.solvent_left(self.now - layer.ended, wait(layer.operation)),
        };
        state.layers(COATS).map(film).collect()
    }

    /// Does an operation: what was hidden and is met now shows, what it asks and does not find leaves a defect, and the
    /// work is changed. Gives what showed.
    ///
    /// # Errors
    /// [`CannotJudge`] when it leaves something untold; nothing was done then.
    pub fn act(&mut self, mut act: Act) -> Result<&[Defect], CannotJudge> {
        act.told()?;
        let (place, shown) = (self.saved.acts.len(), self.defects.len());
        let now = self.moment(&act, self.begin(&act), Outside::AsStated);
        let (begun, ended) = (now.begun, now.ended);
        let worked = self.worked(&now);
        let strict = Now { outside: Outside::Nothing, ..now };
        if self.saved.air.leaves_model(&self.saved.sheet) && finds_more(&self.worked(&strict), &worked) {
            self.unsure.push(place);
        }
        let fumbles = act.pass.fumbles(act.step.operation, &self.saved.sheet);
        for one in worked {
            let part = one.part;
            self.write(one, place, begun);
            for fumble in &fumbles {
                self.note(Cause::Technique(*fumble), place, part, Some(place), begun);
            }
        }
        if self.idle > 0.0 {
            act.step.after = Told::Is(Hours::saturating(begun - self.now + self.idle));
        }
        (self.now, self.idle) = (ended, 0.0);
        self.saved.acts.push(act);
        Ok(self.defects.get(shown..).unwrap_or_default())
    }

    /// Time goes by with nothing done.
    pub fn wait(&mut self, hours: Hours) {
        self.now += hours.get();
        self.idle += hours.get();
    }

    /// Strips a part to the wood: its finish is gone, and what is hidden in it. What showed stays told.
    pub fn strip(&mut self, part: usize, took: Hours) {
        self.now += took.get();
        let since = Hours::saturating(took.get() + std::mem::take(&mut self.idle));
        self.saved.stripped.push(Stripped { part, after: self.saved.acts.len(), took: since });
        if let Some(state) = self.parts.get_mut(part) {
            *state = PartState::new(state.about.clone());
        }
    }

    /// A part as it lies there.
    #[must_use]
    pub fn lying(&self, part: usize) -> Option<Lying> {
        self.parts.get(part).map(|state| Lying::of(state, self.now))
    }

    /// Hands the work over: what was hidden and is not cured shows then, and what was ordered and left out.
    pub fn hand_over(&mut self) -> &[Defect] {
        let shown = self.defects.len();
        let done = self.operations();
        for part in 0..self.parts.len() {
            let Some(state) = self.parts.get(part) else { continue };
            let mut left: Vec<(OrderError, usize)> =
                hidden::left(state).map(|hidden| (hidden.what.error(), hidden.made)).collect();
            if let Some(first) = clears(state).next().filter(|_| self.lacks_colour(state, &done)) {
                left.push((OrderError::Colour, first.place));
            }
            if let Some(last) = clears(state).next_back().filter(|last| self.is_left_unlevelled(state, last))
            {
                left.push((OrderError::Finish, last.place));
            }
            for (error, made) in left {
                self.note(Cause::Order(error), made, part, None, self.now);
            }
        }
        self.saved.handed_over = true;
        self.defects.get(shown..).unwrap_or_default()
    }

    /// The parts that an operation is done to.
    fn touched<'a>(&'a self, act: &'a Act) -> impl Iterator<Item = (usize, &'a PartState)> {
        self.parts.iter().enumerate().filter(|(place, _)| act.touches(*place))
    }

    /// The parts that an operation is done to, as it leaves them.
    fn worked(&self, now: &Now<'_>) -> Vec<Worked> {
        self.touched(now.act).map(|(part, state)| work(part, state.clone(), now)).collect()
    }

    /// The longest wait that bears on an operation, over the parts that it touches.
    #[must_use]
    pub fn waiting(&self, act: &Act) -> Option<Waiting> {
        self.waiting_by(act, Outside::Nothing)
    }

    fn waiting_by(&self, act: &Act, outside: Outside) -> Option<Waiting> {
        let now = self.moment(act, self.now, outside);
        let waits = self.touched(act).filter_map(|(_, part)| waiting(part, &now));
        waits.max_by(|a, b| a.over.total_cmp(&b.over))
    }

    /// When an operation would begin if it were done now, in hours since the job began.
    #[must_use]
    pub fn begins(&self, act: &Act) -> Hours {
        Hours::saturating(self.begin(act))
    }

    /// When an operation begins: as many hours after the one before as were told, or when every wait is over; where the
    /// sheet gives no estimate, when it is over as stated.
    fn begin(&self, act: &Act) -> f64 {
        match act.step.after {
            Told::Is(hours) => self.now + hours.get(),
            Told::Kept | Told::Untold => {
                let over = |outside| self.waiting_by(act, outside).map(|waiting| waiting.over);
                let known = over(Outside::Nothing).filter(|over| over.is_finite());
                known.or_else(|| over(Outside::AsStated)).map_or(self.now, |over| over.max(self.now))
            }
        }
    }

    /// An operation that comes next in the run, begun at a moment.
    fn moment<'a>(&'a self, act: &'a Act, begun: f64, outside: Outside) -> Now<'a> {
        let place = self.saved.acts.len();
        let sheet = &self.saved.sheet;
        let coats = act.coats(ordered_coats(sheet));
        let between = act.between().map(Hours::get);
        let within = match between {
            Some(hours) => hours * f64::from(coats.saturating_sub(1)),
            None if COATS.contains(&act.step.operation) => kept_within(act.step.operation, coats, sheet),
            None => 0.0,
        };
        let climate = match act.step.climate {
            Told::Is(climate) => Some(climate),
            Told::Kept | Told::Untold => self.saved.air.at(begun),
        };
        let (job, air) = (&self.saved.job, &self.saved.air);
        Now {
            job,
            sheet,
            air,
            outside,
            act,
            place,
            begun,
            ended: begun + within + act.took.get(),
            coats,
            between,
            climate,
        }
    }

    fn write(&mut self, worked: Worked, place: usize, at: f64) {
        let Worked { part, mut state, met, made } = worked;
        for hidden in met {
            self.note(Cause::Order(hidden.what.error()), hidden.made, part, Some(place), at);
        }
        for one in made {
            match one.what {
                Wrong::Error(error) => self.note(Cause::Order(error), one.place, part, Some(place), at),
                Wrong::Hidden(what) => state.hidden.push(Hidden { what, made: one.place }),
            }
        }
        if let Some(slot) = self.parts.get_mut(part) {
            *slot = state;
        }
    }

    /// Notes a defect once, on whichever part it was met first.
    fn note(&mut self, cause: Cause, made: usize, part: usize, met: Option<usize>, at: f64) {
        if !self.defects.iter().any(|known| known.cause == cause && known.made == made) {
            self.defects.push(Defect { cause, made, part, met, at: Hours::saturating(at) });
        }
    }

    /// Whether colour that was ordered was never laid; a filler tinted for it stands for stain.
    fn lacks_colour(&self, part: &PartState, done: &[Operation]) -> bool {
        let job = &self.saved.job;
        let lacks = |ordered: bool, operation| ordered && !done.contains(&operation);
        let stain = lacks(job.colour == ColourPlan::Stained, Operation::Stain);
        let film =
            lacks(matches!(job.colour, ColourPlan::Solid | ColourPlan::Transparent), Operation::Colour);
        let shade = lacks(job.shaded, Operation::Shade);
        film || shade || (stain && !part.is_filled_as_stain())
    }

    /// Whether work that was ordered rubbed was neither levelled nor buffed after its last clear coats.
    fn is_left_unlevelled(&self, part: &PartState, last: &Layer) -> bool {
        let job = &self.saved.job;
        let off_the_gun = job.look == Look::OpenPore || job.class == WorkClass::Satin;
        let rubbed = part.did(&[Operation::Level, Operation::Buff]);
        let right = rubbed || (off_the_gun && last.is(Manner::CleanLastCoat));
        !right
    }
}

/// The clear coats of a part.
fn clears(part: &PartState) -> impl DoubleEndedIterator<Item = &Layer> {
    part.layers(&[Operation::Clear])
}

/// Clear coats that reach the sheet's build.
fn ordered_coats(sheet: &Sheet) -> u32 {
    coats_for(sheet.micrometres(Setting::BuildTarget), sheet_coat(sheet).answer)
        .map_or(1, |ruling| ruling.answer)
}

/// Hours that several coats take when each has its wait, and a night once the day has its coats.
fn kept_within(operation: Operation, coats: u32, sheet: &Sheet) -> f64 {
    let gaps = f64::from(coats.saturating_sub(1));
    let nights = libm::floor(gaps / sheet.get(Setting::CoatsADay).max(1.0));
    (gaps - nights) * sheet.wait(coat_setting(operation)) + nights * sheet.wait(Setting::ScuffWait)
}
