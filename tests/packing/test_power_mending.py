"""What would mend a plan, each change tried on the whole outing, and how far the power goes: by hand on a small kit."""

from dataclasses import replace
from typing import Any

import pytest
from scenario import EVENING, LIBRARY
from small_kit import NEW, but, item, outing

from kitlog.budget.power.changes.effect import Effect
from kitlog.budget.result import Sure
from kitlog.kit.item import Item
from kitlog.packing.assess import assess, judge_of
from kitlog.packing.power_answers import power_answers
from kitlog.packing.power_changes import change_odds, weighed_changes
from kitlog.packing.power_inverse import Outcome
from kitlog.packing.power_limits import PowerLimits, power_limits, retrieve_limit
from kitlog.packing.power_mending import Mend, Mending, PowerAsked, power_mending
from kitlog.wording.figures import NO_BREAK
from kitlog.wording.power_asked_lines import power_lines

FLIGHT = {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 1, "likely_h": 2, "high_h": 3, "air_c": 25}
SHARES = [{"during": "flight", "share": 1}, {"during": "ride home", "share": 1}]
CABLE = item("cable", "cable", 20, battery={"connector": "USB-C to USB-C"})


def phone(watts: float = 2.0, **way: Any) -> Item:
    """10 Wh that are all used."""
    ways = [{"name": "on", "power_w": watts, "shares": SHARES, **way}]
    cell = {"wh": 10, "cutoff_pct": 0, "charge_max_w": 5, "connector": "USB-C", "offset_k": 0, "ways": ways}
    return item("phone", "phone", 200, battery=cell)


def bank(name: str, wh: float, mass_g: int | None) -> Item:
    cell = {"wh": wh, "fixed_c": 25, "cutoff_pct": 0, "connector": "USB-C"}
    return item(name, "power bank", mass_g, battery=cell, bank={"efficiency_pct": 100, "quiescent_w": 0, "ports": 1})


def asked(*items: Item, **plan: Any) -> PowerAsked:
    kit = but("phone", "radio", instead=items)
    made = outing(**{"phases": [FLIGHT, RIDE], "plugs": [], **plan})
    assessment = assess(made, kit, LIBRARY, NEW, EVENING)
    return PowerAsked(assessment, kit.items, LIBRARY, judge_of(assessment.outing, kit, LIBRARY, NEW, EVENING))


def mended(question: PowerAsked, **how: Any) -> Mending:
    *_some, last = power_mending(question, **how)
    return last


class TestMending:
    def test_the_gains_are_those_of_the_same_days(self) -> None:
        question = asked(phone(), bank("big", 20, 200), CABLE)
        found = mended(question, days=200, seed=5)
        weighed = weighed_changes(question.assessment, question.items, LIBRARY)
        gains = list(change_odds(question.assessment, LIBRARY, weighed, days=200, seed=5))
        assert found.complete
        assert found.mends
        assert all(one.odds in gains for one in found.mends)
        assert found.odds is not None
        assert found.odds.all_last == gains[0].before

    def test_lasting_means_the_same_as_in_the_forecast(self) -> None:
        """0.5 W in flight and on the way home: of 10 Wh less than half is used, but the way is begun with 40 %: never
        off on any day, and on many under the 10 % to keep."""
        low = {"starts": [{"item": "phone", "low_pct": 30, "likely_pct": 40, "high_pct": 45}]}
        question = asked(phone(0.5), bank("big", 20, 200), CABLE, **low)
        found = power_answers(question, days=100, seed=5)
        assert found.forecast is not None
        assert found.mending.odds is not None
        forecast, drawn = (one.devices["phone"] for one in (found.forecast, found.mending.odds))
        assert drawn.lasts == forecast.lasts
        assert found.mending.mends[0].odds is not None
        assert found.mending.mends[0].odds.before == found.forecast.all_last
        texts = " ".join(power_lines(found, {}))
        assert "phone lasts, but ends under 10" in " ".join(texts.split()).replace(NO_BREAK, " ")

    def test_better_known_each_time(self) -> None:
        stages = list(power_mending(asked(phone(), bank("big", 20, 200), CABLE), days=100))
        drawn = [one.drawn for one in stages]
        assert drawn == sorted(drawn)
        assert [one.complete for one in stages] == [False] * (len(stages) - 1) + [True]
        assert stages[0].odds is not None
        assert not stages[0].odds.is_final

    def test_nothing_to_mend(self) -> None:
        """1 W: 8 h of a high day leave 2 of 10 Wh."""
        found = mended(asked(phone(1.0), bank("big", 20, 200), CABLE), days=100)
        assert found.nothing_to_mend
        assert found.mends == ()

    def test_what_lasts_in_both_cases_and_seldom_by_chance_is_mended_too(self) -> None:
        """1.1 W likely leave 1.2 Wh of the high day; between 0.2 and 3 W the days of more than 9 Wh are not rare."""
        uncertain = phone(1.1, low_w=0.2, high_w=3.0)
        found = mended(asked(uncertain, bank("big", 20, 200), CABLE), days=300)
        assert found.planned is not None
        assert not found.planned.trouble
        assert found.seldom == {"phone"}
        assert not found.nothing_to_mend
        best = found.mends[0]
        assert best.odds is not None
        assert best.odds.gain > 0
        gains = [one.odds.gain for one in found.mends if one.odds and not one.brings and not one.weighed.harms]
        assert gains == sorted(gains, reverse=True)

    def test_a_change_that_opens_more_than_it_closes_is_not_offered(self) -> None:
        """Short on the high day alone: a bank of unknown mass leaves all sums of masses not known."""
        phases = [FLIGHT | {"likely_h": 3}, RIDE | {"likely_h": 1}]
        found = mended(asked(phone(), bank("big", 20, 200), bank("unweighed", 30, None), CABLE, phases=phases), days=50)
        brings = {one.remedy.items[:2]: one.brings for one in found.mends}
        assert brings["phone", "big"] == ()
        assert any(finding.code.startswith("weight.") for finding in brings["phone", "unweighed"])
        assert found.mends[-1].brings

    def test_nothing_simulated(self) -> None:
        found = mended(asked(phone(), phases=[]))
        assert (found.planned, found.complete, found.nothing_to_mend) == (None, True, False)


class TestLimits:
    def test_one_more_each_time(self) -> None:
        question = asked(phone(), bank("big", 20, 200), CABLE, pinned=["big"], plugs=[on_big("ride")])
        steps = list(power_limits(question.assessment, question.items, LIBRARY))
        assert [(len(one.starts), len(one.banks), one.complete) for one in steps] == [
            (1, 0, False),
            (1, 1, False),
            (1, 1, True),
        ]
        assert steps[-1].lightest is not None

    def test_without_a_simulated_day(self) -> None:
        question = asked(phone(), phases=[])
        assert list(power_limits(question.assessment, question.items, LIBRARY)) == [PowerLimits(complete=True)]
        limit = retrieve_limit(question.assessment)
        assert (limit.likely.outcome, limit.sure) == (Outcome.NOT_ASKED, Sure.NOT_KNOWN)

    def test_how_sure_is_the_weakest_it_rests_on(self) -> None:
        told = {"starts": [{"item": "phone", "low_pct": 90, "likely_pct": 95, "high_pct": 100}]}
        measured, guessed = phone(1.0, basis="measured"), phone(1.0, basis="guess")
        assert retrieve_limit(asked(measured, **told).assessment).sure is Sure.MEASURED
        assert retrieve_limit(asked(measured).assessment).sure is Sure.ESTIMATE
        assert retrieve_limit(asked(guessed, **told).assessment).sure is Sure.GUESS


def on_big(phase: str) -> dict[str, str]:
    return {"phase": phase, "device": "phone", "bank": "big"}


@pytest.mark.parametrize(("days", "per_change"), [(40, 40), (600, 500), (12_000, 600)])
def test_so_many_days_for_each_change(days: int, per_change: int) -> None:
    told: list[float] = []
    found = power_answers(asked(phone()), days=days, tell=told.append)
    assert found.forecast is not None
    assert found.forecast.days == days
    assert found.mending.odds is not None
    assert found.mending.odds.days == per_change
    assert told == sorted(told)
    assert told[-1] <= 1


@pytest.mark.parametrize(
    ("gain_h", "mended", "helps"),
    [(-0.2, "off", False), (0.0, "off", False), (0.1, "off", True), (0.0, "asleep", True)],
)
def test_what_goes_off_later_and_longer_is_no_help(gain_h: float, mended: str, helps: bool) -> None:
    """A warmer place in which a phone goes off 0.2 h later, and does not come back on: the hours short are fewer."""
    one = mended_at_once()
    gain = replace(one.weighed.devices["phone"], gain_h=gain_h, gain_high_h=gain_h)
    later = Effect(mended, "phone", "likely", 5.0, 0.2)
    weighed = replace(one.weighed, devices={"phone": gain}, cut_h=0.2, cut_high_h=0.2, mends=(later,))
    assert one.odds is not None
    same = replace(one.odds, gain=0.0, gain_error=0.0, after=one.odds.before, devices={})
    assert replace(one, weighed=weighed, odds=same).gains is helps


def mended_at_once() -> Mend:
    return mended(asked(phone(), bank("big", 20, 200), CABLE), days=50).mends[0]
