"""Writes recording.h: five minutes of raw sensor counts of an invented walk-in cooler with a blocked condenser.

python3 record.py > recording.h
"""
import math
import random

SECONDS = 300
FULL = 4095  # 12-bit converter


def pressure_counts(kpa_gauge, span_kpa):
    """A ratiometric transducer: 0.5 V at zero, 4.5 V at its span, of 5 V."""
    return FULL * (0.1 + 0.8 * kpa_gauge / span_kpa)


def thermistor_counts(celsius):
    """10 kohm at 25 degC, beta 3435 K, below 10 kohm to the reference."""
    ohm = 10e3 * math.exp(3435.0 * (1.0 / (celsius + 273.15) - 1.0 / 298.15))
    return FULL * ohm / (ohm + 10e3)


def current_counts(ampere):
    """A clamp with an RMS converter, 20 A at full scale."""
    return FULL * ampere / 20.0


ATMOSPHERE = 101.325
# name, counts of a value, value at the start, value when steady, noise in counts
CHANNELS = [
    ("suction pressure", lambda v: pressure_counts(v - ATMOSPHERE, 1000.0), 760.0, 541.0, 3.0),
    ("discharge pressure", lambda v: pressure_counts(v - ATMOSPHERE, 4000.0), 1500.0, 2515.0, 2.0),
    ("evaporator outlet", thermistor_counts, 15.0, 7.6, 3.0),
    ("suction line", thermistor_counts, 20.0, 12.0, 3.0),
    ("discharge line", thermistor_counts, 45.0, 94.5, 2.0),
    ("liquid line", thermistor_counts, 36.0, 51.7, 3.0),
    ("space", thermistor_counts, 11.0, 9.3, 2.0),
    ("ambient", thermistor_counts, 34.0, 34.0, 2.0),
    ("current", current_counts, 11.0, 6.95, 4.0),
]

random.seed(20260401)
rows = []
for second in range(SECONDS):
    settled = 1.0 - math.exp(-second / 30.0)
    row = []
    for _, counts, first, last, noise in CHANNELS:
        value = first + (last - first) * settled
        row.append(int(min(max(counts(value) + random.gauss(0.0, noise), 0), FULL)))
    rows.append(row)
# A loose plug: the liquid-line thermistor reads open now and then, the suction transducer drops out once.
for second in (130, 171, 205, 206):
    rows[second][5] = FULL
rows[240][0] = 0

print("/* Raw counts of a 12-bit converter, one row a second. Written by record.py; do not edit. */")
print("static const uint16_t recording[][CHANNELS] = {")
for row in rows:
    print("    {" + ", ".join(map(str, row)) + "},")
print("};")
