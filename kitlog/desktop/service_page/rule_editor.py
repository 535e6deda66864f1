"""The editor of a service rule."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.rule_scope import RuleScope
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.model_rules import FIGURES
from kitlog.kit.service import WARN_DAYS, CountsFrom, Grounds, ServiceRule
from kitlog.outing.library import StarterRule
from kitlog.paint.type_scale import Role
from kitlog.wording.rule_limits import WHILE_OPEN
from kitlog.wording.rule_lines import figures_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _
from kitlog.wording.words import word

MANUAL = N_(
    "Figures come from the maker’s manual of this very model, or from national rules; those override any starter."
)
OTHER_FIGURES = N_("These are no longer the figures of that source: give the new one, else it is left out.")
NEVER = N_("none")


class RuleEditor(Dialog):
    """Add a rule, edit one, or finish a starter that wants a date; for the item alone, or for all of its model.

    Args:
        desk: the window's desk.
        item: whose rule.
        rule: the rule to be edited, None for a new one.
        starter: the starter that a new one begins with.
        parent: the widget it stands over.
        for_model: whether it is meant for all of the model to begin with; a rule that follows its model always is.
    """

    def __init__(
        self,
        desk: Desk,
        item: Item,
        rule: ServiceRule | None,
        starter: StarterRule | None,
        parent: QWidget,
        *,
        for_model: bool = False,
    ) -> None:
        title = _("Service rule of {name}").format(name=item.name)
        super().__init__(title, _("Save"), parent, wide=520)
        self._desk, self._item, self._rule, self._starter = desk, item, rule, starter
        self.scope = RuleScope(desk, item)
        self.scope.choose(for_model=for_model or (rule is not None and rule.of_model is not None))
        self.follow = Button(_("Take the figures of the model"), Rank.ACT)
        self.name = LineField()
        self.months = NumberField(_("months"), least=1, most=1200, unknown=_(NEVER))
        self.advised = NumberField(_("months"), least=1, most=1200, unknown=_(NEVER))
        self.hours = NumberField("h", decimals=1, most=100_000, unknown=_(NEVER))
        self.launches = NumberField(least=1, most=1_000_000, unknown=_(NEVER))
        self.due_on = DateField()
        self.events = LineField(hint=_("blow, water, tree"))
        self.event_days = NumberField(_("days"), most=3650, unknown=_("at once"))
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
        self.name.editingFinished.connect(self._show_reach)
        self.scope.changed.connect(self._show_reach)
        self.follow.clicked.connect(self._follow)
        self._watch_source()
        self._look()
        self._show_reach()

    def accept(self) -> None:
        """Save the rule, for the item or for all of its model."""
        if self.attempt(self._save):
            super().accept()

    def _save(self) -> None:
        rule = self.draft()
        if self.scope.for_model:
            self._desk.bench.save_for_model(rule, all_items=self.scope.all_items)
        else:
            self._desk.bench.save_rule(rule)

    def _follow(self) -> None:
        rule = self._rule
        if rule is not None and self.attempt(lambda: self._desk.bench.follow_model(rule.id)):
            super().accept()

    def _show_reach(self) -> None:
        """Tell what saving does to the rules of others, and what the model has to say."""
        bench, draft = self._desk.bench, self._probe()
        model = bench.model_rule_of(draft) if draft is not None else None
        may_follow = self._rule is not None and self._rule.of_model is None and model is not None
        self.follow.setVisible(may_follow and not self.scope.for_model)
        if draft is not None and self.scope.for_model:
            as_model = bench.as_model_rule(draft)
            self.scope.show_reach(None if as_model is None else bench.reach_of(as_model, [draft.id]))
        elif model is not None and self._rule is not None and self._rule.of_model is not None:
            self.scope.show_reach(None, _("With other figures it no longer follows the rule of its model."))
        elif model is not None:
            told = _("The model has a rule for this: {figures}").format(figures=figures_text(model))
            self.scope.show_reach(None, told)
        else:
            self.scope.show_reach(None)

    def _probe(self) -> ServiceRule | None:
        """A rule of the name that stands there, to ask whom it would reach; None without a name."""
        name = self._name()
        if not name:
            return None
        rule_id = self._rule.id if self._rule else "new"
        of_model = self._rule.of_model if self._rule else None
        return ServiceRule(id=rule_id, item_id=self._item.id, rule=name, months=1, of_model=of_model)

    def _watch_source(self) -> None:
        """Figures that are changed are no longer those of their source: told at once, and left out when saved."""
        for field in (self.months, self.advised, self.hours, self.launches, self.event_days):
            field.valueChanged.connect(lambda _value: self._show_source())
        self.due_on.dateChanged.connect(lambda _day: self._show_source())
        self.counts.currentIndexChanged.connect(lambda _index: self._show_source())
        for line in (self.events, self.source):
            line.textChanged.connect(lambda _text: self._show_source())

    def _show_source(self) -> None:
        self.source_note.setVisible(self._source_is_gone())

    def _source_is_gone(self) -> bool:
        """Whether the figures were changed, and the source that stands there is still the one of those before."""
        before = self._rule or self._starter
        if before is None or not before.source or self.source.text().strip() != before.source[:200].strip():
            return False
        told = {field: value for field, value in self._figures().items() if hasattr(before, field)}
        return any(value != getattr(before, field) for field, value in told.items())

    def draft(self) -> ServiceRule:
        """The rule as it stands in the form.

        Raises:
            pydantic.ValidationError: it has no limit, or its limits contradict each other.
        """
        return ServiceRule.model_validate(
            {
                "id": self._rule.id if self._rule else self._desk.bench.new_id(),
                "item_id": self._item.id,
                "of_model": self._rule.of_model if self._rule else None,
                "rule": self._name(),
                **self._figures(),
                "ground_handling": self.ground.isChecked(),
                "lead_days": self.lead.whole() or 0,
                "warn_days": WARN_DAYS if self.warn.whole() is None else self.warn.whole(),
                "grounds": self.grounds.chosen(),
                "source": "" if self._source_is_gone() else self.source.text(),
                "applies": self.applies.isChecked(),
            }
        )

    def _figures(self) -> dict[str, object]:
        """What a source vouches for."""
        figures: dict[str, object] = {
            "months": self.months.whole(),
            "recommended_months": self.advised.whole(),
            "hours": self.hours.number() or None,
            "launches": self.launches.whole(),
            "due_on": self.due_on.day(),
            "events": tuple(part.strip() for part in self.events.text().split(",") if part.strip()),
            "event_days": self.event_days.whole() or 0,
            "counts_from": self.counts.chosen(),
        }
        return {field: figures[field] for field in FIGURES}

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
            self.ground.setChecked(self._item.kind is Kind.WING)
            return
        known = self._rule.rule if self._rule else self._starter.name if self._starter else ""
        self.name.setText(rule_text(known))
        self.months.put(model.months)
        self.advised.put(model.recommended_months)
        self.hours.put(model.hours)
        self.launches.put(model.launches)
        self.events.setText(", ".join(model.events))
        self.event_days.put(model.event_days or None)
        self.counts.choose(model.counts_from)
        self.ground.setChecked(model.ground_handling)
        self.lead.put(model.lead_days or None)
        self.source.setText(model.source[:200])
        self.source.setCursorPosition(0)
        if self._rule is not None:
            self.due_on.put(self._rule.due_on)
            self.warn.put(self._rule.warn_days)

    def _assemble(self) -> None:
        head = Form()
        head.add(_("What must be done"), self.name)
        self.body.addWidget(head)
        self.body.addWidget(self.scope)
        self.body.addWidget(self.follow, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(Paragraph(_(MANUAL), Role.SECOND, "look"))
        limits, form = Section(_("When: whichever comes first")), Form()
        form.add(_("Every"), self.months)
        form.add(_("Advised every"), self.advised)
        form.add(_("Airtime"), self.hours)
        form.add(_("Launches"), self.launches)
        form.add(_("Printed date"), self.due_on)
        form.add(_("After an event"), self.events)
        form.add(_("Then within"), self.event_days)
        form.add(_("Months count from"), self.counts)
        form.add_wide(self.ground)
        limits.rows.addWidget(form)
        more, rest = Section(_("What it means")), Form()
        rest.add(_("While open"), self.grounds)
        rest.add(_("Book ahead"), self.lead)
        rest.add(_("Due soon from"), self.warn)
        rest.add(_("Where it comes from"), self.source)
        self.source_note = rest.add_note(_(OTHER_FIGURES), "look")
        self.source_note.setVisible(False)
        rest.add_wide(self.applies)
        more.rows.addWidget(rest)
        self.body.addWidget(limits)
        self.body.addWidget(more)

    def _look(self) -> None:
        self.want("" if self.name.text().strip() else _("Say what must be done."))
