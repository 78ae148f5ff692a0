//! Icons: one path each on a 24 grid, drawn as a line. The word beside an icon says what it means.

use yew::prelude::*;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Picture {
    Back,
    Go,
    Menu,
    Bench,
    Record,
    Check,
    Tick,
    Caution,
    NotEnough,
    Delete,
    Up,
    Down,
    Pencil,
    Save,
    Cross,
    Dash,
    Words,
    Loupe,
    TurnLeft,
    TurnRight,
    Outline,
    File,
    Print,
    Walk,
    Plus,
    Gun,
}

impl Picture {
    const fn path(self) -> &'static str {
        match self {
            Self::Back => "M15 5 8 12l7 7",
            Self::Go => "M9 5l7 7-7 7",
            Self::Menu => "M4 7h16M4 12h16M4 17h16",
            Self::Bench => "M3 6h18v5H3zM6 11v8M10 11v3h7v-3",
            Self::Record => "M5 3v18M19 3v18M5 7h14M5 12h14M5 17h14",
            Self::Check => "M5 3h14v18H5zM8 8h8M8 12h4M8 16.500l2 2 5-5.500",
            Self::Tick => "M5 13l4 4 10-11",
            Self::Caution => "M12 4 22 20H2zM12 10v5M12 17.6v.2",
            Self::NotEnough => {
                "M8 12h8M20.7 9a9 9 0 0 0-4-5.2M13 3a9 9 0 0 0-6.300 1.700M4.500 7a9 9 0 0 0-1.300 6.700M4.500 17a9 9 0 0 0 5 3.700M13 21a9 9 0 0 0 5.800-3M20.300 15.500a9 9 0 0 0 .7-3"
            }
            Self::Delete => "M8 6h13v12H8l-6-6zM12 9.500l5 5M17 9.500l-5 5",
            Self::Up => "M12 19V6M6 11l6-6 6 6",
            Self::Down => "M12 5v13M6 13l6 6 6-6",
            Self::Pencil => "M4 20l1-5L16 4l4 4L9 19zM14 6l4 4",
            Self::Save => "M12 3v12M7 11l5 5 5-5M4 20h16",
            Self::Cross => "M6 6l12 12M18 6 6 18",
            Self::Dash => "M6 12h12",
            Self::Loupe => "M10 4a6 6 0 1 0 .1 0zM14.500 14.500 21 21",
            Self::TurnLeft => "M4 4v6h6M4.500 10A8 8 0 1 1 4 14",
            Self::TurnRight => "M20 4v6h-6M19.500 10A8 8 0 1 0 20 14",
            Self::Outline => "M8 4c6-2 12 1 12 7s-4 10-9 9-8-4-8-8 1-7 5-8zM11 11h2v2h-2z",
            Self::File => "M6 3h8l4 4v14H6zM14 3v4h4",
            Self::Print => "M7 9V3h10v6M7 17H3V9h18v8h-4M7 14h10v7H7z",
            Self::Walk => "M4 20h5v-5h5v-5h5V5M16 5h4",
            Self::Plus => "M6 12h12M12 6v12",
            Self::Gun => "M9 5h10v4h-6l-1 5M9 9l-2 11h4l2-6M9 5 7 9h2M5 4v.1M4 7v.1M2 5.500v.1",
            Self::Words => "M4 6h16M4 12h16M4 18h10",
        }
    }
}

pub(in crate::app) fn icon(of: Picture) -> Html {
    html! {
        <svg key="icon" class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d={of.path()} />
        </svg>
    }
}
