"""Conditions of a day. Their thresholds are common practice, no source, unless a test names one."""

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest
from scenario import LIBRARY, O1, O2, changed, judged
from small_kit import NEW, WING, but, outing

from kitlog.kit.facets import Wing
from kitlog.outing.conditions import OPEN_COUNTS_AS_YES, TICKED, Answer3, Condition
from kitlog.outing.outing import Outing
from kitlog.packing.assess import flight_types
from kitlog.packing.assessment import Truth
from kitlog.packing.conditions import flights_end, truths


def truth(plan: Outing, condition: Condition) -> Truth:
    return next(t for t in truths(plan, flight_types(plan, LIBRARY)) if t.condition is condition)


def phases(*spans: tuple[str, float | tuple[float, float, float], float | None]) -> list[dict[str, object]]:
    every = []
    for number, (way, hours, air) in enumerate(spans):
        low, likely, high = hours if isinstance(hours, tuple) else (hours, hours, hours)
        every.append(
            {"name": f"{way} {number}", "way": way, "low_h": low, "likely_h": likely, "high_h": high, "air_c": air}
        )
    return every


def test_every_condition_has_one_truth() -> None:
    assert [t.condition for t in truths(O1, flight_types(O1, LIBRARY))] == list(Condition)


@pytest.mark.parametrize("condition", sorted(OPEN_COUNTS_AS_YES))
def test_left_open_these_four_count_as_yes_and_say_so(condition: Condition) -> None:
    left_open = truth(outing(conditions={}), condition)
    assert left_open == Truth(condition, Answer3.OPEN, "not answered", counts_as_yes=True)
    assert left_open.holds


@pytest.mark.parametrize("condition", sorted(TICKED - OPEN_COUNTS_AS_YES))
def test_the_other_ticks_are_no_until_ticked(condition: Condition) -> None:
    assert not truth(outing(), condition).holds
    assert truth(outing(conditions={condition.value: True}), condition) == Truth(condition, Answer3.YES)


@pytest.mark.parametrize("condition", list(Condition))
def test_a_tick_is_taken_for_any_condition(condition: Condition) -> None:
    for holds, answer in ((True, Answer3.YES), (False, Answer3.NO)):
        ticked = truth(outing(conditions={condition.value: holds}), condition)
        assert (ticked.answer, ticked.by, ticked.holds) == (answer, "ticked", holds)


@pytest.mark.parametrize(
    "condition",
    sorted(set(Condition) - TICKED - {Condition.NO_PICKUP, Condition.OVERNIGHT, Condition.PASSENGER, Condition.EVENT}),
)
def test_what_cannot_be_derived_is_open_and_does_not_count(condition: Condition) -> None:
    left_open = truth(outing(people=[]), condition)
    assert left_open.answer is Answer3.OPEN
    assert not left_open.holds


@pytest.mark.parametrize(
    ("name", "condition"),
    [
        ("over-water course", Condition.WATER),
        ("tandem", Condition.PASSENGER),
        ("competition", Condition.EVENT),
    ],
)
def test_what_the_flight_type_brings_cannot_be_ticked_away(name: str, condition: Condition) -> None:
    brought = truth(outing(flight_types=["ridge", name], conditions={condition.value: False}), condition)
    assert brought == Truth(condition, Answer3.YES, "flight type")


class TestCold:
    @pytest.mark.parametrize(("air_c", "cold"), [(5.0, True), (5.1, False), (-10.0, True), (20.0, False)])
    def test_by_the_coldest_air(self, air_c: float, cold: bool) -> None:
        plan = outing(phases=phases(("walk", 1, 20.0), ("walk", 1, air_c)))
        assert truth(plan, Condition.COLD).holds is cold

    def test_by_the_airflow_in_flight_alone(self) -> None:
        """5.5 deg C feels like +0.09 at 38 km/h and -1.9 at 80: the formula of the 2001 index, by hand."""
        for airflow_kmh, cold in ((38.0, False), (80.0, True)):
            for way, feels_it in (("flight", True), ("walk", False)):
                plan = outing(phases=phases((way, 1, 5.5)))
                derived = next(t for t in truths(plan, (), airflow_kmh) if t.condition is Condition.COLD)
                assert derived.holds is (cold and feels_it)

    def test_the_trim_speed_of_the_wing_is_the_airflow(self) -> None:
        plan = outing(phases=phases(("flight", 1, 5.5)))
        fast = WING.model_copy(update={"wing": Wing(trim_kmh=80)})
        for wing, cold in ((WING, False), (fast, True)):
            found = judged(plan, but("wing", instead=[wing]), NEW).truths
            assert next(t for t in found if t.condition is Condition.COLD).holds is cold

    def test_is_open_without_temperatures(self) -> None:
        assert truth(outing(phases=phases(("flight", 1, None))), Condition.COLD).answer is Answer3.OPEN


class TestHot:
    @pytest.mark.parametrize(("air_c", "answer"), [(25.0, Answer3.YES), (24.9, Answer3.NO), (None, Answer3.OPEN)])
    def test_by_the_air_at_launch(self, air_c: float | None, answer: Answer3) -> None:
        assert truth(outing(phases=phases(("wait", 1, air_c), ("walk", 1, 30.0))), Condition.HOT).answer is answer


class TestAlone:
    @pytest.mark.parametrize("role", ["fellow pilot", "instructor", "boat crew", "helper", "passenger"])
    def test_somebody_there_would_notice(self, role: str) -> None:
        people = [{"name": "A", "role": "contact"}, {"name": "B", "role": role}]
        assert truth(outing(people=people), Condition.ALONE).answer is Answer3.NO

    @pytest.mark.parametrize("role", ["contact", "driver"])
    def test_who_is_elsewhere_would_not(self, role: str) -> None:
        assert truth(outing(people=[{"name": "A", "role": role}]), Condition.ALONE).answer is Answer3.YES


class TestWalk:
    @pytest.mark.parametrize(
        ("hours", "answer"),
        [
            ((0.5, 1.0, 3.0), Answer3.NO),
            ((0.5, 1.1, 3.0), Answer3.YES),
            ((0.5, 1.0, 3.1), Answer3.YES),
        ],
    )
    def test_by_the_hours_on_foot(self, hours: tuple[float, float, float], answer: Answer3) -> None:
        assert truth(outing(phases=phases(("walk", hours, None))), Condition.WALK).answer is answer

    def test_walks_add_up(self) -> None:
        assert truth(outing(phases=phases(("walk", 0.6, None), ("walk", 0.6, None))), Condition.WALK).holds

    def test_the_way_up_is_no_walk_out(self) -> None:
        assert not truth(outing(phases=phases(("hike", 4, None))), Condition.WALK).holds


class TestPickUpTopAndNight:
    def test_nobody_drives(self) -> None:
        assert truth(outing(people=[]), Condition.NO_PICKUP).holds
        assert not truth(outing(), Condition.NO_PICKUP).holds

    @pytest.mark.parametrize(("top_m", "answer"), [(3_000, Answer3.YES), (2_999, Answer3.NO), (None, Answer3.OPEN)])
    def test_high(self, top_m: float | None, answer: Answer3) -> None:
        assert truth(outing(top_m=top_m), Condition.HIGH).answer is answer

    def test_night(self) -> None:
        assert not truth(outing(), Condition.OVERNIGHT).holds
        assert truth(outing(last_day="2026-05-10"), Condition.OVERNIGHT).holds
        assert truth(outing(phases=phases(("night", 8, None))), Condition.OVERNIGHT).holds

    def test_passenger_and_event_follow_from_the_plan(self) -> None:
        assert truth(outing(people=[{"name": "P", "role": "passenger"}]), Condition.PASSENGER).holds
        assert truth(outing(demanded=["event"]), Condition.EVENT).holds
        assert not truth(outing(demanded=["law"]), Condition.EVENT).holds


class TestLate:
    """Sunset on the worked example's day: 20:32:43 (astral, elevation 0), so late is after 19:32:43."""

    def plan(self, flight_high_h: float, **fields: object) -> Outing:
        flown = phases(("wait", (1, 1.5, 2.5), 14.0), ("flight", (2.5, 4.5, flight_high_h), -2.0))
        return changed(O1, phases=flown, uses=[], plugs=[], **fields)

    def test_the_worked_example(self) -> None:
        end = flights_end(O1)
        assert end is not None
        assert end == datetime(2026, 5, 9, 20, 18, tzinfo=ZoneInfo("Europe/Rome"))
        assert truth(O1, Condition.LATE).holds

    @pytest.mark.parametrize(("flight_high_h", "late"), [(5.2, False), (5.3, True)])
    def test_counts_the_packing_up_in_the_high_case(self, flight_high_h: float, late: bool) -> None:
        assert truth(self.plan(flight_high_h), Condition.LATE).holds is late

    def test_packing_up_that_is_planned_counts_as_planned(self) -> None:
        quick = phases(("wait", 2.5, None), ("flight", 5.3, None), ("pack up", 0.1, None))
        assert not truth(changed(O1, phases=quick), Condition.LATE).holds

    @pytest.mark.parametrize("lacking", ["starts_at", "time_zone", "site", "phases"])
    def test_is_open_where_the_plan_does_not_say(self, lacking: str) -> None:
        nothing: object = {"site": {}, "phases": []}.get(lacking)
        assert truth(changed(O1, **{lacking: nothing}), Condition.LATE).answer is Answer3.OPEN

    def test_after_a_night_out_the_sunset_of_the_day_of_the_last_flight_counts(self) -> None:
        ticked = {"no signal": True, "water": False, "forest": False, "airspace": False}
        flown = (("flight", 4.0, None), ("pack up", 0.5, None))
        next_day = phases(("hike", 5.0, None), ("night", 20.0, None), *flown)
        evening = phases(("hike", 5.0, None), *flown)
        for way, late in ((next_day, False), (evening, True)):
            plan = changed(O2, starts_at="11:00", phases=way, conditions=ticked)
            assert truth(plan, Condition.LATE).holds is late

    def test_hours_are_hours_also_in_the_night_the_clocks_change(self) -> None:
        """In Italy the clock went from 2:00 to 3:00 on 29 March 2026 (EU rule, last Sunday of March)."""
        night = outing(
            first_day="2026-03-28",
            starts_at="23:00",
            time_zone="Europe/Rome",
            phases=phases(("night", 5, None), ("flight", 1, None), ("pack up", 0, None)),
        )
        end = flights_end(night)
        assert end is not None
        assert (end.day, end.hour) == (29, 6)


def test_the_night_out_of_the_worked_example_leaves_open_what_was_not_given() -> None:
    unknown = {t.condition for t in truths(O2, flight_types(O2, LIBRARY)) if t.answer is Answer3.OPEN}
    assert unknown == {Condition.COLD, Condition.HOT, Condition.LATE, Condition.HIGH}
