//! What a walk begins with: job, shop sheet, room, and the day on which it is wanted.

use super::clock::midnight;
use crate::content::{Content, WalkInfo, World};
use crate::process::air::{AirLog, Reading};
use crate::quantity::{Hours, MoistureContent, SquareMetres};
use crate::rules::drying::critical_path::WorkingDay;
use crate::rules::sequence::job::Job;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::plan::{Climate, Told};
use crate::rules::sheet::Sheet;
use crate::rules::verdict::CannotJudge;
use crate::rules::wood::PoreSize;

/// The beginning of a walk.
#[derive(Debug, Clone, PartialEq)]
pub struct Start {
    /// The walk; its ticket names the sheet that it is worked on.
    pub info: WalkInfo,
    /// Its job.
    pub job: Job,
    /// The shop sheet that it is worked on.
    pub sheet: Sheet,
    /// The room over the days; its hours count from when the first day opens.
    pub air: AirLog,
    /// The working hours.
    pub day: WorkingDay,
}

impl Start {
    /// The beginning of a walk on a sheet.
    ///
    /// # Errors
    /// [`CannotJudge`] when the ticket names a wood that is not known.
    pub fn of(info: &WalkInfo, sheet: &Sheet, content: &Content) -> Result<Self, CannotJudge> {
        let mut job = World { content, sheet }.job(&info.ticket)?;
        for (part, about) in job.parts.iter_mut().zip(&info.parts) {
            part.moisture = about.moisture.map_or(Told::Kept, Told::Is);
            part.conditions.clone_from(&about.conditions);
        }
        job.water_dye = info.stain == Some(Manner::WaterDye);
        let day = WorkingDay::of(sheet);
        let reading = |air: &crate::content::RoomAir| Reading {
            from: Hours::saturating(midnight(air.day) + air.hour - day.opens().get()),
            climate: Climate { air: air.air_c, work: air.work_c, humidity: air.rh },
        };
        let air = AirLog::new(info.air.iter().map(reading).collect());
        let mut info = info.clone();
        info.ticket.sheet.clone_from(&sheet.slug);
        Ok(Self { info, job, sheet: sheet.clone(), air, day })
    }

    /// How many parts there are.
    #[must_use]
    pub fn parts(&self) -> usize {
        self.job.parts.len()
    }

    /// Whether the pores of a part are seen by eye.
    #[must_use]
    pub fn shows_pores(&self, part: usize) -> bool {
        self.job.parts.get(part).is_some_and(|part| part.pores == PoreSize::Large)
    }

    /// What the moisture meter reads on a part; `None`: it lies in the band of the sheet.
    #[must_use]
    pub fn moisture(&self, part: usize) -> Option<MoistureContent> {
        self.info.parts.get(part).and_then(|part| part.moisture)
    }

    /// Area of a part.
    #[must_use]
    pub fn area(&self, part: usize) -> SquareMetres {
        self.info.parts.get(part).map_or(SquareMetres::saturating(0.0), |part| part.area_m2)
    }
}
