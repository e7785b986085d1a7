//! Compiles substances to tables.

use crate::data::Library;
use crate::dome::Dome;
use crate::environment::impact;
use crate::measure::{Errors, measure};
use crate::saturation::Kind;
use crate::substance::Substance;
use crate::uncertainty::Evidence;
use crate::{curve, dome, encode, potential};
use rimewise::refrigerant::Refrigerant;
use std::sync::Mutex;

/// A compiled refrigerant.
#[derive(Clone, Debug)]
pub struct Compiled {
    /// The substance.
    pub substance: Substance,
    /// The table.
    pub bytes: Vec<u8>,
    /// Its measured errors.
    pub errors: Errors,
    /// The shape of its dome; none of a pure fluid.
    pub dome: Option<Dome>,
    /// Standard uncertainty of its saturation temperatures, K.
    pub saturation_k: f64,
}

/// Worst saturation error accepted before the curves are cut finer, K.
const CURVE_TARGET: f64 = 0.004;
/// Finest division of the last octave, as a power of two.
const FINEST: u32 = 4;

/// Compiles one substance.
pub fn compile(library: &Library, evidence: &Evidence, substance: Substance) -> Result<Compiled, String> {
    let saturation_k = evidence.saturation_k(library, &substance)?;
    let impact = impact(&library.environment, &substance.components);
    let potentials = potential::potentials(&substance)?;
    let dome = if substance.is_pure() || substance.boundary().is_none() {
        None
    } else {
        Some(dome::dome(&substance, f64::from(potentials.t_center as f32))?)
    };
    let mut finer = [0u32; 2];
    let (bytes, errors) = loop {
        let dew = curve::curve(&substance, Kind::Dew, finer[0])?;
        let bubble =
            if substance.is_pure() { None } else { Some(curve::curve(&substance, Kind::Bubble, finer[1])?) };
        if substance.is_pure() {
            finer[1] = finer[0];
        }
        let bytes = encode::table(
            &substance,
            &dew,
            bubble.as_ref(),
            &potentials,
            dome.as_ref(),
            saturation_k,
            &impact,
        )?;
        let table = Refrigerant::from_bytes(&bytes).map_err(|e| e.to_string())?;
        let errors = measure(&substance, &table);
        let coarse = [errors.dew > CURVE_TARGET, errors.bubble > CURVE_TARGET];
        let mut changed = false;
        for (finer, coarse) in finer.iter_mut().zip(coarse) {
            if coarse && *finer < FINEST {
                *finer += 1;
                changed = true;
            }
        }
        if !changed {
            break (bytes, errors);
        }
    };
    Ok(Compiled { substance, bytes, errors, dome, saturation_k })
}

/// A job: what to compile.
type Job<'l> = Box<dyn Fn() -> Result<Substance, String> + Send + Sync + 'l>;

/// Compiles everything in the library, on two threads, in the order of designations.
pub fn compile_all(library: &Library, evidence: &Evidence) -> Result<Vec<Compiled>, String> {
    let mut jobs: Vec<(String, Job<'_>)> = Vec::new();
    for fluid in &library.fluids {
        jobs.push((fluid.designation.clone(), Box::new(move || Substance::pure(fluid))));
    }
    for blend in &library.blends {
        jobs.push((blend.designation.clone(), Box::new(move || Substance::blend(library, blend))));
    }
    let next = Mutex::new(0usize);
    let done: Mutex<Vec<(usize, Result<Compiled, String>)>> = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                loop {
                    let index = {
                        let Ok(mut next) = next.lock() else { return };
                        *next += 1;
                        *next - 1
                    };
                    let Some((name, job)) = jobs.get(index) else { return };
                    let result =
                        job().and_then(|s| compile(library, evidence, s)).map_err(|e| format!("{name}: {e}"));
                    if let Ok(mut done) = done.lock() {
                        done.push((index, result));
                    }
                }
            });
        }
    });
    let mut done = done.into_inner().map_err(|e| e.to_string())?;
    done.sort_by_key(|(index, _)| *index);
    let (mut compiled, mut failed) = (Vec::new(), Vec::new());
    for (_, result) in done {
        match result {
            Ok(c) => compiled.push(c),
            Err(e) => failed.push(e),
        }
    }
    if !failed.is_empty() {
        return Err(failed.join("\n"));
    }
    compiled.sort_by_key(|c| sort_key(&c.substance.designation));
    Ok(compiled)
}

/// Orders designations by their number first.
fn sort_key(designation: &str) -> (u32, String) {
    let digits: String =
        designation.chars().skip_while(|c| !c.is_ascii_digit()).take_while(char::is_ascii_digit).collect();
    (digits.parse().unwrap_or(0), designation.to_string())
}
