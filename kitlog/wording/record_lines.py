"""A service record on a terminal, just after it was entered."""

from collections.abc import Iterator, Sequence

from kitlog.kit.due import Due
from kitlog.kit.service import ServiceRecord
from kitlog.wording.columns import WIDTH, paragraph, wrapped
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text, number_text
from kitlog.wording.measurement_text import measurement_text
from kitlog.wording.record_text import result_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import STANCE, word


def recorded_lines(item: str, record: ServiceRecord, dues: Sequence[Due]) -> Iterator[str]:
    """What was entered, and what is on record about each of its rules now."""
    yield from wrapped(_("Recorded: {item}, {day}").format(item=item, day=day_text(record.done_on)), WIDTH)
    said = [record.who, result_text(record.result), _cost(record)]
    if any(said):
        yield from paragraph(", ".join(part for part in said if part), indent=2)
    for measurement in record.measurements:
        yield from paragraph(measurement_text(measurement), indent=2)
    for paper in record.papers:
        yield from paragraph(_("with {paper}").format(paper=paper.name), indent=2)
    if record.answers:
        n = len(record.answers)
        text = ngettext("answers {n} event of that day", "answers {n} events of that day", n)
        yield from paragraph(text.format(n=n), indent=2)
    yield ""
    for due in dues:
        state = dict.fromkeys((word(due.state.value), due_sentence(due)))
        yield from paragraph(f"{rule_text(due.rule)}: {'; '.join(state)}")
    yield from wrapped(_(STANCE), WIDTH)


def _cost(record: ServiceRecord) -> str:
    if record.cost is None:
        return ""
    return f"{number_text(record.cost, 2)} {record.currency}".strip()
