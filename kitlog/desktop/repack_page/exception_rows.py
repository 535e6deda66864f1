"""What stands before anything else: open stops and missing lines."""

from kitlog.budget.result import Finding, State
from kitlog.desktop.outing_page.tile_words import short_act
from kitlog.desktop.repack_page.progress import Progress, missing_key, missing_mark
from kitlog.desktop.repack_page.rows import Offers, Row, RowKind, maker_text, reason_text
from kitlog.kit.kinds import Zone
from kitlog.outing.ticks import Step
from kitlog.packing.assessment import ListLine
from kitlog.packing.stowing import stowed
from kitlog.paint.mark import Mark
from kitlog.wording.figures import mass_text
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import needs_by_id
from kitlog.wording.remedies import remedy_text
from kitlog.wording.sheet_words import line_name
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


def exception_rows(step: Step, progress: Progress, names: Names, offers: Offers) -> list[Row]:
    """Open stops and missing lines, stops first; each line once."""
    found: dict[str, Row] = {}
    for finding in progress.assessment.findings:
        if finding.state is not State.STOP or finding.override:
            continue
        line = next((li for i in finding.items if (li := progress.assessment.line(i)) is not None), None)
        row = _stop_row(step, finding, line, progress, names, offers)
        found.setdefault(row.key or finding.key, row)
    for line in progress.missing:
        found[line.item.id] = _missing_row(line, progress, names, offers)
    rows = sorted(found.values(), key=lambda row: _WORST.index(row.mark))
    return [Row(RowKind.HEAD, _("Before anything else")), *rows] if rows else []


_WORST = (Mark.STOP, Mark.LOOK, Mark.NOT_KNOWN, Mark.NONE, Mark.FINE)


def _stop_row(
    step: Step, finding: Finding, line: ListLine | None, progress: Progress, names: Names, offers: Offers
) -> Row:
    said = say(finding, names)
    of_line = line is not None and finding.topic.value == "kit"
    act, note = offers.of(line.item.id) if line is not None and of_line else ("", "")
    if not act:
        act = next((short_act(r, names) or remedy_text(r, names) for r in finding.remedies), "")
    kept = line if of_line else None
    return Row(
        RowKind.EXCEPTION,
        first_upper(said.title),
        kept.item.id if kept else "",
        note=first_upper(said.sentence),
        word=_(finding.state.value),
        mark=Mark.STOP,
        right=act,
        right_note=note or (mass_text(kept.mass_g) if kept else ""),
        ticked=kept is not None and progress.is_done(step, kept.item.id),
        item_id=kept.item.id if kept else "",
        zone=_zone_of(kept, progress) if kept else None,
        finding=finding,
    )


def _missing_row(line: ListLine, progress: Progress, names: Names, offers: Offers) -> Row:
    mark, reason = missing_mark(line), progress.reason(missing_key(line))
    act, note = offers.of(line.item.id)
    strength = _(line.strength.value) if line.strength else ""
    why = reason_text(line, needs_by_id(progress.assessment), names)
    said = _("reason on record: {reason}").format(reason=reason) if reason else why
    return Row(
        RowKind.EXCEPTION,
        line_name(line),
        line.item.id,
        more=maker_text(line.item.maker, line.item.model),
        note=said,
        word=", ".join(part for part in (_("missing"), strength) if part),
        mark=mark,
        right=act,
        right_note=note or mass_text(line.mass_g),
        missing=True,
        item_id=line.item.id,
        zone=_zone_of(line, progress),
    )


def _zone_of(line: ListLine, progress: Progress) -> Zone | None:
    return next((group.zone for group in stowed(progress.assessment) if line in group.lines), None)
