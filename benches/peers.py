"""Times property calls beside CoolProp's tabular and direct back ends, in one run, and prints the ratios.

Usage: peers.py PROGRAM, PROGRAM being benches' count_properties. CoolProp is called from Python through its low-level
interface; the cost of an empty Python call of the same form is measured and taken off.
"""

import subprocess
import sys
import time

import CoolProp.CoolProp as CP
from CoolProp import AbstractState

TIMES = 20000


def seconds(call):
    start = time.perf_counter()
    for i in range(TIMES):
        call(4e5 + i)
    return (time.perf_counter() - start) / TIMES


def ours(name):
    text = subprocess.run([sys.argv[1], "time", name, "20000000"], check=True, capture_output=True, text=True).stdout
    return float(text.split()[1])


def main():
    empty = seconds(lambda p: None)
    rows = []
    for backend in ("HEOS", "BICUBIC&HEOS"):
        state = AbstractState(backend, "R134a")

        def dew(p):
            state.update(CP.PQ_INPUTS, p, 1)
            return state.T()

        def vapor(p):
            state.update(CP.PT_INPUTS, p, 300.0)
            return state.rhomass() + state.hmass() + state.smass()

        def at_enthalpy(p):
            state.update(CP.HmassP_INPUTS, 4.2e5, p)
            return state.T()

        for name, call in (("dew_temperature", dew), ("vapor", vapor), ("temperature_at_enthalpy", at_enthalpy)):
            call(4e5)
            rows.append((name, backend, (seconds(call) - empty) * 1e9))
    print("call, ns here, ns CoolProp (R134a, low-level interface from Python), ratio")
    for name, backend, nanoseconds in rows:
        own = ours(name)
        print(f"{name:26} {own:8.1f}  {backend:14} {nanoseconds:10.0f}  {nanoseconds / own:8.0f}")


if __name__ == "__main__":
    main()
