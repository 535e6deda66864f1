from dataclasses import replace

import pytest
from paint_canvas import changed, font_px, only_inside, overlapping, painted, words_drawn
from PySide6.QtCore import QRectF

from kitlog.paint import weight_ruler
from kitlog.paint.lettering import Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.rule import rule_for
from kitlog.paint.ruler_layout import RulerLayout
from kitlog.paint.sample_weight import WEIGHT
from kitlog.paint.tokens import DARK, LIGHT
from kitlog.paint.weight_picture import Pointer, Range, ReserveBar, TakeOff, WeightPicture, ZoneSums


def image_of(picture: WeightPicture, width: float = 800, ratio: float = 1.0, px: int = 14, theme=LIGHT, current=None):
    height = weight_ruler.measure(picture, width, font_px(px))
    rect = QRectF(0, 0, width, height)
    return painted((width, height), lambda p: weight_ruler.paint(p, rect, picture, theme, current), ratio, px)


def bar_of(picture: WeightPicture, width: float = 800) -> RulerLayout:
    return RulerLayout(picture, QRectF(0, 0, width, 0), Lettering(font_px()))


def at(kg: float) -> WeightPicture:
    return replace(WEIGHT, take_off=TakeOff(kg, 1.0, "Take-off", f"{kg:.1f}", "± 1.0 kg"), ballast=None, landing=None)


def test_a_mass_lies_in_proportion_on_the_rule():
    rule = rule_for((80.0, 100.0), [87.5], 0.0, 260.0)
    assert (rule.low_kg, rule.high_kg) == (77.0, 103.0)
    assert rule.x(80.0) == pytest.approx(30.0)
    assert rule.x(90.0) == pytest.approx(130.0)
    assert rule.marks(6.0) == list(range(77, 104))
    assert rule.marks(36.0, least_kg=5) == [80, 85, 90, 95, 100]


def test_a_mass_far_outside_is_still_on_the_rule():
    rule = rule_for((80.0, 100.0), [140.0], 0.0, 500.0)
    assert rule.low_kg <= 77.0
    assert 140.0 < rule.high_kg < 145.0


def test_marks_are_thinned_where_there_is_no_room():
    assert rule_for((80.0, 100.0), [5000.0], 0.0, 100.0).marks(20.0) == [1000, 2000, 3000, 4000, 5000]


def test_the_pointer_moves_with_the_mass():
    light, heavy = (
        weight_ruler.spots(at(kg), QRectF(0, 0, 800, 400), font_px())[0][0].center().x() for kg in (82.0, 97.0)
    )
    per_kg = (bar_of(at(82.0)).bar.width()) / 26.0
    assert heavy - light == pytest.approx(15 * per_kg)
    assert changed(image_of(at(82.0)), image_of(at(97.0))) > 200


def test_what_can_be_pointed_at_says_its_mass():
    spots = weight_ruler.spots(WEIGHT, QRectF(0, 0, 800, 400), font_px())
    assert [words for _, words in spots] == [
        "Take-off 87.5 ± 1.0 kg",
        "Landing 85.7",
        "middle 90.0: 2.5 kg of ballast, optional",
    ]
    assert all(min(room.width(), room.height()) >= 24 for room, _ in spots)  # WCAG 2.2, 2.5.8: targets of 24 x 24


def test_the_keys_ring_is_seen():
    assert changed(image_of(WEIGHT), image_of(WEIGHT, current=1)) > 50


@pytest.mark.parametrize("mark", [Mark.LOOK, Mark.STOP])
def test_a_bad_state_is_not_drawn_in_the_colour_of_a_good_one(mark: Mark):
    picture = replace(at(104.0), range=replace(WEIGHT.range, mark=mark), reserve=None)
    image = image_of(picture)
    colours = {image.pixel(x, y) for x in range(image.width()) for y in range(image.height())}
    assert LIGHT.state(mark).rgba() in colours
    assert LIGHT.fine.rgba() not in colours


def test_an_unknown_range_has_no_limits_no_hatch_and_says_so(monkeypatch):
    drawn = words_drawn(monkeypatch)
    picture = replace(WEIGHT, range=Range(None, None, mark=Mark.NOT_KNOWN), reserve=None)
    image = image_of(picture)
    words = [word for word, _ in drawn]
    assert "range not known" in words
    assert "out" not in words
    bar = bar_of(picture).bar
    assert image.pixelColor(round(bar.left() + 30), round(bar.top() + 20)) == LIGHT.sunk
    colours = {image.pixel(x, y) for x in range(image.width()) for y in range(image.height())}
    assert LIGHT.fine.rgba() not in colours


def test_half_a_range_and_a_range_upside_down_are_refused():
    with pytest.raises(ValueError, match="both limits"):
        Range(80.0, None)
    with pytest.raises(ValueError, match="lies above"):
        Range(100.0, 80.0)


@pytest.mark.parametrize("bad", [float("nan"), float("inf")])
def test_figures_that_are_no_numbers_are_refused(bad: float):
    with pytest.raises(ValueError, match="take_off_kg"):
        TakeOff(bad, 1.0, "", "", "")
    with pytest.raises(ValueError, match="tolerance_kg"):
        TakeOff(80.0, bad, "", "", "")
    with pytest.raises(ValueError, match="pointer_kg"):
        Pointer(bad, "")
    with pytest.raises(ValueError, match="high_kg"):
        Range(1.0, bad)


@pytest.mark.parametrize("width", [400, 480, 640, 800, 1200])
def test_no_words_overlap(monkeypatch, width: int):
    drawn = words_drawn(monkeypatch)
    image_of(WEIGHT, width)
    assert len(drawn) > 30
    assert overlapping(drawn) == []


@pytest.mark.parametrize("kg", [79.0, 80.2, 81.5, 90.0, 99.8, 104.0])
def test_no_words_overlap_wherever_the_masses_lie(monkeypatch, kg: float):
    drawn = words_drawn(monkeypatch)
    image_of(
        replace(
            at(kg),
            landing=Pointer(kg - 1.7, f"Landing {kg - 1.7:.1f}", "all water and food gone"),
            ballast=Pointer(90.0, "middle 90.0: ballast, optional"),
        ),
        600,
    )
    assert overlapping(drawn) == []


@pytest.mark.parametrize("ratio", [1.0, 2.0])
@pytest.mark.parametrize("theme", [LIGHT, DARK])
def test_nothing_is_painted_outside(ratio: float, theme):
    rect = QRectF(30, 20, 500, 180)
    image = painted((600, 240), lambda p: weight_ruler.paint(p, rect, WEIGHT, theme, 0), ratio)
    assert only_inside(image, QRectF(rect.topLeft() * ratio, rect.size() * ratio))


LONG = "W" * 200
EXTREMES = {
    "nothing known": WeightPicture("", "", Range(None, None), None),
    "no width of range": replace(WEIGHT, range=Range(90.0, 90.0, "low", "high", Mark.LOOK)),
    "far off": at(900.0),
    "negative": at(-3.0),
    "long words": replace(
        WEIGHT,
        title=LONG,
        caption=" ".join([LONG] * 3),
        range=replace(WEIGHT.range, low_text=LONG, high_text=LONG),
        take_off=TakeOff(87.0, 1.0, LONG, LONG, LONG),
        landing=Pointer(85.0, LONG, LONG),
        ballast=Pointer(90.0, LONG),
        reserve=ReserveBar(LONG, LONG, Range(75, 110, LONG, LONG), (Pointer(83, LONG), Pointer(87, LONG))),
        zones=ZoneSums(LONG, LONG, ((LONG, "1"), ("worn", LONG)), (LONG, LONG)),
    ),
    "forty zones": replace(
        WEIGHT, zones=ZoneSums("zones", "", tuple((f"Zone {i}", f"{i}.00") for i in range(40)), ("Sum", "780.00"))
    ),
    "no zones": replace(WEIGHT, zones=ZoneSums("zones", "", (), ("Sum", "0"))),
}


@pytest.mark.parametrize("name", EXTREMES)
@pytest.mark.parametrize("width", [240, 480, 800])
@pytest.mark.parametrize("px", [14, 28])
def test_extremes_are_painted_within_their_room(monkeypatch, name: str, width: int, px: int):
    drawn = words_drawn(monkeypatch)
    picture = EXTREMES[name]
    height = weight_ruler.measure(picture, width, font_px(px))
    image_of(picture, width, px=px)
    assert all(room.left() >= -1 and room.right() <= width + 1 for _, room in drawn)
    assert all(room.bottom() <= height + 1 for _, room in drawn)
