"""What is on record of an item at a glance: its rules with both limits, on the day of the outing too, and its use."""

from collections.abc import Iterator
from datetime import timedelta

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.due_marks import MARKS, due_brief
from kitlog.desktop.kit_page.month_bars import MonthBars, month_hours
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.desktop.service_page.band_lanes import state_word
from kitlog.kit.due import Due, DueState
from kitlog.kit.usage import RATE_DAYS, logged
from kitlog.outing.outing import Outing
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text, with_unit
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _, ngettext
from kitlog.workbench.season_commands import OnRecord


def add_rules(section: Section, dues: tuple[Due, ...], then: tuple[Due, ...]) -> None:
    """A row a rule: state, rule, when; below it what another day says, where that differs.

    Args:
        section: where the rows go.
        dues: the rules judged today.
        then: the same judged on the last day of the outing being worked on; empty without one.
    """
    later = {due.rule_id: due for due in then}
    for due in dues:
        row = WrapRow(gap=8, under=0)
        shown = MARKS[due.state] is not Mark.NONE
        row.add(
            StateMark(state_word(due), MARKS[due.state]) if shown else Text(state_word(due), Role.SMALL, "muted"),
            Text(rule_text(due.rule), Role.SECOND),
        )
        said = Text(due_brief(due), Role.SMALL, "muted")
        said.setToolTip(due_sentence(due))
        row.add(said, pushed=True)
        row.setAccessibleName(f"{rule_text(due.rule)}, {state_word(due)}: {due_sentence(due)}")
        section.rows.addWidget(row)
        for text in _differs(due, later.get(due.rule_id)):
            section.rows.addWidget(Paragraph(text, Role.SMALL, _TONES.get(later[due.rule_id].state, "muted")))


_TONES = {DueState.OVERDUE: "stop", DueState.DUE_SOON: "look", DueState.RECOMMENDED_PASSED: "look"}


def _differs(due: Due, then: Due | None) -> Iterator[str]:
    """What the day of the outing says, where it is another state than today."""
    if then is not None and (then.state, then.foreseen) != (due.state, due.foreseen):
        day = day_text(then.on, year=then.on.year != due.on.year)
        yield _("on the outing, {day}: {state}; {said}").format(
            day=day, state=state_word(then), said=due_sentence(then)
        )


def coming_outing(desk: Desk) -> Outing | None:
    """The outing being worked on, if it is not over."""
    outing = desk.outing()
    return outing if outing is not None and outing.last_day >= desk.bench.now().date() else None


def use_section(desk: Desk, record: OnRecord) -> Section | None:
    """Hours and launches, opening balance included, and the hours of the last 12 months."""
    if not record.is_used:
        return None
    today, flights = desk.bench.now().date(), desk.bench.book().flown_with(record.item.id)
    year_h = logged(flights, after=today - timedelta(days=RATE_DAYS), until=today).airtime_h
    section = Section(_("Use"), _("Flights"), lambda: desk.show("flights", ""))
    row, words = QHBoxLayout(), QVBoxLayout()
    row.setSpacing(look.px(16))
    words.setSpacing(0)
    words.addWidget(Text(airtime_text(record), Role.SECTION))
    for text in (*_more(record), _("{hours} in 12 months").format(hours=with_unit(year_h, "h", 1))):
        words.addWidget(Text(text, Role.SMALL, "muted"))
    row.addLayout(words)
    row.addWidget(MonthBars(month_hours(flights, today), today), 1)
    section.rows.addLayout(row)
    if record.item.opening_h is None:
        section.rows.addWidget(Paragraph(_("Hours before the log are not known."), Role.SMALL))
    return section


def airtime_text(record: OnRecord) -> str:
    """Hours in the air; *at least* while those before the log are not known."""
    hours = with_unit(record.airtime_h, "h", 1)
    return hours if record.item.opening_h is not None else _("at least {hours}").format(hours=hours)


def launches_text(record: OnRecord) -> str:
    """Launches, likewise."""
    n = record.launches
    if record.item.opening_launches is None and record.item.opening_h != 0:
        return ngettext("at least {n} launch", "at least {n} launches", n).format(n=n)
    return ngettext("{n} launch", "{n} launches", n).format(n=n)


def _more(record: OnRecord) -> Iterator[str]:
    yield launches_text(record)
    if record.ground_h:
        yield _("{hours} ground handling").format(hours=with_unit(record.ground_h, "h", 1))
