//! Everything that crosses a boundary, listed once: what C, JSON, TypeScript, the page and the documents say of it is
//! written from here by `cargo run -p rimewise-schema`, which links this crate and asks it.
//!
//! A new choice, section or list of quantities is a row here; a new field of a section, a new member of a choice or a
//! new reading is a row where it is declared, and nothing here.

use crate::cause::Cause;
use crate::caution::{CautionCode, Step};
use crate::cycle::Cycle;
use crate::decision::Costs;
use crate::expected::Expected;
use crate::field::{Choice, Choices, Part, Quantities, Texts, Unit};
use crate::invalid::ErrorCode;
use crate::measurement::{Effort, Measurement, Observations, Readings};
use crate::monitor::{EventKind, Sample, SampleProblem, Settings, State};
use crate::motor::finding::FindingKind;
use crate::readings::{
    Access, Action, Call, Complaint, CondenserFace, Fan, FrostLine, History, PumpDownEnd, PumpDownValve,
    SightGlass, StartNoise, StartSound, Tool, Uncertainty,
};
use crate::system::{CompressorKind, CompressorPlate, Design, Drive, Duty, Metering, StartGear, System};
use crate::text::Language;
use crate::warning::WarningKind;

/// A choice under the name that it has in C (behind `Rimewise`) and in TypeScript.
#[derive(Clone, Copy, Debug)]
pub struct Named {
    /// The name.
    pub name: &'static str,
    /// Its numbers, names and sentences.
    pub choices: &'static Choices,
    /// Its names as C holds them.
    pub c_names: &'static Texts,
}

/// Lists choices, each with the path of its type and, where that leans on its module, the name that says more.
macro_rules! choices {
    ($( $choice:ty $( as $name:literal )?, )*) => {
        /// Every choice.
        pub const CHOICES: &[Named] = &[$( Named {
            name: choices!(@ $choice $(, $name)?),
            choices: <$choice as Choice>::CHOICES,
            c_names: <$choice as Choice>::C_NAMES,
        } ),*];
    };
    (@ $choice:ty, $name:literal) => { $name };
    (@ $choice:ty) => { <$choice as Choice>::CHOICES.name };
}

choices! {
    // Of the machine.
    Metering,
    Duty,
    CompressorKind,
    Drive,
    StartGear,
    // Of the visit.
    PumpDownValve,
    PumpDownEnd,
    StartNoise,
    SightGlass,
    Fan,
    CondenserFace,
    FrostLine,
    StartSound,
    Complaint,
    History,
    Tool,
    Action,
    Measurement,
    Effort,
    // Of the answer.
    Cause,
    WarningKind,
    ErrorCode,
    FindingKind,
    CautionCode,
    Step,
    Unit,
    Language,
    crate::motor::finding::Winding,
    crate::alarm::AlarmCode,
    crate::verdict::Level,
    crate::verdict::Family,
    crate::verdict::Job,
    crate::verdict::CompressorState,
    crate::plan::StepKind,
    crate::plan::Context as "PlanContext",
    crate::plan::Change,
    // Of the stream.
    EventKind as "MonitorEventKind",
    State as "MonitorState",
    SampleProblem as "MonitorSampleProblem",
    // Of the compressor's map.
    crate::compressor::rating::Scale as "CompressorScale",
}

/// Every part of a visit and of what the monitor takes.
pub const SECTIONS: &[Part] = &[
    Part::of::<System>(),
    Part::of::<Design>(),
    Part::of::<CompressorPlate>(),
    Part::of::<Readings>(),
    Part::of::<Observations>(),
    Part::of::<Uncertainty>(),
    Part::of::<Access>(),
    Part::of::<Call>(),
    Part::of::<Costs>(),
    Part::of::<Settings>(),
    Part::of::<Sample>(),
];

/// Every list of quantities with their uncertainties in an answer.
pub const QUANTITIES: &[Quantities] = &[Cycle::TABLE, Expected::TABLE];

/// What a visit holds beside the fields of its sections: path, name, permanent number, what it is.
pub const BESIDES: &[(&str, &str, i32, &str)] = &[
    ("system", "refrigerant", 300, "The refrigerant as people write it: R290, R-404A, 404a, propane."),
    ("system", "record", 307, "Readings of this same machine when it was good."),
    ("system", "design", 308, "The design point."),
    ("system", "compressor", 309, "The compressor's plate."),
    ("access", "cannot", 506, "Readings, observations and actions that this visit cannot take."),
    ("costs", "repair", 548, "The repair of each cause."),
    ("", "before", 531, "Readings of this visit before something was changed."),
    ("", "language", 530, "The language of the sentences in the answer; English unless given."),
];

/// A warning may name a cause of the report in the section `causes`: this number and the cause's own.
pub const CAUSE_FIELDS: i32 = 400;

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use crate::field::Shape;
    use std::collections::BTreeSet;

    #[test]
    fn every_number_and_name_stands_once() {
        let mut names = BTreeSet::new();
        for named in CHOICES {
            assert!(names.insert(named.name), "{} twice", named.name);
            let codes: BTreeSet<i32> = named.choices.list.iter().map(|member| member.code).collect();
            let texts: BTreeSet<&str> = named.choices.list.iter().map(|member| member.name).collect();
            assert_eq!(codes.len(), named.choices.list.len(), "{}: a number twice", named.name);
            assert_eq!(texts.len(), named.choices.list.len(), "{}: a name twice", named.name);
            assert!(codes.iter().all(|code| *code >= 0), "{}: -1 is not known", named.name);
            for (member, (code, name)) in named.choices.list.iter().zip(named.c_names) {
                assert_eq!((member.code, Ok(member.name)), (*code, name.to_str()));
            }
        }
        let mut codes = BTreeSet::new();
        let fields = SECTIONS.iter().filter(|part| part.path != "sample");
        for (path, name, code) in fields
            .flat_map(|part| part.entries.iter().map(move |entry| (part.path, entry.name, entry.code)))
            .chain(BESIDES.iter().map(|(path, name, code, _)| (*path, *name, *code)))
        {
            assert!(codes.insert(code), "{path}.{name} shares {code}");
        }
    }

    #[test]
    fn every_choice_that_a_field_takes_is_listed() {
        for entry in SECTIONS.iter().flat_map(|part| part.entries) {
            if let Shape::Choice(choices) | Shape::Set(choices) = entry.shape {
                assert!(CHOICES.iter().any(|named| core::ptr::eq(named.choices, choices)), "{}", entry.name);
            }
            if let Shape::Set(choices) = entry.shape {
                // The lowest bit and the highest would say not known.
                assert!(choices.list.iter().all(|member| (0..31).contains(&member.code)), "{}", entry.name);
            }
        }
    }

    #[test]
    fn a_sample_has_the_numbers_of_the_readings() {
        let readings = Part::of::<Readings>().entries;
        for entry in Part::of::<Sample>().entries {
            let reading = readings.iter().find(|reading| reading.name == entry.name);
            assert_eq!(reading.map(|r| (r.code, r.shape)), Some((entry.code, entry.shape)), "{}", entry.name);
        }
    }
}
