//! The JSON contract: one visit or property question in, one line out.
//!
//! Numbers are binary64 in JSON and rounded once to binary32 on their way in; on their way out they are the
//! shortest decimals that read back as the same binary32. What was not measured or cannot be computed is `null`.

mod decision;
mod line;
mod plan;
mod property;
mod read;
mod tree;
mod write;

pub use decision::answer_decision;
pub use line::{Object, ObjectMember, Shaped};
pub use property::answer_property;
pub use read::{FieldError, OwnedVisit, read_visit};
pub use write::{write_error, write_report};

/// Every object of an answer, for whoever writes types or documents of them.
pub fn objects() -> impl Iterator<Item = &'static Object> {
    [write::OBJECTS, plan::OBJECTS, decision::OBJECTS, property::OBJECTS].into_iter().flatten()
}

/// Answers one visit, given as one JSON object, with one line of JSON: a report or an error that names its field.
pub fn answer_visit(line: &str) -> String {
    let answer = read_visit(line).and_then(|owned| {
        let report = crate::diagnose(owned.refrigerant, &owned.visit());
        let language = owned.language;
        let report = report.map_err(|invalid| FieldError { language, ..invalid.into() })?;
        Ok(write_report(&report, language))
    });
    answer.unwrap_or_else(|error| write_error(&error))
}
