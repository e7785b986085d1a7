//! The report of measured errors, as text.

use crate::compile::Compiled;
use crate::dome::USABLE_K;
use crate::measure::{Caloric, Errors};
use crate::saturation::{Kind, Specification};
use crate::substance::{BELOW_CRITICAL, Substance};
use crate::uncertainty::{Difference, Evidence};
use std::fmt::Write as _;

/// What a table must reach.
mod target {
    /// Saturation temperature, K.
    pub(super) const SATURATION: f64 = 0.005;
    /// Vapor and liquid, %.
    pub(super) const CALORIC: f64 = 0.1;
    /// Temperature from enthalpy or entropy, K.
    pub(super) const INVERSE: f64 = 0.05;
    /// Jump where two pieces meet, K.
    pub(super) const JUMP: f64 = 2e-4;
    /// Bytes of one table.
    pub(super) const BYTES: usize = 1200;
    /// Mean bytes of the tables.
    pub(super) const MEAN_BYTES: usize = 800;
    /// Critical temperature below which a fluid is not counted as a refrigerant of the trade, K.
    pub(super) const COUNTED_CRITICAL: f64 = 250.0;
}

/// Lists what a table misses.
pub fn misses(c: &Compiled) -> Vec<String> {
    let e = &c.errors;
    let mut out = Vec::new();
    let mut check = |name: &str, value: f64, limit: f64, unit: &str| {
        if value > limit {
            out.push(format!("{name} {value:.4} {unit} (target {limit} {unit})"));
        }
    };
    check("dew", e.dew, target::SATURATION, "K");
    check("bubble", e.bubble, target::SATURATION, "K");
    check("jump", e.jump, target::JUMP, "K");
    for (name, caloric) in [("vapor", &e.vapor), ("liquid", &e.liquid)] {
        check(&format!("{name} density"), caloric.density, target::CALORIC, "%");
        check(&format!("{name} enthalpy"), caloric.enthalpy, target::CALORIC, "%");
        check(&format!("{name} entropy"), caloric.entropy, target::CALORIC, "%");
    }
    let gap = c.substance.t_critical - c.substance.t_max;
    if gap > BELOW_CRITICAL + 0.01 {
        let why = if c.substance.is_pure() {
            "the equation's own critical point lies lower"
        } else {
            "above, the model has a second loop of density on which its saturation curves turn back"
        };
        out.push(format!("table ends {gap:.2} K below critical (target {BELOW_CRITICAL} K): {why}"));
    }
    if c.bytes.len() > target::BYTES {
        out.push(format!("{} bytes (target {})", c.bytes.len(), target::BYTES));
    }
    let unanswered = e.missing + e.vapor.missing + e.liquid.missing + e.unanswered;
    if unanswered > 0 {
        out.push(format!("{unanswered} points not answered"));
    }
    out
}

fn composition(s: &Substance) -> String {
    if s.is_pure() {
        return s.names.first().cloned().unwrap_or_default();
    }
    let names: Vec<&str> = s.components.iter().map(|(n, _)| n.as_str()).collect();
    let parts: Vec<String> =
        s.components.iter().map(|(_, f)| format!("{}", libm::round(f * 1e5) / 1e3)).collect();
    format!("{} {}", names.join("/"), parts.join("/"))
}

fn caloric(c: &Caloric) -> String {
    format!("{:.3} / {:.3} / {:.3}", c.density, c.enthalpy, c.entropy)
}

/// The difference from the first published point, K: bubble / dew.
fn beside_published(c: &Compiled, evidence: &Evidence) -> String {
    match evidence.differences.get(&c.substance.designation).and_then(|d| d.first()) {
        Some(Difference { bubble, dew: Some(dew), .. }) => format!("{bubble:+.2} / {dew:+.2}"),
        Some(Difference { bubble, .. }) => format!("{bubble:+.2}"),
        None => "-".to_string(),
    }
}

fn row(c: &Compiled, evidence: &Evidence) -> String {
    let (s, e): (&Substance, &Errors) = (&c.substance, &c.errors);
    let one_atmosphere =
        |kind| s.saturated(kind, Specification::Pressure(101_325.0)).filter(|p| p.t >= s.t_min - 1e-6);
    let boiling = one_atmosphere(Kind::Bubble);
    let glide = match (one_atmosphere(Kind::Dew), &boiling) {
        (Some(dew), Some(bubble)) if !s.is_pure() => format!("{:.2}", dew.t - bubble.t),
        (_, Some(_)) => "0".to_string(),
        _ => "-".to_string(),
    };
    format!(
        "| {} | {} | {} | {:.2} | {:.1} | {} | {} | {:.1} | {:.4} / {:.4} | {:.2} | {} | {:.5} | {} | {} | {} | {} | {:.4} | {:.3} / {:.3} / {} | {} | {:.2} / {:.2} / {:.2} | {} |",
        s.designation,
        composition(s),
        s.safety_class.as_deref().unwrap_or("-"),
        s.t_critical - 273.15,
        s.p_critical / 1e3,
        boiling.map_or("-".to_string(), |b| format!("{:.2}", b.t - 273.15)),
        glide,
        s.t_min - 273.15,
        e.dew,
        e.bubble,
        c.saturation_k,
        beside_published(c, evidence),
        e.jump,
        caloric(&e.vapor),
        caloric(&e.hot_vapor),
        caloric(&e.liquid),
        caloric(&e.near_critical),
        e.round_trip,
        e.inverse[0],
        e.inverse[1],
        match &c.dome {
            Some(dome) if dome.worst_k > USABLE_K && e.inverse[2] == 0.0 => "refused".to_string(),
            Some(_) => format!("{:.3}", e.inverse[2]),
            None => "0".to_string(),
        },
        if c.dome.is_some() { format!("{:.4}", e.quality) } else { "0".to_string() },
        e.response[0],
        e.response[1],
        e.response[2],
        c.bytes.len(),
    )
}

const HEAD: &str = "\
| refrigerant | composition, mass % | class | Tc, degC | pc, kPa | NBP, degC | glide, K | from, degC | fit: dew / bubble, worst, K | model: standard uncertainty, K | beside published: bubble / dew, K | jump, K | vapor 0-80 K: density / h / s, % | vapor 80-120 K, % | liquid 0-40 K, % | last 8 K below Tc, % | T from the table's own (p,h) (p,s), K | T from (p,h) (p,s) of the equation: vapor 0-80 K / liquid 0-40 K / between, K | quality | cp vapor / cp liquid / sound vapor, % | bytes |
|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|
";

/// Writes the report of one table, for a blend of the user's own.
pub fn one(c: &Compiled, evidence: &Evidence) -> String {
    let mut text = format!("{HEAD}{}\n", row(c, evidence));
    let missed = misses(c);
    let _ = match missed.is_empty() {
        true => writeln!(text, "\nEvery target is met."),
        false => writeln!(text, "\nMisses: {}.", missed.join("; ")),
    };
    for pair in &c.substance.mixture.estimated {
        let (a, b, how) = (&pair.pair[0], &pair.pair[1], pair.estimate.name());
        let _ = writeln!(text, "Estimated pair: {a} + {b} (no published parameters; {how}).");
    }
    let _ = writeln!(text, "Reference state: {}.", c.substance.reference);
    text
}

/// Lists the blends whose dome is refused.
fn refused(all: &[Compiled]) -> String {
    let refused = all.iter().filter(|c| c.dome.is_some_and(|d| d.worst_k > USABLE_K));
    refused.map(|c| c.substance.designation.as_str()).collect::<Vec<_>>().join(", ")
}

/// Writes the report of all tables.
pub fn all(all: &[Compiled], evidence: &Evidence, notes: &str) -> String {
    let mut text = String::from(
        "# Measured errors of the built-in tables\n\n\
         Three errors lie between a table and the world, and stand beside each other below. Fit: how far the table is from \
         the equations it was compiled from; some thousandths of a kelvin. Model: how far those equations and their pairs \
         may be from the world, a standard uncertainty in kelvin; it is the larger one nearly everywhere, goes with the table \
         (`Refrigerant::saturation_uncertainty`), and `tables/PUBLISHED.md` says how it is found. Beside published: the \
         difference of the equations from the bubble and dew point that others print, at one atmosphere, with their \
         rounding and their errors in it.\n\n\
         Written by `cargo run --release -p rimewise-tables`; do not edit.\n\n\
         Every other figure is the worst difference between the table, read through the library's own code, and the equation \
         of state, at points that lie between those the table was fitted to. Saturation: 157 temperatures on each curve \
         from the lowest temperature (200 K, or the equation's lower limit) to 2 K below the critical temperature, and \
         both sides of every place where two pieces may meet. Vapor: 23 dew temperatures up to 8 K below critical, 12 \
         superheats from 0 to 80 K; liquid: 23 bubble temperatures, 10 subcoolings from 0 to 40 K; points above the \
         equation's published temperature limit or below its lowest are left out. Density in percent of itself, \
         enthalpy and entropy in percent of those of evaporation at the same pressure. The last 8 K below critical have \
         no target; their points run from 7 to 2.2 K below.\n\n",
    );
    let counted = all.iter().filter(|c| c.substance.t_critical >= target::COUNTED_CRITICAL).count();
    let total: usize = all.iter().map(|c| c.bytes.len()).sum();
    let longest = all.iter().max_by_key(|c| c.bytes.len());
    let worst = |read: &dyn Fn(&Errors) -> f64| {
        all.iter()
            .map(|c| (read(&c.errors), c.substance.designation.as_str()))
            .fold((0.0, ""), |m, v| if v.0 > m.0 { v } else { m })
    };
    let _ = writeln!(text, "| what | target | measured |\n|---|---|---|");
    let _ = writeln!(text, "| refrigerants with a critical temperature from 250 K | 150 | {counted} |");
    for (name, limit, read) in [
        ("dew temperature, worst, K", target::SATURATION, (&|e: &Errors| e.dew) as &dyn Fn(&Errors) -> f64),
        ("bubble temperature, worst, K", target::SATURATION, &|e| e.bubble),
        ("jump where pieces meet, worst, K", target::JUMP, &|e| e.jump),
        ("vapor 0-80 K, worst of density, h, s, %", target::CALORIC, &|e| e.vapor.worst()),
        ("liquid 0-40 K, worst of density, h, s, %", target::CALORIC, &|e| e.liquid.worst()),
        ("T from (p,h) and (p,s) of the equation, vapor 0-80 K, worst, K", target::INVERSE, &|e| {
            e.inverse[0]
        }),
        ("T from (p,h) and (p,s) of the equation, liquid 0-40 K, worst, K", target::INVERSE, &|e| {
            e.inverse[1]
        }),
        ("T from (p,h) and (p,s) of the model, between bubble and dew, worst, K", target::INVERSE, &|e| {
            e.inverse[2]
        }),
    ] {
        let (value, which) = worst(read);
        let over = all.iter().filter(|c| read(&c.errors) > limit).count();
        let _ = writeln!(text, "| {name} | {limit} | {value:.5} ({which}); {over} refrigerants over |");
    }
    let _ = writeln!(
        text,
        "| bytes of a table, longest | {} | {} |",
        target::BYTES,
        longest.map_or(String::new(), |c| format!("{} ({})", c.bytes.len(), c.substance.designation))
    );
    let _ =
        writeln!(text, "| bytes of a table, mean | {} | {} |", target::MEAN_BYTES, total / all.len().max(1));
    let _ = writeln!(
        text,
        "\nTemperature from enthalpy or entropy misses its target of {} K in the vapor of many refrigerants: an error allowed of \
         0.1 % of the evaporation's enthalpy is 0.05 to 0.2 K of vapor, and the potentials use most of it. Closing it takes \
         some seven coefficients more a table and other bits in every vapor state. Each refrigerant's own figure stands in \
         the last table; where the worst is over {} K is for the caller to weigh. Between bubble and dew nothing is answered \
         where the shape of a blend's dome was fitted to worse than {} K: {}.",
        target::INVERSE,
        target::INVERSE,
        USABLE_K,
        refused(all)
    );
    let _ = writeln!(text, "\n## Misses, refrigerant by refrigerant\n");
    let mut any = false;
    for c in all {
        let missed = misses(c);
        if !missed.is_empty() {
            any = true;
            let _ = writeln!(text, "* {}: {}", c.substance.designation, missed.join("; "));
        }
    }
    if !any {
        let _ = writeln!(text, "None.");
    }
    let _ = writeln!(
        text,
        "\n## Estimated pairs\n\nNo published parameters. A homologue's are those of a pair of like molecules; a fit is made to published bubble and \
         dew points of blends (`fitted.json`); the combining rule takes the means of the components' reducing temperatures \
         and volumes (one of those that O. Kunz, W. Wagner, J. Chem. Eng. Data 57 (2012) 3032 use where data are missing). \
         `pairs.json` says which stands for which and why; `tables/PUBLISHED.md` how far off it leaves each blend.\n"
    );
    for c in all.iter().filter(|c| !c.substance.mixture.estimated.is_empty()) {
        let pairs: Vec<String> = c
            .substance
            .mixture
            .estimated
            .iter()
            .map(|p| format!("{} + {} ({})", p.pair[0], p.pair[1], p.estimate.name()))
            .collect();
        let _ = writeln!(text, "* {}: {}", c.substance.designation, pairs.join(", "));
    }
    let elsewhere: Vec<&str> = all
        .iter()
        .filter(|c| c.substance.reference != "IIR")
        .map(|c| c.substance.designation.as_str())
        .collect();
    let _ = writeln!(
        text,
        "\n## Reference state\n\nIIR (h = 200 kJ/kg, s = 1 kJ/(kg K) for saturated liquid at 0 degC); h = s = 0 for \
         saturated liquid at the normal boiling point, having no liquid at 0 degC: {}.",
        if elsewhere.is_empty() { "none".to_string() } else { elsewhere.join(", ") }
    );
    text.push_str(notes);
    let _ = writeln!(
        text,
        "\n## Refrigerants\n\n{HEAD}{}",
        all.iter().map(|c| row(c, evidence)).collect::<Vec<_>>().join("\n")
    );
    text
}
