//! A link as a square code: QR Code, ISO/IEC 18004.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// Modules that stay light round a code, ISO/IEC 18004, section 6.3.8 (2015).
pub const QUIET: usize = 4;
/// The largest version that is made, our own limit: 137 modules a side, half a millimetre each on the screen of a phone. A
/// version more adds four modules a side.
const VERSION_MOST: u8 = 30;
/// Modules a side of the largest one.
pub const SIDE_MOST: usize = 17 + 4 * VERSION_MOST as usize;

/// A square code: which of its modules are dark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Square {
    side: usize,
    dark: Vec<bool>,
    level: char,
}

impl Square {
    /// The code of a text; `None` where it is too long for one.
    ///
    /// It is made as small as it can be, since whoever reads it off a screen fails by small modules and not by dirt, and then
    /// corrects as many faults as it has room for.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        let segments = QrSegment::make_segments(text);
        let (least, most) = (Version::MIN, Version::new(VERSION_MOST));
        let code =
            QrCode::encode_segments_advanced(&segments, QrCodeEcc::Low, least, most, None, true).ok()?;
        let side = code.size();
        let dark = (0..side).flat_map(|y| (0..side).map(move |x| (x, y))).map(|(x, y)| code.get_module(x, y));
        let level = match code.error_correction_level() {
            QrCodeEcc::Low => 'L',
            QrCodeEcc::Medium => 'M',
            QrCodeEcc::Quartile => 'Q',
            QrCodeEcc::High => 'H',
        };
        Some(Self { side: usize::try_from(side).ok()?, dark: dark.collect(), level })
    }

    /// Modules a side, without the quiet zone.
    #[must_use]
    pub const fn side(&self) -> usize {
        self.side
    }

    /// How many faults it corrects: `L`, `M`, `Q` or `H`.
    #[must_use]
    pub const fn level(&self) -> char {
        self.level
    }

    /// Whether the module so far from the left and from the top is dark; none outside of it is.
    #[must_use]
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        let row = if y < self.side { self.dark.chunks_exact(self.side).nth(y) } else { None };
        row.and_then(|row| row.get(x)).is_some_and(|dark| *dark)
    }

    /// Its dark modules as the path of an SVG of `side + 2 * QUIET` units a side: one rectangle for each run of a row.
    #[must_use]
    pub fn path(&self) -> String {
        let mut path = String::new();
        for y in 0..self.side {
            let mut x = 0;
            while x < self.side {
                let run = (x..self.side).take_while(|x| self.is_dark(*x, y)).count();
                if run > 0 {
                    path.push_str(&format!("M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET));
                }
                x += run.max(1);
            }
        }
        path
    }
}
