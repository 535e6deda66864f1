"""Answering in place: a day's question with value and source, a condition with yes or no, a choice of the set."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop.desk import Desk
from kitlog.desktop.outing_page.question_band import subject_text
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.fields import ChoiceField, LineField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Paragraph
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.conditions import OPEN_COUNTS_AS_YES, Condition
from kitlog.outing.library import Check
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Question
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import mass_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

DONE = "done"
NOT_NEEDED = "does not apply"
NOT_DONE = "not done"


class DayDialog(Dialog):
    """A question of the day: what the answer is, and where it comes from."""

    def __init__(self, desk: Desk, outing: Outing, question: Question, parent: QWidget) -> None:
        super().__init__(subject_text(question), _("Answer"), parent, wide=440)
        self._desk, self._outing, self._check = desk, outing, question.id
        check = check_of(desk, question.id)
        self.value = LineField(question.value, hint=_("in a few words"))
        self.source = LineField(hint=_("forecast, station, yourself …"))
        form = Form(96)
        form.add(_("Answer"), self.value)
        form.add(_("Source"), self.source)
        if check is not None:
            self.body.addWidget(Paragraph(_(check.text), Role.BODY, "ink"))
        self.body.addWidget(form)
        self.body.addWidget(Paragraph(_("The answer carries its time and is asked again after 6 hours."), Role.SMALL))
        self.value.textChanged.connect(lambda _text: self._look())
        self._look()
        self.value.setFocus()

    def accept(self) -> None:
        """Write the answer with the present time."""
        if self.attempt(self._save):
            super().accept()

    def _save(self) -> None:
        self._desk.bench.answer(self._outing.id, self._check, self.value.text().strip(), self.source.text().strip())

    def _look(self) -> None:
        self.want("" if self.value.text().strip() else _("It needs an answer."))


class PickDialog(Dialog):
    """One of a few answers, each a button; picked, it is written at once.

    Attributes:
        picks: the buttons, in the order of the answers.
    """

    def __init__(
        self, title: str, text: str, answers: Sequence[tuple[str, Callable[[], object]]], parent: QWidget
    ) -> None:
        super().__init__(title, "", parent, wide=440)
        self.body.addWidget(Paragraph(text, Role.BODY, "ink"))
        row = QHBoxLayout()
        self.picks: list[Button] = []
        for words, do in answers:
            button = Button(words, Rank.PLAIN, large=True)
            button.clicked.connect(lambda _on=False, write=do: self._pick(write))
            row.addWidget(button)
            self.picks.append(button)
        row.addStretch()
        self.body.addLayout(row)
        self.main.say(_("Cancel"))
        self.main.setDefault(False)
        self.main.clicked.disconnect()
        self.main.clicked.connect(self.reject)
        self.picks[0].setFocus()

    def _pick(self, write: Callable[[], object]) -> None:
        if self.attempt(write):
            self.accept()


class SetDialog(Dialog):
    """Which wing, harness, reserve or helmet: the pilot chooses, never the mass."""

    def __init__(self, desk: Desk, outing: Outing, kind: Kind, parent: QWidget, only: Sequence[str] = ()) -> None:
        title = _("Which {kind}?").format(kind=_(desk.bench.library.facts(kind).label))
        super().__init__(title, _("Choose"), parent, wide=440)
        self._desk, self._outing, self._kind = desk, outing, kind
        self.choice = ChoiceField([(item.id, _worded(item)) for item in able(desk, kind, only)])
        self.choice.choose(getattr(outing.set, kind.value, None))
        form = Form(96)
        form.add(first_upper(_(desk.bench.library.facts(kind).label)), self.choice)
        self.body.addWidget(form)
        self.body.addWidget(Paragraph(_("It is kept for the next outing of this type."), Role.SMALL))
        self.want("" if self.choice.chosen() else _("None is in service."))

    def accept(self) -> None:
        """Write the choice."""
        if self.attempt(self._save):
            super().accept()

    def _save(self) -> None:
        chosen = self._outing.set.model_copy(update={self._kind.value: self.choice.chosen()})
        left_out = tuple(name for name in self._outing.left_out if name != self.choice.chosen())
        self._desk.bench.save_outing(self._outing.model_copy(update={"set": chosen, "left_out": left_out}))


def condition_dialog(desk: Desk, outing: Outing, condition: Condition, parent: QWidget) -> PickDialog:
    """Yes or no to a condition of the day."""
    counts = _("Left open, it counts as yes.") if condition in OPEN_COUNTS_AS_YES else _("Left open, it is not known.")

    def tick(*, holds: bool) -> Callable[[], object]:
        return lambda: desk.bench.tick_condition(outing.id, condition.value, holds)

    answers = [(_("Yes"), tick(holds=True)), (_("No"), tick(holds=False))]
    text = _("Does it hold on this outing: {condition}?").format(condition=_(condition.value))
    return PickDialog(first_upper(_(condition.value)), f"{text}\n{counts}", answers, parent)


def check_dialog(desk: Desk, outing: Outing, check_id: str, title: str, parent: QWidget) -> PickDialog:
    """Done, does not apply, or not done: a check that a need asks for."""
    check = check_of(desk, check_id)

    def say(value: str) -> Callable[[], object]:
        return lambda: desk.bench.answer(outing.id, check_id, value)

    answers = [(_("Done"), say(DONE)), (_("Does not apply"), say(NOT_NEEDED)), (_("Not done"), say(NOT_DONE))]
    return PickDialog(title, _(check.text) if check else title, answers, parent)


def question_dialog(desk: Desk, outing: Outing, question: Question, parent: QWidget) -> Dialog:
    """The dialog that fits a question."""
    if question.kind == "condition":
        return condition_dialog(desk, outing, Condition(question.label), parent)
    if question.kind == "set":
        return SetDialog(desk, outing, Kind(question.label), parent)
    return DayDialog(desk, outing, question, parent)


def able(desk: Desk, kind: Kind, only: Sequence[str] = ()) -> list[Item]:
    """Items of a kind that are at hand, by name; `only` some of them."""
    found = [item for item in desk.bench.items() if item.kind is kind and item.usable]
    return sorted((i for i in found if not only or i.id in only), key=lambda item: item.name.casefold())


def check_of(desk: Desk, check_id: str) -> Check | None:
    """A check of the library."""
    return next((check for check in desk.bench.library.checks if check.id == check_id), None)


def _worded(item: Item) -> str:
    more = " ".join(part for part in (item.maker, item.model) if part)
    return ", ".join(part for part in (item.name, more, mass_text(item.mass_g)) if part)
