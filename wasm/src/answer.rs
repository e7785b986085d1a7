//! One line of JSON in the making, for answers the library itself does not write as lines.

use std::fmt::Write;

/// An answer or an error.
pub(crate) struct Answer(String);

impl Answer {
    pub(crate) fn ok() -> Self {
        Self(String::from("{\"status\":\"ok\""))
    }

    /// An error that names its field. Names and messages of the library hold neither quotes nor backslashes.
    pub(crate) fn error(field: &str, error: &str) -> String {
        format!("{{\"status\":\"error\",\"field\":\"{field}\",\"error\":\"{error}\"}}")
    }

    /// Adds a number; what is not finite is null.
    pub(crate) fn number(mut self, name: &str, value: f32) -> Self {
        self.name(name);
        self.write(value);
        self
    }

    pub(crate) fn text(mut self, name: &str, value: &str) -> Self {
        self.name(name);
        self.0.push('"');
        self.0.push_str(value);
        self.0.push('"');
        self
    }

    pub(crate) fn boolean(mut self, name: &str, value: bool) -> Self {
        self.name(name);
        self.0.push_str(if value { "true" } else { "false" });
        self
    }

    /// Adds JSON that is already written.
    pub(crate) fn json(mut self, name: &str, value: &str) -> Self {
        self.name(name);
        self.0.push_str(value);
        self
    }

    pub(crate) fn end(mut self) -> String {
        self.0.push('}');
        self.0
    }

    fn name(&mut self, name: &str) {
        self.0.push_str(",\"");
        self.0.push_str(name);
        self.0.push_str("\":");
    }

    fn write(&mut self, value: f32) {
        number(&mut self.0, value);
    }
}

/// Writes a number, or null where it is not finite.
pub(crate) fn number(text: &mut String, value: f32) {
    // Writing to a string cannot fail; Display writes the shortest decimal that reads back as the same binary32.
    let _ = if value.is_finite() { write!(text, "{value}") } else { write!(text, "null") };
}
