"""The editor of a service rule."""

from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.rule_words import WHILE_OPEN
from kitlog.kit.item import Item
from kitlog.kit.service import WARN_DAYS, CountsFrom, Grounds, ServiceRule
from kitlog.outing.library import StarterRule
from kitlog.paint.type_scale import Role
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _
from kitlog.wording.words import word

MANUAL = N_(
    "Figures come from the maker’s manual of this very model, or from national rules; those override any starter."
)
NEVER = N_("none")


class RuleEditor(Dialog):
    """Add a rule, edit one, or finish a starter that wants a date."""

    def __init__(
        self, desk: Desk, item: Item, rule: ServiceRule | None, starter: StarterRule | None, parent: QWidget
    ) -> None:
        title = _("Service rule of {name}").format(name=item.name)
        super().__init__(title, _("Save"), parent, wide=520)
        self._desk, self._item, self._rule, self._starter = desk, item, rule, starter
        self.name = LineField()
        self.months = NumberField(_("months"), least=1, most=1200, unknown=_(NEVER))
        self.advised = NumberField(_("months"), least=1, most=1200, unknown=_(NEVER))
        self.hours = NumberField("h", decimals=1, most=100_000, unknown=_(NEVER))
        self.launches = NumberField(least=1, most=1_000_000, unknown=_(NEVER))
        self.due_on = DateField()
        self.events = LineField(hint=_("blow, water, tree"))
        self.counts = ChoiceField([(value, word(value.value)) for value in CountsFrom])
        self.ground = TickField(_("Ground handling counts as hours"))
        self.lead = NumberField(_("days"), most=3650, unknown=_(NEVER))
        self.warn = NumberField(_("days"), most=3650, unknown=str(WARN_DAYS))
        self.grounds = ChoiceField([(value, _(WHILE_OPEN[value])) for value in Grounds])
        self.source = LineField(hint=_("manual, page"))
        self.applies = TickField(_("Applies to this item"))
        self._assemble()
        self._put()
        self.name.textChanged.connect(lambda _text: self._look())
        self._look()

    def accept(self) -> None:
        """Save the rule."""
        if self.attempt(lambda: self._desk.bench.save_rule(self.draft())):
            super().accept()

    def draft(self) -> ServiceRule:
        """The rule as it stands in the form.

        Raises:
            pydantic.ValidationError: it has no limit, or its limits contradict each other.
        """
        return ServiceRule.model_validate(
            {
                "id": self._rule.id if self._rule else self._desk.bench.new_id(),
                "item_id": self._item.id,
                "rule": self._name(),
                "months": self.months.whole(),
                "recommended_months": self.advised.whole(),
                "hours": self.hours.number() or None,
                "launches": self.launches.whole(),
                "due_on": self.due_on.day(),
                "events": tuple(part.strip() for part in self.events.text().split(",") if part.strip()),
                "counts_from": self.counts.chosen(),
                "ground_handling": self.ground.isChecked(),
                "lead_days": self.lead.whole() or 0,
                "warn_days": WARN_DAYS if self.warn.whole() is None else self.warn.whole(),
                "grounds": self.grounds.chosen(),
                "source": self.source.text(),
                "applies": self.applies.isChecked(),
            }
        )

    def _name(self) -> str:
        """The name typed; one that is shown for a starter stays that starter."""
        text = self.name.text().strip()
        known = self._rule.rule if self._rule else self._starter.name if self._starter else ""
        return known if known and text == rule_text(known) else text

    def _put(self) -> None:
        model: ServiceRule | StarterRule | None = self._rule or self._starter
        self.applies.setChecked(self._rule.applies if self._rule else True)
        self.grounds.choose(model.grounds if model else Grounds.NO)
        if model is None:
            return
        known = self._rule.rule if self._rule else self._starter.name if self._starter else ""
        self.name.setText(rule_text(known))
        self.months.put(model.months)
        self.advised.put(model.recommended_months)
        self.hours.put(model.hours)
        self.launches.put(model.launches)
        self.events.setText(", ".join(model.events))
        self.counts.choose(model.counts_from)
        self.ground.setChecked(model.ground_handling)
        self.lead.put(model.lead_days or None)
        self.source.setText(model.source[:200])
        if self._rule is not None:
            self.due_on.put(self._rule.due_on)
            self.warn.put(self._rule.warn_days)

    def _assemble(self) -> None:
        head = Form()
        head.add(_("What must be done"), self.name)
        self.body.addWidget(head)
        self.body.addWidget(Paragraph(_(MANUAL), Role.SECOND, "look"))
        limits, form = Section(_("When: whichever comes first")), Form()
        form.add(_("Every"), self.months)
        form.add(_("Advised every"), self.advised)
        form.add(_("Airtime"), self.hours)
        form.add(_("Launches"), self.launches)
        form.add(_("Printed date"), self.due_on)
        form.add(_("After"), self.events)
        form.add(_("Months count from"), self.counts)
        form.add_wide(self.ground)
        limits.rows.addWidget(form)
        more, rest = Section(_("What it means")), Form()
        rest.add(_("While open"), self.grounds)
        rest.add(_("Book ahead"), self.lead)
        rest.add(_("Due soon from"), self.warn)
        rest.add(_("Where it comes from"), self.source)
        rest.add_wide(self.applies)
        more.rows.addWidget(rest)
        self.body.addWidget(limits)
        self.body.addWidget(more)

    def _look(self) -> None:
        self.want("" if self.name.text().strip() else _("Say what must be done."))
