"""The rows of a step as data: heads of groups, lines to tick, what stands before anything else."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from enum import Enum

from kitlog.budget.result import Finding, State
from kitlog.desktop.outing_page.tile_words import short_act
from kitlog.desktop.repack_page.progress import Progress, missing_key, missing_mark
from kitlog.kit.kinds import Zone
from kitlog.outing.needs import Need
from kitlog.outing.outing import OwnLine
from kitlog.outing.ticks import Step
from kitlog.packing.assessment import ListLine
from kitlog.packing.stowing import Stowed, stowed
from kitlog.paint.mark import Mark
from kitlog.wording.figures import mass_text, with_unit
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import needs_by_id, why_text
from kitlog.wording.remedies import remedy_text
from kitlog.wording.sheet_words import charge_text, line_name, own_why, zone_title
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper, word


class RowKind(Enum):
    """What a row is."""

    HEAD = "head"
    LINE = "line"
    EXCEPTION = "exception"


@dataclass(frozen=True, slots=True)
class Row:
    """One row.

    Attributes:
        key: the line that it ticks, empty for a head and for a need without an item.
        title, more, note: the name, the maker beside it, the second line.
        word: what is wrong, behind the name; mark: with which state.
        right, right_note: at the right end: mass or act, and what stands before or below it.
        ticked, missing: what the box shows; item_id: of the item, empty for checks and own lines.
        zone: in which it is stowed; finding: what an exception comes from.
    """

    kind: RowKind
    title: str
    key: str = ""
    more: str = ""
    note: str = ""
    word: str = ""
    mark: Mark = Mark.NONE
    right: str = ""
    right_note: str = ""
    ticked: bool = False
    missing: bool = False
    item_id: str = ""
    zone: Zone | None = None
    finding: Finding | None = None

    @property
    def can_stand(self) -> bool:
        """Whether the keys can stand on it."""
        return self.kind is not RowKind.HEAD

    @property
    def spoken(self) -> str:
        """All of it in one line, the state of the box first."""
        box = _("missing") if self.missing else _("ticked") if self.ticked else _("not ticked") if self.key else ""
        parts = (
            box if self.can_stand else "",
            self.title,
            self.more,
            self.word,
            self.note,
            self.right,
            self.right_note,
        )
        return ", ".join(part for part in parts if part)


@dataclass(frozen=True, slots=True)
class Offers:
    """What could go instead, in words, by the id of an item: the name and its mass."""

    by_item: Mapping[str, tuple[str, str]]

    def of(self, item_id: str) -> tuple[str, str]:
        """Act and note of an item's exception row."""
        found = self.by_item.get(item_id)
        return ("", "") if found is None else (_("Swap: {item}").format(item=found[0]), found[1])


def rows_of(step: Step, progress: Progress, names: Names, offers: Offers) -> list[Row]:
    """The rows of a step that is a list."""
    if step is Step.EMPTY:
        return _empty_rows(progress)
    if step is Step.CHARGE:
        return _charge_rows(progress)
    return [*_exceptions(step, progress, names, offers), *_list_rows(step, progress, names)]


def _empty_rows(progress: Progress) -> list[Row]:
    checks = progress.checks("empty")
    pockets = [check for check in checks if check.zone is not None]
    others = [check for check in checks if check.zone is None]
    groups = ((_("Every pocket"), pockets), (_("Before it is laid out"), others))
    rows: list[Row] = []
    for title, group in groups:
        lines = [
            _check_row(Step.EMPTY, check.id, _(check.text), progress, check.zone, zoned=check.zone is not None)
            for check in group
        ]
        rows += _grouped(title, lines, "")
    return rows


def _check_row(
    step: Step, check: str, text: str, progress: Progress, zone: Zone | None = None, *, zoned: bool = False
) -> Row:
    head, colon, rest = text.partition(": ")
    title, note = (head, first_upper(rest)) if colon and rest else (text, "")
    shown = zone if zoned else None
    return Row(RowKind.LINE, title, check, note=note, ticked=progress.is_done(step, check), zone=shown)


def _charge_rows(progress: Progress) -> list[Row]:
    banks = [_charge_row(progress, one.item.id) for one in progress.charges if one.is_bank]
    devices = [_charge_row(progress, one.item.id) for one in progress.charges if not one.is_bank]
    checks = [_check_row(Step.CHARGE, check.id, _(check.text), progress) for check in progress.checks("charge")]
    lasts = _("left at the end, likely / high")
    return [
        *_grouped(_("Banks first"), banks, lasts),
        *_grouped(_("Devices"), devices, lasts),
        *_grouped(_("While it charges"), checks, ""),
    ]


def _charge_row(progress: Progress, item_id: str) -> Row:
    charge = next(one for one in progress.charges if one.item.id == item_id)
    item = charge.item
    energy = item.battery.energy_wh if item.battery else None
    finding = next((f for f in progress.assessment.findings if _power_of(f, item_id)), None)
    return Row(
        RowKind.LINE,
        item.name if charge.n == 1 else f"{item.name}, {charge.n}",
        item.id,
        more=_maker(item.maker, item.model),
        note=_("energy not on record") if energy is None else with_unit(energy, "Wh", 1),
        word="" if finding is None or finding.state is State.FINE else _(finding.state.value),
        mark=Mark.NONE if finding is None or finding.state is State.FINE else Mark(finding.state.value),
        right=charge_text(charge) if charge.likely.reckoned or charge.high.reckoned else "",
        right_note="" if charge.likely.reckoned or charge.high.reckoned else charge_text(charge),
        ticked=progress.is_done(Step.CHARGE, item.id),
        item_id=item.id,
        finding=finding,
    )


def _power_of(finding: Finding, item_id: str) -> bool:
    return finding.code in {"power.device", "power.not_known", "power.bank_sleeps"} and item_id in finding.items


def _exceptions(step: Step, progress: Progress, names: Names, offers: Offers) -> list[Row]:
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
        more=_maker(line.item.maker, line.item.model),
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


def _list_rows(step: Step, progress: Progress, names: Names) -> list[Row]:
    pinned = {row.key for row in _exceptions(step, progress, names, Offers({}))}
    needs = needs_by_id(progress.assessment)
    full = {one.item.id: progress.is_done(Step.CHARGE, one.item.id) for one in progress.charges}
    rows: list[Row] = []
    for group in stowed(progress.assessment):
        lines = [
            replace(_line_row(step, line, progress, reason_text(line, needs, names), full), zone=group.zone)
            for line in group.lines
            if line.item.id not in pinned
        ]
        lines += [replace(_own_row(step, own, progress), zone=group.zone) for own in group.own]
        if lines:
            rows += _zone_head(step, group, progress)
            rows += lines
    return rows


def _line_row(step: Step, line: ListLine, progress: Progress, why: str, full: Mapping[str, bool]) -> Row:
    item = line.item
    charge = "" if item.id not in full else _("full") if full[item.id] else _("to charge")
    stops = [f for f in progress.assessment.findings if f.state is State.STOP and f.override and item.id in f.items]
    reason = stops[0].override if stops else ""
    return Row(
        RowKind.LINE,
        line_name(line),
        item.id,
        more=_maker(item.maker, item.model),
        note=_("stop, reason on record: {reason}").format(reason=reason) if reason else why,
        mark=Mark.STOP if reason else Mark.NONE,
        right=mass_text(line.mass_g),
        right_note=charge,
        ticked=progress.is_done(step, item.id),
        item_id=item.id,
    )


def reason_text(line: ListLine, needs: dict[str, Need], names: Names) -> str:
    """Why a line goes: how strongly, then what for."""
    return first_upper(why_text(line, needs, names).replace(", ", ": ", 1))


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


def _grouped(title: str, lines: list[Row], right: str) -> list[Row]:
    if not lines:
        return []
    done = sum(row.ticked for row in lines)
    said = ngettext("{done} of {n} done", "{done} of {n} done", len(lines)).format(done=done, n=len(lines))
    return [Row(RowKind.HEAD, title, note=said, right=right), *lines]


def _maker(maker: str, model: str) -> str:
    return " ".join(part for part in (maker, model) if part)


def zones_in(rows: Iterable[Row]) -> frozenset[Zone]:
    """The zones that rows belong to."""
    return frozenset(row.zone for row in rows if row.zone is not None)


def zone_word(zone: Zone) -> str:
    """A zone as a word with a capital."""
    return first_upper(word(zone.value))
