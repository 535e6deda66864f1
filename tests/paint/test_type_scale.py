import pytest
from PySide6.QtGui import QFont, QFontMetricsF

from kitlog.paint.type_scale import Role, body_px, font, scale


@pytest.mark.parametrize(
    ("role", "px"),
    [
        (Role.HEADING, 28),
        (Role.TITLE, 20),
        (Role.SECTION, 16),
        (Role.BODY, 14),
        (Role.SECOND, 13),
        (Role.SMALL, 12),
    ],
)
def test_sizes_follow_the_application_font(role: Role, px: int):
    base = QFont()
    base.setPixelSize(14)
    assert font(base, role).pixelSize() == px
    base.setPixelSize(28)
    assert font(base, role).pixelSize() == 2 * px


def test_point_sizes_stay_point_sizes():
    base = QFont()
    base.setPointSizeF(10.5)
    assert font(base, Role.TITLE).pointSizeF() == pytest.approx(15.0)
    assert scale(base) == pytest.approx(body_px(base) / 14)


def test_weights_are_set_and_the_base_is_left_alone():
    base = QFont()
    base.setPixelSize(14)
    before = base.toString()
    assert font(base, Role.CHIP).weight() == QFont.Weight.DemiBold
    assert font(base, Role.NAME).weight() == QFont.Weight.Medium
    assert base.toString() == before


def test_digits_are_tabular():
    base = QFont()
    base.setPixelSize(14)
    made = font(base, Role.BODY)
    assert made.featureValue(QFont.Tag("tnum")) == 1
    metrics = QFontMetricsF(made)
    assert len({round(metrics.horizontalAdvance(digit), 3) for digit in "0123456789"}) == 1
