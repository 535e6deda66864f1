"""The way Tab goes through a form that grows while it is open."""

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
