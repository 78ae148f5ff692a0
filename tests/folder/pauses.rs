//! Waits.

use stepboard::exchange::folder::Pause;

const NOW: u64 = 1_000_000;

/// Milliseconds that are waited.
fn wait(pause: Pause, now: u64) -> u64 {
    pause.until() - now
}

#[test]
fn waits_double_to_ten_minutes_and_luck_moves_them_by_half() {
    let (mut least, mut most) = (Pause::default(), Pause::default());
    for whole in [2, 4, 8, 16, 32, 64, 128, 256, 512, 600, 600] {
        least = least.longer(NOW, 0, None);
        most = most.longer(NOW, whole * 500 - 1, None);
        assert_eq!((wait(least, NOW), wait(most, NOW)), (whole * 500, whole * 1000 - 1));
    }
}

#[test]
fn a_wait_ends_at_its_time_or_when_the_clock_is_set_back() {
    let pause = Pause::default().longer(NOW, 0, None);
    assert!(!pause.over(NOW) && !pause.over(NOW + 999));
    assert!(pause.over(NOW + 1000) && pause.over(NOW - 1));
    assert!(Pause::default().over(0));
}

/// RFC 9110, section 10.2.3; its example of a date in section 5.6.7 is 784111777 s after 1970 (Python: calendar.timegm).
#[test]
fn what_the_server_asks_for_is_waited() {
    let asked = |text: &str, now: u64| wait(Pause::default().longer(now, 0, Some(text)), now);
    assert_eq!(asked("120", NOW), 120_000);
    let date = 784_111_777_000;
    assert_eq!(asked("Sun, 06 Nov 1994 08:49:37 GMT", date - 60_000), 60_000);
    // Over already, no more than a day, and what nobody can read: the own wait.
    assert_eq!(asked("Sun, 06 Nov 1994 08:49:37 GMT", date + 60_000), 1000);
    assert_eq!(asked("999999999999999999999999", NOW), 24 * 60 * 60 * 1000);
    for other in
        ["", "soon", "-5", "1.5", "Sun, 31 Feb 1994 08:49:37 GMT", "Sun Nov  6 08:49:37 1994", ", 1 Nov"]
    {
        assert_eq!(asked(other, NOW), 1000, "{other}");
    }
}
