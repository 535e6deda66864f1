"""What the service band shows: one lane a rule, dates on a band of months, limits by hours as fading bars."""

from dataclasses import dataclass
from datetime import date, timedelta

from kitlog.paint.mark import Mark

MONTHS = 12


@dataclass(frozen=True, slots=True)
class Stage:
    """One date of a rule and its words."""

    day: date
    text: str


@dataclass(frozen=True, slots=True)
class HoursLimit:
    """A limit by hours, foreseen.

    Attributes:
        text: hours left, the likely day and its span, in words.
        likely: the likely day; None if it lies beyond all foresight.
        early: the earliest day of the span; None likewise.
        late: the latest day of the span; None likewise.
    """

    text: str
    likely: date | None = None
    early: date | None = None
    late: date | None = None

    def __post_init__(self) -> None:
        days = [day for day in (self.early, self.likely, self.late) if day is not None]
        if days != sorted(days):
            raise ValueError("a span runs from its earliest to its latest day")


@dataclass(frozen=True, slots=True)
class ServiceLane:
    """One rule of one item.

    Attributes:
        item: the item's name, the same for all its rules.
        rule: what is to be done, how often.
        mark: the rule's due state.
        due: when it is due.
        recommended: when it is recommended, the first of two stages.
        book_by: by when to ask for it, before `due` or else before the likely day of `hours`.
        hours: its limit by hours.
        unknown: the words where there is no record.
        note: the words of a limit that no day can be said for, as launches left.
    """

    item: str
    rule: str
    mark: Mark = Mark.NONE
    due: Stage | None = None
    recommended: Stage | None = None
    book_by: date | None = None
    hours: HoursLimit | None = None
    unknown: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class ServiceWords:
    """The words under the band: at the line of today, and the legend; an empty one is left out."""

    today: str = ""
    recommended: str = ""
    due: str = ""
    book_by: str = ""
    hours: str = ""
    outing: str = ""


@dataclass(frozen=True, slots=True)
class ServicePicture:
    """The band.

    Attributes:
        first: first day of the first month shown.
        months: name of each month shown, in order; at least one.
        today: the day of the vertical line.
        lanes: grouped by item.
        outings: days of planned outings.
        words: under the band.
    """

    first: date
    months: tuple[str, ...]
    today: date
    lanes: tuple[ServiceLane, ...] = ()
    outings: tuple[date, ...] = ()
    words: ServiceWords = ServiceWords()

    def __post_init__(self) -> None:
        if not self.months or self.first.day != 1:
            raise ValueError("a band shows whole months, at least one")

    def month_start(self, number: int) -> date:
        """First day of the month of that number, counted from `first`."""
        months = self.first.month - 1 + number
        return date(self.first.year + months // MONTHS, months % MONTHS + 1, 1)

    @property
    def end(self) -> date:
        """The day after the last one shown."""
        return self.month_start(len(self.months))

    def share(self, day: date) -> float:
        """Where a day begins, as a share of the band's width; below 0 or above 1 outside the band."""
        return (day - self.first) / (self.end - self.first)

    def day_at(self, share: float) -> date:
        """The day at a share (0 to 1) of the band's width."""
        whole = (self.end - self.first).days
        return self.first + timedelta(days=min(int(share * whole), whole - 1))
