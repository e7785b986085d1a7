//! One page to leave behind: machine, verdict, reasons, what was ruled out and done, before and after, cautions.

use crate::common::Units;
use crate::common::words::{finding_words, reading, words};
use crate::page;
use rimewise::cause::Cause;
use rimewise::json::OwnedVisit;
use rimewise::readings::Readings;
use rimewise::report::Report;

/// Reasons on the page.
const REASONS: usize = 3;

/// A title with its lines.
type Block = (&'static str, Vec<String>);

fn blocks(units: &Units, visit: &OwnedVisit, report: &Report, done: &[String]) -> Vec<Block> {
    let diagnosis = &report.diagnosis;
    let mut blocks: Vec<Block> = Vec::new();
    let mut verdict = vec![page::compressor(report), page::verdict(report)];
    verdict.extend(report.plan.change.map(|change| page::changed(change).to_owned()));
    verdict.extend(report.alarms.iter().map(|alarm| alarm.text().to_owned()));
    blocks.push(("Verdict", verdict));
    let reasons: Vec<String> = diagnosis
        .evidence
        .iter()
        .filter(|e| e.cause == diagnosis.leading && e.weight_nats > 0.0)
        .take(REASONS)
        .map(|e| format!("{} ({})", reading(e.reading), page::strength(e.weight_nats)))
        .collect();
    blocks.push(("Reasons", reasons));
    let mut out: Vec<String> = diagnosis
        .ruled_out
        .iter()
        .filter(|entry| entry.cause != Cause::None)
        .map(|entry| words(entry.cause).to_owned())
        .collect();
    if !out.is_empty() {
        out = vec![out.join(", ")];
    }
    blocks.push(("Ruled out", out));
    blocks.push(("Electrical", report.electrical.iter().map(finding_words).collect()));
    blocks.push(("Done", done.to_vec()));
    let before = visit.before.as_ref();
    blocks.push((
        if before.is_some() {
            "Before, after, and expected of a healthy machine"
        } else {
            "Measured, and expected of a healthy machine"
        },
        page::readings(visit, report, units)
            .into_iter()
            .filter_map(|(name, seen, healthy)| {
                let was = before
                    .map(|b| format!("{} -> ", earlier(b, name, units).unwrap_or("not read".to_owned())));
                Some(format!(
                    "{name}: {}{} ({})",
                    was.unwrap_or_default(),
                    seen?,
                    healthy.unwrap_or_default()
                ))
            })
            .collect(),
    ));
    blocks.push((
        "Next step",
        page::step_lines(report, &report.plan.step).iter().map(|l| l.trim().to_owned()).collect(),
    ));
    blocks.push((
        "Cautions (local codes and licensed practice go first)",
        page::cautions_of_step(report).iter().map(|c| c.text().to_owned()).collect(),
    ));
    blocks.retain(|(_, lines)| !lines.is_empty());
    blocks
}

/// What a row showed before the change.
fn earlier(before: &Readings, name: &str, units: &Units) -> Option<String> {
    match name {
        "suction pressure" => before.suction_pressure_kpa.map(|kpa| units.pressure(kpa)),
        "discharge pressure" => before.discharge_pressure_kpa.map(|kpa| units.pressure(kpa)),
        "discharge line" => before.discharge_line_c.map(|c| units.temperature(c)),
        "liquid line" => before.liquid_line_c.map(|c| units.temperature(c)),
        "supply air" => before.supply_air_c.map(|c| units.temperature(c)),
        "condenser exhaust air" => before.condenser_exhaust_c.map(|c| units.temperature(c)),
        "current" => before.current_a.map(|a| format!("{a:.2} A")),
        _ => None,
    }
}

/// The page, as HTML where the file's name says so, else as text.
pub(crate) fn write(
    path: &str,
    units: &Units,
    visit: &OwnedVisit,
    report: &Report,
    done: &[String],
) -> std::io::Result<()> {
    let title = format!("Service report: {}", page::machine(visit));
    let date = format!("Date: {}", today());
    let blocks = blocks(units, visit, report, done);
    let text =
        if path.ends_with(".html") { html(&title, &date, &blocks) } else { plain(&title, &date, &blocks) };
    std::fs::write(path, text)
}

fn plain(title: &str, date: &str, blocks: &[Block]) -> String {
    let mut text = format!("{title}\n{date}\n");
    for (name, lines) in blocks {
        text.push_str(&format!("\n{name}\n"));
        for line in lines {
            text.push_str(&format!("  {line}\n"));
        }
    }
    text
}

fn html(title: &str, date: &str, blocks: &[Block]) -> String {
    let mut text = format!(
        "<!doctype html>\n<html lang=\"en\"><meta charset=\"utf-8\"><title>{0}</title>\n<style>body{{font:15px/1.4 \
         sans-serif;max-width:48em;margin:2em auto;padding:0 1em}}h2{{font-size:1.05em;margin:1em 0 .2em}}ul{{margin:0}}\
         @media print{{body{{margin:0}}}}</style>\n<h1>{0}</h1>\n<p>{1}</p>\n",
        escaped(title),
        escaped(date),
    );
    for (name, lines) in blocks {
        text.push_str(&format!("<h2>{}</h2>\n<ul>\n", escaped(name)));
        for line in lines {
            text.push_str(&format!("<li>{}</li>\n", escaped(line)));
        }
        text.push_str("</ul>\n");
    }
    text.push_str("</html>\n");
    text
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Today's date by the clock, universal time (days to civil date: Howard Hinnant's algorithm, from memory, checked below).
fn today() -> String {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    civil(since.map_or(0, |d| d.as_secs() / 86_400))
}

fn civil(days: u64) -> String {
    let days = days + 719_468;
    let (era, of_era) = (days / 146_097, days % 146_097);
    let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let day_of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let shifted = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * shifted + 2) / 5 + 1;
    let month = if shifted < 10 { shifted + 3 } else { shifted - 9 };
    let year = year_of_era + era * 400 + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_become_dates() {
        // 2000-03-01 is day 11017, 2024-02-29 day 19782 (counted from 1970-01-01 by the calendar).
        assert_eq!(civil(0), "1970-01-01");
        assert_eq!(civil(11_017), "2000-03-01");
        assert_eq!(civil(19_782), "2024-02-29");
    }

    #[test]
    fn a_page_escapes_what_it_repeats() {
        let page = html("a<b", "d", &[("x&y", vec!["\"q\"".to_owned()])]);
        assert!(page.contains("a&lt;b") && page.contains("x&amp;y") && page.contains("&quot;q&quot;"));
    }
}
