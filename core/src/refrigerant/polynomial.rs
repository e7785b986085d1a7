//! Polynomials by the scheme of Horner, written out by macros.
//!
//! A loop over coefficients stays a loop where a compiler saves space, and then takes three times the instructions and
//! more space too. Coefficients run from the highest power down; `fixed[part] 2, 1, 0` reads them by their places in a
//! part of the table.

/// Evaluates a polynomial.
macro_rules! value {
    ($x:expr; $fixed:ident[$part:expr] $($index:literal),+) => {
        value!($x; $(number($fixed, $part + 4 * $index)),+)
    };
    ($x:expr; $top:expr $(, $c:expr)*) => {{
        let mut v = $top;
        $(v = v * $x + $c;)*
        v
    }};
}

/// Evaluates a polynomial and its derivative.
macro_rules! with_slope {
    ($x:expr; $fixed:ident[$part:expr] $($index:literal),+) => {
        with_slope!($x; $(number($fixed, $part + 4 * $index)),+)
    };
    ($x:expr; $top:expr, $next:expr $(, $c:expr)*) => {{
        #[allow(unused_mut)]
        let (mut s, mut v) = ($top, $top * $x + $next);
        $(
            s = s * $x + v;
            v = v * $x + $c;
        )*
        (v, s)
    }};
}

/// Evaluates a polynomial, its derivative and half its second derivative.
macro_rules! with_curvature {
    ($x:expr; $fixed:ident[$part:expr] $($index:literal),+) => {
        with_curvature!($x; $(number($fixed, $part + 4 * $index)),+)
    };
    ($x:expr; $top:expr, $next:expr, $third:expr $(, $c:expr)*) => {{
        #[allow(unused_mut)]
        let mut h = $top;
        let mut s = h * $x + $next;
        #[allow(unused_mut)]
        let mut v = s * $x + $third;
        s += h * $x;
        $(
            h = h * $x + s;
            s = s * $x + v;
            v = v * $x + $c;
        )*
        (v, s, h)
    }};
}

pub(super) use {value, with_curvature, with_slope};
