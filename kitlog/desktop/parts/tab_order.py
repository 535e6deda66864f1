"""The way Tab goes through a form that grows while it is open."""

from collections.abc import Iterable
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractSpinBox, QComboBox, QWidget


def tab_stops(part: QWidget) -> list[QWidget]:
    """The stops inside a part, itself included, in the order in which they were made.

    The line edit inside a spin box or a combo is no stop of its own.
    """
    return [
        widget
        for widget in (part, *part.findChildren(QWidget))
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        and widget.focusProxy() is None
        and not isinstance(widget.parentWidget(), QAbstractSpinBox | QComboBox)
    ]


def tab_after(before: QWidget, parts: Iterable[QWidget]) -> None:
    """Let Tab go from a stop through parts that were made later, and only then on to what followed it."""
    window = before.window()
    stops = [stop for part in parts for stop in tab_stops(part) if stop.window() is window]  # not the lists that open
    for one, following in pairwise([before, *stops]):
        QWidget.setTabOrder(one, following)


def tab_before(after: QWidget, part: QWidget) -> None:
    """Let Tab go through a part that was made later just before it comes to a stop."""
    stops, before = set(tab_stops(after.window())), after.previousInFocusChain()
    while before is not None and before is not after and before not in stops:
        before = before.previousInFocusChain()
    if before is not None:
        tab_after(before, (part,))
