"""Wind chill against the chart of the Meteorological Service of Canada (archived February 2006), all cells listed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.sky.wind_chill import LEAST_WIND_KMH, WARMEST_C, wind_chill_c

AIR_C = (5, 0, -5, -10, -15, -20, -25, -30)
CHART = {
    5: (4, -2, -7, -13, -19, -24, -30, -36),
    10: (3, -3, -9, -15, -21, -27, -33, -39),
    20: (1, -5, -12, -18, -24, -30, -37, -43),
    30: (0, -6, -13, -20, -26, -33, -39, -46),
    40: (-1, -7, -14, -21, -27, -34, -41, -48),
    50: (-1, -8, -15, -22, -29, -35, -42, -49),
    60: (-2, -9, -16, -23, -30, -36, -43, -50),
    80: (-3, -10, -17, -24, -31, -38, -45, -52),
}


@pytest.mark.parametrize(("wind", "chill"), CHART.items())
def test_chart(wind: int, chill: tuple[int, ...]) -> None:
    assert tuple(round(wind_chill_c(air, wind)) for air in AIR_C) == chill


@pytest.mark.parametrize(
    ("air", "wind", "chill"),
    [
        (0, 20, -5.242),
        (-10, 30, -19.520),
        (-20, 40, -34.135),
        (-5, 30, -12.997),
        (5, 30, 0.051),
        (10, 30, 6.575),
        (-5, 38, -13.88),
        (-5, 57, -15.49),
    ],
)
def test_unrounded(air: float, wind: float, chill: float) -> None:
    assert wind_chill_c(air, wind) == pytest.approx(chill, abs=0.005)


@given(st.floats(-60, 50), st.floats(0, 200))
def test_is_the_air_temperature_outside_its_range(air: float, wind: float) -> None:
    if air > WARMEST_C or wind <= LEAST_WIND_KMH:
        assert wind_chill_c(air, wind) == air


@given(st.floats(-60, WARMEST_C), st.floats(5, 200))
def test_is_never_warmer_than_the_air(air: float, wind: float) -> None:
    assert wind_chill_c(air, wind) <= air
