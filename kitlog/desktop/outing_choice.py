"""Choosing the outing to work on."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.words import near_text, outing_days_text
from kitlog.wording.translate import _


class OutingChoice(Dialog):
    """All outings, the next one first; or a new one."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(_("Other outing"), _("Work on it"), parent, wide=560)
        self._is_new = False
        self.list = QListWidget()
        self.list.setAccessibleName(_("Outings"))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setMinimumHeight(look.px(200))
        today, current = desk.bench.now().date(), desk.outing()
        for outing in sorted(desk.bench.outings(), key=lambda o: (o.last_day < today, abs((o.first_day - today).days))):
            days = outing_days_text(outing.first_day, outing.last_day)
            near = near_text(outing.first_day, outing.last_day, today)
            row = QListWidgetItem(f"{days}   ·   {outing.name}   ·   {near}")
            row.setSizeHint(QSize(look.px(64), look.px(32)))
            row.setData(Qt.ItemDataRole.UserRole, outing.id)
            self.list.addItem(row)
            if current is not None and outing.id == current.id:
                self.list.setCurrentItem(row)
        self.list.itemActivated.connect(lambda _row: self.accept())
        self.body.addWidget(self.list)
        new = Button(_("New outing…"))
        new.clicked.connect(self._new)
        self.foot_row.insertWidget(0, new)
        self.list.setFocus()

    def chosen(self) -> str:
        """The id chosen, empty for a new outing."""
        row = self.list.currentItem()
        return "" if self._is_new or row is None else str(row.data(Qt.ItemDataRole.UserRole))

    def _new(self) -> None:
        self._is_new = True
        self.accept()
