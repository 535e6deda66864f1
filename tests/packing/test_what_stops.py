"""What stops me on a day: judged as an outing on that day would be (design section 4, rule 4)."""

from datetime import date

import pytest
from scenario import DEMO
from small_kit import item, other

from kitlog.budget.result import State
from kitlog.kit.due import due_states
from kitlog.kit.flights import Flight
from kitlog.kit.kinds import PhaseWay
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.outing.outing import Outing
from kitlog.packing.fitness import next_due, planned_h_of
from kitlog.packing.what_stops import StopLine, planned_hours, what_stops

TONIGHT = date(2026, 5, 8)
BOOK = ServiceBook(DEMO.rules, DEMO.records, DEMO.events, DEMO.flights)


def asked(on: date, *, by_law: bool = False) -> dict[tuple[str, str], StopLine]:
    lines = what_stops(DEMO.items, BOOK, on, today=TONIGHT, by_law=by_law)
    return {(line.item.name, line.due.rule if line.due else line.why): line for line in lines}


class TestWorkedSeason:
    """States of the worked example of the trade notes (an invented kit, reckoned by hand there)."""

    def test_tonight(self) -> None:
        found = asked(TONIGHT)
        assert found["Helmet A", "helmet.event"].state is State.STOP
        assert found["Harness A", "harness.protector"].state is State.LOOK
        assert found["Reserve A", "reserve.repack"].state is State.LOOK
        assert found["Harness B", "harness.visual"].state is State.NOT_KNOWN
        assert ("First aid kit", "firstaid.check") not in found

    def test_the_day_after_is_another_day(self) -> None:
        assert asked(date(2026, 5, 9))["First aid kit", "firstaid.check"].state is State.LOOK

    def test_in_september(self) -> None:
        found = asked(date(2026, 9, 5))
        assert found["Satellite messenger", "tracker.subscription"].state is State.STOP
        assert found["Wing A", "wing.full"].state is State.LOOK
        assert found["Wing A", "wing.full"].asks_law

    def test_where_law_asks_it_is_a_stop(self) -> None:
        found = asked(date(2026, 9, 5), by_law=True)
        assert found["Wing A", "wing.full"].state is State.STOP
        assert not found["Wing A", "wing.full"].asks_law

    def test_the_worst_stands_first(self) -> None:
        states = [line.state for line in what_stops(DEMO.items, BOOK, date(2026, 9, 5), today=TONIGHT)]
        assert states == sorted(states, key=[State.STOP, State.LOOK, State.NOT_KNOWN].index)


HOURS = ServiceRule(id="r", item_id="wing", rule="wing.full", hours=100, grounds="yes")
NEW = other(item("wing", "wing"), opening_h=0.0)
FLOWN = Flight(id="f", on=date(2026, 4, 1), until=date(2026, 4, 30), airtime_min=95 * 60, flown=("wing",))


def hours_on(on: date, planned_h: float = 0.0) -> tuple[StopLine, ...]:
    return what_stops([NEW], ServiceBook((HOURS,), flights=(FLOWN,)), on, today=TONIGHT, planned_h={"wing": planned_h})


def test_hours_foreseen_are_a_look_never_a_stop() -> None:
    assert hours_on(date(2026, 5, 9)) == ()
    (line,) = hours_on(date(2026, 6, 14))
    assert (line.state, line.due is not None and line.due.foreseen, line.asks_law) == (State.LOOK, True, False)


def test_hours_that_outings_plan_count() -> None:
    assert hours_on(date(2026, 5, 9), planned_h=4.0) == ()
    assert [line.state for line in hours_on(date(2026, 5, 9), planned_h=6.0)] == [State.LOOK]


def test_what_is_not_at_hand_is_said() -> None:
    lent = item("wing 2", "wing", state="lent", lent_to="Bero", back_by=date(2026, 6, 1))
    book = ServiceBook((ServiceRule(id="q", item_id="wing 2", rule="wing.full", months=24),), (_done("wing 2", "q"),))
    for on, state in ((date(2026, 5, 31), State.LOOK), (date(2026, 6, 1), State.NOT_KNOWN)):
        (line,) = what_stops([lent], book, on, today=TONIGHT)
        assert (line.why, line.state) == ("away", state)


def test_what_has_to_be_given_back_by_then_is_said() -> None:
    borrowed = item("vest", "buoyancy", state="borrowed", belongs_to="the club", back_by=date(2026, 6, 1))
    assert what_stops([borrowed], ServiceBook(), date(2026, 6, 1), today=TONIGHT) == ()
    (line,) = what_stops([borrowed], ServiceBook(), date(2026, 6, 2), today=TONIGHT)
    assert (line.why, line.state) == ("goes back", State.LOOK)


def test_of_a_wing_without_rules_nothing_is_known() -> None:
    lines = what_stops([item("wing 3", "wing"), item("bag", "bag")], ServiceBook(), TONIGHT, today=TONIGHT)
    assert [(line.item.id, line.state, line.why) for line in lines] == [("wing 3", State.NOT_KNOWN, "no rules")]


@pytest.mark.parametrize(("on", "hours"), [(date(2026, 5, 8), 0.0), (date(2026, 5, 9), 3.0), (date(2026, 5, 16), 5.0)])
def test_planned_hours_up_to_the_day(on: date, hours: float) -> None:
    outings = [_outing(date(2026, 5, 9), 3.0), _outing(date(2026, 5, 16), 2.0), _outing(date(2026, 5, 1), 9.0)]
    assert planned_hours(outings, ("wing",), TONIGHT, on).get("wing", 0.0) == hours


def test_hours_are_planned_with_the_set_that_is_chosen() -> None:
    outing = _outing(date(2026, 5, 9), 3.0, wing="wing 2")
    assert planned_hours([outing], ("wing",), TONIGHT, date(2026, 6, 1)) == {"wing 2": 3.0}


def _done(item_id: str, rule_id: str) -> ServiceRecord:
    return ServiceRecord(id="s", item_id=item_id, rules=(rule_id,), done_on=TONIGHT)


def _outing(on: date, flown_h: float, **chosen: str) -> Outing:
    phase = {"name": "flight", "way": PhaseWay.FLIGHT, "low_h": flown_h, "likely_h": flown_h, "high_h": flown_h}
    return Outing.model_validate(
        {"name": "x", "flight_types": ["ridge"], "first_day": on, "phases": [phase], "set": chosen}
    )


def test_the_rule_that_falls_due_first_of_what_goes_along() -> None:
    dues = [due for one in DEMO.items for due in due_states(one, BOOK, TONIGHT)]
    first = next_due(dues)
    assert first is not None
    assert (first.rule, first.due_on) == ("firstaid.check", TONIGHT)
    assert next_due([due for due in dues if due.open]) is None


@pytest.mark.parametrize(("grounds", "state"), [("yes", "stop"), ("by law", "stop"), ("no", "look")])
def test_what_an_inspector_failed_is_a_stop_without_a_law(grounds: str, state: str) -> None:
    rule = ServiceRule.model_validate({"id": "r", "item_id": "wing", "rule": "x", "months": 24, "grounds": grounds})
    failed = ServiceRecord.model_validate(
        {"id": "f", "item_id": "wing", "rules": ["r"], "done_on": TONIGHT, "result": "failed"}
    )
    (line,) = what_stops([NEW], ServiceBook((rule,), (failed,)), TONIGHT, today=TONIGHT)
    assert (line.state, line.asks_law) == (state, False)


def test_an_outing_that_names_another_wing_plans_no_hours_with_this_one() -> None:
    day = {"first_day": TONIGHT, "last_day": TONIGHT}
    flight = {"name": "flight", "way": "flight", "low_h": 1, "likely_h": 4.5, "high_h": 6}
    plan = {"id": "o", "name": "o", **day, "flight_types": ["cross-country"], "phases": [flight]}
    for chosen, hours in (({}, 4.5), ({"wing": "wing"}, 4.5), ({"wing": "other"}, 0.0)):
        outing = Outing.model_validate({**plan, "set": chosen})
        assert planned_h_of(outing, NEW, TONIGHT) == hours
