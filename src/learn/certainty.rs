//! How far a person would go on an answer.

use crate::terms;

terms! {
    /// Three steps of behaviour. The chance of being right at which each is the honest choice: below 2/3, from 2/3 to
    /// 4/5, above 4/5 (certainty-based marking, Gardner-Medwin 2005).
    Certainty {
        /// Would ask first.
        AskFirst = "ask-first",
        /// Would try it on a test board.
        TestBoard = "test-board",
        /// Would do it on the job.
        OnTheJob = "on-the-job",
    }
}
