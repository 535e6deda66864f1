"""Beside the list of charging: the hand steps by the clock, what would help, what to know."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.section import Section, clear
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.repack_page.charge_rows import Shown
from kitlog.packing.charging import Charge
from kitlog.packing.evening_plan import EveningPlan
from kitlog.packing.storage_due import StorageLine
from kitlog.paint.type_scale import Role
from kitlog.wording.charge_lines import storage_act_text, storage_why_text
from kitlog.wording.charge_text import (
    clock_of,
    help_text,
    missing_remedies,
    note_text,
    piece_text,
    plan_tried_texts,
    step_text,
)
from kitlog.wording.findings import Names
from kitlog.wording.sheet_words import charge_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

MOST_UNUSED = 4
"""So many things that lie unused are named; the dialog has all."""


@dataclass(frozen=True, slots=True)
class Unused:
    """What stays at home and wants its storage charge; now: for when it was seen; show: opens all of it."""

    lines: tuple[StorageLine, ...]
    now: datetime
    show: Callable[[], object]


class EveningPanel(QScrollArea):
    """The evening in words; it scrolls where it is long."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(_("The evening by the clock"))
        inside = QWidget()
        self.rows = QVBoxLayout(inside)
        self.rows.setContentsMargins(0, look.px(8), look.px(12), 0)
        self.rows.setSpacing(look.px(16))
        self.setWidget(inside)
        self._shown: tuple[object, ...] = ()

    def show_plan(self, shown: Shown, charges: Sequence[Charge], names: Names, unused: Unused) -> None:
        """Show a plan, how long things last, and what lies unused; nothing is laid out anew for the same."""
        now = (shown.plan, shown.outdated, tuple(charges), names, unused.lines)
        if self._shown == now:
            return
        self._shown = now
        clear(self.rows)
        for section in sections(shown, charges, names, unused):
            self.rows.addWidget(section)
        self.rows.addStretch()


class EveningDialogue(Dialog):
    """The same over the page, where there is no room beside the list."""

    def __init__(self, shown: Shown, charges: Sequence[Charge], names: Names, unused: Unused, parent: QWidget) -> None:
        super().__init__(_("The evening by the clock"), "", parent, wide=480)
        for section in sections(shown, charges, names, unused):
            self.body.addWidget(section)


def sections(shown: Shown, charges: Sequence[Charge], names: Names, unused: Unused) -> Iterable[Section]:
    """What is done when, what would help, what to know; how long it lasts when it begins the day as planned so far.

    Last what stays at home unused and wants its storage charge.
    """
    if shown.plan is not None:
        yield from _of_plan(shown.plan, names, outdated=shown.outdated)
    lasting = [charge for charge in charges if charge.likely.reckoned or charge.high.reckoned]
    if lasting:
        section = Section(_("Left at the end, likely / high"))
        for charge in lasting:
            said = _("{item}: {lasting}").format(item=charge.item.name, lasting=charge_text(charge))
            section.rows.addWidget(Paragraph(said, Role.SECOND, "ink"))
        yield section
    if unused.lines:
        yield _of_unused(unused)


def _of_unused(unused: Unused) -> Section:
    title = _("Storage charge ({n})").format(n=len(unused.lines))
    section = Section(title, _("On hand…"), unused.show)
    for line in unused.lines[:MOST_UNUSED]:
        said = _("{item}: {act}").format(item=line.item.name, act=storage_act_text(line))
        section.rows.addWidget(Paragraph(said, Role.SECOND, "ink"))
        section.rows.addWidget(Paragraph(first_upper(storage_why_text(line, unused.now)), Role.SMALL))
    more = len(unused.lines) - MOST_UNUSED
    if more > 0:
        section.rows.addWidget(Paragraph(_("and {n} more").format(n=more), Role.SECOND, "muted"))
    return section


def _of_plan(plan: EveningPlan, names: Names, *, outdated: bool) -> Iterable[Section]:
    tone = "muted" if outdated else "ink"
    steps = Section(_("By the clock, outdated") if outdated else _("By the clock"))
    for step in plan.steps:
        steps.rows.addLayout(_timed(clock_of(step.at_h), first_upper(step_text(step)), tone))
    if not plan.steps:
        steps.rows.addWidget(Paragraph(_("Nothing to plug in."), Role.SECOND, "muted"))
    yield steps
    helps = [*missing_remedies(plan, names), *(help_text(one) for one in plan.helps or ())]
    if plan.bottleneck is not None:
        helps.append(_("Short is the charger: {charger}.").format(charger=piece_text(plan.bottleneck)))
    if plan.helps is None and not plan.all_full:
        helps.append(_("Trying what would help…"))
    yield from _listed(_("What would help"), helps, tone)
    notes = [note_text(note, names) for note in plan.notes]
    yield from _listed(_("To know"), [*plan_tried_texts(plan), *notes], "muted")


def _listed(title: str, texts: Iterable[str], tone: str) -> Iterable[Section]:
    found = list(texts)
    if found:
        section = Section(title)
        for text in found:
            section.rows.addWidget(Paragraph(first_upper(text), Role.SECOND, tone))
        yield section


def _timed(time: str, text: str, tone: str) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setSpacing(look.px(12))
    at = Text(time, Role.NAME, tone)
    at.setFixedWidth(look.px(48))
    row.addWidget(at, 0, Qt.AlignmentFlag.AlignTop)
    row.addWidget(Paragraph(text, Role.BODY, tone), 1)
    return row
