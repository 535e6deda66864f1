from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from paint_canvas import changed, font_px, only_inside, overlapping, painted, words_drawn
from PySide6.QtCore import QRectF

from kitlog.kit.measured_series import MeasuredSeries, measured_series
from kitlog.kit.measurement import Measured, Measurement
from kitlog.paint import measurement_lines
from kitlog.paint.lettering import Lettering
from kitlog.paint.measurement_lines import MeasurementLayout
from kitlog.paint.measurement_picture import MeasurementPicture, picture_of, picture_text
from kitlog.paint.sample_measured import MEASURED
from kitlog.paint.tokens import DARK, LIGHT


def image_of(picture: MeasurementPicture, width: float = 480, px: int = 14, theme=LIGHT):
    height = measurement_lines.measure(picture, font_px(px))
    rect = QRectF(0, 0, width, height)
    return painted((width, height), lambda p: measurement_lines.paint(p, rect, picture, theme), 1.0, px)


def test_nothing_measured_is_no_picture():
    assert picture_of(measured_series(())) is None


def test_each_gauge_has_a_lane_of_its_own_and_a_line_joins_only_within_it():
    assert [line.label for line in MEASURED.lines] == [
        "porosity, s, gauge A",
        "porosity, s, gauge B",
        "line strength, daN, gauge not given, A2",
    ]
    assert [[point.value for point in line.points] for line in MEASURED.lines] == [
        [240, 182, 121],
        [69, 74],
        [96.5, 88],
    ]


def test_the_picture_as_text_holds_every_value_and_limit():
    said = picture_text(MEASURED)
    for words in ("240\u00a0s", "121\u00a0s", "69\u00a0s", "88\u00a0daN", "gauge B", "at least 20\u00a0s"):
        assert words in said


def test_several_values_of_a_day_are_said_as_a_span(monkeypatch: pytest.MonkeyPatch):
    drawn = words_drawn(monkeypatch)
    image_of(MEASURED)
    assert "69\u00a0s to 74\u00a0s" in {text for text, _room in drawn}


@pytest.mark.parametrize(("width", "px"), [(480, 14), (320, 14), (600, 21), (260, 20)])
def test_nothing_is_painted_outside_and_no_two_figures_lie_on_each_other(
    monkeypatch: pytest.MonkeyPatch, width: float, px: int
):
    drawn = words_drawn(monkeypatch)
    image = image_of(MEASURED, width, px)
    assert only_inside(image, QRectF(0, 0, width, image.height()))
    assert overlapping(drawn) == []


def test_values_lie_in_the_order_of_their_size_from_nought():
    layout = MeasurementLayout(MEASURED, QRectF(0, 0, 480, 0), Lettering(font_px()))
    heights = [layout.place(0, point).y() for point in MEASURED.lines[0].points]
    assert heights == sorted(heights)
    assert layout.at(0, 0.0, 0.0).y() == layout.plot(0).bottom()


def test_the_themes_differ():
    assert changed(image_of(MEASURED), image_of(MEASURED, theme=DARK)) > 0


@settings(deadline=None, max_examples=40)
@given(
    st.lists(
        st.tuples(st.integers(0, 5_000), st.floats(-500, 900, allow_nan=False)),
        min_size=1,
        max_size=12,
        unique_by=lambda point: point[0],
    )
)
def test_any_values_are_painted_inside(points: list[tuple[int, float]]):
    days = tuple(sorted((date(2015, 1, 1) + timedelta(days=day), round(value, 1)) for day, value in points))
    first = Measurement(what=Measured.LINE_LENGTH, value=days[0][1], unit="mm")
    picture = picture_of([MeasuredSeries(first, days)])
    assert picture is not None
    layout = MeasurementLayout(picture, QRectF(0, 0, 400, 0), Lettering(font_px()))
    for point in picture.lines[0].points:
        assert layout.plot(0).adjusted(-0.01, -0.01, 0.01, 0.01).contains(layout.place(0, point))
