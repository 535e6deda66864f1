import pytest
from hypothesis import given
from hypothesis import strategies as st
from paint_canvas import changed, font_px, only_inside, painted
from PySide6.QtCore import QRectF
from PySide6.QtGui import QFont, QImage

from kitlog.paint.heading import Heading
from kitlog.paint.lettering import CENTRE, LEFT, RIGHT, Lettering
from kitlog.paint.tokens import LIGHT
from kitlog.paint.type_scale import Role

TEXTS = st.text(alphabet=st.sampled_from("abcWi  ,.−°\u202f\u00a0"), max_size=120)


@given(TEXTS, st.floats(0, 400), st.integers(1, 4))
def test_wrapped_lines_fit_and_lose_only_what_is_cut(text: str, width: float, most: int):
    lettering = Lettering(font_px())
    lines = lettering.wrap(text, Role.SMALL, width, most)
    assert len(lines) <= most
    assert all(lettering.width(line, Role.SMALL) <= width + 0.5 for line in lines)
    if lettering.width(text, Role.SMALL) <= width:
        assert lines == [text]


def test_what_is_cut_says_so_and_what_has_no_room_is_left_out():
    lettering = Lettering(font_px())
    assert lettering.cut("a long word indeed", Role.BODY, 60).endswith("…")
    assert lettering.cut("word", Role.BODY, 2) == ""
    assert lettering.cut("two\nlines", Role.BODY, 500) == "two lines"


def test_figures_and_units_are_not_torn_apart():
    lettering = Lettering(font_px())
    lines = lettering.wrap(
        "weighs 3\u202f250\u00a0g in all", Role.SMALL, lettering.width("weighs 3\u202f250", Role.SMALL) + 2, 3
    )
    assert lines[0] == "weighs"


@pytest.mark.parametrize("align", [LEFT, CENTRE, RIGHT])
@pytest.mark.parametrize("text", ["word", "a text far too long for its room, whatever it says", "g, 1 234"])
def test_a_text_is_drawn_in_its_room_and_where_it_says(align, text: str):
    rect, rooms = QRectF(40, 20, 120, 24), []
    image = painted((200, 64), lambda p: rooms.append(Lettering.of(p).draw(p, rect, text, Role.BODY, LIGHT.ink, align)))
    assert rect.adjusted(-0.5, -0.5, 0.5, 0.5).contains(rooms[0])
    assert only_inside(image, rooms[0].adjusted(-1, -3, 1, 3))
    assert changed(image, painted((200, 64), lambda p: None)) > 20


def test_measures_follow_the_font():
    small, large = Lettering(font_px(14)), Lettering(font_px(28))
    assert large.px(10) == pytest.approx(2 * small.px(10))
    assert large.line(Role.TITLE) == pytest.approx(2 * small.line(Role.TITLE))
    assert large.width("Take-off 87.5", Role.BODY) == pytest.approx(
        2 * small.width("Take-off 87.5", Role.BODY), rel=0.05
    )


def test_a_caption_goes_below_where_there_is_no_room_beside():
    lettering = Lettering(font_px())
    heading = Heading("Reserve", "printed load 75 to 110 kg; sources differ on whether the wing counts")
    beside, below = heading.height(800, lettering), heading.height(200, lettering)
    assert beside == pytest.approx(24)
    assert below > beside
    assert Heading("", "").height(800, lettering) == 0


def test_a_width_is_that_of_its_own_font_and_device_however_often_it_is_asked_for():
    small, large = font_px(14), font_px(28)
    coarse, fine = (QImage(10, 10, QImage.Format.Format_RGB32) for _ in range(2))
    fine.setDotsPerMeterX(fine.dotsPerMeterX() * 2)
    fine.setDotsPerMeterY(fine.dotsPerMeterY() * 2)
    pt = font_px(14)
    pt.setPointSizeF(10)
    for _again in range(2):
        widths = [Lettering(font).width("Phone", Role.BODY) for font in (small, large)]
        assert widths[1] == pytest.approx(2 * widths[0], rel=0.05)
        plain = font_px(14)
        plain.setFeature(QFont.Tag("kern"), 0)
        assert Lettering(plain)._widths is not Lettering(small)._widths  # not to be seen else
        widths = [Lettering(pt, device).width("Phone", Role.BODY) for device in (coarse, fine)]
        assert widths[1] == pytest.approx(2 * widths[0], rel=0.05)


@given(st.lists(st.text("abWi", min_size=1, max_size=9), min_size=1, max_size=5).map(" ".join), st.floats(0, 120))
def test_what_is_wrapped_and_cut_begins_with_its_beginning_and_leaves_nothing_out(text: str, width: float):
    said = " ".join(Lettering(font_px()).wrap(text, Role.SMALL, width, 2))
    assert text.startswith(said.strip().removesuffix("…").rstrip()), said
