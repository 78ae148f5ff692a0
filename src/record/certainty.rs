//! How far a person would go on an answer.

use crate::terms;

terms! {
    /// How far a person would go on an answer, asked before any feedback. The chance of being right at which each step
    /// is the honest choice: below 2/3, from 2/3 to 4/5, above 4/5 (certainty-based marking, Gardner-Medwin 2005).
    Certainty {
        /// "I would ask first": right less than 2 times in 3.
        AskFirst = "ask-first",
        /// "On a test board": right about 3 times in 4.
        TestBoard = "test-board",
        /// "On the job": right more than 4 times in 5.
        OnTheJob = "on-the-job",
    }
}
