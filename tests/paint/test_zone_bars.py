from dataclasses import replace

import pytest
from paint_canvas import changed, font_px, only_inside, overlapping, painted, words_drawn
from PySide6.QtCore import QPointF, QRectF

from kitlog.paint import zone_bars
from kitlog.paint.sample_zones import ZONES
from kitlog.paint.tokens import DARK, LIGHT
from kitlog.paint.zone_picture import ZoneFill, ZonePicture


def image_of(picture: ZonePicture, width: float = 256, px: int = 14, theme=LIGHT, selected=None, ratio: float = 1.0):
    rect = QRectF(0, 0, width, zone_bars.measure(picture, font_px(px)))
    return painted(
        (width, max(1, rect.height())), lambda p: zone_bars.paint(p, rect, picture, theme, selected), ratio, px
    )


@pytest.mark.parametrize("theme", [LIGHT, DARK])
@pytest.mark.parametrize("share", [0.0, 0.25, 0.5, 1.0])
def test_the_bar_is_solid_up_to_the_share(share: float, theme):
    image = image_of(ZonePicture("", "", "", (ZoneFill("worn", "", "", 100, 100 * share),)), theme=theme)
    middle = 22 + 4
    solid = sum(image.pixel(x, middle) == theme.filled.rgba() for x in range(image.width()))
    assert solid == pytest.approx(256 * share, abs=4)


def test_a_zone_without_mass_has_an_empty_bar():
    image = image_of(ZonePicture("", "", "", (ZoneFill("worn", "", "", 0, 0),)))
    assert all(image.pixelColor(x, 26).name() == "#ff00ff" for x in range(10, 246))


def test_a_row_is_found_under_the_pointer():
    rect = QRectF(10, 10, 256, 400)
    for number, fill in enumerate(ZONES.zones):
        assert zone_bars.zone_at(ZONES, rect, font_px(), QPointF(100, 10 + 32 + number * 41 + 20)) == fill.zone
    assert zone_bars.zone_at(ZONES, rect, font_px(), QPointF(100, 15)) is None


def test_the_selected_zone_is_seen():
    assert changed(image_of(ZONES), image_of(ZONES, selected="cockpit")) > 50


@pytest.mark.parametrize("width", [120, 256, 500])
@pytest.mark.parametrize("title", ["Cockpit", "W" * 200])
def test_words_are_cut_and_never_overlap(monkeypatch, width: float, title: str):
    drawn = words_drawn(monkeypatch)
    image_of(replace(ZONES, zones=tuple(replace(fill, title=title) for fill in ZONES.zones)), width)
    assert overlapping(drawn) == []
    assert all(room.right() <= width + 1 for _, room in drawn)


def test_nothing_is_painted_outside():
    rect = QRectF(20, 20, 200, 100)
    image = painted((260, 200), lambda p: zone_bars.paint(p, rect, ZONES, LIGHT, "worn"))
    assert only_inside(image, rect)
