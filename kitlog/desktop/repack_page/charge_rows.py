"""The rows of charging: each thing with where it hangs until when and how it ends, then the check list."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from kitlog.budget.result import Finding, State
from kitlog.desktop.repack_page.check_rows import check_row
from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.rows import Row, RowKind, grouped, maker_text
from kitlog.outing.ticks import Step
from kitlog.packing.capacity import energy_wh
from kitlog.packing.charging import Charge
from kitlog.packing.evening_plan import ChargeLine, EveningPlan
from kitlog.paint.mark import Mark
from kitlog.wording.charge_text import end_text, hangs_text, seen_text
from kitlog.wording.figures import percent_text, with_unit
from kitlog.wording.sheet_words import charge_text
from kitlog.wording.translate import _


@dataclass(frozen=True, slots=True)
class Shown:
    """The plan that is shown: None while there is none; outdated: a newer one is on its way; now: for what was seen."""

    plan: EveningPlan | None
    outdated: bool
    now: datetime


def end_words(item_id: str, shown: Shown | None) -> str:
    """How the charging of a thing goes, for a line that is laid out or stowed: its charge, and when it is full."""
    plan = shown.plan if shown is not None and not shown.outdated else None
    lines = _lines_by_item(plan).get(item_id, ())
    known = [line for line in lines if line.on_hand.known]
    if not known or len(known) < len(lines):
        return _("to charge")
    return _("{charge}, {end}").format(charge=percent_text(known[0].on_hand.seen_pct), end=_ends(lines))


def charge_rows(progress: Progress, shown: Shown) -> list[Row]:
    """Things in the order in which they are charged, those that are not planned last, then the check list."""
    lines = _lines_by_item(shown.plan)
    order = {name: place for place, name in enumerate(lines)}
    charges = sorted(progress.charges, key=lambda one: order.get(one.item.id, len(order)))
    rows = [_charge_row(progress, one, lines.get(one.item.id, ()), shown) for one in charges]
    checks = [check_row(Step.CHARGE, check.id, _(check.text), progress) for check in progress.checks("charge")]
    return [
        *grouped(_("What to charge, most important first"), rows, _("outdated") if shown.outdated else ""),
        *grouped(_("While it charges"), checks, ""),
    ]


def _lines_by_item(plan: EveningPlan | None) -> Mapping[str, tuple[ChargeLine, ...]]:
    found: dict[str, tuple[ChargeLine, ...]] = {}
    for line in plan.lines if plan else ():
        name = line.thing.item.id
        found[name] = (*found.get(name, ()), line)
    return found


def _charge_row(progress: Progress, charge: Charge, lines: tuple[ChargeLine, ...], shown: Shown) -> Row:
    item = charge.item
    finding = next((f for f in progress.assessment.findings if _power_of(f, item.id)), None)
    told = finding is not None and finding.state is not State.FINE
    row = Row(
        RowKind.LINE,
        item.name if charge.n == 1 else f"{item.name}, {charge.n}",
        item.id,
        more=maker_text(item.maker, item.model),
        note=_energy(charge),
        word=_(finding.state.value) if finding is not None and told else "",
        mark=Mark(finding.state.value) if finding is not None and told else Mark.NONE,
        right_note=charge_text(charge),
        ticked=progress.is_done(Step.CHARGE, item.id),
        item_id=item.id,
        finding=finding,
    )
    if shown.plan is None:
        return row
    if not lines:
        return replace(row, note=_not_planned(charge), right=_("not known"), faded=True)
    return replace(row, note=_hangs(lines), right=_ends(lines), right_note=_seen(lines[0], shown), faded=shown.outdated)


def _energy(charge: Charge) -> str:
    energy = energy_wh(charge.item)
    return _("energy not on record") if energy is None else with_unit(energy, "Wh", 1)


def _not_planned(charge: Charge) -> str:
    battery = charge.item.battery
    if battery is None or battery.charge_max_w is None:
        return _("charging power not on record")
    return _energy(charge) if energy_wh(charge.item) is None else _("more than can be planned")


def _hangs(lines: tuple[ChargeLine, ...]) -> str:
    return "; ".join(text for line in lines if (text := hangs_text(line))) or _("on no port")


def _ends(lines: tuple[ChargeLine, ...]) -> str:
    """How the worst of several pieces ends."""
    return end_text(max(lines, key=lambda line: (line.missing_wh, line.full_h or 0.0)))


def _seen(line: ChargeLine, shown: Shown) -> str:
    seen = line.on_hand
    if not seen.known:
        return _("charge not known, from {charge}").format(charge=percent_text(seen.reckoned_pct))
    return _("{charge} at {time}").format(charge=percent_text(seen.seen_pct), time=seen_text(seen, shown.now))


def _power_of(finding: Finding, item_id: str) -> bool:
    return finding.code in _CODES and item_id in finding.items


_CODES = frozenset({"power.swollen", "power.device", "power.not_known", "power.bank_sleeps"})
