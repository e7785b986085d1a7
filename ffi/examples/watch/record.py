"""Writes recording.h from a recorded stream: what the meter's instruments showed, sample by sample.

python3 record.py > recording.h
"""
import pathlib

STREAM = pathlib.Path(__file__).parents[3] / "core/examples/data/pump_down.csv"

lines = [line for line in STREAM.read_text().splitlines() if line and not line.startswith("#")]
names = lines[0].split(",")[1:]
print("/* A recorded stream, an invented machine. Written by record.py; do not edit. */")
print("typedef struct {")
print("    uint32_t time_ms;")
print("    float " + ", ".join(names) + ";")
print("} Row;")
print("static const Row recording[] = {")
for line in lines[1:]:
    time, *cells = line.split(",")
    numbers = ["NAN" if cell == "" else f"{float(cell)!r}f" for cell in cells]
    print("    {" + ", ".join([str(round(float(time) * 1000))] + numbers) + "},")
print("};")
