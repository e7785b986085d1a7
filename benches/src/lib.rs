//! Benchmarks of Rimewise: speed, instruction counts and sizes.
