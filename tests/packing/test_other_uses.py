"""What a device could do instead, read from the names of its ways of use."""

from typing import Any

import pytest
from scenario import LIBRARY
from small_kit import item, outing

from kitlog.outing.outing import Outing
from kitlog.packing.draws import phase_draw
from kitlog.packing.other_uses import OtherWay, other_ways
from kitlog.packing.to_hand import with_uses

FLIGHT = {"name": "flight", "way": "flight", "likely_h": 4, "air_c": 10}
WALK = {"name": "walk", "way": "walk out", "likely_h": 1, "air_c": 10}


def way(name: str, watts: float, **shares: float) -> dict[str, Any]:
    during = [{"during": moving, "share": share} for moving, share in shares.items()]
    return {"name": name, "power_w": watts, "shares": during}


def others(ways: list[dict[str, Any]], kind: str = "phone", **plan: Any) -> tuple[OtherWay, ...]:
    return other_ways(thing(ways, kind), day(**plan), LIBRARY)


def thing(ways: list[dict[str, Any]], kind: str = "phone") -> Any:
    return item("thing", kind, battery={"wh": 10, "ways": ways})


def day(**plan: Any) -> Outing:
    return outing(**{"phases": [FLIGHT, WALK], **plan})


LIT, DARK = way("map, screen on", 2.6, flight=1.0), way("tracking, screen off", 1.1, flight=0.0)


def test_a_lit_screen_is_lit_for_a_tenth_of_the_time() -> None:
    (one,) = others([LIT, DARK])
    assert (one.code, one.way, one.instead, one.phases) == (
        "use_less",
        "tracking, screen off",
        "map, screen on",
        ("flight",),
    )
    assert {use.way: use.share for use in one.uses} == {
        "map, screen on": 0.1,
        "tracking, screen off": pytest.approx(0.9),
    }


def test_its_draw_by_hand() -> None:
    """0.1 x 2.6 + 0.9 x 1.1 = 1.25 W."""
    (one,) = others([LIT, DARK])
    plan = with_uses(day(), one)
    draw = phase_draw(thing([LIT, DARK]), plan.phases[0], plan, LIBRARY)
    assert draw is not None
    assert draw.likely_w == pytest.approx(1.25)


def test_what_is_lit_for_no_more_than_a_tenth_is_left_alone() -> None:
    assert others([way("screen on", 2.6, flight=0.1), way("screen off", 1.1, flight=0.9)]) == ()


def test_flight_mode_is_for_the_flight_alone_and_takes_all_of_it() -> None:
    modes = [way("flight mode, screen off", 0.05), way("flight mode, logging", 0.45)]
    used = [way("tracking", 0.9, **{"flight": 1.0, "walk out": 1.0})]
    (one,) = others([*used, *modes])
    assert (one.code, one.way, one.phases) == ("flight_mode", "flight mode, logging", ("flight",))
    assert [(use.way, use.share) for use in one.uses] == [("flight mode, logging", 1.0)]


@pytest.mark.parametrize(
    ("now", "lower"),
    [
        ("high", "low"),
        ("medium", "low"),
        ("transmit 5 W", "transmit 1 W"),
        ("position each 2 min", "position each 10 min"),
        ("full brightness", "half brightness"),
    ],
)
def test_a_lower_step_of_the_same_thing(now: str, lower: str) -> None:
    (one,) = others([way(now, 5, flight=1.0), way(lower, 2), way("receive", 1)], "gloves")
    assert (one.code, one.way, one.instead, one.share) == ("use_less", lower, now, 0.0)


@pytest.mark.parametrize(("now", "other"), [("on", "off"), ("transmit 5 W", "standby"), ("at launch", "on foot")])
def test_what_is_not_the_same_thing_is_no_step(now: str, other: str) -> None:
    assert others([way(now, 5, flight=1.0), way(other, 2)], "radio") == ()


def test_only_what_draws_less_and_is_known_to() -> None:
    assert others([way("low", 2, flight=1.0), way("high", 5)], "gloves") == ()
    assert others([way("high", 5, flight=1.0), {"name": "low", "lasts_h": 7, "shares": []}], "gloves") != ()
    no_cell = item("thing", "gloves", battery={"ways": [way("high", 5, flight=1.0), {"name": "low", "lasts_h": 7}]})
    assert other_ways(no_cell, day(), LIBRARY) == ()


def test_a_rest_that_is_off_needs_a_way_that_says_so() -> None:
    """The shares of an outing add up to 1: a rest in which the thing is off can be named only if a way draws nothing."""
    part = [way("high", 5, flight=0.5), way("low", 2)]
    assert others(part, "gloves") == ()
    (one,) = others([*part, way("off", 0)], "gloves")
    assert {use.way: use.share for use in one.uses} == {"low": 0.5, "off": 0.5}


def test_the_shares_of_the_outing_come_first() -> None:
    uses = [{"item": "thing", "phase": "flight", "way": "tracking, screen off", "share": 1.0}]
    assert others([LIT, DARK], uses=uses) == ()
