"""Times psychrometrics beside psychrolib: prints a line each, its name and the nanoseconds one takes.

Run by tools/bench.mjs in a virtual environment of its own; the inputs are those of benches/beside.rs.
"""

import time

import psychrolib

ROUNDS = 5
SEA_LEVEL_PA = 101_325.0


def measure(name, library, inputs, one):
    best = float("inf")
    for _ in range(ROUNDS):
        start = time.perf_counter_ns()
        for item in inputs:
            one(*item)
        best = min(best, (time.perf_counter_ns() - start) / len(inputs))
    print(f"{name}\t{library}\t{best:.1f}")


def air():
    psychrolib.SetUnitSystem(psychrolib.SI)
    library = f"psychrolib {version('psychrolib')}"
    rooms = [(15.0 + t, (20.0 + rh) / 100.0) for t in range(20) for rh in range(50)]
    measure("dew point", library, rooms, psychrolib.GetTDewPointFromRelHum)
    measure("wet bulb", library, rooms, lambda t, rh: psychrolib.GetTWetBulbFromRelHum(t, rh, SEA_LEVEL_PA))
    measure("humidity ratio", library, rooms, lambda t, rh: psychrolib.GetHumRatioFromRelHum(t, rh, SEA_LEVEL_PA))


if __name__ == "__main__":
    from importlib.metadata import version

    air()
