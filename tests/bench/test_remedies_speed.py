"""What computed remedies add to an assessment: a ratio of two timings of the same outing in one run."""

from time import process_time

import pytest
from scenario import O1, changed, judged

from kitlog.outing.outing import Outing
from kitlog.packing.power_remedies import is_computed

MOST_RATIO = 10
"""Each remedy is tried by an assessment of its own: at most three for each of the three things in trouble."""

LIT = changed(O1, uses=[{"item": "Phone", "phase": "flight", "way": "flight, screen on", "share": 1.0}])
CALM = changed(O1, phases=[{**phase.model_dump(), "high_h": 0.2, "likely_h": 0.2, "low_h": 0.2} for phase in O1.phases])
"""The same kit on so short a day that nothing is in trouble."""


def best_of(times: int, outing: Outing) -> float:
    taken = []
    for _ in range(times):
        start = process_time()
        judged(outing)
        taken.append(process_time() - start)
    return min(taken)


@pytest.mark.bench
def test_a_day_in_trouble_takes_a_few_times_as_long_as_a_calm_one() -> None:
    assert any(is_computed(remedy) for finding in judged(LIT).findings for remedy in finding.remedies)
    assert not any(is_computed(remedy) for finding in judged(CALM).findings for remedy in finding.remedies)
    calm_s, trouble_s = best_of(10, CALM), best_of(5, LIT)
    print(f"\ncalm {calm_s * 1e3:.1f} ms, in trouble {trouble_s * 1e3:.1f} ms, {trouble_s / calm_s:.1f} times")  # noqa: T201  # the figure is the point
    assert trouble_s / calm_s <= MOST_RATIO
