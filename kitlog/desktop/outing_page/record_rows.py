"""What is on record of the things that go along, on the day of the outing: use, and each rule with both limits."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.due_marks import MARKS, due_brief
from kitlog.desktop.kit_page.record_sections import airtime_text, launches_text
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.service_page.band_lanes import state_word
from kitlog.kit.due import Due, DueState
from kitlog.packing.assessment import Assessment
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text
from kitlog.wording.rules import rule_text
from kitlog.wording.season_text import FORESEEN
from kitlog.wording.translate import _
from kitlog.workbench.season_commands import OnRecord

Read = Callable[[str], OnRecord | None]
"""What is on record of an item on the day of the outing, by its id."""


@dataclass(frozen=True, slots=True)
class Records:
    """How the records are read, and what shows all rules of an item."""

    read: Read
    show: Callable[[str], object]


def record_section(assessment: Assessment, records: Records) -> QWidget | None:
    """A block for each thing that goes along and has rules or hours; None where there is none."""
    found = [record for line in assessment.lines if not line.in_car and (record := records.read(line.item.id))]
    told = [record for record in found if _rules(record) or record.is_used]
    if not told:
        return None
    day = day_text(assessment.judged_on)
    section = Section(_("On record for {day}").format(day=day))
    if assessment.judged_on > assessment.now.date():
        section.rows.addWidget(Paragraph(_(FORESEEN), Role.SMALL))
    for record in told:
        section.rows.addWidget(_block(record, records.show))
    return section


def _block(record: OnRecord, show: Callable[[str], object]) -> QWidget:
    made, rows = QWidget(), QVBoxLayout()
    made.setLayout(rows)
    rows.setContentsMargins(0, look.px(4), 0, look.px(4))
    rows.setSpacing(0)
    head = WrapRow(gap=8, under=0)
    head.add(Text(record.item.name, Role.NAME))
    if record.is_used:
        head.add(Text(", ".join((airtime_text(record), launches_text(record))), Role.SMALL, "muted"))
    act = Button(_("All rules"), Rank.ACT)
    act.setAccessibleName(_("All rules of {name}").format(name=record.item.name))
    act.setObjectName(f"rules/{record.item.id}")
    act.clicked.connect(lambda _on=False: show(record.item.id))
    head.add(act, pushed=True)
    rows.addWidget(head)
    for due in _rules(record):
        rows.addWidget(_rule_row(due))
    return made


def _rule_row(due: Due) -> QWidget:
    row = WrapRow(gap=8, under=0)
    row.add(StateMark(state_word(due), MARKS[due.state], on_tint=False), Text(rule_text(due.rule), Role.SMALL))
    row.add(Text(due_brief(due), Role.SMALL, "muted"))
    row.setToolTip(due_sentence(due))
    row.setAccessibleName(f"{rule_text(due.rule)}, {state_word(due)}: {due_sentence(due)}")
    return row


def _rules(record: OnRecord) -> tuple[Due, ...]:
    """The rules that say something: not those that do not apply, nor those that only wait for an event."""
    return tuple(due for due in record.dues if MARKS[due.state] is not Mark.NONE and not _waits(due))


def _waits(due: Due) -> bool:
    limits = (due.due_on, due.hours_left, due.launches_left)
    return due.state is DueState.IN_DATE and all(limit is None for limit in limits)
