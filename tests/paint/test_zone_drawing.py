from dataclasses import replace

import pytest
from paint_canvas import changed, font_px, only_inside, overlapping, painted, words_drawn
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor

from kitlog.kit.kinds import Zone
from kitlog.paint import zone_drawing
from kitlog.paint.lettering import Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.sample_zones import ZONES
from kitlog.paint.tokens import DARK, LIGHT, Tokens
from kitlog.paint.zone_layout import SPOTS, ZoneLayout
from kitlog.paint.zone_outlines import ON_FOOT, ON_PILOT_ZONES, zone_path
from kitlog.paint.zone_picture import ZoneFill, ZoneFlag, ZoneLine, ZonePicture

WIDTH = 464.0
DRAWN = [*ON_PILOT_ZONES, ON_FOOT]


def room_of(picture: ZonePicture, width: float = WIDTH, px: int = 14) -> QRectF:
    return QRectF(0, 0, width, zone_drawing.measure(picture, width, font_px(px)))


def image_of(
    picture: ZonePicture,
    width: float = WIDTH,
    ratio: float = 1.0,
    px: int = 14,
    theme: Tokens = LIGHT,
    selected: str | None = None,
):
    rect = room_of(picture, width, px)
    return painted(
        (rect.width(), rect.height()), lambda p: zone_drawing.paint(p, rect, picture, theme, selected), ratio, px
    )


def only(zone: str, share: float) -> ZonePicture:
    return ZonePicture("", "", "", (ZoneFill(zone, "", "", 1000, 1000 * share),))


def shape_of(zone: str, picture: ZonePicture):
    layout = ZoneLayout.fitting(picture, room_of(picture), Lettering(font_px()))
    return (layout.rucksack if zone == ON_FOOT else layout.pilot).map(zone_path(zone))


def test_every_zone_of_the_kit_with_a_place_on_the_body_is_drawn():
    nowhere = {Zone.OVERHEAD, Zone.IN_HAND, Zone.LEFT_IN_CAR}
    assert {zone.value for zone in Zone if zone not in nowhere} == set(DRAWN)
    assert set(SPOTS) == set(ON_PILOT_ZONES)


@pytest.mark.parametrize("zone", DRAWN)
def test_outlines_are_closed_and_lie_in_the_drawing(zone: str):
    path = zone_path(zone)
    assert all(polygon.isClosed() for polygon in path.toSubpathPolygons())
    assert QRectF(0, 0, 464, 256).contains(path.boundingRect())


@pytest.mark.parametrize("zone", DRAWN)
@pytest.mark.parametrize("theme", [LIGHT, DARK])
def test_more_stowed_paints_more_of_the_zone(zone: str, theme: Tokens):
    picture = only(zone, 1.0)
    box = shape_of(zone, picture).boundingRect()
    solid = theme.filled.rgba()

    def solid_pixels(share: float) -> int:
        image = image_of(only(zone, share), theme=theme)
        area = box.toAlignedRect()
        return sum(
            image.pixel(x, y) == solid
            for x in range(area.left(), area.right())
            for y in range(area.top(), area.bottom())
        )

    none, some, half, full = (solid_pixels(share) for share in (0.0, 0.25, 0.5, 1.0))
    assert none == 0
    assert none < some < half < full
    assert full > 0.3 * box.width() * box.height() * 0.5


@pytest.mark.parametrize("zone", DRAWN)
def test_a_share_fills_from_the_bottom(zone: str):
    picture = only(zone, 0.5)
    box = shape_of(zone, picture).boundingRect()
    image = image_of(picture)
    solid = LIGHT.filled.rgba()
    rows = [y for y in range(image.height()) for x in range(image.width()) if image.pixel(x, y) == solid]
    assert min(rows) >= box.center().y() - 1.5


def test_an_empty_zone_is_outline_only():
    image = image_of(ZonePicture("", "", "", (ZoneFill("cockpit", "", "", 0, 0),)))
    colours = {image.pixel(x, y) for x in range(image.width()) for y in range(image.height())}
    assert LIGHT.filled.rgba() not in colours
    assert ZoneFill("cockpit", "", "", 0, 0).share is None


@pytest.mark.parametrize("zone", DRAWN)
def test_the_selected_zone_is_seen_in_accent(zone: str):
    picture = only(zone, 0.5)
    plain, chosen = image_of(picture), image_of(picture, selected=zone)
    box = shape_of(zone, picture).boundingRect().adjusted(-3, -3, 3, 3)
    assert changed(plain, chosen, box) > 60
    accent = QColor(LIGHT.accent).rgba()
    area = box.toAlignedRect()
    count = [
        sum(
            i.pixel(x, y) == accent
            for x in range(max(0, area.left()), area.right())
            for y in range(max(0, area.top()), area.bottom())
        )
        for i in (plain, chosen)
    ]
    assert count[1] > count[0]


HITS = {
    "cockpit": (270, 125),
    "front container": (266, 170),
    "side pocket": (182, 190),
    "under seat": (210, 238),
    "back pocket": (60, 160),
    "worn": (135, 50),
}


@pytest.mark.parametrize("zone", HITS)
@pytest.mark.parametrize("width", [400.0, 464.0, 600.0])
def test_a_zone_is_found_where_it_is_drawn(zone: str, width: float):
    rect = QRectF(17, 31, width, 900)
    layout = ZoneLayout.fitting(ZONES, rect, Lettering(font_px()))
    point = layout.pilot.map(QPointF(*HITS[zone]))
    assert zone_drawing.zone_at(ZONES, rect, font_px(), point) == zone


def test_a_zone_is_found_at_its_words_and_nothing_is_found_beside():
    rect = room_of(ZONES)
    layout = ZoneLayout.fitting(ZONES, rect, Lettering(font_px()))
    for zone, room in layout.labels.items():
        assert zone_drawing.zone_at(ZONES, rect, font_px(), room.center()) == zone
    sack = layout.rucksack.map(QPointF(85, 100))
    assert zone_drawing.zone_at(ZONES, rect, font_px(), sack) == "rucksack"
    assert zone_drawing.zone_at(ZONES, rect, font_px(), QPointF(450, 40)) is None
    assert zone_drawing.zone_at(ZONES, rect, font_px(), QPointF(-5, -5)) is None


def test_a_zone_that_is_not_shown_is_not_found():
    rect = room_of(ZONES)
    layout = ZoneLayout.fitting(ZONES, rect, Lettering(font_px()))
    assert zone_drawing.zone_at(ZONES, rect, font_px(), layout.pilot.map(QPointF(380, 165))) is None
    with_harness = replace(ZONES, zones=(*ZONES.zones, ZoneFill("harness", "Harness", "3 150 g", 3150, 0)))
    rect = room_of(with_harness)
    layout = ZoneLayout.fitting(with_harness, rect, Lettering(font_px()))
    assert zone_drawing.zone_at(with_harness, rect, font_px(), layout.pilot.map(QPointF(380, 180))) == "harness"


def test_the_flag_at_the_carabiners_is_drawn_only_with_something_wrong(monkeypatch):
    drawn = words_drawn(monkeypatch)
    flagged = image_of(ZONES)
    assert "overdue" in [words for words, _ in drawn]
    drawn.clear()
    plain = image_of(replace(ZONES, carabiner=None))
    assert "overdue" not in [words for words, _ in drawn]
    assert changed(flagged, plain) > 100


def test_a_state_stands_beside_the_name_of_its_zone():
    marked = replace(ZONES, zones=tuple(replace(fill, mark=Mark.LOOK) for fill in ZONES.zones))
    image = image_of(marked)
    look = LIGHT.look.rgba()
    assert sum(image.pixel(x, y) == look for x in range(image.width()) for y in range(image.height())) > 7 * 25


@pytest.mark.parametrize(
    ("mass", "stowed"), [(float("nan"), 0.0), (100.0, float("nan")), (float("inf"), 1.0), (100.0, 101.0), (100.0, -1.0)]
)
def test_masses_that_cannot_be_are_refused(mass: float, stowed: float):
    with pytest.raises(ValueError, match=r"mass_g|stowed"):
        ZoneFill("worn", "Worn", "", mass, stowed)


HARNESS_TOO = replace(ZONES, zones=(*ZONES.zones, ZoneFill("harness", "Harness", "3 150 g, none stowed", 3150, 0)))


@pytest.mark.parametrize("picture", [ZONES, HARNESS_TOO], ids=["sample", "with harness"])
@pytest.mark.parametrize(("width", "px"), [(300, 14), (380, 14), (420, 14), (464, 14), (700, 14), (464, 20), (464, 28)])
def test_no_words_overlap(monkeypatch, picture: ZonePicture, width: float, px: int):
    drawn = words_drawn(monkeypatch)
    image_of(picture, width, px=px)
    assert len(drawn) > 20
    assert overlapping(drawn) == []


@pytest.mark.parametrize("ratio", [1.0, 2.0])
@pytest.mark.parametrize("size", [(464, 500), (300, 200), (40, 30)])
def test_nothing_is_painted_outside(ratio: float, size: tuple[float, float]):
    rect = QRectF(20, 30, *size)
    image = painted((size[0] + 40, size[1] + 60), lambda p: zone_drawing.paint(p, rect, ZONES, DARK, "worn"), ratio)
    assert only_inside(image, QRectF(rect.topLeft() * ratio, rect.size() * ratio))


def test_in_less_height_it_is_drawn_smaller():
    full = room_of(ZONES)
    lower = QRectF(0, 0, full.width(), full.height() * 0.75)
    made = ZoneLayout.fitting(ZONES, lower, Lettering(font_px()))
    assert made.scale < ZoneLayout.fitting(ZONES, full, Lettering(font_px())).scale
    assert made.height <= lower.height()


LONG = "W" * 200
EXTREMES = {
    "no zones": ZonePicture("", "", "", ()),
    "unknown zone": ZonePicture("", "", "", (ZoneFill("overhead", "Overhead", "4 350 g", 4350, 0),)),
    "long words": replace(
        ZONES,
        title=LONG,
        stowed=LONG,
        to_stow=LONG,
        zones=tuple(
            replace(fill, title=LONG, note="x" * 200, detail=LONG, mark=Mark.STOP) for fill in HARNESS_TOO.zones
        ),
        carabiner=ZoneFlag(Mark.LOOK, LONG),
        lines=(ZoneLine(LONG, LONG, LONG),) * 3,
    ),
    "forty lines": replace(ZONES, lines=tuple(ZoneLine(f"line {i}", "text") for i in range(40))),
}


@pytest.mark.parametrize("name", EXTREMES)
@pytest.mark.parametrize(("width", "px"), [(240, 14), (464, 14), (464, 28)])
def test_extremes_are_painted_within_their_room(monkeypatch, name: str, width: float, px: int):
    drawn = words_drawn(monkeypatch)
    picture = EXTREMES[name]
    image_of(picture, width, px=px, selected="rucksack")
    height = zone_drawing.measure(picture, width, font_px(px))
    assert all(room.left() >= -1 and room.right() <= width + 1 for _, room in drawn)
    assert all(room.bottom() <= height + 1 for _, room in drawn)
    assert overlapping(drawn) == []
