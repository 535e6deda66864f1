"""The evening before an outing: when hands are there, how many sockets, how warm it is, what must be full first."""

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.outing_page.hour_fields import TimeField
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, NumberField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.item import Item
from kitlog.outing.outing import Evening, Outing
from kitlog.packing.evening_asked import hours_of
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

MOST_H = 24.0
"""From the first time to the last; more than a day is a slip."""


class EveningDialog(Dialog):
    """Hours, sockets, temperature and what comes first; `known`: as told, else as assumed."""

    def __init__(self, desk: Desk, outing: Outing, known: Evening, things: tuple[Item, ...], parent: QWidget) -> None:
        super().__init__(_("The evening before"), _("Keep"), parent, wide=440)
        self._desk, self._outing = desk, outing
        self.times = {
            "from_at": TimeField(known.from_at),
            "bed_at": TimeField(known.bed_at),
            "up_at": TimeField(known.up_at),
            "leave_at": TimeField(known.leave_at),
        }
        self.sockets = NumberField(most=100, unknown=_("enough"))
        self.sockets.put(known.sockets)
        self.place = NumberField("°C", least=-60, most=60)
        self.place.put(known.place_c)
        self._priority = known.priority
        self.first_item = ChoiceField([("", _("as usual: phone first")), *((item.id, item.name) for item in things)])
        self.first_item.choose(known.priority[0] if known.priority else "")
        self.now_act = Button(_("Now"), Rank.ACT)
        self.now_act.clicked.connect(self._begin_now)
        self._assemble()
        for field in self.times.values():
            field.textChanged.connect(lambda _text: self._look())
        self._look()

    def accept(self) -> None:
        """Write it."""
        if self.attempt(lambda: self._desk.bench.set_evening(self._outing.id, self.evening())):
            super().accept()

    def evening(self) -> Evening:
        """What stands in the fields."""
        first = str(self.first_item.chosen() or "")
        rest = tuple(name for name in self._priority[1:] if name != first)
        return Evening(
            **{name: field.time() for name, field in self.times.items()},
            sockets=self.sockets.whole(),
            place_c=self.place.number(),
            priority=(first, *rest) if first else (),
        )

    def _begin_now(self) -> None:
        self.times["from_at"].setText(f"{self._desk.bench.now().astimezone():%H:%M}")

    def _look(self) -> None:
        wrong = next((field for field in self.times.values() if field.time() is None), None)
        if wrong is not None:
            self.want(_("{field}: write it as 19:30, of 24 hours.").format(field=wrong.accessibleName()))
            return
        hours = hours_of(self.evening())
        self.want("" if hours[-1] - hours[0] <= MOST_H else _("They do not follow each other within a day."))

    def _assemble(self) -> None:
        form = Form(136)
        form.add(_("Hands from"), self.times["from_at"], self.now_act)
        form.add(_("Bed at"), self.times["bed_at"])
        form.add(_("Up at"), self.times["up_at"])
        form.add(_("Leaving at"), self.times["leave_at"])
        form.add(_("Free sockets"), self.sockets)
        form.add(_("Where it charges"), self.place)
        form.add(_("Full first"), self.first_item)
        self.body.addWidget(form)
        said = _("Things are swapped between the first two times and between the last two; in the night nobody does.")
        self.body.addWidget(Paragraph(said, Role.SMALL))
