"""What the power picture shows: phases as bands, devices as lanes, and the values under a reading line."""

from dataclasses import dataclass
from itertools import pairwise

from kitlog.paint.case_clock import CaseClock, Curve, band_edges, value_at
from kitlog.paint.checked import finite, share
from kitlog.paint.mark import Mark
from kitlog.paint.power_spread import OffBy, Spread
from kitlog.wording.figures import nights_text


@dataclass(frozen=True, slots=True)
class PhaseBand:
    """One phase of the day.

    Attributes:
        label: its name.
        note: the air's temperature, and what the cold does.
        likely_h: duration in the likely case.
        high_h: duration in the high case; it gives the width of the band.
        cold: whether the cold locks part of the cells, so that the band is shaded.
    """

    label: str
    note: str
    likely_h: float
    high_h: float
    cold: bool = False

    def __post_init__(self) -> None:
        finite(likely_h=self.likely_h, high_h=self.high_h)
        if min(self.likely_h, self.high_h) < 0:
            raise ValueError("a phase lasts no less than nothing")


@dataclass(frozen=True, slots=True)
class OffMark:
    """The moment at which a device goes off: hours from the start, in the likely or the high case, and the words.

    `brief` says the same shorter, for a lane in which the whole has no free place; empty for no such words.
    """

    at_h: float
    text: str
    in_high: bool = True
    brief: str = ""

    def __post_init__(self) -> None:
        finite(at_h=self.at_h)


@dataclass(frozen=True, slots=True)
class Lane:
    """One device.

    Attributes:
        label: its name.
        note: its energy, in words.
        likely: charge in the likely case; empty if it is not known.
        high: charge in the high case; empty if it is not known or not looked at.
        locked: per phase the share of the charge that the cold locks; empty for none.
        off: where it goes off.
        on_bank: stretches (from, to) in hours of the likely case on the power bank.
        remark: what else there is to say, in a few words, written into the lane.
        end_likely: what is left at the end of the likely case, in words.
        end_high: the same of the high case.
        spare_likely, spare_high: how much longer it would go on then, or how much too early it went off, in words.
        chance: how many days it lasts, in words; chance_error: how sure that is.
        spread: what many days say of its charge; None as long as they have not been drawn, or where nothing is known.
        off_by: where 5, 50 and 95 % of the days have switched it off.
        mark: the state of the device.
    """

    label: str
    note: str
    likely: Curve = ()
    high: Curve = ()
    locked: tuple[float, ...] = ()
    off: tuple[OffMark, ...] = ()
    on_bank: tuple[tuple[float, float], ...] = ()
    remark: str = ""
    end_likely: str = ""
    end_high: str = ""
    spare_likely: str = ""
    spare_high: str = ""
    chance: str = ""
    chance_error: str = ""
    spread: Spread | None = None
    off_by: tuple[OffBy, ...] = ()
    mark: Mark = Mark.NONE

    def __post_init__(self) -> None:
        for hours, charge in (*self.likely, *self.high):
            finite(hours=hours)
            share(charge=charge)
        for floor in self.locked:
            share(locked=floor)
        for start, end in self.on_bank:
            finite(start=start, end=end)
        for curve in (self.likely, self.high):
            if any(later[0] < earlier[0] for earlier, later in pairwise(curve)):
                raise ValueError("the hours of a curve never run back")


@dataclass(frozen=True, slots=True)
class PowerWords:
    """The words around the lanes, ready-made.

    Attributes:
        title: of the picture; empty if it stands elsewhere.
        caption: how to read it.
        likely: name of the likely case, in the legend, over the column and before its clock.
        high: name of the high case.
        locked: legend of the hatch.
        left_at_end: head of the columns at the right.
        spread: name of the band that holds nine days of ten, in the legend.
        off_by: legend of the marks where days switch a device off.
        lasts: head of the column with the chances; empty for no such column.
        middle, outer: heads of that column at the reading line: the middle day, and the outer ones.
        not_known: stands in a lane without data.
        footnote: under the columns at the right.
    """

    title: str = ""
    caption: str = ""
    likely: str = ""
    high: str = ""
    locked: str = ""
    spread: str = ""
    off_by: str = ""
    left_at_end: str = ""
    lasts: str = ""
    middle: str = ""
    outer: str = ""
    not_known: str = ""
    footnote: str = ""


@dataclass(frozen=True, slots=True)
class PowerPicture:
    """The charge of every device over the day.

    Attributes:
        phases: in the order of the day.
        lanes: from top to bottom.
        words: around the lanes.
        clocks_likely: one clock time per edge of the bands, one more than phases; empty for none.
        clocks_high: the same of the high case.
        start_min: minute of the day at which both cases start, for the reading line.
        span_h: hours of the high case that the width stands for, while an end is moved; 0 for as many as there are.
        ends_px: room that the figures at the right keep at least, so that the bands stay while an end is moved.
    """

    phases: tuple[PhaseBand, ...]
    lanes: tuple[Lane, ...]
    words: PowerWords = PowerWords()
    clocks_likely: tuple[str, ...] = ()
    clocks_high: tuple[str, ...] = ()
    start_min: int = 0
    span_h: float = 0.0
    ends_px: float = 0.0

    @property
    def lasts_h(self) -> float:
        """Hours of the high case in all."""
        return sum(phase.high_h for phase in self.phases)

    @property
    def likely(self) -> CaseClock:
        """The hours of the likely case on the bands."""
        return CaseClock(self.edges, tuple(phase.likely_h for phase in self.phases))

    @property
    def high(self) -> CaseClock:
        """The hours of the high case on the bands."""
        return CaseClock(self.edges, tuple(phase.high_h for phase in self.phases))

    @property
    def edges(self) -> tuple[float, ...]:
        """Edges of the bands as shares of the width; over 1 for what has no room in the span."""
        return band_edges(tuple(phase.high_h for phase in self.phases), self.span_h)


@dataclass(frozen=True, slots=True)
class LaneReading:
    """One lane under the reading line: shares of the charge, None where the curve does not reach or is not known.

    `spread` is low, middle and high of the days; `off_by` the last mark passed.
    """

    label: str
    likely: float | None
    high: float | None
    locked: float
    spread: tuple[float, float, float] | None = None
    off_by: OffBy | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """All lanes at one place: number of the phase, hours from the start in both cases."""

    phase: int
    likely_h: float
    high_h: float
    lanes: tuple[LaneReading, ...]


def reading(picture: PowerPicture, at: float) -> Reading | None:
    """The values at the share `at` (0 to 1) of the width of the bands; None without phases.

    Raises:
        ValueError: `at` is not a share.
    """
    share(at=at)
    if not picture.phases:
        return None
    phase = picture.likely.band_at(at)
    likely_h, high_h = picture.likely.hours_at(at), picture.high.hours_at(at)
    lanes = tuple(
        LaneReading(
            lane.label,
            value_at(lane.likely, likely_h),
            value_at(lane.high, high_h),
            lane.locked[phase] if phase < len(lane.locked) else 0.0,
            None if lane.spread is None else lane.spread.at(picture.edges, at),
            max((off for off in lane.off_by if off.place(picture.edges) <= at), key=_pct, default=None),
        )
        for lane in picture.lanes
    )
    return Reading(phase, likely_h, high_h, lanes)


def _pct(off: OffBy) -> int:
    return off.pct


def clock_text(start_min: int, hours: float) -> str:
    """Clock time `hours` after the minute of the day `start_min`, 24 h; past midnight with the number of nights."""
    nights, minutes = divmod(start_min + round(hours * 60), 24 * 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}{nights_text(nights)}"
