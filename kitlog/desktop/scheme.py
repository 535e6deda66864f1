"""Light, dark or as the system: the choice, and laying it over the application."""

from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.palette import palette
from kitlog.desktop.stylesheet import stylesheet
from kitlog.paint.tokens import DARK, LIGHT, Tokens


class Scheme(StrEnum):
    """Which theme is shown."""

    LIGHT = "light"
    DARK = "dark"
    SYSTEM = "system"


def tokens_of(scheme: Scheme, application: QApplication) -> Tokens:
    """The theme of a choice; a system that says nothing counts as light."""
    if scheme is Scheme.SYSTEM:
        says_dark = application.styleHints().colorScheme() is Qt.ColorScheme.Dark
        return DARK if says_dark else LIGHT
    return DARK if scheme is Scheme.DARK else LIGHT


def lay_over(scheme: Scheme, application: QApplication) -> None:
    """Give the application the palette and style sheet of a choice."""
    tokens = tokens_of(scheme, application)
    application.setPalette(palette(tokens))
    application.setStyleSheet(stylesheet(tokens))
