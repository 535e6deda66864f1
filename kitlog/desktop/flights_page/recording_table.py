"""The files that were read, one row each: whether it comes in, when it was flown, what became of it."""

from collections.abc import Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.flights_page.log import airtime_text
from kitlog.desktop.flights_page.proposal_draft import Draft
from kitlog.desktop.parts.chip import draw_mark_and_word
from kitlog.desktop.parts.paper_table import PaperTable, cell_box, draw_row_ground
from kitlog.desktop.parts.tick_box import draw_tick_box
from kitlog.kit.recordings.outcome import Status
from kitlog.paint.lettering import LEFT, RIGHT
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import day_text
from kitlog.wording.recording_report import local_times, status_word
from kitlog.wording.translate import N_, _

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()

TITLES = (N_("In"), N_("Date"), N_("Local time"), N_("Airtime"), N_("Becomes"), N_("File"))
WIDE = (40, 104, 108, 72, 112, 120)
TICK, DATE, TIMES, AIRTIME, BECOMES, FILE = range(6)
HIGH = 32


class RecordingModel(QAbstractTableModel):
    """The drafts."""

    def __init__(self) -> None:
        super().__init__()
        self.drafts: Sequence[Draft] = ()

    def put(self, drafts: Sequence[Draft]) -> None:
        """Show other drafts."""
        self.beginResetModel()
        self.drafts = drafts
        self.endResetModel()

    def changed(self) -> None:
        """Show the same drafts anew."""
        if self.drafts:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self.drafts) - 1, FILE))

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of rows."""
        return 0 if parent.isValid() else len(self.drafts)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of columns."""
        return 0 if parent.isValid() else len(TITLES)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Heads of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return _(TITLES[section])
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Words of a cell; the whole name of the file as its tool tip."""
        if not index.isValid() or index.row() >= len(self.drafts):
            return None
        draft = self.drafts[index.row()]
        if role == Qt.ItemDataRole.ToolTipRole:
            return draft.proposal.outcome.file if index.column() == FILE else None
        if role == Qt.ItemDataRole.AccessibleTextRole and index.column() == TICK:
            return _tick_word(draft)
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole}:
            return _text(draft, index.column())
        return None


def _tick_word(draft: Draft) -> str:
    if not draft.is_flight:
        return _("no flight to enter")
    return _("to be entered") if draft.ticked else _("left out")


def _text(draft: Draft, column: int) -> str:
    outcome = draft.proposal.outcome
    if column == FILE:
        return outcome.file.replace("\\", "/").rpartition("/")[2]
    if column == BECOMES:
        return becomes(draft)[0]
    if outcome.flight is None or outcome.local_day is None:
        return ""
    texts = {
        TICK: "",
        DATE: day_text(outcome.local_day),
        TIMES: local_times(outcome.flight, outcome.zone),
        AIRTIME: airtime_text(draft.minutes),
    }
    return texts[column]


def becomes(draft: Draft) -> tuple[str, Mark]:
    """What a file becomes, in a word and a shape."""
    if draft.is_flight:
        if draft.is_asked and not draft.ticked:
            return _("asked"), Mark.LOOK
        word = _("on the ground") if draft.on_ground else _("flight")
        return (word, Mark.NONE) if draft.ticked else (_("left out"), Mark.NONE)
    status = draft.proposal.outcome.status
    return status_word(status), Mark.NOT_KNOWN if status is Status.REFUSED else Mark.NONE


class RecordingTable(PaperTable):
    """The table; Space or a press on the box ticks a row.

    Attributes:
        toggled: the row whose tick is wanted the other way.
    """

    toggled = Signal(int)

    def __init__(self, model: RecordingModel) -> None:
        super().__init__(_("Recordings"), frozenset({AIRTIME}), high=HIGH)
        self.setSelectionMode(PaperTable.SelectionMode.SingleSelection)
        self.setModel(model)
        self.setItemDelegate(RecordingCells(self, model))
        self.head.setSectionsClickable(False)
        for place, wide in enumerate(WIDE):
            self.setColumnWidth(place, look.px(wide))
        self.head.setSectionResizeMode(FILE, self.head.ResizeMode.Stretch)
        self.clicked.connect(self._pressed)

    def show_columns(self, *, scarce: bool) -> None:
        """Hide times and file where room is scarce."""
        for column in (TIMES, FILE):
            self.setColumnHidden(column, scarce)
        stretched, fixed = (BECOMES, FILE) if scarce else (FILE, BECOMES)
        self.head.setSectionResizeMode(fixed, self.head.ResizeMode.Interactive)
        self.head.setSectionResizeMode(stretched, self.head.ResizeMode.Stretch)
        if not scarce:
            self.setColumnWidth(BECOMES, look.px(WIDE[BECOMES]))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space ticks the current row."""
        if event.key() == Qt.Key.Key_Space and self.currentIndex().isValid():
            self.toggled.emit(self.currentIndex().row())
        else:
            super().keyPressEvent(event)

    def _pressed(self, index: QModelIndex) -> None:
        if index.column() == TICK:
            self.toggled.emit(index.row())


class RecordingCells(QStyledItemDelegate):
    """How a cell looks."""

    def __init__(self, table: PaperTable, model: RecordingModel) -> None:
        super().__init__(table)
        self._model = model

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """Rows are 32 high."""
        return QSize(look.px(64), look.px(HIGH))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint ground, box or words."""
        draft = self._model.drafts[index.row()]
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        over = bool(option.state & QStyle.StateFlag.State_MouseOver)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_row_ground(painter, option.rect, selected=selected, over=over)
        if index.column() == TICK:
            self._paint_tick(painter, QRectF(option.rect), draft)
        else:
            self._paint_words(painter, option, index, draft)
        painter.restore()

    def _paint_tick(self, painter: QPainter, rect: QRectF, draft: Draft) -> None:
        if draft.is_flight:
            side = look.px(18)
            box = QRectF(rect.left() + look.px(9), rect.center().y() - side / 2, side, side)
            draw_tick_box(painter, box, look.tokens(), ticked=draft.ticked)

    def _paint_words(self, painter: QPainter, option: QStyleOptionViewItem, index: Index, draft: Draft) -> None:
        t, column, text = look.tokens(), index.column(), str(index.data() or "")
        box = cell_box(option.rect, right=column == AIRTIME)
        mark = becomes(draft)[1] if column == BECOMES else Mark.NONE
        if mark is not Mark.NONE:
            draw_mark_and_word(painter, QRectF(box), text, mark, t)
            return
        role, colour = _style(column, draft)
        look.lettering().draw(painter, box, text, role, colour, RIGHT if column == AIRTIME else LEFT)


def _style(column: int, draft: Draft) -> tuple[Role, QColor]:
    t = look.tokens()
    ink = t.ink if draft.ticked else t.muted
    roles = {DATE: Role.NAME, TIMES: Role.SMALL, AIRTIME: Role.GROUP, BECOMES: Role.SMALL}
    return roles.get(column, Role.SMALL), t.muted if column == FILE else ink
