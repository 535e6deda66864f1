"""The type scale: sizes relative to the application font (14 px = 1.0), weights, tabular digits."""

from enum import Enum

from PySide6.QtGui import QFont, QGuiApplication, QPaintDevice

BODY_PX = 14.0
"""The body size at which the spacing scale and all measures of the design hold as they are written."""

TABULAR = QFont.Tag("tnum")
"""The feature of fonts that gives all digits one width."""

_WEIGHTS = {400: QFont.Weight.Normal, 500: QFont.Weight.Medium, 600: QFont.Weight.DemiBold}


class Role(Enum):
    """What a text is for; the value is (size, line, weight), size and line in pixels at a body size of 14."""

    HEADING = (28, 36, 600)
    TITLE = (20, 28, 600)
    SECTION = (16, 24, 600)
    BODY = (14, 20, 400)
    NAME = (14, 20, 500)
    GROUP = (14, 20, 600)
    SECOND = (13, 20, 400)
    LABEL = (13, 18, 600)
    SMALL = (12, 16, 400)
    SMALL_NAME = (12, 16, 500)
    CHIP = (12, 16, 600)

    @property
    def size(self) -> float:
        """Size as a share of the body size."""
        return float(self.value[0]) / BODY_PX

    @property
    def line(self) -> float:
        """Line height in pixels at a body size of 14."""
        return float(self.value[1])

    @property
    def weight(self) -> QFont.Weight:
        """Weight, set by number: a weight in the family name makes tabular digits fail."""
        return _WEIGHTS[self.value[2]]


def body_px(base: QFont, device: QPaintDevice | None = None) -> float:
    """Body size in pixels of `base` on `device` (the first screen if none is given)."""
    if base.pixelSize() > 0:
        return float(base.pixelSize())
    dpi = QGuiApplication.primaryScreen().logicalDotsPerInchY() if device is None else device.logicalDpiY()
    return base.pointSizeF() * dpi / 72.0


def scale(base: QFont, device: QPaintDevice | None = None) -> float:
    """By how much the measures of the design are to be multiplied for this application font; 1.0 at 14 px."""
    return body_px(base, device) / BODY_PX


def font(base: QFont, role: Role) -> QFont:
    """`base`, the application font, in the size and weight of `role`, with tabular digits unless it says otherwise."""
    made = QFont(base)
    if base.pixelSize() > 0:
        made.setPixelSize(max(1, round(base.pixelSize() * role.size)))
    else:
        made.setPointSizeF(base.pointSizeF() * role.size)
    made.setWeight(role.weight)
    if not base.isFeatureSet(TABULAR):
        made.setFeature(TABULAR, 1)
    return made
