"""What a tile opens: its picture, its findings, and for the kit what goes and what stays."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.budget.result import Topic
from kitlog.desktop import look
from kitlog.desktop.outing_page import weight_words
from kitlog.desktop.outing_page.finding_rows import RowActs, finding_list
from kitlog.desktop.outing_page.item_rows import ItemLine, item_list
from kitlog.desktop.outing_page.power_topic import PowerTools, PowerTopic
from kitlog.desktop.outing_page.record_rows import Records, record_section
from kitlog.desktop.outing_page.topics import TITLES
from kitlog.desktop.outing_page.weight_view import WeightView
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.packing.assessment import Assessment
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import mass_text
from kitlog.wording.findings import Names
from kitlog.wording.lines import needs_by_id, passed_over_text, why_text
from kitlog.wording.power_mending_text import not_simulated_text, unknown_text
from kitlog.wording.translate import _
from kitlog.wording.words import ALARMS_NOBODY, first_upper


@dataclass(frozen=True, slots=True)
class TopicActs:
    """What can be done in a view: findings' acts, drawing days, letting an item go, leaving it at home, its records."""

    rows: RowActs
    power: PowerTools
    take_along: Callable[[str], object]
    leave_out: Callable[[str], object]
    records: Records


def topic_view(
    topic: Topic | None, assessment: Assessment, names: Names, acts: TopicActs, *, at_once: bool = True
) -> QWidget:
    """The view of a topic; None shows all findings, worst first.

    Without `at_once` the long lists of the kit follow one by one when there is time, so that nothing stalls.
    """
    made = QWidget()
    rows = QVBoxLayout(made)
    rows.setContentsMargins(0, 0, 0, look.px(16))
    rows.setSpacing(look.px(12))
    if topic is Topic.POWER:
        _add_power(rows, assessment, names, acts.power)
    elif topic is Topic.WEIGHT:
        words = weight_words.weight_sentences(assessment, names)
        rows.addWidget(WeightView(_("Weight ruler"), weight_words.weight_picture(assessment, names), words))
    else:
        rows.addLayout(_head(topic))
    findings = assessment.findings if topic is None else assessment.of(topic)
    if findings:
        rows.addWidget(finding_list(findings, names, acts.rows))
    else:
        rows.addWidget(Paragraph(_("Nothing on record says anything about it yet.")))
    if topic is Topic.KIT:
        _add_kit(rows, assessment, names, acts, at_once=at_once)
    if topic is Topic.PEOPLE:
        rows.addWidget(Paragraph(_(ALARMS_NOBODY)))
    rows.addStretch()
    return made


def _head(topic: Topic | None) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setSpacing(look.px(12))
    captions = {
        None: _("worst first; open questions stand above"),
        Topic.KIT: _("needs that are not met, and the service of what goes"),
        Topic.PEOPLE: _("who knows, who flies along, who fetches"),
    }
    row.addWidget(Text(_("All findings") if topic is None else _(TITLES[topic]), Role.SECTION))
    row.addWidget(CutText(captions.get(topic, ""), Role.SECOND, "muted"), 1)
    return row


def _add_power(rows: QVBoxLayout, assessment: Assessment, names: Names, tools: PowerTools) -> None:
    if assessment.power.likely is None:
        rows.addLayout(_head(Topic.POWER))
        said = (not_simulated_text(assessment.power), unknown_text(assessment.power, names))
        rows.addWidget(Paragraph(" ".join(part for part in said if part)))
        return
    rows.addWidget(PowerTopic(assessment, names, tools))


def _add_kit(rows: QVBoxLayout, assessment: Assessment, names: Names, acts: TopicActs, *, at_once: bool) -> None:
    lists = QVBoxLayout()
    lists.setSpacing(look.px(12))
    rows.addLayout(lists)
    take, leave = _("Take along"), _("Leave out")
    wanted: list[Callable[[], QWidget | None]] = [lambda: record_section(assessment, acts.records)]
    if passed := _passed(assessment):
        wanted.append(lambda: item_list(_("Passed over"), passed, take, acts.take_along))
    if stays := _stays(assessment, names):
        wanted.append(lambda: item_list(_("Stays at home"), stays, take, acts.take_along))
    if going := _going(assessment, names):
        wanted.append(lambda: item_list(_("Goes along"), going, leave, acts.leave_out))
    for number, make in enumerate(wanted):
        if at_once:
            _add(lists, make)
        else:
            QTimer.singleShot(15 * (number + 1), lists, lambda made=make: _add(lists, made))


def _add(lists: QVBoxLayout, make: Callable[[], QWidget | None]) -> None:
    made = make()
    if made is not None:
        lists.addWidget(made)


def _passed(assessment: Assessment) -> list[ItemLine]:
    """Each item once, with all the needs that it could have met."""
    needs, found = needs_by_id(assessment), dict[str, ItemLine]()
    for one in assessment.passed_over:
        why = passed_over_text(one, needs)
        there = found.get(one.item.id)
        if assessment.line(one.item.id) is None:
            said = f"{there.why}; {why}" if there else why
            found[one.item.id] = ItemLine(one.item.id, one.item.name, said, mass_text(one.item.mass_g))
    return list(found.values())


def _stays(assessment: Assessment, names: Names) -> list[ItemLine]:
    passed = {one.item.id for one in assessment.passed_over}
    left_out = frozenset(assessment.outing.left_out)
    return [
        ItemLine(
            item, names.get(item, item), _("left out by you") if item in left_out else _("nothing asks for it"), ""
        )
        for item in assessment.stays_home
        if item not in passed
    ]


def _going(assessment: Assessment, names: Names) -> list[ItemLine]:
    needs = needs_by_id(assessment)
    return [
        ItemLine(
            line.item.id,
            line.item.name if line.n == 1 else f"{line.item.name}, {line.n}",
            first_upper(why_text(line, needs, names)),
            mass_text(line.mass_g),
        )
        for line in assessment.lines
    ]
