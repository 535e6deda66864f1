"""The season: what to look at before it, that something was looked at, and what stops the pilot on a day."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from kitlog.kit.due import Due, due_states
from kitlog.kit.item import Item
from kitlog.kit.season_start import SeasonLine, season_ended_on, season_start
from kitlog.kit.service import Result, ServiceRecord
from kitlog.kit.usage import Usage, logged
from kitlog.outing.outing import Outing
from kitlog.packing.fitness import planned_h_of
from kitlog.packing.storage_due import to_do
from kitlog.packing.what_stops import StopLine, planned_hours, what_stops
from kitlog.workbench.evening_commands import EveningCommands


@dataclass(frozen=True, slots=True)
class SeasonStart:
    """The run at the start of a season: a look on or after `since` counts; what is still to be looked at."""

    since: date
    lines: tuple[SeasonLine, ...]


@dataclass(frozen=True, slots=True)
class OnRecord:
    """What is on record of an item at a glance.

    Attributes:
        used: hours and launches in the log, without the opening balance.
        dues: its rules, judged on the day.
    """

    item: Item
    used: Usage
    dues: tuple[Due, ...]

    @property
    def airtime_h(self) -> float:
        """Hours in the air; the least that they can be while the opening balance is not known."""
        return self.used.airtime_h + (self.item.opening_h or 0.0)

    @property
    def ground_h(self) -> float:
        """Hours of ground handling, likewise."""
        return self.used.ground_h + (self.item.opening_ground_h or 0.0)

    @property
    def launches(self) -> int:
        """Launches, likewise."""
        return self.used.launches + (self.item.opening_launches or 0)

    @property
    def is_used(self) -> bool:
        """Whether the log or the opening balance tells of any use."""
        return self.item.opening_h is not None or self.airtime_h > 0 or self.ground_h > 0 or self.launches > 0


class SeasonCommands(EveningCommands):
    """Reads and writes about the season; each write is one transaction and one undo step."""

    def season_start(self, since: date | None = None) -> SeasonStart:
        """What to look at before the season.

        Args:
            since: a look on or after this day counts; None = since the log's longest pause of the last year began,
                without one since the last 1 October.
        """
        book, today = self.book(), self.now().date()
        from_day = since or season_ended_on(book.flights, today)
        lying = frozenset(line.item.id for line in to_do(self.storage_due()) if line.last_used is not None)
        return SeasonStart(from_day, season_start(self.items(), book, today, since=from_day, lying=lying))

    def on_record(self, item_id: str, outing: Outing | None = None) -> OnRecord | None:
        """What is on record of an item today, or on the last day of an outing that is not over.

        Hours foreseen until then, or planned by the outing, are taken off, as its assessment does.
        """
        item, today = self.item(item_id), self.now().date()
        if item is None:
            return None
        on = today if outing is None else outing.last_day
        planned_h = 0.0 if outing is None else planned_h_of(outing, item, today)
        used = logged(self.book().flown_with(item.id), until=min(on, today))
        return OnRecord(item, used, due_states(item, self.book(), on, today=today, planned_h=planned_h))

    def on_next_outing(self, item_id: str, rule_id: str) -> Due | None:
        """A rule judged on the last day of the next outing; None without one."""
        today = self.now().date()
        coming = [outing for outing in self.outings() if outing.last_day >= today]
        nearest = min(coming, key=lambda outing: outing.first_day, default=None)
        record = self.on_record(item_id, nearest) if nearest is not None else None
        dues = record.dues if record is not None else ()
        return next((due for due in dues if due.rule_id == rule_id), None)

    def looked_at(self, item_id: str, rules: Iterable[str] = (), note: str = "") -> str:
        """Record that an item was looked at today, and which of its rules were done by that.

        A look without rules moves no due date; it stands in the item's history.

        Raises:
            InputFault: as `add_record`; ``item.unknown``.
        """
        item, pilot = self._known(item_id), self.pilot()
        done = tuple(rules)
        record = ServiceRecord(
            id=self.new_id(),
            item_id=item.id,
            rules=done,
            done_on=self.now().date(),
            who=pilot.name if pilot else "",
            result=Result.PASSED if done else None,
            remarks=note,
        )
        return self.add_record(record)

    def what_stops(self, on: date, *, by_law: bool = False) -> tuple[StopLine, ...]:
        """Everything that is a stop, a look or not known on a day, hours foreseen and planned until then taken off."""
        today = self.now().date()
        planned = planned_hours(self.outings(), self.usual_set(), today, on)
        return what_stops(self.items(), self.book(), on, today=today, planned_h=planned, by_law=by_law)
