//! What was answered, kept.

use crate::terms;

terms! {
    /// How far a person would go on an answer, asked before any feedback.
    Certainty {
        /// "I would ask first": right less than 2 times in 3.
        AskFirst = "ask-first",
        /// "On a test board": right about 3 times in 4.
        TestBoard = "test-board",
        /// "On the job": right more than 4 times in 5.
        OnTheJob = "on-the-job",
    }
}
