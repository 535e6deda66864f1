"""Writing the calendar file from the window, and saying what went into it."""

from functools import partial
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from kitlog.desktop.desk import MANY, Desk
from kitlog.wording.reminder_text import calendar_line, undated_line
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper
from kitlog.workbench.reminder_commands import CalendarWritten

KEPT_AS = "calendar file"
"""The preference that names the last calendar file: written again, it updates the calendar."""


def ask_calendar(desk: Desk, parent: QWidget) -> Path | None:
    """Where the file is to lie: where it was last, else beside the data file. None if it is not to be written."""
    name = desk.bench.preference(KEPT_AS) or str(desk.path.with_name(f"{desk.path.stem}.ics"))
    option = QFileDialog.Option.DontConfirmOverwrite  # it takes the place of nothing but its own older file
    kinds = _("Calendars (*.ics)")
    chosen, _kind = QFileDialog.getSaveFileName(parent, _("Calendar file"), name, kinds, options=option)
    if not chosen:
        return None
    to = Path(chosen)
    return to if to.suffix else to.with_suffix(".ics")


def write_calendar(desk: Desk, to: Path) -> str:
    """Write it and answer what went into it; empty if it was not written, which the window says."""
    written: list[CalendarWritten] = []

    def write() -> None:
        written.append(desk.bench.write_calendar(to))

    many = len(desk.bench.rules()) >= MANY
    if not desk.perform(partial(desk.write_apart, write, _("Writing the calendar file …")) if many else write):
        return ""
    if str(to) != desk.bench.preference(KEPT_AS):
        desk.perform(lambda: desk.bench.set_preference(KEPT_AS, str(to)))
    return said(to, written[0])


def said(to: Path, written: CalendarWritten) -> str:
    """What was written, what to do with it, and what is missing in it."""
    line = first_upper(calendar_line(to.name, written.entries, written.cancelled))
    how = _("Open it with your calendar; written again later, it updates the calendar.")
    undated = [undated_line(written.undated)] if written.undated else []
    return " ".join((f"{line}.", how, *undated))
