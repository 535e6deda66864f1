"""A plan that ends with the flight says nothing of the charge on the way home: not known, never fine."""

from scenario import HISTORY, KIT, O1, changed, judged, of_code

from kitlog.budget.result import State
from kitlog.outing.outing import Outing


def _until_flight() -> Outing:
    phases = O1.model_dump()["phases"]
    last = max(i for i, phase in enumerate(phases) if phase["way"] == "flight")
    return changed(O1, phases=phases[: last + 1])


def test_a_plan_that_ends_with_the_flight_is_not_known() -> None:
    (finding,) = of_code(judged(_until_flight(), KIT, HISTORY), "power.no_way_home")
    assert finding.state is State.NOT_KNOWN
    assert [remedy.code for remedy in finding.remedies] == ["enter_phases"]


def test_a_plan_with_a_way_home_has_no_such_finding() -> None:
    assert not of_code(judged(O1, KIT, HISTORY), "power.no_way_home")
