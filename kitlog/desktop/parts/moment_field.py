"""A day and a time of day on the clock of this machine; emptied it means now."""

from datetime import UTC, datetime

from PySide6.QtCore import QDate, QDateTime, Qt, QTime
from PySide6.QtGui import QKeyEvent, QWheelEvent
from PySide6.QtWidgets import QAbstractSpinBox, QDateTimeEdit, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import DateField
from kitlog.paint.type_scale import Role
from kitlog.units.days import LAST_DAY
from kitlog.wording.translate import _


class MomentField(QDateTimeEdit):
    """A moment to the minute, or now: Del empties it, typing starts at this minute."""

    NOW = QDateTime(DateField.EMPTY, QTime(0, 0))

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._was: tuple[QDateTime, datetime] | None = None
        self.setDisplayFormat("d MMM yyyy HH:mm")
        self.setDateTimeRange(self.NOW, QDateTime(QDate(LAST_DAY.year, LAST_DAY.month, LAST_DAY.day), QTime(23, 59)))
        self.setSpecialValueText(_("now"))
        self.setFont(look.font(Role.BODY))
        self.setToolTip(_("Arrow keys change it, Del makes it now"))
        self.lineEdit().setTextMargins(look.px(9), 0, look.px(9), 0)
        self.put(None)

    def moment(self) -> datetime | None:
        """The moment with its time zone, None for now; one that was not touched keeps its seconds."""
        shown = self.dateTime()
        if self._was is not None and shown == self._was[0]:
            return self._was[1]
        day, time = shown.date(), shown.time()
        if shown == self.NOW:
            return None
        local = datetime(day.year(), day.month(), day.day(), time.hour(), time.minute()).astimezone()
        return local.astimezone(UTC)

    def put(self, at: datetime | None) -> None:
        """Show a moment, or now."""
        if at is None:
            self.setDateTime(self.NOW)
            return
        local = at.astimezone()
        self.setDateTime(QDateTime(QDate(local.year, local.month, local.day), QTime(local.hour, local.minute)))
        self._was = (self.dateTime(), at)

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: FBT001  # Qt's signature
        """Tab leaves the field; left and right move within it."""
        return QAbstractSpinBox.focusNextPrevChild(self, forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del makes it now; from there, a digit or arrow begins at this minute."""
        if event.key() in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self.put(None)
            return
        begins = event.text().isdigit() or event.key() in {Qt.Key.Key_Up, Qt.Key.Key_Down}
        if self.dateTime() == self.NOW and begins:
            self.setDateTime(QDateTime.currentDateTime())
            self.setSelectedSection(QDateTimeEdit.Section.DaySection)
        super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the form."""
        event.ignore()
