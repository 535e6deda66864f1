"""A row that goes on in a further row where the room ends: with large letters nothing leaves the window."""

from collections.abc import Iterator

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look

Rows = list[list[QWidget]]


class WrapRow(QWidget):
    """Widgets beside each other, in as many rows as they need.

    Args:
        gap: between two of them, in px of the design.
        under: between two rows, in px of the design.
        top: whether their first lines stand beside each other, not their middles.
    """

    def __init__(self, gap: int = 8, under: int = 4, *, top: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gap, self._under, self._top = gap, under, top
        self._all: list[QWidget] = []
        self._pushed: set[QWidget] = set()
        self._wide: set[QWidget] = set()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def add(self, *widgets: QWidget, pushed: bool = False, wide: bool = False) -> None:
        """Add widgets at the end; `pushed` ones stand at the right end of their row, `wide` ones take what is free."""
        for widget in widgets:
            widget.setParent(self)
            self._all.append(widget)
            (self._pushed if pushed else self._wide if wide else set()).add(widget)

    def set_gap(self, gap: int) -> None:
        """Put more or less between two widgets, in px of the design."""
        self._gap = gap
        self._place()

    def sizeHint(self) -> QSize:
        """All in one row, as high as it is at the width it has."""
        return QSize(self._width(self._shown()), self._height())

    def minimumSizeHint(self) -> QSize:
        """As wide as the widest, as high as it is at the width it has."""
        return QSize(max((_least(widget).width() for widget in self._shown()), default=1), self._height())

    def event(self, event: QEvent) -> bool:
        """What is in it asks for another size, or comes or goes."""
        if event.type() == QEvent.Type.LayoutRequest:
            self._place()
        return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may want other rows."""
        super().resizeEvent(event)
        self._place()

    def _shown(self) -> list[QWidget]:
        asked = Qt.WidgetAttribute.WA_WState_ExplicitShowHide
        return [widget for widget in self._all if not (widget.isHidden() and widget.testAttribute(asked))]

    def _width(self, row: list[QWidget]) -> int:
        return sum(_usual(widget).width() for widget in row) + look.px(self._gap) * max(len(row) - 1, 0)

    def _rows(self) -> Rows:
        rows: Rows = []
        for widget in self._shown():
            if rows and self._least_width([*rows[-1], widget]) <= self.width():
                rows[-1].append(widget)
            else:
                rows.append([widget])
        return rows

    def _least_width(self, row: list[QWidget]) -> int:
        """What a row cannot do without: one that takes what is free may be as narrow as it can."""
        saved = sum(_usual(widget).width() - _least(widget).width() for widget in row if widget in self._wide)
        return self._width(row) - saved

    def _height(self) -> int:
        return max((box.bottom() + 1 for _widget, box in self._boxes()), default=0)

    def _place(self) -> None:
        for widget, box in self._boxes():
            widget.setGeometry(box)
        if self._height() != self.height():
            self.updateGeometry()

    def _boxes(self) -> Iterator[tuple[QWidget, QRect]]:
        top = 0
        for row in self._rows():
            placed = [*self._across(row)]
            high = max(_high(widget, wide) for widget, _left, wide in placed)
            line = max(_least(widget).height() for widget in row) if self._top else high
            for widget, left, wide in placed:
                own = _high(widget, wide)
                first = _least(widget).height() if self._top else own
                yield widget, QRect(left, top + (line - first) // 2, wide, own)
            top += high + look.px(self._under)

    def _across(self, row: list[QWidget]) -> Iterator[tuple[QWidget, int, int]]:
        """Where each of a row begins, and how wide it is."""
        free, left = self.width() - self._width(row), 0
        for widget in row:
            wide = _usual(widget).width()
            if widget in self._wide:
                wide, free = wide + free, 0
            elif widget in self._pushed and free > 0:
                left, free = left + free, 0
            wide = max(min(wide, self.width() - left), 1)
            yield widget, left, wide
            left += wide + look.px(self._gap)


def _least(widget: QWidget) -> QSize:
    return widget.minimumSizeHint().expandedTo(widget.minimumSize())


def _usual(widget: QWidget) -> QSize:
    return widget.sizeHint().expandedTo(_least(widget)).boundedTo(widget.maximumSize())


def _high(widget: QWidget, wide: int) -> int:
    return widget.heightForWidth(wide) if widget.hasHeightForWidth() else _usual(widget).height()
