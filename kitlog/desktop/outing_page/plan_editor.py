"""The editor of the plan: the draft is assessed while one types; nothing is written before Save."""

from pydantic import ValidationError
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.outing_page.condition_fields import ConditionFields, SetFields, titled
from kitlog.desktop.outing_page.day_fields import DayFields
from kitlog.desktop.outing_page.people_table import PeopleTable
from kitlog.desktop.outing_page.phase_table import PhaseTable
from kitlog.desktop.outing_page.wide_area import WideArea
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.fault import Fault
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_plan import with_phases_renamed
from kitlog.paint.type_scale import Role
from kitlog.units.refused import refused
from kitlog.wording.faults import fault_text
from kitlog.wording.figures import kg_text
from kitlog.wording.translate import _
from kitlog.wording.words import counts_text, first_upper

ASSESS_AFTER_MS = 200
"""Typing comes first: the draft is assessed when it pauses."""

FIELDS = {
    "first_day": "first_day",
    "last_day": "first_day",
    "days": "first_day",
    "name": "name",
    "flight_types": "flight_types",
    "time_zone": "starts_at",
    "starts_at": "starts_at",
    "site": "site",
    "top_m": "site",
}
"""Under which field of the form a field of the model is spoken of; all others are said above the buttons."""

CODES = {"outing.days_reversed": "first_day", "outing.unknown_time_zone": "starts_at"}


class PlanEditor(Dialog):
    """The form of an outing.

    Attributes:
        assessed: the last draft that could be assessed, for whoever asks.
    """

    def __init__(self, desk: Desk, outing: Outing, parent: QWidget, *, is_new: bool = False) -> None:
        title = _("New outing") if is_new else _("Plan")
        super().__init__(title, _("Save"), parent, wide=760)
        self._desk, self._outing = desk, outing
        self.assessed: Assessment | None = None
        bench = desk.bench
        self.day = DayFields(outing, bench.library)
        self.phases = PhaseTable(outing.phases)
        self.people = PeopleTable(outing.people, bench.now())
        self.conditions = ConditionFields(outing.conditions)
        self.chosen = SetFields(outing, bench.items(), bench.library)
        self.phase_note = Paragraph("", Role.SMALL, "stop")
        self.phase_note.hide()
        self._fill()
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(ASSESS_AFTER_MS)
        self._later.timeout.connect(self.look)
        for part in (self.day, self.phases, self.people, self.conditions, self.chosen):
            part.changed.connect(self._later.start)
        self.look()
        self.day.name.setFocus()

    def draft(self) -> Outing:
        """The outing as it stands in the form.

        Raises:
            pydantic.ValidationError: something cannot be so.
        """
        raw = {name: getattr(self._outing, name) for name in Outing.model_fields}
        entered = self.day.values() | self.chosen.values()
        lists = {"phases": self.phases.values(), "people": self.people.values(), "conditions": self.conditions.values()}
        return with_phases_renamed(Outing(**(raw | entered | lists)), self.phases.renamed())

    def accept(self) -> None:
        """Save what stands in the form; a figure that cannot be so is said and nothing is written."""
        self._later.stop()
        self.look()
        if self.main.isEnabled() and self.attempt(lambda: self._desk.bench.save_outing(self.draft())):
            super().accept()

    def hideEvent(self, event: QHideEvent) -> None:
        """What has been left is not assessed any more."""
        self._later.stop()
        super().hideEvent(event)

    def look(self) -> None:
        """Assess the draft and show what it comes to; what cannot be so is said at its field."""
        faults, phase_fault = self.day.faults(), self.phases.fault()
        self.assessed = None if faults or phase_fault else self._assess(faults)
        for name, note in self.day.notes.items():
            _say(note, faults.pop(name, ""))
        _say(self.phase_note, phase_fault or faults.pop("phases", ""))
        self.say_wrong(" ".join(faults.values()))
        self.want("" if self.assessed is not None else _("Something above cannot be so."))
        self._show()

    def _assess(self, faults: dict[str, str]) -> Assessment | None:
        """Assess the draft, or add to `faults`, by the field of the form, why it cannot be."""
        fault: Fault
        try:
            return self._desk.bench.assess(self.draft())
        except ValidationError as error:
            fault = refused(error)
        except Fault as refusal:
            fault = refusal
        head = str(fault.facts.get("field", "")).split(".")[0]
        field = "phases" if head == "phases" else FIELDS.get(head) or CODES.get(fault.code, "")
        text = fault_text(fault)
        faults[field] = first_upper(f"{text.what}. {text.remedy}")
        return None

    def _show(self) -> None:
        if self.assessed is None:
            self.live.say(_("not known while something cannot be so"), "muted")
            return
        mass, counts = self.assessed.mass, self.assessed.counts
        least = kg_text(mass.take_off_g) if mass.take_off_g else _("at least {mass}").format(mass=kg_text(mass.known_g))
        said = _("Take-off {mass}, {counts}").format(
            mass=least, counts=counts_text(counts.stop, counts.look, counts.not_known)
        )
        self.live.say(said, "stop" if counts.stop else "ink")
        self.live.setAccessibleName(said)

    def _fill(self) -> None:
        self.live = Paragraph("", Role.GROUP, "ink")
        self.live.setObjectName("live")
        self.foot_row.insertWidget(0, self.live, 3, Qt.AlignmentFlag.AlignVCenter)
        self.body.setSpacing(look.px(16))
        self.body.addWidget(self.day)
        phases = titled(_("Phases"), WideArea(self.phases))
        phases.rows.addWidget(self.phase_note)
        self.body.addWidget(phases)
        self.body.addWidget(titled(_("People"), WideArea(self.people)))
        self.body.addWidget(titled(_("Set and water"), self.chosen))
        self.body.addWidget(titled(_("Conditions of the day"), self.conditions))


def _say(note: Text, text: str) -> None:
    note.setText(text)
    note.setVisible(bool(text))
