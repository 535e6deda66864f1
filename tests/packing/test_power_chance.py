"""The chance that the phone can still call at the end of the retrieve, as a finding and as words."""

from dataclasses import replace
from typing import Any

import pytest
from scenario import LIBRARY, judged
from small_kit import NEW, but, item, outing

from kitlog.budget.power.chance import odds_of
from kitlog.budget.power.forecast import Forecast
from kitlog.budget.result import Finding, State, Sure
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_question import day_forecasts
from kitlog.wording.findings import say

FLIGHT = {"name": "flight", "way": "flight", "low_h": 3, "likely_h": 5, "high_h": 8, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 0, "likely_h": 0, "high_h": 0.000001, "air_c": 25}


def day(watts: float = 1.0, basis: str = "measured", **plan: Any) -> Assessment:
    """6 Wh, all of them usable."""
    ways = [{"name": "on", "power_w": watts, "basis": basis}]
    cell = {"wh": 6, "cutoff_pct": 0, "offset_k": 0, "ways": ways, **plan.pop("battery", {})}
    kit = but("phone", "radio", instead=(item("phone", "phone", battery=cell), *plan.pop("more", ())))
    return judged(outing(**{"phases": [FLIGHT, RIDE], "plugs": [], **plan}), kit, NEW)


def forecasts(assessment: Assessment, days: int = 500) -> list[Forecast]:
    found = day_forecasts(assessment, LIBRARY, days=days)
    assert found is not None
    return list(found)


def the_phone(assessment: Assessment, days: int = 500) -> Finding:
    return next(f for f in chance_findings(assessment, forecasts(assessment, days)[-1]) if f.subject == "phone")


def test_the_triangle_by_hand() -> None:
    """6 Wh at 1 W over (3, 5, 8) h: P = 1 - (8-6)^2 / ((8-3)(8-5)) = .7333 (the handbook's distribution function)."""
    found = the_phone(day(), 4_000)
    error = (0.7333 * 0.2667 / 4_000) ** 0.5
    assert found.figure == pytest.approx(73.33, abs=400 * error)
    odds: Any = found.facts["odds"]
    assert odds.standard_error == pytest.approx(error, rel=0.05)
    assert (found.state, found.facts["grade"]) == (State.LOOK, "bad")


@pytest.mark.parametrize(
    ("held", "days", "state", "grade"),
    [
        (10_000, 10_000, State.FINE, "good"),
        (9_600, 10_000, State.FINE, "good"),
        (9_500, 10_000, State.LOOK, "thin"),  # its lower bound is under 95 %
        (480, 500, State.LOOK, "thin"),  # 96 % of so few days says too little
        (8_100, 10_000, State.LOOK, "thin"),
        (8_000, 10_000, State.LOOK, "bad"),
        (0, 10_000, State.LOOK, "bad"),
    ],
)
def test_the_lower_bound_decides_and_nothing_is_a_stop(held: int, days: int, state: State, grade: str) -> None:
    assessment = day()
    forecast = forecasts(assessment)[-1]
    phone = replace(forecast.devices["phone"], alive_at_end=odds_of(held, days))
    found = chance_findings(assessment, replace(forecast, devices={"phone": phone}))[0]
    assert (found.state, found.facts["grade"]) == (state, grade)


class TestWhatItRestsOn:
    def test_as_sure_as_the_weakest_draw(self) -> None:
        full = [{"item": "phone", "low_pct": 100, "likely_pct": 100, "high_pct": 100}]
        told = day(phases=[FLIGHT], starts=full)
        assert the_phone(told).sure is Sure.MEASURED
        assert the_phone(day(phases=[FLIGHT])).sure is Sure.ESTIMATE
        assert the_phone(day()).facts["not_measured"] == ()
        guessed = the_phone(day(basis="starter"))
        assert guessed.sure is Sure.GUESS
        assert guessed.facts["not_measured"] == ("flight", "ride")

    def test_air_that_is_not_given_makes_a_guess(self) -> None:
        found = the_phone(day(phases=[{**FLIGHT, "air_c": None}, RIDE]))
        assert found.sure is Sure.GUESS
        assert found.facts["air_assumed"] is True

    def test_hours_without_a_range_and_a_charge_that_was_not_told(self) -> None:
        fixed = {**FLIGHT, "low_h": 5, "high_h": 5}
        found = the_phone(day(phases=[fixed, RIDE]))
        assert found.facts["fixed"] == ("flight",)
        assert found.facts["start_assumed"] is True
        starts = [{"item": "phone", "low_pct": 80, "likely_pct": 90, "high_pct": 100}]
        assert the_phone(day(starts=starts)).facts["start_assumed"] is False

    def test_a_phone_that_is_not_described_is_not_known(self) -> None:
        lamp = item("lamp", "light", battery={"wh": 1, "ways": [{"name": "on", "power_w": 0.1}]})
        assessment = day(
            battery={"wh": None}, more=(lamp,), pinned=["lamp"], phases=[FLIGHT, {**RIDE, "way": "walk out"}]
        )
        (found,) = chance_findings(assessment, forecasts(assessment)[-1])
        assert (found.state, found.sure, found.figure) == (State.NOT_KNOWN, Sure.NOT_KNOWN, None)
        assert [remedy.code for remedy in found.remedies] == ["enter_battery"]


def test_of_several_that_call_one_is_enough() -> None:
    cell = {"wh": 4, "cutoff_pct": 0, "ways": [{"name": "on", "power_w": 0.1, "basis": "measured"}]}
    messenger = item("messenger", "tracker", serves=("call for help",), battery=cell)
    assessment = day(more=(messenger,), pinned=["messenger"])
    phone, some = chance_findings(assessment, forecasts(assessment)[-1])
    assert (some.code, some.state, set(some.items)) == ("power.any_can_call", State.FINE, {"phone", "messenger"})
    assert some.figure == 100
    assert phone.state is State.LOOK


class TestWords:
    def said(self, assessment: Assessment, at: int = -1, days: int = 1_500) -> tuple[str, str, str]:
        forecast = forecasts(assessment, days)[at]
        said = say(chance_findings(assessment, forecast)[0], {"phone": "Phone"})
        return said.title, said.figure.replace("\xa0", " "), said.sentence.replace("\xa0", " ").replace("\u2009", " ")

    def test_the_worst(self) -> None:
        title, figure, sentence = self.said(day(basis="guess"))
        assert title == "Phone can still call at the end of the retrieve"
        assert figure in {"72 %", "73 %", "74 %", "75 %"}
        assert sentence.startswith(f"on {figure} of 1 500 days drawn (± 1): too few. Reckon with a dark phone. One day")
        assert sentence.endswith(
            "Not measured or not told: the draw in flight, ride; the charge at the start, taken as full"
        )

    def test_never_certain(self) -> None:
        _, figure, sentence = self.said(day(0.1))
        assert figure.startswith(">99.")
        assert sentence.startswith(f"{figure}, as all 1 500 days drawn agree.")

    def test_a_first_estimate_says_so(self) -> None:
        assert self.said(day(), 0)[2].startswith("first estimate, on ")

    def test_a_day_that_ends_in_flight_has_no_retrieve(self) -> None:
        night = {**FLIGHT, "name": "night", "way": "night"}
        assert self.said(day(phases=[FLIGHT, night]))[0] == "Phone can still call at the end of the day"
        assert self.said(day(phases=[FLIGHT]))[0] == "Phone can still call at the landing, where the plan ends"
