"""Above the list of charging: what comes of the evening, its hours, the charge on hand of the current line, acts."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.fields import NumberField
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.repack_page.charge_rows import Shown
from kitlog.kit.item import Item
from kitlog.paint.type_scale import Role
from kitlog.wording.charge_text import place_text, summary_text, times_text
from kitlog.wording.translate import _


class ChargeHead(QWidget):
    """Two rows, and a third where the outing begins with other charges than the plan ends with.

    Attributes:
        hours: the evening is to be changed; start: the plan's end is to be tomorrow's start.
        swollen: the battery of the current line is swollen, or is not after all.
        typed: a charge in per cent was typed for the current line, the same as before too; None: not known.
        unread: what was typed is no charge, with a sentence. left: back to the list.
    """

    hours = Signal()
    start = Signal()
    swollen = Signal()
    typed = Signal(object)
    unread = Signal(str)
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.says, self.times = Paragraph("", Role.NAME), Text("", Role.SECOND, "muted")
        self.of_item = Text(_("on hand"), Role.SECOND, "muted")
        self.on_hand = NumberField("%", most=100)
        self.on_hand.setFixedWidth(px(96))
        self.on_hand.setKeyboardTracking(False)
        self.hours_act, self.swollen_act = Button(_("Change"), Rank.ACT), Button("", Rank.ACT)
        self.hours_act.setAccessibleName(_("Change the evening"))
        self.start_act = Button(_("Use as start"))
        self.start_act.setAccessibleName(_("Let the outing begin with the planned charges"))
        rows = QVBoxLayout(self)
        rows.setContentsMargins(px(8), 0, px(12), 0)
        rows.setSpacing(px(4))
        first, second = WrapRow(gap=12), WrapRow(gap=12)
        first.add(self.says, wide=True)
        first.add(self.start_act)
        second.add(self.times, self.hours_act)
        self.hand = QWidget()
        together = QHBoxLayout(self.hand)
        together.setContentsMargins(0, 0, 0, 0)
        together.setSpacing(px(12))
        for widget in (self.of_item, self.on_hand, self.swollen_act):
            together.addWidget(widget)
        second.add(self.hand, pushed=True)
        self.others = Paragraph("", Role.SMALL, "look")
        self.others.hide()
        for row in (first, second, self.others):
            rows.addWidget(row)
        self._shown_id = ""
        self._shown_pct: float | None = None
        self._touched = False
        self._connect()

    def show_plan(self, shown: Shown) -> None:
        """Show what comes of the evening; an outdated plan is called so."""
        plan = shown.plan
        if plan is None:
            self.says.say(_("Working out the evening…"), "muted")
        elif shown.outdated:
            self.says.say(_("Working it out anew; below stands the plan before the change."), "muted")
        else:
            self.says.say(summary_text(plan), "ink")
        assumed = _("assumed: {times}") if plan is not None and plan.assumed else "{times}"
        said = "" if plan is None else f"{times_text(plan.times)}; {place_text(plan.times)}"
        self.times.setText(assumed.format(times=said) if said else "")
        self.start_act.setEnabled(plan is not None and plan.has_charger and not shown.outdated)

    def show_starts(self, text: str) -> None:
        """Say with which charges the outing begins where the plan has others; empty: it begins as planned."""
        self.others.say(text, "look")
        self.others.setVisible(bool(text))

    def show_item(self, item: Item | None, pct: float | None) -> None:
        """Show the charge on hand of the current line; a line without a battery has none."""
        self.hand.setVisible(item is not None)
        if item is None:
            return
        other, self._shown_id, self._shown_pct = item.id != self._shown_id, item.id, pct
        self.on_hand.setAccessibleName(_("Charge on hand of {item}").format(item=item.name))
        if other or self.on_hand.number() != pct:
            self.on_hand.put(pct)
            self._touched = False
        is_swollen = item.battery is not None and item.battery.swollen_on is not None
        self.swollen_act.say(_("Not swollen") if is_swollen else _("Swollen"))
        self.swollen_act.setAccessibleName(self.swollen_act.words + ": " + item.name)

    def begin(self, text: str = "") -> None:
        """Type a charge for the current line, beginning with `text`."""
        self.on_hand.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.on_hand.selectAll()
        if text:
            self.on_hand.lineEdit().insert(text)
            self._touched = True

    def _entered(self) -> None:
        """A charge that was typed is a new reading, even where it is that of before."""
        if self.on_hand.is_wrong():
            self.unread.emit(self.on_hand.wrong_text())
            return
        pct, touched = self.on_hand.number(), self._touched
        self._touched = False
        if pct != self._shown_pct or (touched and pct is not None):
            self._shown_pct = pct
            self.typed.emit(pct)

    def _typed(self) -> None:
        self._touched = True

    def _leave(self) -> None:
        if not self.on_hand.is_wrong():
            self.left.emit()

    def _connect(self) -> None:
        self.hours_act.clicked.connect(self.hours)
        self.start_act.clicked.connect(self.start)
        self.swollen_act.clicked.connect(self.swollen)
        self.on_hand.editingFinished.connect(self._entered)
        self.on_hand.lineEdit().returnPressed.connect(self._leave)
        self.on_hand.lineEdit().textEdited.connect(self._typed)
