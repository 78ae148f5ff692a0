"""Times what general-purpose libraries compute too: prints a line each, its name, the library, the nanoseconds one takes.

Run by tools/bench.mjs in a virtual environment of its own; the inputs are those of benches/beside.rs.
"""

import time
from importlib.metadata import version

import numpy
import pandas
import pingouin
import psychrolib
from colour.difference import delta_E_CIE2000

ROUNDS = 5
SEA_LEVEL_PA = 101_325.0


def measure(name, library, inputs, one):
    best = float("inf")
    for _ in range(ROUNDS):
        start = time.perf_counter_ns()
        for item in inputs:
            one(*item)
        best = min(best, (time.perf_counter_ns() - start) / len(inputs))
    report(name, library, best)


def report(name, library, best):
    print(f"{name}\t{library}\t{best:.1f}")


def air():
    psychrolib.SetUnitSystem(psychrolib.SI)
    library = f"psychrolib {version('psychrolib')}"
    rooms = [(15.0 + t, (20.0 + rh) / 100.0) for t in range(20) for rh in range(50)]
    measure("dew point", library, rooms, psychrolib.GetTDewPointFromRelHum)
    measure("wet bulb", library, rooms, lambda t, rh: psychrolib.GetTWetBulbFromRelHum(t, rh, SEA_LEVEL_PA))
    measure("humidity ratio", library, rooms, lambda t, rh: psychrolib.GetHumRatioFromRelHum(t, rh, SEA_LEVEL_PA))


def colour():
    library = f"colour-science {version('colour-science')}"
    n = numpy.arange(1_000)
    one = numpy.stack([20.0 + n * 0.06, n * 0.1 - 50.0, 40.0 - n * 0.07], axis=1)
    other = one + numpy.array([1.5, 2.0, -1.0])
    measure("colour difference", f"{library}, one by one", list(zip(one, other)), delta_E_CIE2000)
    best = float("inf")
    for _ in range(ROUNDS):
        start = time.perf_counter_ns()
        delta_E_CIE2000(one, other)
        best = min(best, (time.perf_counter_ns() - start) / len(one))
    report("colour difference", f"{library}, an array of 1,000", best)


def item_analysis():
    """Corrected point-biserial of each item, KR-20 (Cronbach's alpha of right and wrong) whole and without each item."""
    n, k = numpy.arange(200)[:, None], numpy.arange(100)[None, :]
    right = ((n * 31 + k * 17 + n * k * 7) % 100 < 30 + n // 4 + k % 20).astype(float)

    def analysis(answers):
        total = answers.sum(axis=1)
        rest = [numpy.corrcoef(column, total - column)[0, 1] for column in answers.T]
        frame = pandas.DataFrame(answers)
        whole = pingouin.cronbach_alpha(data=frame)[0]
        return rest, whole, [pingouin.cronbach_alpha(data=frame.drop(columns=item))[0] for item in frame.columns]

    measure("item analysis, 200 by 100", f"pingouin {version('pingouin')} and numpy", [(right,)], analysis)


def cup():
    """No general-purpose library on the registry reads efflux cups: the published formula of ISO 4 mm in plain Python."""
    readings = [(30.0 + n * 0.1,) for n in range(700)]
    measure("cup conversion", "the formula in plain Python", readings, lambda t: 1.37 * t - 200.0 / t if 30.0 <= t <= 100.0 else None)


if __name__ == "__main__":
    air()
    colour()
    item_analysis()
    cup()
