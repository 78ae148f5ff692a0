//! The clock of the browser, and its marks on the loading of the page.

use super::page;
use crate::quantity::MS_A_SECOND;
use crate::record::LocalDate;
use crate::signoff::When;

/// Now, as ISO 8601 text in universal time.
#[must_use]
pub fn now() -> String {
    String::from(js_sys::Date::new_0().to_iso_string())
}

/// Now, in milliseconds since 1970.
#[must_use]
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole, and not negative after 1970; `as` stops at the ends"
)]
pub fn millis() -> u64 {
    js_sys::Date::now() as u64
}

/// A moment in milliseconds since 1970 as this browser writes it.
#[must_use]
#[allow(clippy::cast_precision_loss, reason = "moments are far under 2^53")]
pub fn local_millis(at: u64) -> String {
    let date = js_sys::Date::new(&(at as f64).into());
    local(&String::from(date.to_iso_string()))
}

/// Now, to the second, as signed files tell it; `None` where the clock stands outside of what they can tell.
#[must_use]
pub fn when() -> Option<When> {
    When::new(&format!("{}Z", now().split('.').next()?)).ok()
}

/// Today, as the clock and the zone of this device have it; `None` where the clock stands outside of what a date may be.
#[must_use]
pub fn today() -> Option<LocalDate> {
    let now = js_sys::Date::new_0();
    let year = i32::try_from(now.get_full_year()).ok()?;
    // The browser counts months from 0.
    LocalDate::new(year, u8::try_from(now.get_month() + 1).ok()?, u8::try_from(now.get_date()).ok()?)
}

/// Whole seconds since an ISO 8601 time; 0 where it is to come, or no time.
#[must_use]
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "not negative, and `as` stops at the greatest"
)]
pub fn seconds_since(at: &str) -> u32 {
    let ms = js_sys::Date::now() - js_sys::Date::parse(at);
    if ms > 0.0 { (ms / MS_A_SECOND) as u32 } else { 0 }
}

/// A day as this browser writes it.
#[must_use]
pub fn local_day(day: LocalDate) -> String {
    // Noon, so that no zone moves it to another day.
    written(&format!("{day}T12:00:00"), &[("dateStyle", "medium")])
}

/// An ISO 8601 time as this browser writes it; the text itself where it is no time.
#[must_use]
pub fn local(at: &str) -> String {
    written(at, &[("dateStyle", "medium"), ("timeStyle", "short")])
}

/// The day of a moment in universal time, as this browser writes it: the same on every device.
#[must_use]
pub fn day(at: &When) -> String {
    written(at.text(), &[("dateStyle", "long"), ("timeZone", "UTC")])
}

fn written(at: &str, how: &[(&str, &str)]) -> String {
    let date = js_sys::Date::new(&at.into());
    if date.get_time().is_nan() {
        return at.to_owned();
    }
    // As the browser writes it where it speaks the language of the page, since it knows the country too.
    let (browser, ours) = (page::browser_language(), page::language());
    let language = if page::is_of_language(&browser, &ours) { browser } else { ours };
    let options = js_sys::Object::new();
    for (key, value) in how {
        // Setting a field of a fresh plain object cannot fail.
        let _ = js_sys::Reflect::set(&options, &(*key).into(), &(*value).into());
    }
    String::from(date.to_locale_string(&language, &options))
}

/// Milliseconds since the page was opened.
#[must_use]
pub fn ticks() -> f64 {
    web_sys::window().and_then(|window| window.performance()).map_or(0.0, |performance| performance.now())
}

/// Does some work and measures how long it took, in the place of what was measured of it before.
pub fn measured<T>(name: &str, work: impl FnOnce() -> T) -> T {
    let performance = web_sys::window().and_then(|window| window.performance());
    // A browser without measures loses one and nothing else.
    let _ = performance.as_ref().map(|performance| performance.mark(name));
    let done = work();
    if let Some(performance) = performance {
        performance.clear_measures_with_measure_name(name);
        let _ = performance.measure_with_start_mark(name, name);
        performance.clear_marks_with_mark_name(name);
    }
    done
}

/// Marks a moment in the loading of the page, once.
pub fn mark_once(name: &str) {
    let Some(performance) = web_sys::window().and_then(|window| window.performance()) else { return };
    if performance.get_entries_by_name(name).length() == 0 {
        // A browser without marks loses a measurement and nothing else.
        let _ = performance.mark(name);
    }
}
