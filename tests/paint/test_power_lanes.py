from dataclasses import replace

import pytest
from paint_canvas import GROUND, changed, font_px, only_inside, overlapping, painted, words_drawn
from PySide6.QtCore import QRectF

from kitlog.paint import power_lanes
from kitlog.paint.mark import Mark
from kitlog.paint.power_picture import Lane, OffMark, PhaseBand, PowerPicture, clock_text, reading
from kitlog.paint.sample_power import LANES, PHASES, POWER
from kitlog.paint.tokens import DARK, LIGHT


def image_of(
    picture: PowerPicture,
    width: float = 800,
    ratio: float = 1.0,
    px: int = 14,
    cursor: float | None = None,
    theme=LIGHT,
):
    height = power_lanes.measure(picture, width, font_px(px))
    return painted(
        (width, height), lambda p: power_lanes.paint(p, QRectF(0, 0, width, height), picture, theme, cursor), ratio, px
    )


def one_lane(**kw) -> PowerPicture:
    return replace(POWER, lanes=(replace(LANES[0], **kw),))


def lane_rect(picture: PowerPicture, number: int = 0) -> QRectF:
    bands = power_lanes.bands_rect(picture, QRectF(0, 0, 800, 0), font_px())
    return QRectF(bands.left(), bands.top() + 44 + 50 * number, bands.width(), 44)


def test_values_under_the_reading_line():
    at_landing = POWER.edges[2]
    found = reading(POWER, at_landing)
    assert found is not None
    assert (found.likely_h, found.high_h) == (pytest.approx(6.0), pytest.approx(8.25))
    phone, vario = found.lanes[:2]
    assert (phone.label, phone.likely, phone.high) == ("Phone", pytest.approx(0.68), pytest.approx(0.79))
    assert vario.likely == pytest.approx(0.53)
    assert found.lanes[3].high is None  # the gloves went off before


def test_the_cold_floor_is_that_of_the_phase():
    found = reading(POWER, 0.3)
    assert found is not None
    assert found.phase == 1
    assert [lane.locked for lane in found.lanes] == [lane.locked[1] for lane in LANES]


def test_nothing_to_read_without_phases():
    assert reading(PowerPicture((), ()), 0.5) is None
    with pytest.raises(ValueError, match="at is"):
        reading(POWER, float("nan"))


def test_clock_times_go_past_midnight():
    assert clock_text(600, 1.5) == "11:30"
    assert clock_text(1380, 2.25) == "01:15⁺¹"
    assert clock_text(1380, 1.0) == "00:00⁺¹"
    assert clock_text(1380, 26.25) == "01:15⁺²"


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), -0.1, 1.1])
def test_a_charge_that_is_no_share_is_refused(bad: float):
    with pytest.raises(ValueError, match="charge"):
        Lane("Phone", "", likely=((0.0, bad),))


@pytest.mark.parametrize("bad", [float("nan"), float("-inf"), -1.0])
def test_durations_that_cannot_be_are_refused(bad: float):
    with pytest.raises(ValueError, match=r"likely_h|nothing"):
        PhaseBand("flight", "", bad, 2.0)
    with pytest.raises(ValueError, match=r"high_h|nothing"):
        PhaseBand("flight", "", 1.0, bad)


def test_hours_that_run_back_are_refused():
    with pytest.raises(ValueError, match="run back"):
        Lane("Phone", "", high=((1.0, 0.5), (0.5, 0.6)))


def test_more_charge_paints_more_of_the_lane():
    empty, half, full = (
        image_of(one_lane(likely=((0.0, level), (9.0, level)), high=(), locked=(), on_bank=()))
        for level in (0.0, 0.5, 1.0)
    )
    lane = lane_rect(POWER)
    assert 0.3 < changed(empty, half, lane) / changed(empty, full, lane) < 0.7


@pytest.mark.parametrize(
    "change",
    [{"high": ()}, {"locked": ()}, {"on_bank": ()}, {"off": (OffMark(3.0, "off"),)}, {"remark": "feeds the phone"}],
)
def test_every_part_of_a_lane_is_seen(change: dict):
    assert changed(image_of(one_lane()), image_of(one_lane(**change)), lane_rect(POWER)) > 30


def test_a_lane_without_data_says_so_and_shows_no_charge(monkeypatch):
    picture = replace(POWER, lanes=(Lane("Lamp", "", mark=Mark.NOT_KNOWN),))
    drawn = words_drawn(monkeypatch)
    image = image_of(picture)
    assert "not known" in [word for word, _ in drawn]
    bands = power_lanes.bands_rect(picture, QRectF(0, 0, 800, 0), font_px())
    cold = LIGHT.tint(LIGHT.ink, 0.075)
    assert image.pixelColor(round(bands.left() + bands.width() * 0.5), round(bands.bottom() - 4)) == cold


def test_the_reading_line_stands_where_the_pointer_is():
    bands = power_lanes.bands_rect(POWER, QRectF(0, 0, 800, 0), font_px())
    plain, with_line = image_of(POWER), image_of(POWER, cursor=0.05)  # no words there
    x, height = bands.left() + bands.width() * 0.05, bands.height()
    assert changed(plain, with_line, QRectF(x - 1, bands.top(), 2, height)) > height
    assert changed(plain, with_line, QRectF(x + 8, bands.top(), 40, height)) == 0


@pytest.mark.parametrize("width", [800, 1100])
@pytest.mark.parametrize("cursor", [None, 0.0, 0.4, 1.0])
def test_no_words_overlap(monkeypatch, width: int, cursor: float | None):
    drawn = words_drawn(monkeypatch)
    image_of(POWER, width, cursor=cursor)
    assert len(drawn) > 25
    assert overlapping(drawn) == []


@pytest.mark.parametrize("ratio", [1.0, 2.0])
@pytest.mark.parametrize("theme", [LIGHT, DARK])
def test_nothing_is_painted_outside(ratio: float, theme):
    rect = QRectF(30, 20, 500, 180)  # lower than the picture needs
    image = painted((600, 240), lambda p: power_lanes.paint(p, rect, POWER, theme, 0.5), ratio)
    inside = QRectF(rect.topLeft() * ratio, rect.size() * ratio)
    assert only_inside(image, inside, GROUND)


EXTREMES = {
    "no lanes": replace(POWER, lanes=()),
    "no phases": replace(POWER, phases=(), clocks_likely=(), clocks_high=()),
    "nothing at all": PowerPicture((), ()),
    "one phase of no hours": replace(POWER, phases=(PhaseBand("wait", "", 0.0, 0.0),)),
    "a phase of no hours between": replace(POWER, phases=(PHASES[0], PhaseBand("hike", "", 0, 0), *PHASES[1:])),
    "long names": replace(
        POWER,
        phases=tuple(replace(p, label="n" * 200, note="m" * 200) for p in PHASES),
        lanes=tuple(
            replace(lane, label="W" * 200, note="x" * 200, remark="r " * 100, end_likely="9" * 200) for lane in LANES
        ),
    ),
    "forty lanes": replace(POWER, lanes=LANES * 8),
}


@pytest.mark.parametrize("name", EXTREMES)
@pytest.mark.parametrize("width", [240, 400, 800])
@pytest.mark.parametrize("px", [14, 28])
def test_extremes_are_painted_within_their_room(monkeypatch, name: str, width: int, px: int):
    drawn = words_drawn(monkeypatch)
    picture = EXTREMES[name]
    height = power_lanes.measure(picture, width, font_px(px))
    image_of(picture, width, px=px, cursor=0.5)
    image_of(picture, width, px=px)
    assert all(room.left() >= -1 and room.right() <= width + 1 for _, room in drawn), [
        w for w in drawn if w[1].right() > width + 1
    ]
    assert all(room.bottom() <= height + 1 for _, room in drawn)


def test_the_height_follows_lanes_and_font():
    one, two = (power_lanes.measure(replace(POWER, lanes=LANES[:n]), 800, font_px()) for n in (1, 2))
    assert two - one == pytest.approx(50)
    assert power_lanes.measure(POWER, 1600, font_px(28)) == pytest.approx(
        2 * power_lanes.measure(POWER, 800, font_px()), rel=0.02
    )


@pytest.mark.parametrize("walk_h", [0.05, 0.2, 0.4, 0.6, 0.8, 1.0, 2.0])
def test_the_head_of_a_narrow_phase_begins_with_its_first_word(monkeypatch, walk_h: float):
    """Of "walk out" in a narrow band there was only "out"; a temperature is whole or not there."""
    walk = PhaseBand("walk out", "12 °C", walk_h, walk_h)
    picture = replace(POWER, phases=(*PHASES[:2], walk, PHASES[3]), clocks_likely=(), clocks_high=())
    drawn = words_drawn(monkeypatch)
    image_of(picture)
    head = [word for word, room in drawn if room.bottom() < power_lanes.bands_rect(*room_of(picture)).top() + 40]
    assert "out" not in head or "walk" in head
    assert not any(word.startswith("1") and word.endswith("…") for word in head)


def room_of(picture: PowerPicture):
    return picture, QRectF(0, 0, 800, 0), font_px()


def test_words_of_a_switch_off_that_would_lie_on_a_curve_are_brief(monkeypatch):
    """At the right there is no room for the whole, at the left the curve passes through it."""
    whole = "off 21:52, a good three and a half hours before it ought to be off"
    falling = ((0.0, 1.0), (9.0, 0.3))
    lane = {"likely": falling, "high": (), "locked": (), "on_bank": (), "remark": ""}
    drawn = words_drawn(monkeypatch)
    image_of(one_lane(**lane, off=(OffMark(7.4, whole, in_high=False, brief="off 21:52"),)))
    assert "off 21:52" in [word for word, _ in drawn]
    drawn.clear()
    image_of(one_lane(**(lane | {"likely": ((0.0, 0.2), (9.0, 0.2))}), off=(OffMark(2.0, whole, False, "off 21:52"),)))
    assert whole in [word for word, _ in drawn]


def test_the_dots_of_the_reading_line_lie_under_the_words(monkeypatch):
    """They hid the first letter of "off"."""
    order: list[str] = []
    draw_dots, write = power_lanes._dots, power_lanes.LanePainter.write
    monkeypatch.setattr(power_lanes, "_dots", lambda *a: (order.append("dots"), draw_dots(*a)))
    monkeypatch.setattr(power_lanes.LanePainter, "write", lambda lane: (order.append("words"), write(lane)))
    image_of(POWER, cursor=0.5)
    assert order == ["dots"] + ["words"] * len(LANES)


@pytest.mark.parametrize(("start_h", "end_h"), [(6.0, 7.0), (7.0, 9.0), (0.0, 1.5)])
def test_what_hangs_on_a_bank_is_said_where_it_does(monkeypatch, start_h: float, end_h: float):
    """ "feeds the radio" stood in the flight, the widest band, where nothing is plugged in."""
    picture = one_lane(remark="feeds", on_bank=((start_h, end_h),), off=(), likely=((0.0, 1.0), (9.0, 1.0)), high=())
    drawn = words_drawn(monkeypatch)
    image_of(picture)
    room = next(room for word, room in drawn if word == "feeds")
    bands = power_lanes.bands_rect(*room_of(picture))
    begins, ends = (bands.left() + picture.likely.share_at(hours) * bands.width() for hours in (start_h, end_h))
    assert begins <= room.left() < ends
