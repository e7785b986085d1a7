//! The table of every refrigerant beside the boiling and dew points that others publish.

use crate::compile::Compiled;
use crate::data::Library;
use crate::uncertainty::{Difference, Evidence, median};
use std::fmt::Write as _;

/// Difference beyond which a reason stands beside the row, K.
pub const WITHIN_K: f64 = 0.5;

/// A row's larger difference, K.
fn larger(d: &Difference) -> f64 {
    d.bubble.abs().max(d.dew.map_or(0.0, f64::abs))
}

fn section(text: &mut String, head: &str, library: &Library, evidence: &Evidence, all: &[&Compiled]) {
    let _ = writeln!(text, "\n## {head}\n");
    let (mut bubble, mut dew, mut within, mut refrigerants) = (Vec::new(), Vec::new(), 0, 0);
    let mut rows = String::new();
    for c in all {
        let name = &c.substance.designation;
        for (k, d) in evidence.differences.get(name).into_iter().flatten().enumerate() {
            let exact = d.point.rounding_k < 0.4;
            if k == 0 {
                refrigerants += 1;
                if exact {
                    bubble.push(d.bubble);
                    dew.extend(d.dew);
                }
                within += usize::from(larger(d) <= WITHIN_K);
            }
            let mark = if larger(d) > WITHIN_K { " **" } else { "" };
            let left_out = match library.fitted.left_out.get(name) {
                Some([b, w]) if k == 0 => format!("{b:+.2} / {w:+.2}"),
                _ => "-".to_string(),
            };
            let _ = writeln!(
                rows,
                "| {name}{mark} | {} | {} | {:+.2} | {} | {left_out} | {:.2} | {} |",
                d.point.bubble_c,
                d.point.dew_c.map_or("-".to_string(), |c| c.to_string()),
                d.bubble,
                d.dew.map_or("-".to_string(), |d| format!("{d:+.2}")),
                c.saturation_k,
                d.point.source,
            );
        }
    }
    let _ = writeln!(
        text,
        "{refrigerants} refrigerants, {within} of them within {WITHIN_K} K of their first source. Median difference from \
         it: bubble {:.2} K, dew {:.2} K.\n",
        median(&bubble),
        median(&dew)
    );
    let left: Vec<&[f64; 2]> =
        all.iter().filter_map(|c| library.fitted.left_out.get(&c.substance.designation)).collect();
    if !left.is_empty() {
        let of = |k: usize| median(&left.iter().map(|e| e[k]).collect::<Vec<_>>());
        let _ = writeln!(
            text,
            "Predicted without their own published point ({} blends): median bubble {:.2} K, dew {:.2} K.\n",
            left.len(),
            of(0),
            of(1)
        );
    }
    let _ = writeln!(
        text,
        "| refrigerant | bubble, degC | dew, degC | ours less bubble, K | ours less dew, K | left out: bubble / dew, K | \
         stated standard uncertainty, K | source |\n|---|---|---|---|---|---|---|---|\n{rows}"
    );
}

/// Writes the table.
pub fn report(library: &Library, evidence: &Evidence, all: &[Compiled]) -> String {
    let mut text = String::from(
        "# Beside boiling and dew points that others publish\n\n\
         Written by `cargo run --release -p rimewise-tables`; do not edit.\n\n\
         At one standard atmosphere: the model of every refrigerant (the equations and pairs that its table is compiled \
         from; `tables/ERRORS.md` has how close the table is to them, some thousandths of a kelvin) beside what others \
         print. This checks the figures; the comparison with CoolProp in `tests/properties` checks code and solver. The \
         first row of a refrigerant is the one that medians count. Two stars: more than 0.5 K from it; why is said at the \
         end, or is not known.\n\nSources:\n\n",
    );
    for (key, meaning) in &library.published.sources {
        let _ = writeln!(text, "* {key}: {meaning}.");
    }
    let pick = |f: &dyn Fn(&&Compiled) -> bool| all.iter().filter(f).collect::<Vec<_>>();
    let estimated = pick(&|c| !c.substance.is_pure() && !c.substance.mixture.estimated.is_empty());
    let published = pick(&|c| !c.substance.is_pure() && c.substance.mixture.estimated.is_empty());
    let pure = pick(&|c| c.substance.is_pure());
    section(&mut text, "Blends with estimated pairs", library, evidence, &estimated);
    section(&mut text, "Blends whose pairs are all published", library, evidence, &published);
    section(&mut text, "Pure fluids", library, evidence, &pure);
    let _ = writeln!(text, "## More than {WITHIN_K} K, and why\n");
    for c in all {
        let name = &c.substance.designation;
        let Some(first) = evidence.differences.get(name).and_then(|d| d.first()) else { continue };
        if larger(first) > WITHIN_K {
            let reason = library.published.reasons.get(name).map_or("not known", String::as_str);
            let aside = if first.set_aside { " Set aside." } else { "" };
            let _ = writeln!(text, "* {name}: {reason}.{aside}");
        }
    }
    let _ = writeln!(
        text,
        "\n## The uncertainty that each refrigerant states\n\n\
         Standard uncertainty of a saturation temperature. Pure: that of the vapor pressure (`vapor_pressure.json`) over the \
         steepness of its curve at 0.8 of the critical temperature. Blend: that of its most uncertain component and, beside \
         it, what its pairs leave open. Pairs of models whose papers state it: {} % of pressure, over the same steepness, by \
         half. Other published pairs: {:.2} K (1.4826 times the median difference of all such blends). Either is raised to \
         the blend's own difference from its nearest source. Estimated pairs: the difference of the prediction made without \
         the blend's own point, or half of what lies between two sources that differ; {:.2} K (1.4826 times the median of all \
         such predictions) where there is no point or it is set aside.",
        library.vapor_pressure.mixtures.percent, evidence.published_k, evidence.estimated_k
    );
    text
}
