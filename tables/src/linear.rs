//! Small dense linear algebra.

/// Solves a square system by Gaussian elimination with row pivots; none when it is singular.
pub fn solve(mut a: Vec<Vec<f64>>, mut b: Vec<f64>) -> Option<Vec<f64>> {
    let n = b.len();
    // Rows of different physical kind are brought to the same size before pivots are compared.
    for (row, b) in a.iter_mut().zip(&mut b) {
        let scale = row.iter().fold(0.0f64, |m, v| m.max(v.abs()));
        if scale == 0.0 || !scale.is_finite() {
            return None;
        }
        row.iter_mut().for_each(|v| *v /= scale);
        *b /= scale;
    }
    for k in 0..n {
        let pivot = (k..n).max_by(|i, j| a[*i][k].abs().total_cmp(&a[*j][k].abs()))?;
        a.swap(k, pivot);
        b.swap(k, pivot);
        if a[k][k].abs() < 1e-300 {
            return None;
        }
        for i in k + 1..n {
            let f = a[i][k] / a[k][k];
            if f != 0.0 {
                for j in k..n {
                    a[i][j] -= f * a[k][j];
                }
                b[i] -= f * b[k];
            }
        }
    }
    for i in (0..n).rev() {
        for j in i + 1..n {
            b[i] -= a[i][j] * b[j];
        }
        b[i] /= a[i][i];
    }
    b.iter().all(|v| v.is_finite()).then_some(b)
}

/// Solves a weighted least-squares problem by Householder reflections with columns scaled to unit length.
pub fn least_squares(rows: &[Vec<f64>], target: &[f64], weight: &[f64]) -> Vec<f64> {
    let n = rows.first().map_or(0, Vec::len);
    let m = rows.len();
    let mut a: Vec<f64> = Vec::with_capacity(m * n);
    let mut b: Vec<f64> = Vec::with_capacity(m);
    for ((row, y), w) in rows.iter().zip(target).zip(weight) {
        a.extend(row.iter().map(|v| v * w));
        b.push(y * w);
    }
    let norm = |a: &[f64], j: usize| libm::sqrt((0..m).map(|i| a[i * n + j] * a[i * n + j]).sum::<f64>());
    let scale: Vec<f64> = (0..n).map(|j| norm(&a, j).max(1e-300)).collect();
    for row in a.chunks_mut(n) {
        row.iter_mut().zip(&scale).for_each(|(v, s)| *v /= s);
    }
    let mut diagonal = vec![0.0; n];
    for k in 0..n.min(m) {
        let length = libm::sqrt((k..m).map(|i| a[i * n + k] * a[i * n + k]).sum::<f64>());
        if length < 1e-13 {
            continue;
        }
        let alpha = if a[k * n + k] > 0.0 { -length } else { length };
        let v0 = a[k * n + k] - alpha;
        a[k * n + k] = v0;
        let vv = -alpha * v0;
        for j in k + 1..n {
            let dot: f64 = (k..m).map(|i| a[i * n + k] * a[i * n + j]).sum::<f64>() / vv;
            for i in k..m {
                a[i * n + j] -= dot * a[i * n + k];
            }
        }
        let dot: f64 = (k..m).map(|i| a[i * n + k] * b[i]).sum::<f64>() / vv;
        for i in k..m {
            b[i] -= dot * a[i * n + k];
        }
        diagonal[k] = alpha;
    }
    let mut x = vec![0.0; n];
    for k in (0..n.min(m)).rev() {
        let sum: f64 = (k + 1..n).map(|j| a[k * n + j] * x[j]).sum();
        x[k] = if diagonal[k].abs() < 1e-12 { 0.0 } else { (b[k] - sum) / diagonal[k] };
    }
    x.iter().zip(&scale).map(|(x, s)| x / s).collect()
}

/// Fits towards the smallest worst residual: least squares with weights that follow the residuals (Lawson).
///
/// Rows and targets are scaled so that 1 is the error allowed.
pub fn minimax(rows: &[Vec<f64>], target: &[f64], rounds: usize) -> Vec<f64> {
    let mut weight = vec![1.0; target.len()];
    let mut best = (f64::INFINITY, Vec::new());
    for _ in 0..rounds {
        let x = least_squares(rows, target, &weight);
        let residual: Vec<f64> = rows
            .iter()
            .zip(target)
            .map(|(row, y)| (row.iter().zip(&x).map(|(a, x)| a * x).sum::<f64>() - y).abs())
            .collect();
        let worst = residual.iter().fold(0.0f64, |m, r| m.max(*r));
        if worst < best.0 {
            best = (worst, x);
        }
        if worst == 0.0 {
            break;
        }
        weight.iter_mut().zip(&residual).for_each(|(w, r)| *w *= libm::sqrt(r / worst + 0.03));
        let top = weight.iter().fold(0.0f64, |m, w| m.max(*w));
        weight.iter_mut().for_each(|w| *w /= top);
    }
    best.1
}
