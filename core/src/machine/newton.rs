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

/// Finds the balance from a start; gives the unknowns, the run there and the slopes, or nothing.
pub(crate) fn solve(
    machine: &Machine,
    fluid: Fluid<'_>,
    fault: Fault,
    start: &Unknowns,
) -> Option<(Unknowns, Run, Jacobian)> {
    let mut x = *start;
    let mut here = machine.run(fluid, fault, &x)?;
    let mut size = norm(&here.residuals);
    for _ in 0..ITERATIONS {
        let matrix = jacobian(machine, fluid, fault, &x, &here)?;
        let step = eliminate(&matrix, &here.residuals)?;
        if here.residuals.iter().all(|r| r.abs() < SOLVED) {
            return Some((x, here, matrix));
        }
        // One factor shortens the whole step, so that its direction stays.
        let mut factor = 1.0f32;
        for (step, longest) in step.iter().zip(LONGEST) {
            factor = factor.min(longest / step.abs().max(1.0e-9));
        }
        let mut accepted = false;
        for _ in 0..7 {
            let mut trial = x;
            for (trial, step) in trial.iter_mut().zip(step) {
                *trial -= factor * step;
            }
            if let Some(there) = machine.run(fluid, fault, &trial) {
                let there_size = norm(&there.residuals);
                if there_size < size * (1.0 - 0.1 * factor.min(1.0)) {
                    (x, here, size) = (trial, there, there_size);
                    accepted = true;
                    break;
                }
            }
            factor *= 0.5;
        }
        if !accepted {
            return (size < 100.0 * SOLVED * SOLVED).then_some((x, here, matrix));
        }
    }
    None
}
