//! The web entry.

fn main() {
    stepboard::app::start();
}
