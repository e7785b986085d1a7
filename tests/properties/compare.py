"""Compares the equations of state with CoolProp 8.0, an independent implementation of the same papers.

The figures of the equations were read from CoolProp's own files: this checks code and solver, not the figures.

Usage: compare.py STATES.jsonl SUMMARY.md
STATES.jsonl comes from `cargo run --release -p rimewise-tables --example states`. Needs CoolProp 8.0 on the Python
path; installs nothing. A point of saturation on which the two differ, or which CoolProp does not find, is judged by
CoolProp's own equation: a point is an equilibrium when both phases are mechanically stable and have one pressure, and
every component one fugacity. Some models have a second loop of their isotherms between vapor and liquid, an artefact of
fitting; a phase on it can balance another although it lies between the densities of a vapor and a liquid that balance.
Exits with 1 when more than 1 % of the states stay unexplained, or one differs that is an equilibrium in CoolProp only.
"""

import json
import math
import sys
import time

import CoolProp.CoolProp as CP
from CoolProp import AbstractState

# Relative differences allowed: the same parameters must give the same numbers.
PURE, BLEND = 1e-7, 1e-5
NAMES = {
    "R290": "n-Propane", "R600": "n-Butane", "R600a": "IsoButane", "R601": "n-Pentane", "R601a": "Isopentane",
    "R601b": "Neopentane", "R170": "Ethane", "R1150": "Ethylene", "R1270": "Propylene", "RE170": "DimethylEther",
    "RC270": "CycloPropane", "R610": "DiethylEther", "RE143a": "HFE143m", "R717": "Ammonia", "R718": "Water",
    "R744": "CarbonDioxide", "R744A": "NitrousOxide", "R764": "SulfurDioxide", "R7146": "SulfurHexafluoride",
    "R50": "Methane", "R1140": "VinylChloride", "R1224yd(Z)": "R1224YDZ",
}


def name(component):
    return NAMES.get(component, component)


def cas(component):
    return CP.get_fluid_param_string(name(component), "CAS")


def model(row):
    """Makes CoolProp's model of a refrigerant with the same pairs, estimated ones included."""
    for a, b, _ in row["estimated"]:
        try:
            CP.apply_simple_mixing_rule(cas(a), cas(b), "linear")
        except ValueError:
            # Made for an earlier blend.
            pass
    state = AbstractState("HEOS", "&".join(name(c) for c in row["components"]))
    if len(row["components"]) > 1:
        state.set_mole_fractions(row["mole_fractions"])
    for first, second, parameters in row["estimated"]:
        i, j = row["components"].index(first), row["components"].index(second)
        for parameter, value in zip(("betaT", "gammaT", "betaV", "gammaV"), parameters):
            # The library keeps beta by the order of the components: of the other order it is the inverse.
            inverse = i > j and parameter.startswith("beta")
            state.set_binary_interaction_double(i, j, parameter, 1 / value if inverse else value)
    return state


def single_phase(row, state, limit):
    """Compares p, residual h and s at given temperature and density: agreeing, differing, unconverged, worst."""
    agree, differ, lost, worst = 0, 0, 0, 0.0
    gas = state.gas_constant()
    for t, rho, p, h, s in row["states"]:
        try:
            # A named phase keeps CoolProp from a phase search: the state is fixed by temperature and density.
            state.specify_phase(CP.iphase_gas)
            state.update(CP.DmolarT_INPUTS, rho, t)
            tau, delta = state.tau(), state.delta()
            a, a_t, a_d = state.alphar(), tau * state.dalphar_dTau(), delta * state.dalphar_dDelta()
            other_p, other_h, other_s = state.p(), a_t + a_d, a_t - a
        except ValueError:
            lost += 1
            continue
        # A liquid's pressure is a small difference of large terms: its scale is rho R T where that is larger.
        scale = max(abs(p), rho * gas * t)
        errors = [abs(p - other_p) / scale, abs(h - other_h) / max(abs(h), 1e-3), abs(s - other_s) / max(abs(s), 1e-3)]
        worst = max(worst, *errors)
        if max(errors) <= limit:
            agree += 1
        else:
            differ += 1
    state.unspecify_phase()
    return agree, differ, lost, worst


def imbalance(row, t, phases):
    """Measures by CoolProp's equation how far two phases are from equilibrium: the worst relative difference."""
    pressures, fugacities, dense = [], [], 0.0
    for densities in phases:
        total = sum(densities)
        state = model(row)
        if len(densities) > 1:
            state.set_mole_fractions([d / total for d in densities])
        state.specify_phase(CP.iphase_gas)
        state.update(CP.DmolarT_INPUTS, total, t)
        pressures.append(state.p())
        if state.first_partial_deriv(CP.iP, CP.iDmolar, CP.iT) < 0:
            # Between the spinodals: no state at all.
            return math.inf
        # The liquid's pressure carries the rounding of rho R T.
        dense = max(dense, total * state.gas_constant() * t)
        fugacities.append([state.fugacity(i) for i in range(len(densities))])
    scale = max(abs(pressures[0]), 1e-7 * dense)
    errors = [abs(pressures[0] - pressures[1]) / scale]
    errors += [abs(a / b - 1) for a, b in zip(*fugacities)]
    return max(errors)


def on_inner_loop(row, t, phase, ends):
    """Tells by CoolProp's equation whether a phase lies on a second loop: unstable densities follow on both sides of it,
    down to the smaller and up to the larger of two densities."""
    total = sum(phase)
    state = model(row)
    if len(phase) > 1:
        state.set_mole_fractions([d / total for d in phase])
    state.specify_phase(CP.iphase_gas)

    def unstable_towards(end):
        for k in range(1, 200):
            state.update(CP.DmolarT_INPUTS, total + (end - total) * k / 200, t)
            if state.first_partial_deriv(CP.iP, CP.iDmolar, CP.iT) < 0:
                return True
        return False

    return min(ends) < total < max(ends) and unstable_towards(min(ends)) and unstable_towards(max(ends))


def saturation(row, state, limit):
    """Compares bubble and dew pressure at given temperature.

    Counts: agreeing; ours an equilibrium where CoolProp finds none; ours an equilibrium where CoolProp's differs and is
    none; ours an equilibrium where CoolProp's lies on an inner loop; unexplained. Then the worst relative difference of
    the agreeing.
    """
    agree, found, better, inner, unexplained, worst = 0, 0, 0, 0, 0, 0.0
    blend = len(row["components"]) > 1
    for t, *sides in row["saturation"]:
        for quality, (p, bulk, incipient) in enumerate(sides if blend else sides[:1]):
            try:
                state.update(CP.QT_INPUTS, quality, t)
                error = abs(p / state.p() - 1)
            except ValueError:
                error = None
            if error is not None and error <= limit:
                agree += 1
                worst = max(worst, error)
                continue
            phases = [z * bulk for z in row["mole_fractions"]], incipient
            ends = [sum(phase) for phase in phases]
            ours = imbalance(row, t, phases)
            if ours > 10 * limit:
                unexplained += 1
                print("  unexplained", row["refrigerant"], t, p, error, ours)
            elif error is None:
                found += 1
            else:
                one = state.saturated_liquid_keyed_output(CP.iDmolar)
                two = state.saturated_vapor_keyed_output(CP.iDmolar)
                if blend:
                    x, y = state.mole_fractions_liquid(), state.mole_fractions_vapor()
                else:
                    x = y = [1.0]
                phases = [v * one for v in x], [v * two for v in y]
                theirs = imbalance(row, t, phases)
                # The bulk of a bubble point is its liquid, that of a dew point its vapor: it must be the blend.
                bulk_found = y if quality else x
                theirs = max(theirs, *(abs(a - b) for a, b in zip(bulk_found, row["mole_fractions"])))
                if theirs > limit:
                    better += 1
                elif any(on_inner_loop(row, t, phase, ends) for phase in phases):
                    inner += 1
                else:
                    unexplained += 1
                    print("  two equilibria", row["refrigerant"], t, p, error, ours, theirs)
    return agree, found, better, inner, unexplained, worst


def main():
    started = time.time()
    with open(sys.argv[1], encoding="utf-8") as file:
        rows = [json.loads(line) for line in file]
    lines = []
    totals = {"pure": [0] * 8, "blend": [0] * 8}
    worst = {"pure": [0.0, 0.0], "blend": [0.0, 0.0]}
    for row in rows:
        kind = "pure" if len(row["components"]) == 1 else "blend"
        limit = PURE if kind == "pure" else BLEND
        state = model(row)
        one = single_phase(row, state, limit)
        two = saturation(row, state, limit)
        totals[kind] = [a + b for a, b in zip(totals[kind], (*one[:3], *two[:5]))]
        worst[kind] = [max(worst[kind][0], one[3]), max(worst[kind][1], two[5])]
        mark = " estimated" if row["estimated"] else ""
        counts = " | ".join(str(v) for v in (*one[:3], f"{one[3]:.0e}", *two[:5], f"{two[5]:.0e}"))
        lines.append(f"| {row['refrigerant']}{mark} | {counts} |")
    total = sum(sum(v) for v in totals.values())
    unexplained = sum(v[1] + v[2] + v[7] for v in totals.values())
    summary = [
        "# Code and solver beside CoolProp 8.0",
        "",
        "The figures of the equations were read from CoolProp's own files, so this checks code and solver, not the figures;",
        "`tables/PUBLISHED.md` holds those against published boiling and dew points.",
        "",
        "Written by `tests/properties/compare.py`. Random states of every refrigerant by both implementations. Single",
        "phase: p(T, density), residual enthalpy and residual entropy; saturation: bubble and dew pressure at random",
        f"temperatures up to 2 K below critical. Allowed: {PURE:.0e} relative for pure fluids, {BLEND:.0e} for blends.",
        "Where CoolProp finds no saturation point, or another one, the point is judged by CoolProp's own equation:",
        "equal pressure and equal fugacities of the two phases, each mechanically stable. A few models have a second loop of",
        "their isotherms inside the two-phase region; CoolProp's point then may lie on it, between our vapor and liquid, with",
        "unstable densities on both sides. Blends with estimated pairs are compared with the same estimates set in",
        "CoolProp.",
        "",
        "| kind | single phase: agree | differ | lost | worst | saturation: agree | CoolProp finds none, ours is one "
        "| CoolProp's is none, ours is one | CoolProp's on an inner loop | unexplained | worst |",
        "|---|---|---|---|---|---|---|---|---|---|---|",
    ]
    head = len(summary) - 2
    for kind in ("pure", "blend"):
        v, w = totals[kind], worst[kind]
        counts = " | ".join(str(n) for n in (*v[:3], f"{w[0]:.0e}", *v[3:], f"{w[1]:.0e}"))
        summary.append(f"| {kind} | {counts} |")
    summary += ["", f"Unexplained or lost: {unexplained} of {total} states.", "", "## By refrigerant", ""]
    summary += [summary[head].replace("kind", "refrigerant"), summary[head + 1], *lines]
    with open(sys.argv[2], "w", encoding="utf-8") as file:
        file.write("\n".join(summary) + "\n")
    print("\n".join(summary[head:head + 5]))
    print(f"unexplained or lost {unexplained} of {total}; {time.time() - started:.0f} s")
    return 1 if unexplained > 0.01 * total else 0


if __name__ == "__main__":
    sys.exit(main())
