"""The inverse questions of an outing, by hand: cells at 25 deg C, no losses; what holds beyond is told from what fails."""

from datetime import time
from typing import Any

import pytest
from scenario import judged
from small_kit import NEW, but, item, outing

from kitlog.budget.result import Sure
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit
from kitlog.packing.power_inverse import Outcome, longest_retrieve, lowest_start_pct, smallest_bank_wh
from kitlog.packing.power_limits import BothCases
from kitlog.wording.power_asked_text import retrieve_words

FLIGHT = {"name": "flight", "way": "flight", "low_h": 3, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "likely_h": 2, "air_c": 25}
BANK = item(
    "bank",
    "power bank",
    battery={"wh": 20, "fixed_c": 25, "cutoff_pct": 0},
    bank={"efficiency_pct": 100, "quiescent_w": 0, "ports": 1},
)


def day(watts: float = 1.0, plugs: Any = (), **plan: Any) -> tuple[Assessment, Kit]:
    shares = [{"during": moving, "share": 1} for moving in ("flight", "ride home")]
    ways = [{"name": "on", "power_w": watts, "shares": shares}]
    cell = {"wh": 10, "cutoff_pct": 0, "offset_k": 0, "charge_max_w": 50, "ways": ways}
    kit = but("phone", "radio", instead=(item("phone", "phone", battery=cell), BANK))
    plan = {"phases": [FLIGHT, RIDE], "pinned": ["bank"], "plugs": list(plugs), **plan}
    return judged(outing(**plan), kit, NEW), kit


def on_bank(*phases: str, **how: Any) -> list[dict[str, Any]]:
    return [{"phase": phase, "device": "phone", "bank": "bank", **how} for phase in phases]


class TestLongestRetrieve:
    @pytest.mark.parametrize(
        ("least_pct", "high", "hours"), [(0, False, 6), (20, False, 4), (20, True, 3), (60, False, 0)]
    )
    def test_by_hand(self, least_pct: float, high: bool, hours: float) -> None:
        """10 Wh at 1 W: 6 are left after 4 h of flight, 5 after 5 h."""
        found = longest_retrieve(day()[0], least_pct, high=high)
        assert (found.outcome, found.phase, found.unit) == (Outcome.FOUND, "ride", "h")
        assert found.figure == pytest.approx(hours)

    def test_a_phone_that_cold_put_off_before_counts_from_when_it_is_back(self) -> None:
        """10 Wh at 1 W, 9 h in deep cold: it goes off on the way and is back, with what cold had locked, in the warmth.

        What is left after it went off at `t` is 10 - t Wh, and lasts as many hours on the ride.
        """
        cold = {**FLIGHT, "likely_h": 9, "high_h": 9, "air_c": -20}
        found = longest_retrieve(day(phases=[cold, RIDE])[0], 0)
        assert found.off_from_h is not None
        assert 0 < found.off_from_h < 9
        assert found.off_before_h == pytest.approx(9 - found.off_from_h)
        assert found.figure == pytest.approx(10 - found.off_from_h)
        words = retrieve_words(BothCases(found, found, Sure.GUESS), time(9, 30))
        minutes = 570 + round(60 * found.off_from_h)
        assert f"from {minutes // 60:02d}:{minutes % 60:02d}" in words.note
        assert words.note in words.spoken

    def test_a_phone_that_was_on_all_the_time_needs_no_note(self) -> None:
        found = longest_retrieve(day()[0], 0)
        assert (found.off_from_h, found.off_before_h) == (None, 0)
        assert not retrieve_words(BothCases(found, found, Sure.GUESS)).note

    def test_beyond_is_not_never(self) -> None:
        found = longest_retrieve(day()[0], 20, horizon_h=3)
        assert (found.outcome, found.figure, found.limit) == (Outcome.BEYOND, None, 3)

    def test_nothing_to_ask(self) -> None:
        """A day that ends with the flight has no retrieve."""
        assert longest_retrieve(day(phases=[FLIGHT])[0], 20).outcome is Outcome.NOT_ASKED
        assert longest_retrieve(day(phases=[])[0], 20).outcome is Outcome.NOT_ASKED


class TestLowestStart:
    def test_by_hand(self) -> None:
        """6 Wh are used, and 10 % are to be kept."""
        found = lowest_start_pct(*ask(), "phone")
        assert found.outcome is Outcome.FOUND
        assert found.figure == pytest.approx(70, abs=1e-4)

    def test_not_even_full(self) -> None:
        assert lowest_start_pct(*ask(1.6), "phone").outcome is Outcome.NEVER

    def test_any_start(self) -> None:
        """All day on a bank that gives more than it draws."""
        found = lowest_start_pct(*ask(1.0, on_bank("flight", "ride")), "phone")
        assert (found.outcome, found.figure) == (Outcome.FOUND, 0)

    def test_a_low_start_that_gets_plugged_does_not_make_a_higher_one_do(self) -> None:
        """1.6 W for 4 and 2 h, plugged in on the ride at 2 %. From 97 % it lands with 33, comes down to 2 and is charged;
        from full it ends with 4, never plugged in: too little."""
        assert lowest_start_pct(*ask(1.6, on_bank("ride", connect_below_pct=2)), "phone").outcome is Outcome.NEVER
        starts = [{"item": "phone", "low_pct": 97, "likely_pct": 97, "high_pct": 97}]
        charged, _ = day(1.6, on_bank("ride", connect_below_pct=2), starts=starts)
        assert charged.power.likely is not None
        assert (charged.power.likely.devices["phone"].soc_end or 0) > 0.1

    def test_plugged_from_the_landing_on(self) -> None:
        """1.6 W for 4 h are 6.4 Wh: from 64 % it just reaches the bank."""
        found = lowest_start_pct(*ask(1.6, on_bank("ride")), "phone")
        assert found.figure == pytest.approx(64, abs=1e-4)

    def test_nothing_to_ask(self) -> None:
        assert lowest_start_pct(*ask(), "nobody").outcome is Outcome.NOT_ASKED


class TestSmallestBank:
    def test_by_hand(self) -> None:
        """2 Wh at the landing, 4 for the ride, 1 to keep: x Wh at 52 W carry 2 W for x / 52 h and charge with nine
        tenths of 50: x (2 + .9 x 50) / 52 = 3 Wh."""
        found = smallest_bank_wh(*ask(2.0, on_bank("ride")), "bank")
        assert found.outcome is Outcome.FOUND
        assert found.figure == pytest.approx(3 * 52 / 47, abs=1e-4)

    def test_none_is_needed(self) -> None:
        found = smallest_bank_wh(*ask(1.0, on_bank("ride")), "bank")
        assert (found.outcome, found.figure) == (Outcome.FOUND, 0)

    def test_no_bank_is_large_enough(self) -> None:
        """Off in flight, before it is plugged in."""
        found = smallest_bank_wh(*ask(3.0, on_bank("ride")), "bank", most_wh=100)
        assert (found.outcome, found.figure, found.limit) == (Outcome.NEVER, None, 100)

    def test_nothing_hangs_on_it(self) -> None:
        assert smallest_bank_wh(*ask(), "bank").outcome is Outcome.NOT_ASKED


def ask(watts: float = 1.0, plugs: Any = ()) -> tuple[Assessment, Any]:
    assessment, kit = day(watts, plugs)
    return assessment, kit.items
