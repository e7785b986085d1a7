//! What really happens in a stream, by the definitions of the monitor's states on values without noise.

use rimewise::monitor::State;

/// What controls and people do, as far as it defines the state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Doing {
    /// The compressor is energised.
    pub on: bool,
    /// A valve is closed for a pump-down.
    pub closed: bool,
    /// The coil is heated.
    pub heated: bool,
    /// It stands because its overload is open.
    pub tripped: bool,
}

/// One second of truth: suction and discharge kPa, current A, evaporator outlet and space degC.
pub type Second = [f64; 5];

/// Follows the truth second by second.
#[derive(Clone, Debug)]
pub struct Judge {
    regulator: bool,
    seconds: Vec<Second>,
    since: f64,
    running: State,
    before: Option<Doing>,
}

/// Longest and shortest window, s, and the time after a start that is none of it.
const WINDOW: usize = 120;
const SHORTEST: usize = 60;
const STARTING: f64 = 60.0;

/// Least-squares line: mean, slope per minute, standard deviation about it.
fn line(values: impl ExactSizeIterator<Item = f64> + Clone) -> (f64, f64, f64) {
    let n = values.len() as f64;
    let middle = (n - 1.0) / 2.0;
    let mean = values.clone().sum::<f64>() / n;
    let spread = n * (n * n - 1.0) / 12.0;
    let slope =
        values.clone().enumerate().map(|(i, v)| (i as f64 - middle) * (v - mean)).sum::<f64>() / spread;
    let residual =
        values.enumerate().map(|(i, v)| (v - mean - slope * (i as f64 - middle)).powi(2)).sum::<f64>() / n;
    (mean, slope * 60.0, residual.sqrt())
}

impl Judge {
    /// Makes the judge of one machine.
    pub fn new(regulator: bool) -> Self {
        Self { regulator, seconds: vec![], since: 0.0, running: State::Unsteady, before: None }
    }

    /// Takes one second and tells the state.
    pub fn second(&mut self, time: f64, doing: Doing, values: Second) -> State {
        let changed = self.before.is_none_or(|before| before.on != doing.on || before.closed != doing.closed);
        if changed {
            if self.before.is_some_and(|before| before.on != doing.on) {
                self.since = time;
            }
            self.seconds.clear();
            self.running = State::Unsteady;
        }
        let seen_start = self.since > 0.0;
        self.before = Some(doing);
        match doing {
            Doing { on: true, closed: true, .. } => return State::PumpingDown,
            Doing { on: false, closed: true, .. } => return State::Holding,
            Doing { on: false, heated: true, .. } => return State::Defrost,
            Doing { on: false, tripped: true, .. } => return State::Stopped,
            Doing { on: false, .. } => return State::Off,
            _ => {}
        }
        if seen_start && time - self.since < STARTING {
            return State::Starting;
        }
        self.seconds.push(values);
        if self.seconds.len() >= SHORTEST {
            self.running = self.judge();
        }
        self.running
    }

    fn judge(&self) -> State {
        let last = &self.seconds[self.seconds.len().saturating_sub(WINDOW)..];
        let of = |index: usize| line(last.iter().map(move |second| second[index]));
        let (low, high, amps, outlet, space) = (of(0), of(1), of(2), of(3), of(4));
        let pulls_down = if self.regulator {
            space.1 < -0.15 && low.2 < 0.015 * low.0
        } else {
            low.1 < -0.015 * low.0 && low.2 < 0.03 * low.0
        };
        if pulls_down {
            return State::PullingDown;
        }
        let within = |(mean, slope, scatter): (f64, f64, f64), level: f64, quiet: f64| {
            slope.abs() <= level * mean && scatter <= quiet * mean
        };
        let steady = within(low, 0.015, 0.015)
            && within(high, 0.015, 0.015)
            && within(amps, 0.02, 0.03)
            && outlet.1.abs() <= 1.0
            && outlet.2 <= 1.0;
        if steady { State::Steady } else { State::Unsteady }
    }
}
