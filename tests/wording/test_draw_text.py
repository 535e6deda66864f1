"""Draws in words: the range, what was given, how sure; figures worked by hand from W = Wh x health x drop / hours."""

import pytest

from kitlog.kit.facets import Battery, WayOfUse
from kitlog.kit.item import Item
from kitlog.packing.draws import way_draw
from kitlog.wording.draw_text import draw_text, not_known_text, short_text, watts_text

STARTER = WayOfUse(name="tracking", power_w=0.9, low_w=0.5, high_w=1.6, basis="starter")


def said(way: WayOfUse, wh: float | None = 17.3, health_pct: float | None = 90) -> str:
    draw = way_draw(way, Item(id="p", name="Phone", battery=Battery(wh=wh, health_pct=health_pct)))
    return not_known_text(has_energy=bool(wh)) if draw is None else draw_text(draw, way).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("way", "text"),
    [
        (STARTER, "0.90 W, 0.50–1.60, starter figure, not measured"),
        (WayOfUse(name="on", power_w=1.1, basis="measured"), "1.10 W, measured"),
        (WayOfUse(name="on", power_w=0.05), "0.050 W, a guess, not measured"),
        # 17.3 x 0.9 = 15.57 Wh; 37 % of it in 4.5 h = 1.280 W; 36 and 38 % give 1.246 and 1.315 W.
        (
            WayOfUse(name="t", from_pct=100, to_pct=63, over_h=4.5, basis="measured"),
            "1.28 W, 1.25–1.31, from 100 to 63 % in 4.5 h, measured",
        ),
        # 15.57 Wh / 9 h, and 9.5 and 8.5 h for "9".
        (WayOfUse(name="t", lasts_h=9, basis="maker"), "1.73 W, 1.64–1.83, lasts 9 h, maker’s figure"),
        (WayOfUse(name="t", current_ma=200, at_v=3.7, basis="maker"), "0.74 W, 200 mA at 3.7 V, maker’s figure"),
    ],
)
def test_a_draw(way: WayOfUse, text: str) -> None:
    assert said(way) == text


def test_hours_without_an_energy_say_what_is_missing() -> None:
    assert said(WayOfUse(name="t", lasts_h=9), wh=None) == "not known: the battery’s energy is missing"
    assert said(WayOfUse(name="t", lasts_h=9), health_pct=0) == "not known: the battery has no health left"


@pytest.mark.parametrize(("number", "text"), [(37, "37"), (31.45, "31.45"), (4.5, "4.5"), (0.333, "0.33"), (0, "0")])
def test_numbers_are_as_short_as_they_can_be(number: float, text: str) -> None:
    assert short_text(number) == text


def test_small_draws_have_three_decimals() -> None:
    assert [watts_text(w).replace("\u00a0", " ") for w in (0, 0.07, 0.1)] == ["0.00 W", "0.070 W", "0.10 W"]
