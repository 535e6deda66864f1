"""The rows of a check list."""

from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.rows import Row, RowKind, grouped
from kitlog.kit.kinds import Zone
from kitlog.outing.ticks import Step
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
            check_row(Step.EMPTY, check.id, _(check.text), progress, check.zone, zoned=check.zone is not None)
            for check in group
        ]
        rows += grouped(title, lines, "")
    return rows


def check_row(
    step: Step, check: str, text: str, progress: Progress, zone: Zone | None = None, *, zoned: bool = False
) -> Row:
    """One line of a check list; what stands behind a colon is its second line."""
    head, colon, rest = text.partition(": ")
    title, note = (head, first_upper(rest)) if colon and rest else (text, "")
    shown = zone if zoned else None
    return Row(RowKind.LINE, title, check, note=note, ticked=progress.is_done(step, check), zone=shown)
