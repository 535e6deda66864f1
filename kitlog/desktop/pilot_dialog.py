"""The pilot: name, and a dated body mass."""

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import DateField, LineField, NumberField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.mass import BODY_FRESH_DAYS, BODY_G
from kitlog.outing.pilot import BodyMass
from kitlog.wording.figures import day_text, kg_text
from kitlog.wording.translate import _

LEAST_KG, MOST_KG = 20, 250


class PilotDialog(Dialog):
    """Name and body mass; earlier masses stay on record."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(_("Pilot and body mass"), _("Save"), parent, wide=440)
        self._desk = desk
        pilot = desk.bench.pilot()
        self.name = LineField(pilot.name if pilot else "")
        self.mass = NumberField("kg", decimals=1, least=LEAST_KG, most=MOST_KG)
        self.day = DateField()
        self.day.put(desk.bench.now().date())
        self.how = LineField(hint=_("without clothes, in the morning"))
        form = Form()
        form.add(_("Name"), self.name)
        form.add(_("Body mass"), self.mass)
        form.add(_("Taken on"), self.day)
        form.add(_("How"), self.how)
        self.body.addWidget(form)
        fresh = _("Reckoned with ± {mass} for {days} days, with more after.")
        self.body.addWidget(Paragraph(fresh.format(mass=kg_text(BODY_G), days=BODY_FRESH_DAYS)))
        if pilot is not None and pilot.masses:
            known = Section(_("On record"))
            newest_first = sorted(pilot.masses, key=lambda mass: mass.taken_on, reverse=True)
            known.add_figures([(day_text(m.taken_on), kg_text(m.mass_g), m.how) for m in newest_first[:6]])
            self.body.addWidget(known)
        self.name.textChanged.connect(lambda _text: self._look())
        self._look()

    def accept(self) -> None:
        """Save name and, if one was given, the mass."""
        if self.attempt(self._save):
            super().accept()

    def _look(self) -> None:
        self.want("" if self.name.text().strip() else _("It needs a name."))

    def _save(self) -> None:
        bench, name = self._desk.bench, self.name.text().strip()
        mass_kg, day = self.mass.number(), self.day.day() or self._desk.bench.now().date()
        pilot = bench.pilot()
        if mass_kg is not None:
            taken = BodyMass(taken_on=day, mass_g=round(mass_kg * 1000), how=self.how.text())
            bench.add_body_mass(taken, name)
        elif pilot is not None and pilot.name != name:
            bench.save_pilot(pilot.model_copy(update={"name": name}))
        elif pilot is None:
            from kitlog.outing.pilot import Pilot

            bench.save_pilot(Pilot(id=bench.new_id(), name=name))
