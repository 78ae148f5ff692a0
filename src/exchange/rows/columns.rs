//! The columns of a row, told once: README, SQL views and tests go by this list.

/// A column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Column {
    /// Its name, no reserved word of SQL.
    pub name: &'static str,
    /// Its type as the SQL standard names it.
    pub sql: &'static str,
    /// Whether it may be empty.
    pub empty: bool,
    /// What it says.
    pub means: &'static str,
}

const fn always(name: &'static str, sql: &'static str, means: &'static str) -> Column {
    Column { name, sql, empty: false, means }
}

const fn maybe(name: &'static str, sql: &'static str, means: &'static str) -> Column {
    Column { name, sql, empty: true, means }
}

/// The columns, in their order.
pub const COLUMNS: [Column; 26] = [
    always(
        "device",
        "VARCHAR",
        "random name of the tablet; with `sequence` it names the answer, on a walk with `family` as well",
    ),
    always("sequence", "BIGINT", "number of the event in the tablet's journal, from 1"),
    always("answered_at", "VARCHAR", "when, ISO 8601 in universal time, as the tablet's clock had it"),
    maybe(
        "moment",
        "BIGINT",
        "seconds since 1970-01-01T00:00:00Z of the latest event so far on that tablet: answers of several tablets follow each other by moment, device, sequence; empty where no clock told any",
    ),
    maybe("day", "DATE", "local day on the tablet; empty where its clock told none"),
    always("person", "VARCHAR", "shop number, or what the answers stood under before there was one"),
    always("family", "VARCHAR", "card family"),
    always("version", "INTEGER", "its version; another version is another item"),
    always("seed", "BIGINT", "seed of the card, 0 to 4294967295; 0 on a walk"),
    always("sheet", "VARCHAR", "shop sheet on which the card was dealt"),
    always("sheet_hash", "VARCHAR", "hash of that sheet's values"),
    always(
        "kind",
        "VARCHAR",
        "practice, check, set (a scenario set that is evidence for nothing), paper (a worksheet, typed in afterwards) or walk (what a decision says of a family that it exercises, a row each)",
    ),
    maybe("set_name", "VARCHAR", "set that was taken; neither in practice nor on a walk"),
    maybe(
        "attempt",
        "VARCHAR",
        "name of the attempt on that tablet or of the walk, or code of the worksheet",
    ),
    maybe("guided", "INTEGER", "1 where a walk told what comes next, 0 where not; a walk only"),
    always("mark", "VARCHAR", "right, partly or wrong"),
    always("is_right", "INTEGER", "1 where the mark is right, else 0"),
    always(
        "certainty",
        "VARCHAR",
        "ask-first, test-board or on-the-job, asked before any feedback; on a walk on-the-job, since it was done, and ask-first where it was guided",
    ),
    always(
        "sure_and_wrong",
        "INTEGER",
        "1 where it was not right and would have been done on the job, else 0",
    ),
    maybe("guess", "DOUBLE", "chance to answer the card right by luck, 0 to 1; empty where it is not known"),
    maybe("seconds", "INTEGER", "seconds in which the card was looked at; empty where time must not count"),
    always(
        "help",
        "VARCHAR",
        "none or hint; hint on a walk that goes on after what came of an earlier one was told",
    ),
    maybe(
        "slip",
        "VARCHAR",
        "misconception that a wrong answer shows, on a walk the rules that were broken, blanks between; empty where none is known, the sheet is not, or a face was sprayed",
    ),
    always(
        "competencies",
        "VARCHAR",
        "slugs of the competencies that the family gives evidence for, blanks between",
    ),
    always(
        "voided",
        "INTEGER",
        "1 where its card, its set or its rule was found wrong afterwards, by all that the folder knows when its file is written: it no longer counts; else 0",
    ),
    always("edition", "VARCHAR", "edition of the program that wrote the row"),
];
