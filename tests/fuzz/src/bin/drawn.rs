//! The driver that draws: inputs from seeds and from nothing, for a time, on any compiler.
//!
//! `drawn TARGET SECONDS [SEED]` prints how many were run; `drawn TARGET FILE...` runs these files. A failing input is
//! kept as `TARGET.failed` in the working directory.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// Longest drawn input.
const LONGEST: u64 = 400;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let Some(target) = arguments.first().and_then(|name| rimewise_fuzz::find(name)) else {
        let names: Vec<&str> = rimewise_fuzz::TARGETS.iter().map(|(name, _)| *name).collect();
        eprintln!("drawn TARGET SECONDS [SEED] | drawn TARGET FILE...; targets: {}", names.join(" "));
        return ExitCode::from(2);
    };
    let name = &arguments[0];
    let Some(seconds) = arguments.get(1).and_then(|s| s.parse().ok()) else {
        for file in &arguments[1..] {
            target(&std::fs::read(file).expect("a readable file"));
        }
        println!("{name}: {} files hold", arguments.len() - 1);
        return ExitCode::SUCCESS;
    };
    let seeds = seeds(name);
    let mut random = Random(arguments.get(2).and_then(|s| s.parse().ok()).unwrap_or(0x9E37_79B9_7F4A_7C15));
    let (began, most) = (Instant::now(), Duration::from_secs(seconds));
    let mut executions = 0_u64;
    while began.elapsed() < most {
        let input = if executions < seeds.len() as u64 {
            seeds[executions as usize].clone()
        } else {
            draw(&seeds, &mut random)
        };
        executions += 1;
        if catch_unwind(AssertUnwindSafe(|| target(&input))).is_err() {
            std::fs::write(format!("{name}.failed"), &input).expect("a writable folder");
            println!("{name}: the input in {name}.failed fails, after {executions} executions");
            return ExitCode::FAILURE;
        }
    }
    println!("{name}: {executions} executions in {} s", began.elapsed().as_secs());
    ExitCode::SUCCESS
}

fn seeds(name: &str) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("seeds").join(name);
    let mut files: Vec<_> =
        std::fs::read_dir(folder).into_iter().flatten().flatten().map(|e| e.path()).collect();
    files.sort();
    files.iter().filter_map(|path| std::fs::read(path).ok()).collect()
}

/// xorshift64* (Marsaglia, Journal of Statistical Software 8, 2003; Vigna, ACM TOMS 42, 2016).
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11
    }

    fn below(&mut self, count: usize) -> usize {
        (self.next() % count.max(1) as u64) as usize
    }
}

/// A seed with some of it changed, or bytes out of nothing.
fn draw(seeds: &[Vec<u8>], random: &mut Random) -> Vec<u8> {
    if seeds.is_empty() || random.below(3) == 0 {
        let length = random.next() % LONGEST;
        return (0..length).map(|_| random.next() as u8).collect();
    }
    let mut input = seeds[random.below(seeds.len())].clone();
    for _ in 0..=random.below(8) {
        let at = random.below(input.len());
        match random.below(6) {
            0 | 1 if !input.is_empty() => input[at] ^= 1 << random.below(8),
            2 if !input.is_empty() => input[at] = random.next() as u8,
            3 => input.insert(at, random.next() as u8),
            4 if !input.is_empty() => drop(input.remove(at)),
            _ => {
                // A piece of another seed.
                let other = &seeds[random.below(seeds.len())];
                let (a, b) = (random.below(other.len()), random.below(other.len()));
                let piece = other.get(a.min(b)..a.max(b)).unwrap_or_default();
                input.splice(at..at, piece.iter().copied());
                input.truncate(1 << 16);
            }
        }
    }
    input
}
