"""How things look here and now: theme, scale and fonts, read from the application, so that nothing is kept twice."""

from functools import lru_cache

from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication

from kitlog.paint.lettering import Lettering
from kitlog.paint.tokens import DARK, LIGHT, Tokens
from kitlog.paint.type_scale import BODY_PX, Role, body_px
from kitlog.paint.type_scale import font as role_font

MOST_DARK = 128
"""A window ground darker than this (lightness, 0 to 255) belongs to the dark theme."""


def tokens() -> Tokens:
    """The colours of the theme that the application shows; a widget's own palette may be changed by the style sheet."""
    return DARK if QApplication.palette().window().color().lightness() < MOST_DARK else LIGHT


def scale() -> float:
    """By how much the measures of the design are to be multiplied; 1.0 at a body size of 14 px."""
    return body_px(QApplication.font()) / BODY_PX


def px(design_px: float) -> int:
    """A measure of the design in whole pixels of this application font."""
    return round(design_px * scale())


def font(role: Role) -> QFont:
    """The application font in a role of the type scale."""
    return _font(QApplication.font().key(), role)


@lru_cache(maxsize=64)
def _font(_key: str, role: Role) -> QFont:
    return role_font(QApplication.font(), role)


def least_body(base: QFont) -> QFont:
    """The platform's font, at least 14 px: captions at 12/14 of it must not fall under 12 px."""
    if body_px(base) >= BODY_PX:
        return base
    made = QFont(base)
    made.setPointSizeF(base.pointSizeF() * BODY_PX / body_px(base))
    return made


def lettering() -> Lettering:
    """Words for widgets that paint themselves, in the application font."""
    return _lettering(QApplication.font().key())


@lru_cache(maxsize=4)
def _lettering(_key: str) -> Lettering:
    return Lettering(QApplication.font())
