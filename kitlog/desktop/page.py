"""What every page of the window is: shown late, reloaded only when something it shows has changed."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QWidget

from kitlog.desktop.fold import Fold

if TYPE_CHECKING:
    from kitlog.desktop.desk import Desk

PAGES = ("kit", "service", "outing", "repack", "flights")
"""Names of the pages in the order of the rail."""


class Page(QWidget):
    """A page.

    Attributes:
        concerns: kinds of change that it shows; others leave it as it is.
        acts_class: the class of `acts`, so that tests can ask whether a handler exists without building a page.
        acts: what the actions of this page do.
    """

    acts_class: ClassVar[type]
    acts: object

    concerns: ClassVar[frozenset[str]] = frozenset()

    def __init__(self, desk: "Desk", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.stale = True

    def look_fresh(self) -> None:
        """Reload if anything has changed since it was last shown."""
        if self.stale:
            self.stale = False
            self.reload()

    def reload(self) -> None:
        """Read everything anew and show it."""

    def lay_out(self, fold: Fold) -> None:
        """Fold to the room there is."""

    def first(self) -> QWidget:
        """What has the focus when the page is opened."""
        return self

    def leave(self) -> None:
        """The window closes: stop what would still happen later."""

    def show_this(self, what: str) -> None:
        """Show something in particular, by the name that was asked for."""

    def selected(self) -> dict[str, int]:
        """How many of what are selected, for the rules of the actions."""
        return {}

    def take_list_actions(self, actions: Mapping[str, QAction]) -> None:
        """Take the actions whose keys work in the page's list alone."""
