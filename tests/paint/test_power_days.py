"""The power picture once many days have been drawn: the band of the days, marks where they end, figures, and paper."""

import re
import zlib
from dataclasses import replace
from pathlib import Path

import pytest
from paint_canvas import changed, font_px, overlapping, painted, words_drawn
from PySide6.QtCore import QMarginsF, QRectF
from PySide6.QtGui import QColor, QPageLayout, QPageSize, QPainter, QPdfWriter

from kitlog.paint import power_fan, power_lanes
from kitlog.paint.power_picture import PhaseBand, PowerPicture, reading
from kitlog.paint.power_spread import OffBy, Spread
from kitlog.paint.sample_power import POWER, POWER_DAYS
from kitlog.paint.tokens import DARK, LIGHT, Tokens, blend


def image_of(picture: PowerPicture, width: float = 800, cursor: float | None = None, theme: Tokens = LIGHT):
    height = power_lanes.measure(picture, width, font_px())
    return painted((width, height), lambda p: power_lanes.paint(p, QRectF(0, 0, width, height), picture, theme, cursor))


def lane_of(name: str, picture: PowerPicture = POWER_DAYS):
    return next(lane for lane in picture.lanes if lane.label == name)


def only(name: str, **change) -> PowerPicture:
    return replace(POWER_DAYS, lanes=(replace(lane_of(name), **change),))


def lane_rect(picture: PowerPicture) -> QRectF:
    bands = power_lanes.bands_rect(picture, QRectF(0, 0, 800, 0), font_px())
    return QRectF(bands.left(), bands.bottom() - 44, bands.width(), 44)


def flat(low: float, high: float) -> Spread:
    return Spread(2, (low,) * 9, ((low + high) / 2,) * 9, (high,) * 9)


def test_a_wider_band_paints_more_of_the_lane():
    bare, narrow, wide = (
        image_of(only("Vario", likely=((0, 0.0), (9, 0.0)), high=(), locked=(), spread=flat(0.5 - half, 0.5 + half)))
        for half in (0.0, 0.2, 0.4)
    )
    lane = lane_rect(only("Vario"))
    assert 0.4 < changed(bare, narrow, lane) / changed(bare, wide, lane) < 0.65


@pytest.mark.parametrize("change", [{"spread": None}, {"off_by": ()}])
def test_band_and_marks_are_seen(change: dict):
    assert changed(image_of(only("Gloves")), image_of(only("Gloves", **change)), lane_rect(only("Gloves"))) > 30


def test_the_marks_stand_where_the_days_end():
    picture = only("Gloves", off=(), off_by=())
    marked = replace(picture, lanes=(replace(picture.lanes[0], off_by=(OffBy(5, 2.5, ""),)),))
    lane, x = lane_rect(picture), 0.0
    bands = power_lanes.bands_rect(picture, QRectF(0, 0, 800, 0), font_px())
    x = bands.left() + (POWER.edges[2] + POWER.edges[3]) / 2 * bands.width()
    plain, with_mark = image_of(picture), image_of(marked)
    assert changed(plain, with_mark, QRectF(x - 1.5, lane.top(), 3, 44)) > 5
    assert changed(plain, with_mark, QRectF(lane.left(), lane.top(), x - 5 - lane.left(), 44)) == 0


def test_a_lane_of_which_no_days_are_drawn_looks_as_it_did():
    plain = replace(POWER_DAYS, lanes=tuple(replace(lane, spread=None, off_by=()) for lane in POWER_DAYS.lanes))
    radio = lane_of("Radio", plain)
    assert radio == lane_of("Radio", POWER)
    one, other = (image_of(replace(p, lanes=(radio,))) for p in (plain, POWER_DAYS))
    assert changed(one, other) == 0


def luminance(colour: QColor) -> float:
    """WCAG 2.1, relative luminance."""
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    red, green, blue = (c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: QColor, other: QColor) -> float:
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("theme", [LIGHT, DARK])
@pytest.mark.parametrize("cold", [0.02, 0.075])
def test_edges_and_lines_stand_out_from_every_ground(theme: Tokens, cold: float):
    """WCAG 2.1, 1.4.11: 3:1 for what must be seen in a picture."""
    ground = theme.tint(theme.ink, cold)
    charge = blend(theme.accent, (0.22 if theme.dark else 0.15) / 3, ground)
    fan = power_fan.ground_colour(theme)
    inside = blend(theme.accent, fan.alphaF(), charge)
    for under in (ground, charge):
        assert contrast(power_fan.edge_colour(theme), under) >= 3
    for line in (theme.accent, theme.ink):
        assert contrast(line, inside) >= 3


def test_the_values_of_the_days_under_the_reading_line():
    found = reading(POWER_DAYS, POWER.edges[2])
    assert found is not None
    phone, _vario, radio, gloves, _bank = found.lanes
    assert phone.spread == pytest.approx((0.41, 0.6, 0.78))
    assert radio.spread is None
    assert gloves.off_by is not None
    assert gloves.off_by.pct == 50
    early = reading(POWER_DAYS, POWER.edges[1])
    assert early is not None
    assert early.lanes[3].off_by is None


@pytest.mark.parametrize("width", [700, 800, 1100])
@pytest.mark.parametrize("cursor", [None, 0.0, 0.4, 0.6, 1.0])
def test_no_words_overlap(monkeypatch, width: int, cursor: float | None):
    drawn = words_drawn(monkeypatch)
    image_of(POWER_DAYS, width, cursor=cursor)
    assert len(drawn) > 30
    assert overlapping(drawn) == []


@pytest.mark.parametrize("width", [240, 400, 800])
def test_all_words_stay_in_their_room(monkeypatch, width: int):
    drawn = words_drawn(monkeypatch)
    lanes = tuple(replace(lane, chance="9" * 99, chance_error="9" * 99, spare_high="9" * 99) for lane in POWER.lanes)
    image_of(replace(POWER_DAYS, lanes=lanes), width)
    assert all(room.left() >= -1 and room.right() <= width + 1 for _, room in drawn)


def test_the_columns_stay_where_they_are_under_the_reading_line():
    rect = QRectF(0, 0, 800, 0)
    waiting = replace(POWER, words=POWER_DAYS.words)
    assert power_lanes.bands_rect(waiting, rect, font_px()).top() == pytest.approx(
        power_lanes.bands_rect(POWER_DAYS, rect, font_px()).top()
    )


def test_a_name_too_long_for_its_phase_takes_two_lines_not_an_ellipsis(monkeypatch):
    drawn = words_drawn(monkeypatch)
    phases = (PhaseBand("wait at launch", "9 °C", 1.0, 2.0), *POWER.phases[1:])
    image_of(replace(POWER_DAYS, phases=phases))
    assert {"wait at", "launch"} <= {word for word, _ in drawn}


def pdf_of(picture: PowerPicture, path: Path) -> bytes:
    """The picture on a page of A4, as wide as the text."""
    writer = QPdfWriter(str(path))
    writer.setPageLayout(QPageLayout(QPageSize(QPageSize.PageSizeId.A4), QPageLayout.Orientation.Portrait, QMarginsF()))
    writer.setResolution(144)
    font = font_px()
    font.setPointSizeF(9)
    with QPainter(writer) as painter:
        painter.setFont(font)
        width = writer.width() * 0.88
        rect = QRectF(writer.width() * 0.06, 100, width, power_lanes.measure(picture, width, font, writer))
        power_lanes.paint(painter, rect, picture, LIGHT)
    return path.read_bytes()


def streams(pdf: bytes) -> list[bytes]:
    """The streams of a PDF, unpacked where they are packed (ISO 32000-1, 7.3.8 and 7.4.4)."""
    found = []
    for packed in re.findall(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.DOTALL):
        try:
            found.append(zlib.decompress(packed))
        except zlib.error:
            found.append(packed)
    return found


def test_on_paper_it_is_lines_and_letters_not_an_image(tmp_path: Path):
    """ISO 32000-1: images are XObjects of subtype Image (8.9.5); embedded fonts have a FontFile (9.9)."""
    pdf = pdf_of(POWER_DAYS, tmp_path / "power.pdf")
    assert b"/Subtype /Image" not in pdf
    assert re.search(rb"/FontFile\d?", pdf)
    page = max(streams(pdf), key=lambda stream: stream.count(b" l\n"))
    assert page.count(b" l\n") > 100
    assert page.count(b"Tj") > 40
    assert not re.search(rb"\bBI\b.*\bEI\b", page, re.DOTALL)


def test_on_paper_the_band_is_there(tmp_path: Path):
    without = replace(POWER_DAYS, lanes=tuple(replace(lane, spread=None) for lane in POWER_DAYS.lanes))
    lines = [
        sum(s.count(b" l\n") for s in streams(pdf_of(picture, tmp_path / f"{number}.pdf")))
        for number, picture in enumerate((without, POWER_DAYS))
    ]
    assert lines[1] > lines[0] + 30


def test_an_edge_that_is_held_stands_out():
    bands = power_lanes.bands_rect(POWER_DAYS, QRectF(0, 0, 800, 0), font_px())
    x = bands.left() + POWER.edges[2] * bands.width()
    height = power_lanes.measure(POWER_DAYS, 800, font_px())

    def with_edge(edge: int | None):
        return painted(
            (800, height),
            lambda p: power_lanes.paint(p, QRectF(0, 0, 800, height), POWER_DAYS, LIGHT, None, edge),
        )

    plain, held = with_edge(None), with_edge(1)
    assert changed(plain, held, QRectF(x - 1, bands.top(), 2, bands.height())) > bands.height()
    assert changed(plain, held, QRectF(bands.left(), bands.top(), x - 12 - bands.left(), bands.height())) == 0
    assert changed(plain, with_edge(99)) == 0


def test_a_pointer_finds_the_words_of_the_marks():
    spots = power_lanes.spots(POWER_DAYS, QRectF(0, 0, 800, 0), font_px())
    assert [words for _, words in spots] == [off.text for off in lane_of("Gloves").off_by]
    bands = power_lanes.bands_rect(POWER_DAYS, QRectF(0, 0, 800, 0), font_px())
    assert all(bands.contains(room.center()) for room, _ in spots)
