"""A measurement from one line of text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from kitlog.fault import InputFault
from kitlog.kit.measured_text import parse_measurement
from kitlog.kit.measurement import UNITS, Measured, Measurement


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("porosity 182 s, gauge A, cell 12", ("porosity", 182, "s", "gauge A", "cell 12")),
        ("porosity 182 s", ("porosity", 182, "s", "", "")),
        ("Porosity: 389.6 l/m²/min, gauge B", ("porosity", 389.6, "l/m2/min", "gauge B", "")),
        ("line strength 12,5 dan, , A2, left", ("line strength", 12.5, "daN", "", "A2, left")),
        ("release_force 70 N,spring balance,handle", ("release force", 70, "N", "spring balance", "handle")),
        ("line length -12 mm, laser, B3", ("line length", -12, "mm", "laser", "B3")),
        ("tear-strength 820g", ("tear strength", 820, "g", "", "")),
    ],
)
def test_read(text: str, wanted: tuple[str, float, str, str, str]) -> None:
    one = parse_measurement(text)
    assert (one.what.value, one.value, one.unit, one.gauge, one.place) == wanted


@pytest.mark.parametrize(
    "text", ["", "porosity", "porosity 182", "182 s", "smell 3 s", "porosity s 182", "porosity 1e3 s x"]
)
def test_what_is_no_measurement(text: str) -> None:
    with pytest.raises(InputFault) as caught:
        parse_measurement(text)
    assert caught.value.code == "measurement.unread"


def test_a_unit_of_something_else_is_refused() -> None:
    with pytest.raises(ValidationError, match="daN"):
        parse_measurement("porosity 12 daN")


@given(
    st.sampled_from(Measured).flatmap(lambda what: st.tuples(st.just(what), st.sampled_from(UNITS[what]))),
    st.floats(0, 100_000).map(lambda value: round(value, 3)),
    st.text(st.characters(codec="utf-8", categories=("L", "N")), max_size=20),
)
def test_any_measurement_comes_back(of: tuple[Measured, str], value: float, gauge: str) -> None:
    what, unit = of
    assert parse_measurement(f"{what.value} {value:.3f} {unit}, {gauge}") == Measurement(
        what=what, value=value, unit=unit, gauge=gauge
    )
