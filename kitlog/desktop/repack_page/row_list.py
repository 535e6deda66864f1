"""The list of a step: keyboard first. Space ticks, Up and Down move over what can be ticked."""

from collections.abc import Sequence

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QRectF, Qt, Signal, SignalInstance
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QAbstractItemView, QFrame, QListView, QWidget

from kitlog.desktop.repack_page.row_paint import ROW_ROLE, RowPaint, act_rect, box_rect
from kitlog.desktop.repack_page.rows import Row

NO_PARENT = QModelIndex()
Index = QModelIndex | QPersistentModelIndex
_SPOKEN = {int(Qt.ItemDataRole.DisplayRole), int(Qt.ItemDataRole.AccessibleTextRole), int(Qt.ItemDataRole.ToolTipRole)}


class RowModel(QAbstractListModel):
    """The rows as Qt wants them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[Row] = []

    def put(self, rows: list[Row]) -> bool:
        """Show other rows; whether they were laid out anew, or only their contents changed."""
        same = [(row.kind, row.key, row.title) for row in rows] == [(r.kind, r.key, r.title) for r in self.rows]
        if same:
            self.rows = rows
            if rows:
                self.dataChanged.emit(self.index(0), self.index(len(rows) - 1))
            return False
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()
        return True

    def rowCount(self, parent: Index = NO_PARENT) -> int:
        """How many."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The row, or all of it in one line."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == ROW_ROLE:
            return row
        return row.spoken if role in _SPOKEN else None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Heads cannot be stood on."""
        if index.isValid() and self.rows[index.row()].can_stand:
            return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemNeverHasChildren
        return Qt.ItemFlag.ItemNeverHasChildren


class RowList(QListView):
    """The rows of a step.

    Attributes:
        ticked, missed, swapped: the key or the pointer asked for it on the current row.
        stood: the current row is another one.
        typed: a digit was typed on the current row.
    """

    ticked = Signal()
    missed = Signal()
    swapped = Signal()
    stood = Signal()
    typed = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setMouseTracking(True)
        self.rows = RowModel(self)
        self.setModel(self.rows)
        self.setItemDelegate(RowPaint(self))
        self._keys: dict[int, SignalInstance] = {
            Qt.Key.Key_Space: self.ticked,
            Qt.Key.Key_M: self.missed,
            Qt.Key.Key_S: self.swapped,
        }

    def put(self, rows: list[Row]) -> None:
        """Show rows; the current one stays, or gives way to the one in its place."""
        held, number = self.current(), self.currentIndex().row()
        top = self.verticalScrollBar().value()
        if self.rows.put(rows):
            self.verticalScrollBar().setValue(top)
            self._stand_again(held, number)

    def current(self) -> Row | None:
        """The row on which the keys stand."""
        index = self.currentIndex()
        return self.rows.rows[index.row()] if index.isValid() else None

    def stand_on(self, number: int) -> None:
        """Make a row the current one and bring it into view, with the head above it."""
        index = self.rows.index(number)
        self.setCurrentIndex(index)
        above = number - 1
        if above >= 0 and not self.rows.rows[above].can_stand:
            self.scrollTo(self.rows.index(above))
        self.scrollTo(index)

    def stand_on_key(self, key: str) -> bool:
        """Stand on the row that ticks a line; whether there is one."""
        number = next((n for n, row in enumerate(self.rows.rows) if row.can_stand and row.key == key), None)
        if number is not None:
            self.stand_on(number)
        return number is not None

    def step(self, by: int) -> None:
        """Move to the next row that can be stood on."""
        able = self._able()
        if not able:
            return
        at = self.currentIndex().row()
        found = [n for n in able if n > at] if by > 0 else [n for n in reversed(able) if n < at]
        if found:
            self.stand_on(found[min(abs(by), len(found)) - 1])

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Tell that the keys stand elsewhere."""
        super().currentChanged(current, previous)
        self.stood.emit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The first row becomes current when none was."""
        super().focusInEvent(event)
        if not self.currentIndex().isValid() and self._able():
            self.stand_on(self._able()[0])
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The ring gets thinner."""
        super().focusOutEvent(event)
        self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space, M, S, and the keys that move."""
        key, bare = event.key(), event.modifiers() in {NO_KEY, KEYPAD}
        moves: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_PageUp: -8, Qt.Key.Key_PageDown: 8}
        ends: dict[int, int] = {Qt.Key.Key_Home: 0, Qt.Key.Key_End: -1}
        if bare and key in self._keys and self.current() is not None:
            self._keys[key].emit()
        elif bare and key in moves:
            self.step(moves[key])
        elif bare and key in ends and self._able():
            self.stand_on(self._able()[ends[key]])
        elif event.text().isdecimal() and bare and self.current() is not None:
            self.typed.emit(event.text())
        elif event.text().strip() and bare:
            event.ignore()
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A press on the box ticks; on the act, it acts; elsewhere it only makes the row current."""
        super().mouseReleaseEvent(event)
        index = self.indexAt(event.position().toPoint())
        row = self.current()
        if not index.isValid() or index != self.currentIndex() or row is None:
            return
        rect = QRectF(self.visualRect(index))
        if act_rect(row, rect).contains(event.position()):
            self.swapped.emit()
        elif box_rect(rect).adjusted(-8, -8, 8, 8).contains(event.position()):
            self.ticked.emit()

    def _able(self) -> Sequence[int]:
        return [number for number, row in enumerate(self.rows.rows) if row.can_stand]

    def _stand_again(self, held: Row | None, number: int) -> None:
        """After rows were laid out anew: on the same line wherever it is, else on what now stands in its place."""
        able = self._able()
        if held is None and able and self.hasFocus():
            self.stand_on(able[0])
        if held is None or not able:
            return
        same = next((n for n in able if held.key and self.rows.rows[n].key == held.key), None)
        self.stand_on(min(able, key=lambda n: (abs(n - number), n < number)) if same is None else same)


NO_KEY, KEYPAD = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.KeypadModifier
