"""The rows of a step."""

from collections.abc import Mapping
from dataclasses import replace

from kitlog.budget.result import State
from kitlog.desktop.repack_page.charge_rows import Shown, charge_rows, end_words
from kitlog.desktop.repack_page.check_rows import empty_rows
from kitlog.desktop.repack_page.exception_rows import exception_rows
from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.rows import Offers, Row, RowKind, maker_text, reason_text
from kitlog.outing.outing import OwnLine
from kitlog.outing.ticks import Step
from kitlog.packing.assessment import ListLine
from kitlog.packing.stowing import Stowed, stowed
from kitlog.paint.mark import Mark
from kitlog.wording.figures import mass_text
from kitlog.wording.findings import Names
from kitlog.wording.lines import needs_by_id
from kitlog.wording.sheet_words import line_name, own_why, zone_title
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


def rows_of(step: Step, progress: Progress, names: Names, offers: Offers, evening: Shown | None = None) -> list[Row]:
    """The rows of a step that is a list; `evening`: the plan of the charging, as far as it is known."""
    if step is Step.EMPTY:
        return empty_rows(progress)
    if step is Step.CHARGE:
        return charge_rows(progress, evening or Shown(None, outdated=False, now=progress.assessment.now))
    return [*exception_rows(step, progress, names, offers), *list_rows(step, progress, names, evening)]


def list_rows(step: Step, progress: Progress, names: Names, evening: Shown | None = None) -> list[Row]:
    """The lines by the zone in which they are stowed, without those that stand before anything else."""
    pinned = {row.key for row in exception_rows(step, progress, names, Offers({}))}
    needs = needs_by_id(progress.assessment)
    charge = {
        one.item.id: _("full") if progress.is_done(Step.CHARGE, one.item.id) else end_words(one.item.id, evening)
        for one in progress.charges
    }
    rows: list[Row] = []
    for group in stowed(progress.assessment):
        lines = [
            replace(_line_row(step, line, progress, reason_text(line, needs, names), charge), zone=group.zone)
            for line in group.lines
            if line.item.id not in pinned
        ]
        lines += [replace(_own_row(step, own, progress), zone=group.zone) for own in group.own]
        if lines:
            rows += _zone_head(step, group, progress)
            rows += lines
    return rows


def _line_row(step: Step, line: ListLine, progress: Progress, why: str, charge: Mapping[str, str]) -> Row:
    item = line.item
    stops = [f for f in progress.assessment.findings if f.state is State.STOP and f.override and item.id in f.items]
    reason = stops[0].override if stops else ""
    return Row(
        RowKind.LINE,
        line_name(line),
        item.id,
        more=maker_text(item.maker, item.model),
        note=_("stop, reason on record: {reason}").format(reason=reason) if reason else why,
        mark=Mark.STOP if reason else Mark.NONE,
        right=mass_text(line.mass_g),
        right_note=charge.get(item.id, ""),
        ticked=progress.is_done(step, item.id),
        item_id=item.id,
    )


def _own_row(step: Step, own: OwnLine, progress: Progress) -> Row:
    return Row(
        RowKind.LINE,
        own.text,
        own.text,
        note=first_upper(own_why(own)),
        right="" if own.mass_g is None else mass_text(own.mass_g),
        ticked=progress.is_done(step, own.text),
        missing=progress.is_missing(own.text),
    )


def _zone_head(step: Step, group: Stowed, progress: Progress) -> list[Row]:
    keys = [*(line.item.id for line in group.lines), *(own.text for own in group.own)]
    done = sum(progress.is_done(step, key) and not progress.is_missing(key) for key in keys)
    said = _("{done} of {n} stowed") if step is Step.STOW else _("{done} of {n} laid out")
    mass = mass_text(group.mass_g)
    if group.unknown:
        mass = _("{mass} and {n} not known").format(mass=mass, n=group.unknown)
    return [Row(RowKind.HEAD, zone_title(group), note=said.format(done=done, n=len(keys)), right=mass, zone=group.zone)]
