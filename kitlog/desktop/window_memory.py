"""What the window remembers of itself: geometry, theme, open page. Never a record; a broken file changes nothing."""

from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtWidgets import QWidget

from kitlog.desktop.page import PAGES
from kitlog.desktop.scheme import Scheme

USUAL_SIZE = (1280, 800)


class WindowMemory:
    """Geometry and choices of the window, in `settings`."""

    def __init__(self, settings: QSettings) -> None:
        self._settings = settings

    def scheme(self) -> Scheme:
        """The theme chosen, else as the system."""
        try:
            return Scheme(self._text("scheme"))
        except ValueError:
            return Scheme.SYSTEM

    def keep_scheme(self, scheme: Scheme) -> None:
        """Remember the theme."""
        self._settings.setValue("scheme", scheme.value)

    def page(self) -> str:
        """The page that was open last, else Kit."""
        name = self._text("page")
        return name if name in PAGES else PAGES[0]

    def keep(self, window: QWidget, page: str) -> None:
        """Remember where the window is and which page is open."""
        self._settings.setValue("geometry", window.saveGeometry())
        self._settings.setValue("page", page)

    def give_back(self, window: QWidget) -> None:
        """Put the window where it was; without a memory, or one that Qt refuses, it gets its usual size."""
        kept = self._settings.value("geometry")
        if not (isinstance(kept, QByteArray) and window.restoreGeometry(kept)):
            room = window.screen().availableGeometry()
            window.resize(min(USUAL_SIZE[0], room.width()), min(USUAL_SIZE[1], room.height()))

    def _text(self, key: str) -> str:
        value = self._settings.value(key)
        return value if isinstance(value, str) else ""
