import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter

from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_open_disc, draw_state
from kitlog.paint.tokens import DARK, LIGHT


def drawn(state: str, side: int = 24, theme=LIGHT) -> QImage:
    image = QImage(side + 20, side + 20, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(theme.surface)
    with QPainter(image) as painter:
        if state == "recommended":
            draw_open_disc(painter, QRectF(10, 10, side, side), theme.fine, theme.surface)
        else:
            draw_state(painter, QRectF(10, 10, side, side), state, theme)
    return image


def silhouette(image: QImage, ground) -> frozenset[tuple[int, int]]:
    return frozenset(
        (x, y) for x in range(image.width()) for y in range(image.height()) if image.pixelColor(x, y) != ground
    )


@pytest.mark.parametrize("theme", [LIGHT, DARK])
def test_shapes_differ_without_colour(theme):
    outlines = [
        silhouette(drawn(state, 24, theme), theme.surface)
        for state in ("fine", "look", "stop", "not known", "recommended")
    ]
    for i, one in enumerate(outlines):
        assert one
        for other in outlines[i + 1 :]:
            assert len(one ^ other) > 40


@pytest.mark.parametrize("state", ["fine", "look", "stop", "not known", "recommended"])
@pytest.mark.parametrize("side", [8, 12, 24, 48])
def test_a_shape_stays_in_its_rect(state: str, side: int):
    for x, y in silhouette(drawn(state, side), LIGHT.surface):
        assert 9 <= x <= 10 + side
        assert 9 <= y <= 10 + side


def test_none_draws_nothing_and_a_foreign_word_is_refused():
    assert not silhouette(drawn(Mark.NONE), LIGHT.surface)
    with pytest.raises(ValueError, match="good"):
        drawn("good")
