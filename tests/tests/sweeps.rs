//! Limit states are what physics says, and a worse fault does not look healthier.

use rimewise_tests::rig::fault::Cause;
use rimewise_tests::rig::grader::worse::{self, MAY_FALL, Way};
use rimewise_tests::rig::set;

/// Sweeps of the two machines below with a fall above [`MAY_FALL`]. Wanted: none; this may only fall.
const KNOWN_FALLS: usize = 107;

fn at_end(ways: &[Way], cause: Cause) -> (f64, &serde_json::Value) {
    let way = ways.iter().find(|w| w.cause == cause).expect("a way of every cause");
    let last = way.steps.last().expect("a way has steps");
    (last.1, &last.2["readings"])
}

#[test]
fn a_worse_fault_does_not_look_healthier() {
    let machines: Vec<_> = set::machines_for_sweeps()
        .into_iter()
        .filter(|m| ["capillary freezer R290", "walk-in cooler R448A"].contains(&m.spec.name))
        .collect();
    assert_eq!(machines.len(), 2);
    let (ways, falls) = worse::falls(&machines, &rimewise::json::answer_visit);
    println!("{}", worse::markdown(&ways, &falls, 40));
    assert_eq!(falls.len(), 2 * 9 * 8);
    let above = falls.iter().filter(|f| f.size() > MAY_FALL).count();
    assert!(above <= KNOWN_FALLS, "{above} sweeps fall by more than {MAY_FALL}, {KNOWN_FALLS} are known");
}

#[test]
fn every_way_ends_where_physics_says() {
    for machine in set::machines_for_sweeps() {
        let name = machine.spec.name;
        let f = machine.fluid.clone();
        let ways = worse::ways(&machine);
        let healthy = ways[0].steps[0].2["readings"].clone();
        let number = |r: &serde_json::Value, key: &str| r[key].as_f64().expect("a number");
        let ambient = number(&healthy, "ambient_c");
        let saturated = f.mean_pressure(ambient + 273.15) / 1000.0;
        for w in &ways {
            // Nothing gets better on the way by more than a little feeding trouble can make up for.
            for pair in w.steps.windows(2) {
                assert!(
                    pair[1].1 < pair[0].1 + 0.12,
                    "{name} {:?}: capacity {} to {}",
                    w.cause,
                    pair[0].1,
                    pair[1].1
                );
            }
        }
        // Empty: no liquid left anywhere, so that the head stands below saturation; nothing cooled.
        let (capacity, r) = at_end(&ways, Cause::Undercharge);
        assert!(capacity < 0.06 && number(r, "discharge_pressure_kpa") < 0.95 * saturated, "{name}: {r}");
        assert!(
            number(r, "suction_pressure_kpa") < 0.5 * number(&healthy, "suction_pressure_kpa"),
            "{name}: {r}"
        );
        // Blocked: the compressor pulls the low side to its limit, the liquid in the condenser stands at the room's
        // saturation: no flow, no temperature difference.
        for cause in [Cause::MeteringUnderfeed, Cause::LiquidLineRestriction] {
            let (capacity, r) = at_end(&ways, cause);
            assert!(capacity < 0.06, "{name} {cause:?}: capacity {capacity}");
            assert!(number(r, "suction_pressure_kpa") < 75.0, "{name} {cause:?}: {r}");
            let head = number(r, "discharge_pressure_kpa");
            assert!(
                head > 0.97 * saturated && head < 1.12 * saturated,
                "{name} {cause:?}: {r} against {saturated}"
            );
        }
        // A valve broken: the two pressures meet, little current, no cooling.
        let (capacity, r) = at_end(&ways, Cause::WeakCompressor);
        let ratio = number(r, "discharge_pressure_kpa") / number(r, "suction_pressure_kpa");
        assert!(capacity < 0.02 && ratio < 1.03, "{name}: {r}");
        assert!(number(r, "current_a") < 0.75 * number(&healthy, "current_a"), "{name}: {r}");
        // Fan stands: the head is up, and so is the current.
        let (_, r) = at_end(&ways, Cause::CondenserAirflow);
        assert!(
            number(r, "discharge_pressure_kpa") > 1.5 * number(&healthy, "discharge_pressure_kpa"),
            "{name}: {r}"
        );
        assert!(number(r, "current_a") > 1.05 * number(&healthy, "current_a"), "{name}: {r}");
        // Coil blocked: less than two fifths of the cooling is left.
        let (capacity, _) = at_end(&ways, Cause::EvaporatorAirflow);
        assert!(capacity < 0.4, "{name}: {capacity}");
    }
}
