//! The CSV of a recording, read by the program that people run.

use std::io::{Read, Write};
use std::process::{Command, Stdio};

/// Any text. The program's path stands in RIMEWISE_WATCH; without one nothing is run.
pub fn target(data: &[u8]) {
    let Ok(program) = std::env::var("RIMEWISE_WATCH") else { return };
    let mut watch = Command::new(program)
        .args(["-", "--json"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program of RIMEWISE_WATCH");
    let mut input = watch.stdin.take().expect("piped");
    let mut output = watch.stdout.take().expect("piped");
    let bytes = data.to_vec();
    // Beside reading: neither pipe may fill up. A program that refused its first line reads no further.
    let writer = std::thread::spawn(move || drop(input.write_all(&bytes)));
    let mut lines = String::new();
    output.read_to_string(&mut lines).expect("text");
    writer.join().expect("written");
    let ended = watch.wait_with_output().expect("ended");
    let said = String::from_utf8_lossy(&ended.stderr).into_owned();
    match ended.status.code() {
        Some(0) => {}
        Some(2) => {
            assert!(!said.trim().is_empty(), "refused without a word: {:?}", String::from_utf8_lossy(data))
        }
        other => panic!("ended with {other:?}: {said}"),
    }
    for line in lines.lines() {
        assert!(serde_json::from_str::<serde_json::Value>(line).is_ok(), "no JSON: {line}");
    }
}
