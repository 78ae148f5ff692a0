//! The shop's folder as the screens see it.

use crate::exchange::folder::{Aside, Filed, Folder, Name, Rest, Setup, Sort, Stop};
use crate::record::LocalDate;
use serde::{Deserialize, Serialize};
use std::rc::Rc;
use yew::prelude::*;

/// What is stored of how the folder stands; how it is used is stored apart as [`Setup`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::app) struct KeptFolder {
    pub(in crate::app) folder: Folder,
    /// Number of the last event that was handed in.
    pub(in crate::app) sent: u64,
}

/// What somebody does with the folder.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum FolderAct {
    /// Uses it so, and tries the connection. The password is in it however long it is to rest.
    Use(Box<Setup>),
    /// Uses it no longer; what waits stays.
    Off,
    /// The password, after it rested no longer.
    Password(String),
    /// Tries everything at once.
    Now,
    /// Hands in what is new, or with true everything once more.
    HandIn(bool),
    /// Puts a file into the folder.
    Share(Sort, String),
    /// Sends or fetches a file once more.
    Again(Name),
    /// What was offered is taken, or wanted by nobody.
    Done(Name),
}

/// How the folder stands.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::app) struct FolderView {
    /// Whether what is stored was read.
    pub(in crate::app) loaded: bool,
    pub(in crate::app) on: bool,
    /// Whether the password is there.
    pub(in crate::app) open: bool,
    /// Whether something is on its way.
    pub(in crate::app) working: bool,
    pub(in crate::app) place: String,
    pub(in crate::app) user: String,
    pub(in crate::app) rest: Option<Rest>,
    pub(in crate::app) until: Option<LocalDate>,
    pub(in crate::app) hands_in: bool,
    pub(in crate::app) takes_results: bool,
    pub(in crate::app) proven: bool,
    pub(in crate::app) stopped: Option<Stop>,
    /// When the next try is made, in milliseconds since 1970; 0 where nothing waits for it.
    pub(in crate::app) again_at: u64,
    pub(in crate::app) looked: Option<u64>,
    /// Files that go to the folder and those that went.
    pub(in crate::app) files: Vec<(Name, Filed)>,
    pub(in crate::app) aside: Vec<(Name, Aside)>,
    /// How many files are still to be fetched.
    pub(in crate::app) coming: usize,
    /// How many results of other tablets are here.
    pub(in crate::app) results: usize,
    /// Sets, sheets and withdrawals that can be taken.
    pub(in crate::app) offered: Vec<(Name, Rc<str>)>,
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct FolderContext {
    pub(in crate::app) view: Rc<FolderView>,
    pub(in crate::app) act: Callback<FolderAct>,
}
