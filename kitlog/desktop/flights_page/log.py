"""The log as a table, the newest flight first."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.parts.paper_table import PaperTable, cell_box, draw_row_ground
from kitlog.kit.flights import Flight
from kitlog.paint.lettering import LEFT, RIGHT
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import days_text, number_text
from kitlog.wording.translate import N_, _

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()


def airtime_text(minutes: float) -> str:
    """A duration as h:mm, without a unit."""
    whole = round(minutes)
    return f"{number_text(whole // 60)}:{whole % 60:02d}"


def top_m(flight: Flight) -> int | None:
    """Greatest height by satellite if recorded, else by pressure."""
    return flight.max_pressure_m if flight.max_gnss_m is None else flight.max_gnss_m


def _top_text(flight: Flight) -> str:
    top = top_m(flight)
    return "" if top is None else number_text(top)


def _from_text(flight: Flight) -> str:
    if flight.recordings:
        return _("recording")
    return _("total") if flight.until is not None else _("by hand")


COLUMNS: tuple[tuple[str, int, Callable[[Flight], str]], ...] = (
    (N_("Date"), 212, lambda flight: days_text(flight.on, flight.last_day)),
    (N_("Site"), 150, lambda flight: flight.site),
    (N_("Airtime"), 72, lambda flight: airtime_text(flight.airtime_min)),
    (N_("Launches"), 76, lambda flight: number_text(flight.launches)),
    (N_("Top, m"), 76, _top_text),
    (N_("From"), 88, _from_text),
)
"""Title, width in px of the design, words. The site takes what is left."""

DATE, SITE, AIRTIME, LAUNCHES, TOP, FROM = range(6)
FIGURES = frozenset({AIRTIME, LAUNCHES, TOP})


class LogModel(QAbstractTableModel):
    """The flights that are shown."""

    def __init__(self) -> None:
        super().__init__()
        self.flights: Sequence[Flight] = ()

    def put(self, flights: Sequence[Flight]) -> None:
        """Show other flights."""
        self.beginResetModel()
        self.flights = flights
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of rows."""
        return 0 if parent.isValid() else len(self.flights)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of columns."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Words of a cell."""
        if not index.isValid() or index.row() >= len(self.flights):
            return None
        flight = self.flights[index.row()]
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole}:
            return COLUMNS[index.column()][2](flight)
        return flight.note or None if role == Qt.ItemDataRole.ToolTipRole else None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Heads of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return _(COLUMNS[section][0])
        return None

    def row_of(self, flight_id: str) -> int | None:
        """Where a flight stands."""
        return next((n for n, flight in enumerate(self.flights) if flight.id == flight_id), None)


class LogCells(QStyledItemDelegate):
    """How a cell looks."""

    def __init__(self, table: PaperTable, model: LogModel) -> None:
        super().__init__(table)
        self._model = model

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """Rows are 36 high."""
        return QSize(look.px(64), look.px(36))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint ground and words."""
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        over = bool(option.state & QStyle.StateFlag.State_MouseOver)
        painter.save()
        draw_row_ground(painter, option.rect, selected=selected, over=over)
        right = index.column() in FIGURES
        box = cell_box(option.rect, right=right)
        role, colour = _style(index.column())
        look.lettering().draw(painter, box, str(index.data() or ""), role, colour, RIGHT if right else LEFT)
        painter.restore()


def _style(column: int) -> tuple[Role, QColor]:
    t = look.tokens()
    if column == DATE:
        return Role.NAME, t.ink
    if column == AIRTIME:
        return Role.GROUP, t.ink
    return (Role.SMALL, t.muted) if column == FROM else (Role.BODY, t.ink)
