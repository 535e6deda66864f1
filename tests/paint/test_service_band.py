from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from paint_canvas import changed, font_px, only_inside, overlapping, painted, words_drawn
from PySide6.QtCore import QPointF, QRectF

from kitlog.paint import service_band
from kitlog.paint.lettering import Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.sample_service import LANES, SERVICE
from kitlog.paint.service_layout import ServiceLayout
from kitlog.paint.service_picture import HoursLimit, ServiceLane, ServicePicture, Stage
from kitlog.paint.tokens import DARK, LIGHT

WIDTH = 1128.0


def image_of(
    picture: ServicePicture, width: float = WIDTH, ratio: float = 1.0, px: int = 14, theme=LIGHT, current=None
):
    height = service_band.measure(picture, font_px(px))
    rect = QRectF(0, 0, width, height)
    return painted((width, height), lambda p: service_band.paint(p, rect, picture, theme, current), ratio, px)


def layout_of(picture: ServicePicture, width: float = WIDTH, px: int = 14) -> ServiceLayout:
    return ServiceLayout(picture, QRectF(0, 0, width, 0), Lettering(font_px(px)))


def one(lane: ServiceLane) -> ServicePicture:
    return replace(SERVICE, lanes=(lane,), outings=())


def test_months_are_counted_over_the_turn_of_the_year():
    assert SERVICE.month_start(0) == date(2027, 4, 1)
    assert SERVICE.month_start(9) == date(2028, 1, 1)
    assert SERVICE.end == date(2028, 10, 1)


@given(st.integers(0, 548))
def test_a_day_and_its_place_belong_together(days: int):
    day = SERVICE.first + timedelta(days=days)
    assert SERVICE.day_at(SERVICE.share(day) + 1e-9) == day


def test_a_band_shows_whole_months():
    with pytest.raises(ValueError, match="whole months"):
        ServicePicture(date(2027, 4, 2), ("Apr",), date(2027, 4, 2))
    with pytest.raises(ValueError, match="whole months"):
        ServicePicture(date(2027, 4, 1), (), date(2027, 4, 2))


def test_a_span_upside_down_is_refused():
    with pytest.raises(ValueError, match="span"):
        HoursLimit("", date(2027, 5, 1), date(2027, 6, 1), date(2027, 7, 1))


@pytest.mark.parametrize("mark", [Mark.FINE, Mark.LOOK, Mark.STOP])
@pytest.mark.parametrize("day", [date(2027, 6, 10), date(2028, 5, 20)])
def test_the_shape_stands_at_its_day_in_the_colour_of_its_state(mark: Mark, day: date):
    picture = one(ServiceLane("Wing", "check", mark, due=Stage(day, "")))
    layout, image = layout_of(picture), image_of(picture)
    x, y = round(layout.x(day)), round(layout.lane(0).center().y())
    assert image.pixelColor(x + 4, y - 1) == LIGHT.state(mark)
    assert image.pixelColor(x + 40, y) != LIGHT.state(mark)


def test_recommended_is_open_and_due_is_full():
    day = date(2027, 8, 1)
    recommended = one(ServiceLane("Reserve", "repack", Mark.FINE, recommended=Stage(day, "")))
    due = one(ServiceLane("Reserve", "repack", Mark.FINE, due=Stage(day, "")))
    layout = layout_of(due)
    x, y = round(layout.x(day)), round(layout.lane(0).center().y())
    assert image_of(recommended).pixelColor(x, y) == LIGHT.surface
    assert image_of(due).pixelColor(x, y) == LIGHT.fine


def test_once_the_due_day_has_passed_nothing_is_said_of_the_recommended_one():
    overdue = ServiceLane("Reserve", "repack", Mark.LOOK, due=Stage(date(2027, 3, 1), "overdue since 1 Mar"))
    both = replace(overdue, recommended=Stage(date(2026, 9, 1), "recommended 1 Sep 2026"))
    today = date(2027, 4, 20)
    assert image_of(replace(one(both), today=today)) == image_of(replace(one(overdue), today=today))
    still = replace(both, due=Stage(date(2027, 5, 1), "1 May"))
    assert image_of(replace(one(still), today=today)) != image_of(replace(one(overdue), today=today))


def test_a_bar_of_hours_fades_and_ends_with_its_span():
    limit = HoursLimit("", date(2027, 9, 1), date(2027, 8, 1), date(2027, 11, 1))
    picture = replace(one(ServiceLane("Wing", "check", Mark.FINE, hours=limit)), today=date(2027, 5, 1))
    layout, image = layout_of(picture), image_of(picture)
    y = round(layout.lane(0).center().y())
    lightness = [
        image.pixelColor(round(layout.x(day)), y).lightness()
        for day in (date(2027, 6, 10), date(2027, 8, 20), date(2027, 10, 10), date(2027, 12, 15))
    ]
    assert lightness == sorted(lightness)
    assert lightness[0] < lightness[-1] - 40


def test_what_has_no_record_is_dashed_and_never_in_a_colour_of_a_state():
    picture = one(ServiceLane("Radio", "test", Mark.NOT_KNOWN, unknown="no record"))
    image = image_of(picture)
    box = layout_of(picture).lane(0).toAlignedRect()
    colours = {
        image.pixel(x, y) for x in range(box.left() + 300, box.right()) for y in range(box.top() + 1, box.bottom())
    }
    assert not colours & {LIGHT.fine.rgba(), LIGHT.look.rgba(), LIGHT.stop.rgba()}


@pytest.mark.parametrize(
    "change",
    [
        {"book_by": date(2027, 7, 1)},
        {"due": Stage(date(2027, 8, 20), "15 Aug")},
        {"mark": Mark.LOOK},
        {"recommended": Stage(date(2027, 7, 1), "")},
    ],
)
def test_every_part_of_a_lane_is_seen(change: dict):
    lane = ServiceLane("Wing", "check", Mark.FINE, due=Stage(date(2027, 8, 15), "15 Aug"))
    assert changed(image_of(one(lane)), image_of(one(replace(lane, **change)))) > 20


def test_outings_and_today_are_lines_through_the_lanes():
    bare = replace(SERVICE, lanes=LANES[-3:], outings=(), today=date(2026, 1, 1))
    with_outing = replace(bare, outings=(date(2027, 10, 9), date(2031, 1, 1)))
    with_today = replace(bare, today=date(2027, 10, 9))
    layout = layout_of(bare)
    column = QRectF(layout.x(date(2027, 10, 9)) - 2, layout.band.top(), 4, layout.band.height())
    assert changed(image_of(bare), image_of(with_outing), column) > layout.band.height() * 0.8
    assert changed(image_of(bare), image_of(with_today), column) > layout.band.height() * 0.8


def test_the_lane_under_the_pointer():
    rect, font = QRectF(10, 20, 800, 500), font_px()
    top = ServiceLayout(SERVICE, rect, Lettering(font)).band.top()
    assert service_band.lane_at(SERVICE, rect, font, QPointF(400, top + 28 * 3 + 5)) == 3
    assert service_band.lane_at(SERVICE, rect, font, QPointF(400, top - 5)) is None
    assert service_band.lane_at(SERVICE, rect, font, QPointF(400, top + 28 * 11 + 5)) is None
    assert changed(image_of(SERVICE), image_of(SERVICE, current=3)) > 500


@pytest.mark.parametrize("width", [640, 720, 900, 1128, 1500])
@pytest.mark.parametrize("months", [12, 18])
def test_no_words_overlap(monkeypatch, width: float, months: int):
    drawn = words_drawn(monkeypatch)
    image_of(replace(SERVICE, months=SERVICE.months[:months]), width)
    assert len(drawn) > 30
    assert overlapping(drawn) == []


def test_words_stand_beside_their_own_mark(monkeypatch):
    drawn = words_drawn(monkeypatch)
    image_of(one(LANES[5]), 720)
    layout = layout_of(one(LANES[5]), 720)
    rooms = dict(drawn)
    assert rooms["recommended 30 May"].right() < layout.x(date(2027, 11, 9))
    assert rooms["due 30 Nov"].left() > layout.x(date(2027, 11, 30))


def test_words_avoid_the_marks_of_their_lane(monkeypatch):
    drawn = words_drawn(monkeypatch)
    for days in range(4, 120, 9):
        first = date(2027, 6, 1)
        lane = ServiceLane(
            "Reserve",
            "repack",
            Mark.FINE,
            recommended=Stage(first, "recommended 1 Jun"),
            due=Stage(first + timedelta(days=days), "due soon after"),
        )
        picture = one(lane)
        layout = layout_of(picture)
        drawn.clear()
        image_of(picture)
        for words, room in drawn:
            if words in {"recommended 1 Jun", "due soon after"}:
                for mark in (first, first + timedelta(days=days)):
                    assert not room.left() + 1 < layout.x(mark) < room.right() - 1


@pytest.mark.parametrize("ratio", [1.0, 2.0])
@pytest.mark.parametrize("theme", [LIGHT, DARK])
def test_nothing_is_painted_outside(ratio: float, theme):
    rect = QRectF(30, 20, 500, 180)
    image = painted((600, 240), lambda p: service_band.paint(p, rect, SERVICE, theme, 2), ratio)
    assert only_inside(image, QRectF(rect.topLeft() * ratio, rect.size() * ratio))


LONG = "W" * 200
EXTREMES = {
    "no lanes": replace(SERVICE, lanes=()),
    "one month": replace(SERVICE, months=("Apr",)),
    "forty lanes": replace(SERVICE, lanes=LANES * 4),
    "long words": replace(
        SERVICE,
        lanes=tuple(
            replace(
                lane,
                item=LONG,
                rule=LONG,
                unknown=LONG,
                due=Stage(date(2027, 8, 1), LONG),
                recommended=Stage(date(2027, 7, 1), LONG),
                hours=HoursLimit(LONG),
            )
            for lane in LANES
        ),
    ),
    "long ago and far off": replace(
        SERVICE,
        lanes=(
            ServiceLane("Old", "", Mark.STOP, due=Stage(date(1990, 1, 1), "1990")),
            ServiceLane("New", "", Mark.FINE, due=Stage(date(2090, 1, 1), "2090"), book_by=date(2089, 1, 1)),
        ),
    ),
    "today elsewhere": replace(SERVICE, today=date(2030, 1, 1)),
}


@pytest.mark.parametrize("name", EXTREMES)
@pytest.mark.parametrize(("width", "px"), [(300, 14), (1128, 14), (1128, 28)])
def test_extremes_are_painted_within_their_room(monkeypatch, name: str, width: float, px: int):
    drawn = words_drawn(monkeypatch)
    picture = EXTREMES[name]
    image_of(picture, width, px=px, current=0)
    height = service_band.measure(picture, font_px(px))
    assert all(room.left() >= -1 and room.right() <= width + 1 for _, room in drawn)
    assert all(room.bottom() <= height + 1 for _, room in drawn)


def test_book_by_stands_before_the_likely_day_of_hours_too():
    limit = HoursLimit("", date(2027, 9, 1), date(2027, 8, 1), date(2027, 11, 1))
    plain = one(ServiceLane("Wing", "check", Mark.FINE, hours=limit))
    booked = one(replace(plain.lanes[0], book_by=date(2027, 7, 1)))
    layout, images = layout_of(plain), (image_of(plain), image_of(booked))
    lane = layout.lane(0)
    left, right = layout.x(date(2027, 7, 1)) - 3, layout.x(date(2027, 9, 1)) + 3
    beside = changed(*images, QRectF(left, lane.top(), right - left, lane.height()))
    assert beside > 10
    assert beside == changed(*images)


def test_a_limit_without_a_day_has_its_shape_and_words(monkeypatch: pytest.MonkeyPatch):
    drawn = words_drawn(monkeypatch)
    picture = one(ServiceLane("Speed bar", "100 launches", Mark.LOOK, note="4 launches left"))
    image, layout = image_of(picture), layout_of(picture)
    assert "4 launches left" in [text for text, _box in drawn]
    x, y = round(layout.x(picture.today)) + 26, round(layout.lane(0).center().y())
    assert image.pixelColor(x, y) == LIGHT.state(Mark.LOOK)
