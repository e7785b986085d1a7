//! Visits line by line: each is answered as it comes, by one line with its number.
//!
//! A line that no visit needs is refused before it is read as JSON: one longer than a megabyte, or with an object or a
//! list of more members than any visit has.

use rimewise::invalid::ErrorCode;
use rimewise::json::{FieldError, answer_visit, write_error};
use std::io::{BufRead, Write};

/// Longest line that is read, bytes.
pub(crate) const LONGEST: usize = 1 << 20;
/// Most members of one object or list.
pub(crate) const MEMBERS: usize = 256;
/// Longest name or text that is repeated in an error, characters.
const REPEATED: usize = 80;

/// How a stream ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ended {
    /// Every visit was answered.
    Well,
    /// At least one visit was refused.
    Refused,
    /// The answers could not be written.
    Unwritten,
    /// The input could not be read.
    Unread,
}

fn not_json(what: &str) -> FieldError {
    FieldError::of_text(ErrorCode::NotJson, what)
}

fn too_long(what: &str) -> FieldError {
    FieldError::of_text(ErrorCode::TooLong, what)
}

/// Reads one line of at most [`LONGEST`] bytes and passes over the rest; nothing at the end.
pub(crate) fn line(input: &mut impl BufRead) -> std::io::Result<Option<Result<Vec<u8>, FieldError>>> {
    let mut bytes = Vec::new();
    let mut long = false;
    let mut any = false;
    loop {
        let here = input.fill_buf()?;
        if here.is_empty() {
            break;
        }
        any = true;
        let end = here.iter().position(|b| *b == b'\n');
        let part = here.get(..end.unwrap_or(here.len())).unwrap_or_default();
        if bytes.len() + part.len() > LONGEST {
            long = true;
            bytes.clear();
        } else if !long {
            bytes.extend_from_slice(part);
        }
        let used = end.map_or(here.len(), |end| end + 1);
        input.consume(used);
        if end.is_some() {
            break;
        }
    }
    Ok(any.then(|| if long { Err(too_long("a line of more than 1 MB")) } else { Ok(bytes) }))
}

/// Refuses what no visit holds before anything is made of it: other text than UTF-8, control characters, too many members.
pub(crate) fn cheap(bytes: &[u8]) -> Result<&str, FieldError> {
    let text = std::str::from_utf8(bytes).map_err(|_| not_json("not UTF-8"))?;
    let mut members: Vec<usize> = Vec::new();
    let (mut quoted, mut escaped) = (false, false);
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    for byte in text.as_bytes() {
        if byte.is_ascii_control() && !matches!(byte, b'\t' | b'\r' | b'\n') {
            return Err(not_json("it holds control characters"));
        }
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            _ if quoted => {}
            b'{' | b'[' => {
                members.push(1);
                if members.len() > MEMBERS {
                    return Err(too_long("nested too deep"));
                }
            }
            b'}' | b']' => {
                members.pop();
            }
            b',' => {
                if let Some(count) = members.last_mut() {
                    *count += 1;
                    if *count > MEMBERS {
                        return Err(too_long("an object or list of more than 256 members"));
                    }
                }
            }
            _ => {}
        }
    }
    Ok(text)
}

/// Shortens what an error repeats, and takes control characters out of it.
pub(crate) fn printable(text: &str) -> String {
    let clean: String = text.chars().map(|c| if c.is_control() { '?' } else { c }).collect();
    if clean.chars().count() <= 4 * REPEATED {
        return clean;
    }
    let head: String = clean.chars().take(REPEATED).collect();
    let tail: String = clean.chars().skip(clean.chars().count() - REPEATED).collect();
    format!("{head} ... {tail}")
}

/// An error that repeats no more than it has to.
fn short(error: FieldError) -> FieldError {
    error.rewritten(printable)
}

/// Answers one line with one line of JSON that begins with its number.
fn answer(number: usize, bytes: Result<Vec<u8>, FieldError>) -> (String, bool) {
    let bytes = bytes.map_err(|e| write_error(&short(e)));
    let answered = bytes.and_then(|bytes| {
        let text = cheap(&bytes).map_err(|e| write_error(&short(e)))?;
        Ok(answer_visit(text))
    });
    let text = answered.unwrap_or_else(|error| error);
    let refused = text.starts_with("{\"status\":\"error\"");
    // An answer that repeats a name of a megabyte helps nobody.
    let text = if refused && text.len() > 16 * REPEATED { write_error(&refused_long()) } else { text };
    (format!("{{\"line\":{number},{}", text.get(1..).unwrap_or_default()), refused)
}

fn refused_long() -> FieldError {
    too_long("a name or text")
}

/// How many objects and lists a text leaves open; nothing where it closes more than it opens.
fn left_open(bytes: &[u8]) -> Option<usize> {
    let (mut open, mut quoted, mut escaped) = (0usize, false, false);
    for byte in bytes {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            _ if quoted => {}
            b'{' | b'[' => open += 1,
            b'}' | b']' => open = open.checked_sub(1)?,
            _ => {}
        }
    }
    Some(open)
}

/// Whether a line is a whole object by itself.
fn is_whole(bytes: &[u8]) -> bool {
    let bytes = bytes.trim_ascii();
    bytes.starts_with(b"{") && bytes.ends_with(b"}") && left_open(bytes) == Some(0)
}

/// Answers every line as it comes; empty lines are passed over and counted.
///
/// An object that is written over several lines is one visit with the number of its first line, up to a line that is a
/// whole object by itself.
pub(crate) fn stream(input: &mut impl BufRead, output: &mut impl Write) -> Ended {
    let mut ended = Ended::Well;
    let mut number = 0;
    let mut begun: Option<(usize, Vec<u8>)> = None;
    loop {
        let bytes = match line(input) {
            Ok(Some(bytes)) => Some(bytes),
            Ok(None) => None,
            Err(_) => return Ended::Unread,
        };
        let last = bytes.is_none();
        number += 1;
        let mut ready = Vec::new();
        match (begun.take(), bytes) {
            (Some(before), None) => ready.push((before.0, Ok(before.1))),
            (Some((first, mut before)), Some(Ok(more)))
                if !is_whole(&more) && before.len() + more.len() < LONGEST =>
            {
                before.push(b'\n');
                before.extend_from_slice(&more);
                begun = Some((first, before));
            }
            (before, bytes) => {
                ready.extend(before.map(|(first, bytes)| (first, Ok(bytes))));
                match bytes {
                    Some(Ok(bytes)) if bytes.trim_ascii().is_empty() => {}
                    Some(Ok(bytes))
                        if bytes.trim_ascii().starts_with(b"{") && left_open(&bytes) > Some(0) =>
                    {
                        begun = Some((number, bytes));
                    }
                    Some(bytes) => ready.push((number, bytes)),
                    None => {}
                }
            }
        }
        if let Some((first, bytes)) = begun.take_if(|(_, bytes)| left_open(bytes) == Some(0)) {
            ready.push((first, Ok(bytes)));
        }
        for (number, bytes) in ready {
            let (text, refused) = answer(number, bytes);
            if refused {
                ended = Ended::Refused;
            }
            if writeln!(output, "{text}").and_then(|()| output.flush()).is_err() {
                return Ended::Unwritten;
            }
        }
        if last {
            return ended;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(input: &[u8]) -> (String, Ended) {
        let mut out = Vec::new();
        let ended = stream(&mut &input[..], &mut out);
        (String::from_utf8(out).unwrap(), ended)
    }

    #[test]
    fn every_line_is_answered_by_one_with_its_number() {
        let (out, ended) = run(b"{}\n\n{\"readings\":{\"no_such\":1}}\n{}\n");
        let lines: Vec<&str> = out.lines().collect();
        assert_eq!(lines.len(), 3);
        assert!(lines[0].starts_with("{\"line\":1,\"status\":\"ok\""), "{}", lines[0]);
        assert!(lines[1].starts_with("{\"line\":3,\"status\":\"error\""), "{}", lines[1]);
        assert!(lines[2].starts_with("{\"line\":4,"), "{}", lines[2]);
        assert_eq!(ended, Ended::Refused);
    }

    #[test]
    fn what_no_visit_holds_is_refused_and_the_next_line_is_served() {
        let long = format!("{{\"{}\":1}}\n{{}}\n", "k".repeat(2 * LONGEST));
        let key = format!("{{\"{}\":1}}\n{{}}\n", "k".repeat(LONGEST / 2));
        let many: Vec<String> = (0..300).map(|n| format!("\"k{n}\":1")).collect();
        let many = format!("{{{}}}\n{{}}\n", many.join(","));
        for (input, says) in [
            (long.as_str(), "longer than 1 MB"),
            (key.as_str(), "longer than any of a visit"),
            (many.as_str(), "more than 256 members"),
            ("{\"a\u{1}\":1}\n{}\n", "control characters"),
        ] {
            let (out, ended) = run(input.as_bytes());
            let lines: Vec<&str> = out.lines().collect();
            assert_eq!(lines.len(), 2, "{says}");
            assert!(lines[0].contains(says) && lines[0].len() < 400, "{says}: {:.200}", lines[0]);
            assert!(lines[1].starts_with("{\"line\":2,\"status\":\"ok\""));
            assert_eq!(ended, Ended::Refused);
        }
    }

    #[test]
    fn an_object_over_several_lines_is_one_visit_and_a_broken_one_hides_none() {
        let (out, _) = run(b"{\n \"readings\": {\n }\n}\n{}\n");
        let lines: Vec<&str> = out.lines().collect();
        assert_eq!(lines.len(), 2, "{out}");
        assert!(
            lines[0].starts_with("{\"line\":1,\"status\":\"ok\"") && lines[1].starts_with("{\"line\":5,")
        );
        let (out, _) = run(b"{\"readings\":{\n{}\n");
        let lines: Vec<&str> = out.lines().collect();
        assert_eq!(lines.len(), 2, "{out}");
        assert!(
            lines[0].starts_with("{\"line\":1,\"status\":\"error\"") && lines[1].starts_with("{\"line\":2,")
        );
    }

    struct Broken;
    impl Write for Broken {
        fn write(&mut self, _: &[u8]) -> std::io::Result<usize> {
            Err(std::io::ErrorKind::BrokenPipe.into())
        }
        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn an_answer_that_cannot_be_written_ends_the_stream() {
        assert_eq!(stream(&mut &b"{}\n{}\n"[..], &mut Broken), Ended::Unwritten);
    }
}
