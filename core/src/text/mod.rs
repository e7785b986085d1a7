//! Every sentence that a person reads, one table a language, apart from the code that decides.
//!
//! What is decided is a code with its numbers; codes never change, sentences may. C takes a table by its own name and
//! links no other.

pub mod en;
pub mod es;

use crate::field::{Choice, Choices, Texts, choice};
use crate::invalid::{ErrorCode, Facts};
use core::fmt;

choice! {
    /// A language that sentences are written in.
    Language {
        /// English.
        English = 1 "en",
        /// Spanish.
        Spanish = 2 "es",
    }
}

choice! {
    /// What a value is or must be, for an error about its type.
    ValueType {
        /// Nothing.
        Null = 1 "null",
        /// True or false.
        Boolean = 2 "boolean",
        /// A number.
        Number = 3 "number",
        /// A text.
        String = 4 "string",
        /// A list.
        Array = 5 "array",
        /// An object.
        Object = 6 "object",
        /// A number, or the word that says that a meter reads open.
        NumberOrOpen = 7 "number_or_open",
        /// A list of three numbers.
        ThreeNumbers = 8 "three_numbers",
        /// A name.
        Name = 9 "name",
        /// A list of names.
        Names = 10 "names",
        /// A refrigerant's designation.
        Designation = 11 "designation",
    }
}

choice! {
    /// A part of a sentence that is said in some cases only.
    Phrase {
        /// The limit where there is only a lowest one.
        AtLeast = 1 "at_least",
        /// The known name that is nearest.
        Nearest = 2 "nearest",
        /// The known names that go on as the given one does.
        KnownAre = 3 "known_are",
        /// The names that can be given instead of a value of another type.
        OneOf = 4 "one_of",
        /// The place in the text where it stops being JSON.
        InField = 5 "in_field",
    }
}

choice! {
    /// A sentence about a step that belongs to no reading, action or cause.
    StepPhrase {
        /// The machine is replaced.
        ReplaceMachine = 1 "replace_machine",
        /// Nothing is decided.
        NotDecided = 2 "not_decided",
        /// The circuit is left alone.
        LeaveAlone = 3 "leave_alone",
        /// A pump-down where no valve is fitted.
        FitValve = 4 "fit_valve",
        /// The machine is looked at.
        LookAtMachine = 5 "look_at_machine",
        /// A reading without a sentence of its own.
        ReadIt = 6 "read_it",
        /// The controls do not call for cooling.
        MendControls = 7 "mend_controls",
        /// The door does not close.
        MendDoor = 8 "mend_door",
        /// Something was found.
        MendFound = 9 "mend_found",
        /// The motor must not run.
        ReplaceMotor = 10 "replace_motor",
    }
}

/// A choice with a sentence for each member in every language.
pub trait Told: Choice {
    /// The table of a language.
    fn texts(language: Language) -> &'static Texts;
    /// The sentence of this one.
    fn text(self, language: Language) -> &'static str {
        find(Self::texts(language), self.code())
    }
}

/// Finds the text of a code; empty where there is none.
pub fn find(texts: &'static Texts, code: i32) -> &'static str {
    let text = texts.iter().find(|(known, _)| *known == code).map(|(_, text)| text.to_str());
    text.and_then(Result::ok).unwrap_or_default()
}

/// The sentences of one choice in every language, as a table.
#[derive(Clone, Copy, Debug)]
pub struct Table {
    /// The choice.
    pub choices: &'static Choices,
    /// The name of the tables in the rooms of the languages.
    pub name: &'static str,
    /// The sentences in the order of [`Language::ALL`].
    pub texts: [&'static Texts; 2],
}

/// Names the choices that have sentences, each with the name of its tables in the rooms of the languages.
macro_rules! told {
    ($( $table:ident: $choice:path, )*) => {
        $( impl Told for $choice {
            fn texts(language: Language) -> &'static Texts {
                match language {
                    Language::English => en::$table,
                    Language::Spanish => es::$table,
                }
            }
        } )*
        /// Every choice that has sentences.
        pub const TABLES: &[Table] = &[$( Table {
            choices: <$choice as Choice>::CHOICES,
            name: stringify!($table),
            texts: [en::$table, es::$table],
        } ),*];
    };
}

told! {
    ALARM_CODE: crate::alarm::AlarmCode,
    CAUSE: crate::cause::Cause,
    CAUTION_CODE: crate::caution::CautionCode,
    EFFORT: crate::measurement::Effort,
    ERROR_CODE: ErrorCode,
    FINDING_KIND: crate::motor::finding::FindingKind,
    PHRASE: Phrase,
    STEP: crate::caution::Step,
    STEP_PHRASE: StepPhrase,
    UNIT: crate::field::Unit,
    VALUE_TYPE: ValueType,
    WARNING_KIND: crate::warning::WarningKind,
}

/// What to do about some members of a choice, one table a language.
pub type Advice = [&'static Texts; 2];

/// Names the tables of advice, each with the choice that it is about.
macro_rules! advice {
    ($( $(#[doc = $doc:literal])* $table:ident: $choice:path, )*) => {
        $( $(#[doc = $doc])* pub const $table: Advice = [en::$table, es::$table]; )*
        /// Every table of advice.
        pub const ADVICE: &[Table] = &[$( Table {
            choices: <$choice as Choice>::CHOICES,
            name: stringify!($table),
            texts: $table,
        } ),*];
    };
}

advice! {
    /// How to take a reading or an observation.
    MEASURE: crate::measurement::Measurement,
    /// How to do an action.
    ACT: crate::readings::Action,
    /// How to ask for what the plate or the owner tells.
    ASK: crate::plan::Context,
    /// What mends a cause.
    REMEDY: crate::cause::Cause,
    /// What mends an electrical finding.
    MEND: crate::motor::finding::FindingKind,
}

/// Finds the advice on a member; nothing where it has none.
pub fn advice(of: Advice, code: i32, language: Language) -> Option<&'static str> {
    let [english, spanish] = of;
    let texts = match language {
        Language::English => english,
        Language::Spanish => spanish,
    };
    Some(find(texts, code)).filter(|text| !text.is_empty())
}

/// Writes the table of one choice in one language; a member without a sentence is found by a test.
macro_rules! table {
    ($name:ident: $choice:ty { $( $member:ident $text:literal, )* }) => {
        #[doc = concat!("The sentences of [`", stringify!($choice), "`](", stringify!($choice), ").")]
        pub static $name: &crate::field::Texts =
            &[$( (<$choice>::$member.code(), crate::field::c_text!($text)) ),*];
    };
}

use table;

/// The sentence of an error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sentence<'a> {
    /// The code and the numbers.
    pub facts: Facts,
    /// The language.
    pub language: Language,
    /// What was given instead, where it is no number.
    pub given: &'a str,
    /// What is known or expected.
    pub known: &'a str,
}

impl Sentence<'static> {
    /// The sentence of an error that is told by its numbers alone.
    pub const fn of(facts: Facts, language: Language) -> Self {
        Self { facts, language, given: "", known: "" }
    }
}

impl fmt::Display for Sentence<'_> {
    /// Writes the sentence with its numbers in the places that stand in braces.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Facts { code, value, min, max, unit } = self.facts;
        let only_lowest = code == ErrorCode::OutOfRange && max.is_none();
        let mut rest =
            if only_lowest { Phrase::AtLeast.text(self.language) } else { code.text(self.language) };
        while let Some((before, place)) = rest.split_once('{') {
            f.write_str(before)?;
            let (place, after) = place.split_once('}').unwrap_or((place, ""));
            let number = |f: &mut fmt::Formatter<'_>, number: Option<f32>| match number {
                Some(number) => write!(f, "{number}"),
                None => Ok(()),
            };
            match place {
                "value" => number(f, value)?,
                "min" => number(f, min)?,
                "max" => number(f, max)?,
                "unit" if unit == crate::field::Unit::None => {}
                "unit" => write!(f, " {}", unit.text(self.language))?,
                "given" => f.write_str(self.given)?,
                _ => f.write_str(self.known)?,
            }
            rest = after;
        }
        f.write_str(rest)
    }
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use crate::cause::Cause;
    use crate::readings::Action;
    use std::string::String;
    use std::vec::Vec;

    /// The places of a sentence, such as `{min}`.
    fn places(text: &str) -> Vec<&str> {
        let mut found: Vec<&str> =
            text.split('{').skip(1).filter_map(|rest| rest.split('}').next()).collect();
        found.sort_unstable();
        found
    }

    #[test]
    fn every_member_has_a_sentence_in_every_language() {
        for table in TABLES {
            for (language, texts) in Language::ALL.iter().zip(table.texts) {
                assert_eq!(texts.len(), table.choices.list.len(), "{} in {language:?}", table.name);
                for member in table.choices.list {
                    let text = find(texts, member.code);
                    // The unit of what has none is the one text that is empty.
                    let none = table.name == "UNIT" && member.code == 0;
                    assert_eq!(text.is_empty(), none, "{}: {} in {language:?}", table.name, member.name);
                    assert_eq!(text.trim(), text, "{}: {} in {language:?}", table.name, member.name);
                }
            }
        }
    }

    #[test]
    fn the_languages_name_the_same_figures_and_are_two() {
        let mut same = Vec::new();
        for table in TABLES {
            let [english, spanish] = table.texts;
            for member in table.choices.list {
                let (en, es) = (find(english, member.code), find(spanish, member.code));
                assert_eq!(places(en), places(es), "{}: {}", table.name, member.name);
                if en == es && table.name != "UNIT" {
                    same.push(std::format!("{}: {}", table.name, member.name));
                }
            }
        }
        // A word that both languages write alike.
        assert_eq!(same, ["VALUE_TYPE: null"].map(String::from));
    }

    #[test]
    fn advice_is_given_on_the_same_members_in_every_language() {
        for [english, spanish] in ADVICE.iter().map(|table| table.texts) {
            let codes = |texts: &Texts| texts.iter().map(|(code, _)| *code).collect::<Vec<_>>();
            assert_eq!(codes(english), codes(spanish));
            for ((_, en), (_, es)) in english.iter().zip(spanish) {
                assert!(en != es && en.to_bytes().ends_with(b".") && es.to_bytes().ends_with(b"."), "{en:?}");
            }
        }
        assert_eq!((ACT[0].len(), REMEDY[0].len()), (Action::ALL.len(), Cause::ALL.len()));
    }

    #[test]
    fn numbers_stand_in_their_places() {
        let facts = Facts {
            value: Some(-1.0),
            min: Some(0.5),
            max: Some(7.25),
            unit: crate::field::Unit::Kg,
            ..Facts::of(ErrorCode::OutOfRange)
        };
        for language in Language::ALL {
            let text = std::format!("{}", Sentence::of(facts, *language));
            assert!(text.contains("0.5") && text.contains("7.25 kg"), "{text}");
            let open = std::format!("{}", Sentence::of(Facts { max: None, ..facts }, *language));
            assert!(open.ends_with("0.5 kg") && !open.contains('{'), "{open}");
        }
    }
}
