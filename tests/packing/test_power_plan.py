"""What an outing plans of one item, taken in and out of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scenario import LIBRARY
from small_kit import item, outing

from kitlog.kit.item import Item
from kitlog.outing.outing import Outing, PlugPlan, StartCharge
from kitlog.packing.draws import phase_draw
from kitlog.packing.power_plan import (
    adds_up,
    lacking_ways,
    planned_shares,
    preset_shares,
    usual_shares,
    with_phases_renamed,
    with_shares,
    with_start,
)

NAMES = ("low", "high", "off")
PHASES = [{"name": "flight", "way": "flight", "likely_h": 4}, {"name": "walk", "way": "walk out", "likely_h": 1}]


def lamp(share: float = 0.25) -> Item:
    ways = [
        {"name": "low", "power_w": 0.2, "shares": [{"during": "flight", "share": share}]},
        {"name": "high", "power_w": 2},
    ]
    return item("lamp", "light", battery={"wh": 3, "ways": ways})


def radio(*names: str) -> Item:
    return item("radio", "radio", battery={"wh": 11, "ways": [{"name": name, "power_w": 1} for name in names]})


def plan(**more: object) -> Outing:
    return outing(phases=PHASES, **more)


def test_as_usual_is_said_whole_with_the_time_off() -> None:
    one = plan()
    assert usual_shares(lamp(), one.phases[0], one, LIBRARY) == {"low": 0.25, "off": 0.75}
    assert usual_shares(lamp(), one.phases[1], one, LIBRARY) == {}  # a lamp on foot: nobody said whether it is lit
    assert planned_shares(lamp(), one.phases[0], one) is None


def test_shares_of_nothing_are_shown_as_off() -> None:
    """As they are written by a remedy that leaves a device off."""
    one = plan(uses=[{"item": "lamp", "phase": "flight", "way": "low", "share": 0.0}])
    assert planned_shares(lamp(), one.phases[0], one) == {"off": 1.0}


@given(st.lists(st.integers(0, 100), min_size=3, max_size=3).filter(any))
def test_what_is_put_in_comes_out_and_can_be_taken_back(parts: list[int]) -> None:
    shares = {name: part / sum(parts) for name, part in zip(NAMES, parts, strict=True) if part}
    before = plan(uses=[{"item": "lamp", "phase": "walk", "way": "high", "share": 1.0}])
    after = with_shares(before, "lamp", "flight", shares)
    assert planned_shares(lamp(), after.phases[0], after) == pytest.approx(shares)
    assert planned_shares(lamp(), after.phases[1], after) == {"high": 1.0}
    draw = phase_draw(lamp(), after.phases[0], after, LIBRARY)
    assert draw is not None
    assert draw.likely_w == pytest.approx(0.2 * shares.get("low", 0) + 2 * shares.get("high", 0))
    assert with_shares(after, "lamp", "flight", None) == before


@pytest.mark.parametrize(
    ("uses", "sound"),
    [((), True), ((("low", 1.0),), True), ((("low", 0.4), ("off", 0.6)), True), ((("low", 0.4),), False)],
)
def test_whether_shares_add_up(uses: tuple[tuple[str, float], ...], sound: bool) -> None:
    shares = [{"item": "lamp", "phase": "flight", "way": way, "share": share} for way, share in uses]
    assert adds_up(lamp(), plan(uses=shares)) is sound


def test_a_way_that_is_gone_does_not_add_up() -> None:
    gone = [{"item": "lamp", "phase": "flight", "way": "strobe", "share": 1.0}]
    assert not adds_up(lamp(), plan(uses=gone))


class TestPresets:
    def test_a_radio_with_all_three_ways(self) -> None:
        """The duty cycle 5/5/90: hytera-europe.com, two-way radios and battery life."""
        first, second = preset_shares(radio("transmit 5 W", "receive", "standby"))
        assert (first.preset.name, first.shares) == ("5/5/90", {"transmit 5 W": 0.05, "receive": 0.05, "standby": 0.9})
        assert (second.preset.name, second.shares["receive"]) == ("5/25/70", 0.25)

    def test_one_for_each_power_with_the_ways_of_that_power(self) -> None:
        found = preset_shares(radio("transmit 1 W", "transmit 5 W", "receive 1 W", "receive 5 W", "standby"))
        named = {(one.preset.name, one.lead): set(one.shares) for one in found}
        assert named["5/5/90", "transmit 1 W"] == {"transmit 1 W", "receive 1 W", "standby"}
        assert named["5/25/70", "transmit 5 W"] == {"transmit 5 W", "receive 5 W", "standby"}

    def test_in_german(self) -> None:
        (first, _second) = preset_shares(radio("Senden", "Empfang", "Bereitschaft"))
        assert first.shares == {"Senden": 0.05, "Empfang": 0.05, "Bereitschaft": 0.9}

    def test_none_where_a_way_is_missing(self) -> None:
        assert preset_shares(radio("transmit", "standby")) == ()
        assert lacking_ways(radio("transmit", "standby")) == ("receive",)

    def test_only_for_radios(self) -> None:
        assert preset_shares(lamp()) == ()
        assert lacking_ways(lamp()) == ()


def test_a_start_keeps_its_place_and_can_be_taken_out() -> None:
    starts = [{"item": name, "likely_pct": 50.0} for name in ("lamp", "radio")]
    before = plan(starts=starts)
    less = StartCharge(item="lamp", low_pct=10.0, likely_pct=20.0, high_pct=30.0)
    after = with_start(before, "lamp", less)
    assert [start.item for start in after.starts] == ["lamp", "radio"]
    assert after.starts[0] == less
    assert [start.item for start in with_start(after, "lamp", None).starts] == ["radio"]


def test_shares_and_plugs_follow_their_phase() -> None:
    uses = [{"item": "lamp", "phase": name, "way": "high", "share": 1.0} for name in ("flight", "walk")]
    plugs = [{"phase": name, "device": "lamp", "bank": "bank"} for name in ("flight", "walk")]
    after = with_phases_renamed(plan(uses=uses, plugs=plugs), {"flight": "first flight"})
    assert [use.phase for use in after.uses] == ["first flight"]
    assert after.plugs == (PlugPlan(phase="first flight", device="lamp", bank="bank"),)
    assert with_phases_renamed(plan(), {}).plugs is None
