//! The instruments: when they are read, and what they make of the truth.

use super::random::{Random, Wander};
use rimewise::monitor::{CHANNELS, Sample};

/// What of the machine an instrument sees, without noise, in the order of the sample's channels.
pub type Truth = [f64; CHANNELS];

/// One instrument of one channel.
#[derive(Clone, Debug)]
struct Channel {
    fitted: bool,
    lag: f64,
    lagged: Option<f64>,
    offset: f64,
    gain: f64,
    white: f64,
    relative: f64,
    wander: Wander,
    digit: f64,
}

/// A set of instruments on one machine.
#[derive(Clone, Debug)]
pub struct Meter {
    channels: Vec<Channel>,
    /// Mean time between samples, s.
    pub interval: f64,
    jitter: f64,
    lost: f64,
    spikes: f64,
}

/// Which instruments are fitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fitted {
    /// Everything.
    All,
    /// Both gauges, current, voltage, suction line, evaporator outlet, discharge line, space, ambient.
    Usual,
    /// Gauges and pipe clamps only: no current.
    NoCurrent,
}

impl Meter {
    /// Draws a set of instruments.
    pub fn draw(fitted: Fitted, random: &mut Random) -> Self {
        let usual = [0usize, 2, 4, 5, 6, 9, 11, 13, 14];
        let channels = (0..CHANNELS)
            .map(|index| {
                let has = match fitted {
                    Fitted::All => true,
                    Fitted::Usual => usual.contains(&index),
                    Fitted::NoCurrent => index < 13 && usual.contains(&index),
                };
                let (lag, offset, gain, white, relative, spread, memory, digit) = match index {
                    // Gauges: 1 kPa and 0.4 % of calibration, scatter of reading.
                    0..4 => (0.15, 1.0, 0.004, 0.15, 0.0015, 0.25, 5.0, random.pick(&[0.1, 0.1, 1.0])),
                    // Clamps follow in some ten seconds.
                    4..9 => (random.between(5.0, 12.0), 0.6, 0.0, 0.04, 0.0, 0.08, 10.0, 0.1),
                    // Air sensors are slower.
                    9..13 => (random.between(15.0, 40.0), 0.4, 0.0, 0.04, 0.0, 0.1, 20.0, 0.1),
                    13 => (0.12, 0.0, 0.01, 0.008, 0.006, 0.006, 8.0, 0.01),
                    _ => (0.0, 0.0, 0.005, 0.2, 0.0, 0.8, 40.0, 0.1),
                };
                Channel {
                    fitted: has,
                    lag,
                    lagged: None,
                    offset: offset * random.normal(),
                    gain: 1.0 + gain * random.normal(),
                    white,
                    relative,
                    wander: Wander::new(spread, memory, random),
                    digit,
                }
            })
            .collect();
        Self {
            channels,
            interval: random.pick(&[1.0, 1.0, 1.0, 1.0, 1.0, 2.0, 2.0, 0.5, 3.0]),
            jitter: random.pick(&[0.0, 0.1, 0.3]),
            lost: random.pick(&[0.0, 0.01, 0.03]),
            spikes: 2e-4,
        }
    }

    /// Draws the time to the next sample, s.
    pub fn wait(&self, random: &mut Random) -> f64 {
        let mut wait = self.interval * (1.0 + self.jitter * (random.even() - 0.5) * 2.0);
        while random.happens(self.lost) {
            wait += self.interval;
        }
        wait.max(0.1)
    }

    /// Lets the instruments follow the truth by one step of the model.
    pub fn follow(&mut self, truth: &Truth, seconds: f64) {
        for (channel, truth) in self.channels.iter_mut().zip(truth) {
            channel.lagged = Some(match channel.lagged {
                Some(lagged) if channel.lag > 0.0 => {
                    lagged + (truth - lagged) * (seconds / channel.lag).min(1.0)
                }
                _ => *truth,
            });
        }
    }

    /// Reads the instruments: the sample, and what it would be without noise, with the same offsets and lags.
    pub fn read(&mut self, time_ms: u64, waited: f64, random: &mut Random) -> (Sample, Sample) {
        let mut sample = Sample { time_ms, ..Sample::default() };
        let mut quiet = sample;
        for (index, channel) in self.channels.iter_mut().enumerate() {
            let wander = channel.wander.step(waited, random);
            let Some(seen) = channel.lagged else { continue };
            if !channel.fitted {
                continue;
            }
            // The wander of a current is a part of it; that of a gauge grows a little with the reading.
            let noise = match index {
                13 => {
                    wander * seen
                        + channel.white * random.normal()
                        + channel.relative * seen * random.normal()
                }
                0..4 => {
                    wander * (1.0 + 0.004 * seen)
                        + channel.white * random.normal()
                        + channel.relative * seen * random.normal()
                }
                _ => wander + channel.white * random.normal(),
            };
            let mut value = seen * channel.gain + channel.offset + noise;
            if !(4..13).contains(&index) {
                value = value.max(if index < 4 { 0.5 } else { 0.0 });
            }
            value = (value / channel.digit).round() * channel.digit;
            if index < 4 {
                value = value.max(channel.digit);
            }
            if random.happens(self.spikes) {
                value = random.pick(&[f64::NAN, value * 3.0, 0.0, -999.0, value * 0.3, 6e4]);
            }
            if let Some(field) = sample.number_mut(index) {
                *field = Some(value as f32);
            }
            if let Some(field) = quiet.number_mut(index) {
                *field =
                    Some((seen * channel.gain + channel.offset).max(if index < 4 { 0.5 } else { -99.0 })
                        as f32);
            }
        }
        (sample, quiet)
    }
}
