//! How a card family is remembered, when it comes back and which one is asked next.
//!
//! The chance of recall falls with the days as a power of time; each answer changes two numbers of the memory, its
//! stability and its difficulty. Published model of difficulty, stability and recall: J. Ye, J. Su, Y. Cao, "A Stochastic
//! Shortest Path Algorithm for Optimizing Spaced Repetition Scheduling", KDD 2022, doi 10.1145/3534678.3539081; J. Su,
//! J. Ye, L. Nie, Y. Cao, Y. Chen, "Optimizing Spaced Repetition Schedule by Capturing the Dynamics of Memory", IEEE
//! Trans. Knowl. Data Eng. 35 (2023), doi 10.1109/TKDE.2023.3251721; here in its open form with 21 parameters.
//!
//! It says what to practise and never who is competent. Its parameters were fitted to facts learned from question and
//! answer, not to work: what it says of recall is an estimate. Replay the answers rather than store the state: last bits
//! may differ between versions of the model.

mod care;
mod earlier;
mod grade;
mod history;
mod parameters;
mod pick;
mod remembered;
mod state;

pub use care::Care;
pub use earlier::Earlier;
pub use grade::{Grade, graded};
pub use history::{Answered, Day, Memory};
pub use pick::{Candidate, Pick, Reason, candidates, pick};
pub use remembered::Remembered;
pub use state::State;
