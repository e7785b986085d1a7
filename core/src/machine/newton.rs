//! Newton's method on the four balances, with bounded steps.

use super::calibrate::Machine;
use super::fluid::Fluid;
use super::run::{Fault, Run, Unknowns};

/// Steps of the finite differences: relative in the pressures, kelvin in the others. Far above the rounding noise
/// of binary32 residuals (about 1e-6), far below the scale on which the residuals bend.
const STEP: Unknowns = [2.0e-3, 2.0e-3, 0.1, 0.1];
/// The longest step of one iteration.
const LONGEST: Unknowns = [0.25, 0.2, 5.0, 4.0];
/// Residuals below this are solved: 1e-4 of design heat, flow and charge moves no reading by 0.02 K.
const SOLVED: f32 = 1.0e-4;
const ITERATIONS: usize = 25;

/// The matrix of the residuals' slopes, one row a residual.
pub(crate) type Jacobian = [[f32; 4]; 4];

fn norm(residuals: &[f32; 4]) -> f32 {
    residuals.iter().map(|r| r * r).sum()
}

/// The slopes of the residuals at a trial.
pub(crate) fn jacobian(
    machine: &Machine,
    fluid: Fluid<'_>,
    fault: Fault,
    x: &Unknowns,
    here: &Run,
) -> Option<Jacobian> {
    let mut matrix = [[0.0; 4]; 4];
    for column in 0..4 {
        let mut moved = *x;
        moved[column] += STEP[column];
        let there = machine.run(fluid, fault, &moved)?;
        for row in 0..4 {
            matrix[row][column] = (there.residuals[row] - here.residuals[row]) / STEP[column];
        }
    }
    Some(matrix)
}

/// Solves a 4 x 4 system by elimination with row exchange; `None` where it is singular.
pub(crate) fn eliminate(matrix: &Jacobian, right: &[f32; 4]) -> Option<[f32; 4]> {
    let mut a = *matrix;
    let mut b = *right;
    for column in 0..4 {
        let mut pivot = column;
        for row in column + 1..4 {
            if a[row][column].abs() > a[pivot][column].abs() {
                pivot = row;
            }
        }
        // The loop above keeps the pivot inside the matrix; the check lets the optimiser see it.
        if pivot >= 4 || a[pivot][column].abs() < 1.0e-9 {
            return None;
        }
        a.swap(column, pivot);
        b.swap(column, pivot);
        for row in column + 1..4 {
            let factor = a[row][column] / a[column][column];
            for k in column..4 {
                a[row][k] -= factor * a[column][k];
            }
            b[row] -= factor * b[column];
        }
    }
    let mut x = [0.0; 4];
    for row in (0..4).rev() {
        let mut sum = b[row];
        for k in row + 1..4 {
            sum -= a[row][k] * x[k];
        }
        x[row] = sum / a[row][row];
    }
    x.iter().all(|v| v.is_finite()).then_some(x)
}

/// The scale of each unknown, for the update of the slopes.
const SCALE: Unknowns = [0.02, 0.02, 1.0, 1.0];

/// Updates the slopes by what a step showed (Broyden 1965, in scaled unknowns).
fn update(matrix: &mut Jacobian, step: &Unknowns, before: &[f32; 4], after: &[f32; 4]) {
    let mut scaled = [0.0; 4];
    let mut length = 0.0;
    for i in 0..4 {
        scaled[i] = step[i] / (SCALE[i] * SCALE[i]);
        length += step[i] * scaled[i];
    }
    if !(length > 1.0e-12) {
        return;
    }
    for row in 0..4 {
        let mut foretold = 0.0;
        for column in 0..4 {
            foretold += matrix[row][column] * step[column];
        }
        let off = (after[row] - before[row] - foretold) / length;
        for column in 0..4 {
            matrix[row][column] += off * scaled[column];
        }
    }
}

/// Finds the balance from a start; gives the unknowns, the run there and the slopes, or nothing.
///
/// The slopes of a neighbouring balance save most of the work; where they lead nowhere they are taken anew.
pub(crate) fn solve(
    machine: &Machine,
    fluid: Fluid<'_>,
    fault: Fault,
    start: &Unknowns,
    slopes: Option<&Jacobian>,
) -> Option<(Unknowns, Run, Jacobian)> {
    let mut x = *start;
    let mut here = machine.run(fluid, fault, &x)?;
    let mut size = norm(&here.residuals);
    let mut fresh = slopes.is_none();
    let mut matrix = match slopes {
        Some(slopes) => *slopes,
        None => jacobian(machine, fluid, fault, &x, &here)?,
    };
    for _ in 0..ITERATIONS {
        if here.residuals.iter().all(|r| r.abs() < SOLVED) {
            return Some((x, here, matrix));
        }
        let accepted = eliminate(&matrix, &here.residuals)
            .and_then(|step| shorten(machine, fluid, fault, &x, size, step, if fresh { 7 } else { 2 }));
        let Some((step, there)) = accepted else {
            if fresh {
                return (size < 100.0 * SOLVED * SOLVED).then_some((x, here, matrix));
            }
            matrix = jacobian(machine, fluid, fault, &x, &here)?;
            fresh = true;
            continue;
        };
        update(&mut matrix, &step, &here.residuals, &there.residuals);
        for (x, step) in x.iter_mut().zip(step) {
            *x += step;
        }
        (here, size) = (there, norm(&there.residuals));
        fresh = false;
    }
    None
}

/// Goes as far along a step as makes the residuals smaller; gives the step taken and the run there.
fn shorten(
    machine: &Machine,
    fluid: Fluid<'_>,
    fault: Fault,
    x: &Unknowns,
    size: f32,
    step: Unknowns,
    attempts: u8,
) -> Option<(Unknowns, Run)> {
    // One factor shortens the whole step, so that its direction stays.
    let mut factor = 1.0f32;
    for (step, longest) in step.iter().zip(LONGEST) {
        factor = factor.min(longest / step.abs().max(1.0e-9));
    }
    for _ in 0..attempts {
        let (mut trial, mut taken) = (*x, [0.0; 4]);
        for ((trial, taken), step) in trial.iter_mut().zip(&mut taken).zip(step) {
            *taken = -factor * step;
            *trial += *taken;
        }
        if let Some(there) = machine.run(fluid, fault, &trial)
            && norm(&there.residuals) < size * (1.0 - 0.1 * factor)
        {
            return Some((taken, there));
        }
        factor *= 0.5;
    }
    None
}
