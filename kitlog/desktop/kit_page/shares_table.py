"""Shares of the time: a row a way of use, a column a way of moving, in per cent; what is left over is off.

Off all the time is a share of 0; where a column is empty, nobody said.
"""

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QBrush, QKeyEvent
from PySide6.QtWidgets import QFrame, QHeaderView, QTableWidget, QTableWidgetItem, QWidget

from kitlog.budget.power.checks import SHARES_TOLERANCE
from kitlog.desktop import look
from kitlog.fault import InputFault
from kitlog.kit.facets import Share
from kitlog.kit.kinds import PhaseWay
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.draw_text import short_text
from kitlog.wording.translate import _
from kitlog.wording.words import word

WAYS = tuple(PhaseWay)
ROW_PX, HEAD_PX, NAMES_PX = 28, 40, 176
EMPTYING = frozenset({Qt.Key.Key_Delete, Qt.Key.Key_Backspace})
EXACT = Qt.ItemDataRole.UserRole
Shares = tuple[Share, ...]


class SharesTable(QTableWidget):
    """One stop of Tab; arrows move in it, typing changes a cell, Del empties it.

    Attributes:
        edited: a share was changed.
    """

    edited = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(0, len(WAYS), parent)
        self._names: list[str] = []
        self.setAccessibleName(_("Shares of the time in per cent, by way of moving"))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setTabKeyNavigation(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setFont(look.font(Role.SECOND))
        self.setSelectionMode(QTableWidget.SelectionMode.SingleSelection)
        self.setEditTriggers(
            QTableWidget.EditTrigger.AnyKeyPressed
            | QTableWidget.EditTrigger.DoubleClicked
            | QTableWidget.EditTrigger.EditKeyPressed
        )
        for policy in (self.setHorizontalScrollBarPolicy, self.setVerticalScrollBarPolicy):
            policy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalHeaderLabels(["\n".join(word(way.value).rsplit(" ", 1)) for way in WAYS])
        self._dress_heads()
        self.itemChanged.connect(self._take)

    def put(self, ways: Sequence[tuple[str, Shares]]) -> None:
        """Show the shares of ways of use, by their names."""
        with QSignalBlocker(self):
            self.setRowCount(len(ways) + 1)
            self._names = [name for name, _shares in ways]
            for row, (name, shares) in enumerate(ways):
                self.name_row(row, name)
                given = {share.during: share.share for share in shares}
                for column, way in enumerate(WAYS):
                    self.setItem(row, column, _cell(given.get(way)))
            self._put_rest_row()
        self._sum()
        self.setFixedHeight(look.px(HEAD_PX) + self.rowCount() * look.px(ROW_PX) + 2)

    def name_row(self, row: int, name: str) -> None:
        """Another name for a way of use."""
        self._names[row] = name
        room = look.px(NAMES_PX - 12)
        head = QTableWidgetItem(self.fontMetrics().elidedText(name, Qt.TextElideMode.ElideRight, room))
        head.setToolTip(name)
        self.setVerticalHeaderItem(row, head)

    def shares(self) -> list[Shares]:
        """The shares of each way of use, as exact as they were where they were not touched."""
        return [
            tuple(
                Share(during=way, share=share)
                for column, way in enumerate(WAYS)
                if (share := self._share(row, column)) is not None
            )
            for row in range(self.rowCount() - 1)
        ]

    def check(self) -> None:
        """Refuse what is no share, and shares of more than the whole time.

        Raises:
            InputFault: ``ways.share_unread`` with ``value``, ``way`` and ``phase``; ``ways.shares_over`` with ``phase``
                and ``total``.
        """
        for row, name in enumerate(self._names):
            for column, way in enumerate(WAYS):
                cell = self.item(row, column)
                if cell is not None and not _is_read(cell):
                    raise InputFault("ways.share_unread", value=cell.text(), way=name, phase=word(way.value))
        for column, way in enumerate(WAYS):
            total = self._total(column)
            if total > 1 + SHARES_TOLERANCE:
                raise InputFault("ways.shares_over", phase=word(way.value), total=short_text(total * 100, "%"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del empties a cell."""
        row, column = self.currentRow(), self.currentColumn()
        if event.key() in EMPTYING and 0 <= row < self.rowCount() - 1:
            self.model().setData(self.model().index(row, column), "")
        else:
            super().keyPressEvent(event)

    def _dress_heads(self) -> None:
        across, down = self.horizontalHeader(), self.verticalHeader()
        across.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        across.setMinimumSectionSize(look.px(24))
        across.setFixedHeight(look.px(HEAD_PX))
        down.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        down.setDefaultSectionSize(look.px(ROW_PX))
        down.setFixedWidth(look.px(NAMES_PX))
        down.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for head in (across, down):
            head.setFont(look.font(Role.SMALL))
            head.setSectionsClickable(False)
            head.setHighlightSections(False)

    def _put_rest_row(self) -> None:
        last = self.rowCount() - 1
        self.setVerticalHeaderItem(last, QTableWidgetItem(_("off, the rest")))
        for column in range(len(WAYS)):
            cell = QTableWidgetItem()
            cell.setTextAlignment(Qt.AlignmentFlag.AlignCenter)
            cell.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable)
            self.setItem(last, column, cell)

    def _is_share(self, cell: QTableWidgetItem) -> bool:
        return cell.row() < self.rowCount() - 1

    def _take(self, cell: QTableWidgetItem) -> None:
        """What was typed as a share; what cannot be one stays as typed, is marked, and the share before it holds."""
        if not self._is_share(cell):
            return
        with QSignalBlocker(self):
            if _is_read(cell):
                cell.setData(EXACT, _as_share(_bare(cell.text())))
                cell.setText(_shown(cell.data(EXACT)))
            _mark(cell)
        self._sum()
        self.edited.emit()

    def _share(self, row: int, column: int) -> float | None:
        cell = self.item(row, column)
        found = cell.data(EXACT) if cell is not None else None
        return found if isinstance(found, float) else None

    def _total(self, column: int) -> float:
        return sum(self._share(row, column) or 0.0 for row in range(self.rowCount() - 1))

    def _sum(self) -> None:
        """Show what is left of each way of moving: off, nothing planned, or too much."""
        last, t = self.rowCount() - 1, look.tokens()
        with QSignalBlocker(self):
            for column in range(len(WAYS)):
                rest = round(100 * (1 - self._total(column)), 1)
                cell = self.item(last, column)
                if cell is not None:
                    told = any(self._share(row, column) is not None for row in range(last))
                    cell.setText(short_text(rest) if told else "–")
                    cell.setForeground(t.stop if rest < 0 else t.muted)


def _cell(share: float | None) -> QTableWidgetItem:
    cell = QTableWidgetItem(_shown(share))
    cell.setData(EXACT, share)
    cell.setTextAlignment(Qt.AlignmentFlag.AlignCenter)
    return cell


def _shown(share: object) -> str:
    return short_text(share * 100) if isinstance(share, float) else ""


def _bare(text: str) -> str:
    return text.replace("%", "").replace(",", ".").strip()


def _is_read(cell: QTableWidgetItem) -> bool:
    text = _bare(cell.text())
    return not text or _as_share(text) is not None


def _mark(cell: QTableWidgetItem) -> None:
    """Mark a cell that cannot be read, or take the mark away."""
    t, read = look.tokens(), _is_read(cell)
    cell.setForeground(t.ink if read else t.stop)
    cell.setBackground(QBrush() if read else t.tile(Mark.STOP))
    cell.setToolTip("" if read else _("Write a figure from 0 to 100."))


def _as_share(text: str) -> float | None:
    try:
        pct = float(text)
    except ValueError:
        return None
    return pct / 100 if 0 <= pct <= 100 else None
