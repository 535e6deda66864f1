"""Reading recordings away from the window: how far it is, and what was found so far."""

import threading
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from kitlog.desktop.background import Tell
from kitlog.kit.recordings.outcome import Status
from kitlog.wording.translate import _, ngettext
from kitlog.workbench.flight_import import FlightSource, Proposal, read_flights


@dataclass(eq=False)
class Reading:
    """One reading; the thread writes its fields, the window looks at them.

    Attributes:
        source: what the recordings are held against; paths: files and folders; local_day: for files without a date.
        done, of: files read, and files in all; proposals: what they hold, in their order.
        stopped: the pilot has seen enough: what was read stays.
    """

    source: FlightSource
    paths: Sequence[Path]
    local_day: date | None = None
    done: int = 0
    of: int = 0
    proposals: list[Proposal] = field(default_factory=list)
    stopped: threading.Event = field(default_factory=threading.Event)

    def __call__(self, tell: Tell) -> "Reading":
        """Read; on the thread."""

        def progress(done: int, of: int) -> None:
            self.done, self.of = done, of
            tell(done / of if of else 0.0)

        batch = read_flights(
            self.source, self.paths, local_day=self.local_day, progress=progress, cancelled=self.stopped.is_set
        )
        for proposal in batch:
            self.proposals.append(proposal)
        return self

    def said(self) -> str:
        """How far it is, in words."""
        if not self.of:
            return _("Looking for recordings")
        text = _("Reading {n} of {all} recordings").format(n=min(self.done + 1, self.of), all=self.of)
        found = sum(one.outcome.status is Status.PROPOSED for one in self.proposals)
        return f"{text}: " + ngettext("{n} flight found", "{n} flights found", found).format(n=found)
