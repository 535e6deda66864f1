"""Logging what happened to the kit: a bath, a tree, a blow; what that opens is shown before it is written."""

from datetime import date

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.note_field import NoteField
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.struck_rows import StruckRows
from kitlog.kit.incidents import Incident
from kitlog.kit.item import Item
from kitlog.paint.type_scale import Role
from kitlog.wording.incident_text import fitted_text, incident_label
from kitlog.wording.translate import N_, _
from kitlog.wording.words import first_upper
from kitlog.workbench.incident_commands import OTHER

CAUTION = N_(
    "What is open stays open until a service record answers it. The maker’s manual and inspectors have the last word."
)


class EventDialog(Dialog):
    """What happened, when, and to which things."""

    def __init__(self, desk: Desk, item_id: str, parent: QWidget) -> None:
        super().__init__(_("Log an event"), _("Log"), parent, wide=560)
        self._desk = desk
        self._first = item_id
        self._incidents = desk.bench.incidents()
        self.kind = ChoiceField([("", _("choose"))])
        self.kind.offer([("", _("choose")), *((one.name, first_upper(incident_label(one))) for one in self._incidents)])
        self.kind.choose("")
        self.day = DateField()
        self.day.put(desk.bench.now().date())
        self.struck = StruckRows(self._look)
        self.more = ChoiceField()
        self.note = NoteField(56)
        self._assemble()
        self.kind.currentIndexChanged.connect(lambda _index: self._offer())
        self.day.dateChanged.connect(lambda _day: self._offer())
        self.note.textChanged.connect(self._look)
        self.more.activated.connect(lambda _index: self._add())
        self._offer()

    def accept(self) -> None:
        """Write the event of each ticked thing, and the rules that it lacks."""
        bench, incident, ids = self._desk.bench, self._incident(), self.struck.ticked()
        if incident is None or not ids:
            return
        if self.attempt(lambda: bench.log_incident(incident, ids, self._day(), self.note.toPlainText())):
            super().accept()

    def _incident(self) -> Incident | None:
        name = self.kind.chosen()
        return next((one for one in self._incidents if one.name == name), None)

    def _day(self) -> date:
        return self.day.day() or self._desk.bench.now().date()

    def _offer(self) -> None:
        """The thing it was opened for and what was flown then are offered; what is nearly always struck is ticked."""
        incident = self._incident()
        able = {item.id: item for item in self._desk.bench.can_strike(incident)} if incident else {}
        flown = self._desk.bench.flown_then(self._day())
        begun = (self._first, *self._fitted_to(self._first))
        near = [able[item_id] for item_id in dict.fromkeys((*begun, *flown)) if item_id in able]
        self.struck.put(near, [item.id for item in near if incident and self._usual(incident, item)])
        rest = sorted((item for item in able.values() if item not in near), key=lambda item: item.name.casefold())
        self.more.offer([("", _("add …")), *((item.id, item.name) for item in rest)])
        self.more.choose("")
        self.things.setVisible(incident is not None)
        self._more_row.setVisible(bool(rest))
        self._nothing.setVisible(incident is not None and not able)
        self.origin.setText(_(incident.source) if incident else "")
        self.origin.setVisible(incident is not None)
        self._look()
        self._grow()

    def _fitted_to(self, item_id: str) -> tuple[str, ...]:
        """Ids of what is fitted to a thing and may have been struck with it."""
        incident = self._incident()
        fitted = self._desk.bench.fitted_too(incident, [item_id], self._day()) if incident else ()
        return tuple(guest.id for guest, _host in fitted)

    def _usual(self, incident: Incident, item: Item) -> bool:
        """Whether it is ticked from the start: what it was opened for, and what such a thing nearly always strikes."""
        strike = incident.strike(item.kind)
        return item.id == self._first or (strike is not None and strike.usual)

    def _add(self) -> None:
        item = self._desk.bench.item(str(self.more.chosen()))
        if item is not None:
            self.struck.add(item, ticked=True)
            self._add_fitted(item)
        self.more.choose("")
        self._look()

    def _add_fitted(self, host: Item) -> None:
        incident = self._incident()
        if incident is not None:
            for guest, _host in self._desk.bench.fitted_too(incident, [host.id], self._day()):
                self.struck.add(guest, ticked=self._usual(incident, guest))
            self._grow()

    def _look(self) -> None:
        incident, ids = self._incident(), self.struck.ticked()
        if incident is None:
            self.want(_("Say what happened."))
            return
        bench, on = self._desk.bench, self._day()
        asked = {
            guest.id: fitted_text(incident, guest.name, host.name)
            for guest, host in bench.fitted_too(incident, ids, on)
        }
        self.struck.tell(bench.incident_follow_ups(incident, ids, on), bench.library, asked)
        if incident.event == OTHER and not self.note.toPlainText().strip():
            self.want(_("Say in the note what happened."))
            return
        self.want("" if ids else _("Tick what it happened to."))

    def _grow(self) -> None:
        """As high as the things ask for, upwards and downwards alike, within the screen."""
        if not self.isVisible():
            return
        more = self.sizeHint().height() - self.height()
        if more > 0:
            top = self.screen().availableGeometry().top()
            self.move(self.x(), max(top, self.y() - more // 2))
            self.resize(self.width(), self.height() + more)

    def _assemble(self) -> None:
        form = Form()
        form.add(_("What happened"), self.kind)
        self.origin = form.add_note()
        form.add(_("On"), self.day)
        self.body.addWidget(form)
        self.things = Section(_("To what"))
        self.things.rows.addWidget(self.struck)
        self._nothing = Paragraph(_("Nothing in the kit that this can happen to."), Role.SECOND, "muted")
        self.things.rows.addWidget(self._nothing)
        self._more_row = Form()
        self._more_row.add(_("Something else too"), self.more)
        self.things.rows.addWidget(self._more_row)
        self.things.rows.addWidget(Paragraph(_(CAUTION), Role.SMALL, "muted"))
        self.body.addWidget(self.things)
        last = Form()
        last.add(_("Note"), self.note)
        self.body.addWidget(last)
