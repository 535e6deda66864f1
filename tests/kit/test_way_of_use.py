"""What a way of use may say of its draw."""

import pytest
from pydantic import ValidationError

from kitlog.kit.facets import WayOfUse


@pytest.mark.parametrize(
    "watts",
    [
        {"low_w": 2.0, "power_w": 0.55, "high_w": 0.8},
        {"power_w": 0.9, "high_w": 0.8},
        {"power_w": 1.0, "low_w": 1.1},
    ],
)
def test_a_range_that_does_not_rise_is_refused_as_a_range_of_draws(watts: dict[str, float]) -> None:
    with pytest.raises(ValidationError) as caught:
        WayOfUse(name="on", **watts)
    (error,) = caught.value.errors()
    assert error["type"] == "way.range_not_rising"
    assert error["ctx"]["likely"] == watts["power_w"]


def test_a_half_described_way_is_refused() -> None:
    with pytest.raises(ValidationError, match="on"):
        WayOfUse(name="on", from_pct=100, to_pct=63)
    assert WayOfUse(name="on", from_pct=100, to_pct=63, over_h=4.5).described == "drop"
