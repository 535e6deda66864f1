"""The base of dialogs: title, body that scrolls where the screen is small, faults in words, buttons.

Esc leaves it; where something was changed since it opened, only after it has been asked.
"""

from collections.abc import Callable
from typing import ClassVar

from pydantic import ValidationError
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QDialog,
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.date_field import DateField
from kitlog.desktop.parts.entered import Entered, entered
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.number_field import NumberField
from kitlog.desktop.parts.question_strip import QuestionStrip
from kitlog.desktop.parts.text import Paragraph
from kitlog.fault import Fault
from kitlog.paint.type_scale import Role
from kitlog.units.refused import refused
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _

MOST_OF_SCREEN = 0.9
"""A dialog is never wider or higher than this share of the screen; what has no room is scrolled."""


class Dialog(QDialog):
    """A sheet over the window.

    Args:
        title: what it is about, also its window title.
        act: word of the main button; empty for a dialog that only shows something.
        wide: width of the body in px of the design.

    Attributes:
        is_form: what is typed in it would be lost if it were left; a search is none.
        body: what scrolls where it has no room; under: what stands below it and does not.
    """

    is_form: ClassVar[bool] = True

    def __init__(self, title: str, act: str, parent: QWidget | None, wide: int = 480) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setAccessibleName(title)
        self._wide = wide
        self._asks = bool(act) and self.is_form
        self._opened_with: Entered = ()
        self._was_on: QWidget | None = None
        self.question = QuestionStrip(below=True)
        self.body = QVBoxLayout()
        self.body.setContentsMargins(*(look.px(side) for side in (24, 8, 24, 16)))
        self.body.setSpacing(look.px(8))
        self.main = Button(act or _("Close"), Rank.MAIN if act else Rank.PLAIN)
        self.main.setDefault(True)
        self.main.clicked.connect(self.accept)
        self.leave = Button(_("Cancel"))
        self.leave.clicked.connect(self.discard)
        self.leave.setVisible(bool(act))
        self._wrong = Paragraph("", Role.SECOND, "stop")
        self._wrong.setVisible(False)
        self.title = Paragraph(title, Role.TITLE, "ink")
        self.scroller, self.under = self._scrolled(), QVBoxLayout()
        self._put_together()

    def want(self, reason: str) -> None:
        """Hold the main button back and say beside it what is still wanted; empty lets it go."""
        self.main.setEnabled(not reason)
        self.reason.setText(reason)
        self.reason.setVisible(bool(reason))

    def say_wrong(self, text: str) -> None:
        """Show above the buttons what is wrong; an empty text takes it away."""
        self._wrong.setText(text)
        self._wrong.setVisible(bool(text))
        self._wrong.setAccessibleName(text)

    def attempt(self, write: Callable[[], object]) -> bool:
        """Do something that writes; a fault of the world, or a figure that a model refuses, is said in the dialog.

        Nothing is written while a figure or a day stands in it that cannot be read.
        """
        unread = self._unread()
        if unread:
            self.say_wrong(unread)
            return False
        try:
            write()
        except ValidationError as error:
            self.say_wrong(fault_text(refused(error)).line)
        except Fault as fault:
            self.say_wrong(fault_text(fault).line)
        else:
            return True
        return False

    def _unread(self) -> str:
        """What is wrong with the first figure or day that cannot be read."""
        fields = self._inside.findChildren(QAbstractSpinBox)
        wrong = (field.wrong_text() for field in fields if isinstance(field, NumberField | DateField))
        return next(filter(None, wrong), "")

    def wrong(self) -> str:
        """What is shown as wrong."""
        return self._wrong.text()

    def changed(self) -> bool:
        """Whether anything was typed, chosen or ticked since it opened that still stands there."""
        return self._asks and entered(self._inside) != self._opened_with

    def settle(self) -> None:
        """Count as unchanged what stands there now: for a dialog that fills itself after it was opened."""
        self._opened_with = entered(self._inside)

    def reject(self) -> None:
        """Leave it (Esc, the window's own close); ask first if something was changed."""
        if not self.isVisible() or not self.changed():
            self.discard()
            return
        focus = QApplication.focusWidget()
        self._was_on = focus if focus is not None and self._inside.isAncestorOf(focus) else None
        self.question.ask(
            _("Leave without keeping what you changed?"),
            _("Nothing of it is written yet."),
            (_("Discard"), self.discard),
            (_("Keep editing"), self._go_on),
        )
        self.resize(self.width(), max(self.height(), self.sizeHint().height()))

    def discard(self) -> None:
        """Leave it, whatever was changed."""
        super().reject()

    def sizeHint(self) -> QSize:
        """As wide as the design says and as high as the body, but never more than most of the screen."""
        room = self.screen().availableGeometry()
        inside, width = self._inside, min(look.px(self._wide), round(room.width() * MOST_OF_SCREEN))
        high = inside.heightForWidth(width) if inside.hasHeightForWidth() else inside.sizeHint().height()
        around = super().sizeHint().height() - self.scroller.sizeHint().height()
        most = round(room.height() * MOST_OF_SCREEN)
        return QSize(width, min(max(high, inside.sizeHint().height()) + around + 2, most))

    def exec(self) -> int:
        """Show it until it is left; it is let go afterwards."""
        done = super().exec()
        self.deleteLater()
        return done

    def showEvent(self, event: QShowEvent) -> None:
        """Open in the size that the body asks for; Qt would keep it under two thirds of the screen."""
        super().showEvent(event)
        if event.spontaneous():
            return
        self.body.addStretch()
        self.resize(self.sizeHint())
        if not self._inside.isAncestorOf(self.focusWidget()):
            self._focus_first()
        self.settle()

    def _go_on(self) -> None:
        """Back to the field that had the focus."""
        if self._was_on is not None and self._was_on.isVisible():
            self._was_on.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self._focus_first()

    def _focus_first(self) -> None:
        """The first field has the focus, or the main button where there is none."""
        tab = Qt.FocusPolicy.TabFocus.value
        fields = [child for child in self._inside.findChildren(QWidget) if child.focusPolicy().value & tab]
        first = next((field for field in fields if field.isVisible() and field.isEnabled()), self.main)
        first.setFocus()

    def _scrolled(self) -> QScrollArea:
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._inside = QWidget()
        self._inside.setLayout(self.body)
        area.setWidget(self._inside)
        return area

    def _put_together(self) -> None:
        px = look.px
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, px(16), 0, px(16))
        rows.setSpacing(px(8))
        rows.addLayout(_inset(self.title))
        rows.addWidget(self.scroller, 1)
        self.under.setContentsMargins(px(24), 0, px(24), 0)
        rows.addLayout(self.under)
        rows.addLayout(_inset(self._wrong))
        rows.addLayout(_inset(self.question))
        rows.addWidget(Hairline())
        self.foot_row = QHBoxLayout()
        self.foot_row.setContentsMargins(px(24), px(8), px(24), 0)
        self.foot_row.setSpacing(px(12))
        self.reason = Paragraph("", Role.SECOND, "muted")
        self.reason.hide()
        self.foot_row.addWidget(self.reason, 2, Qt.AlignmentFlag.AlignVCenter)
        self.foot_row.addStretch(1)
        self.foot_row.addWidget(self.leave)
        self.foot_row.addWidget(self.main)
        rows.addLayout(self.foot_row)


def _inset(widget: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setContentsMargins(look.px(24), 0, look.px(24), 0)
    row.addWidget(widget)
    return row
