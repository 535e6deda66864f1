"""The rows of emptying and charging: check lists, and what has to be full."""

from kitlog.budget.result import Finding, State
from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.rows import Row, RowKind, grouped, maker_text
from kitlog.kit.kinds import Zone
from kitlog.outing.ticks import Step
from kitlog.paint.mark import Mark
from kitlog.wording.figures import with_unit
from kitlog.wording.sheet_words import charge_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


def empty_rows(progress: Progress) -> list[Row]:
    """Every pocket, then what is seen to before things are laid out."""
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
        rows += grouped(title, lines, "")
    return rows


def _check_row(
    step: Step, check: str, text: str, progress: Progress, zone: Zone | None = None, *, zoned: bool = False
) -> Row:
    head, colon, rest = text.partition(": ")
    title, note = (head, first_upper(rest)) if colon and rest else (text, "")
    shown = zone if zoned else None
    return Row(RowKind.LINE, title, check, note=note, ticked=progress.is_done(step, check), zone=shown)


def charge_rows(progress: Progress) -> list[Row]:
    """Banks before the devices they feed, then the check list."""
    banks = [_charge_row(progress, one.item.id) for one in progress.charges if one.is_bank]
    devices = [_charge_row(progress, one.item.id) for one in progress.charges if not one.is_bank]
    checks = [_check_row(Step.CHARGE, check.id, _(check.text), progress) for check in progress.checks("charge")]
    lasts = _("left at the end, likely / high")
    return [
        *grouped(_("Banks first"), banks, lasts),
        *grouped(_("Devices"), devices, lasts),
        *grouped(_("While it charges"), checks, ""),
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
        more=maker_text(item.maker, item.model),
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
