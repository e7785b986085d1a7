//! Two roads to the same blend: its pseudo-pure equation beside the multi-fluid model.

use crate::compile::{self, Compiled};
use crate::data::Library;
use crate::saturation::{Kind, Specification};
use crate::substance::Substance;
use crate::uncertainty::Evidence;
use std::fmt::Write as _;

/// Compares every pseudo-pure equation with the multi-fluid model of the same blend, as text for the report.
pub fn compare(library: &Library, evidence: &Evidence, all: &[Compiled]) -> Result<String, String> {
    let mut text = String::from(
        "\n## Pseudo-pure equations beside the multi-fluid model\n\n\
         The tables hold the multi-fluid model. A pseudo-pure equation takes bubble and dew pressure from two separate \
         correlations, so that its vapor and liquid do not meet in exact equilibrium; the two agree as follows, and the \
         pseudo-pure equation compiles to a table of its own with the errors named. Source of the equations: \
         E. W. Lemmon, Int. J. Thermophys. 24 (2003) 991.\n\n\
         | blend | bubble pressure, worst, % | dew pressure, worst, % | saturated vapor h, worst, J/kg | saturated liquid h, worst, J/kg | its own table: dew, K / bubble, K / vapor, % / liquid, % |\n\
         |---|---|---|---|---|---|\n",
    );
    for fluid in &library.pseudo_pure {
        let blend = library
            .blends
            .iter()
            .find(|b| b.designation == fluid.designation)
            .ok_or_else(|| format!("{}: a pseudo-pure equation without its blend", fluid.designation))?;
        let pseudo = Substance::pseudo_pure(fluid, blend)?;
        let mixture = &all
            .iter()
            .find(|c| c.substance.designation == fluid.designation)
            .ok_or_else(|| format!("{}: not compiled", fluid.designation))?
            .substance;
        let mut worst = [0.0f64; 4];
        for k in 0..40 {
            let t = 210.0 + (mixture.t_max - 8.0 - 210.0) * f64::from(k) / 39.0;
            for (i, kind) in [Kind::Bubble, Kind::Dew].into_iter().enumerate() {
                let (Some(a), Some(b)) = (
                    pseudo.saturated(kind, Specification::Temperature(t)),
                    mixture.saturated(kind, Specification::Temperature(t)),
                ) else {
                    return Err(format!("{}: no {kind:?} point at {t:.1} K", fluid.designation));
                };
                worst[i] = worst[i].max(100.0 * (a.p / b.p - 1.0).abs());
                let difference = pseudo.state(a.t, a.rho).h - mixture.state(b.t, b.rho).h;
                worst[3 - i] = worst[3 - i].max(difference.abs());
            }
        }
        let own = compile::compile(library, evidence, pseudo)?.errors;
        let _ = writeln!(
            text,
            "| {} | {:.3} | {:.3} | {:.0} | {:.0} | {:.4} / {:.4} / {:.3} / {:.3} |",
            fluid.designation,
            worst[0],
            worst[1],
            worst[2],
            worst[3],
            own.dew,
            own.bubble,
            own.vapor.worst(),
            own.liquid.worst()
        );
    }
    Ok(text)
}
