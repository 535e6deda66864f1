"""What the picture of measured values shows: one lane for each series, all over the same years."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import groupby

from kitlog.kit.measured_series import MeasuredLimit, MeasuredSeries
from kitlog.wording.figures import day_text
from kitlog.wording.measurement_text import series_text, value_text
from kitlog.wording.translate import _

_MARGIN_DAYS = 15
_YEARS_FROM = 2


@dataclass(frozen=True, slots=True)
class MeasuredPoint:
    """One measured value: when, how much, in words."""

    day: date
    value: float
    text: str


@dataclass(frozen=True, slots=True)
class MeasuredLine:
    """One series; nothing in it was measured with another gauge, unit or at another place.

    Attributes:
        label: what, unit, gauge and place in words.
        points: at least one, by day.
        figures: the greatest value of each day, with the words of all of that day.
        limits: value and words of each limit that the pilot typed.
        least, most: the values at the foot and the head of the lane.
    """

    label: str
    points: tuple[MeasuredPoint, ...]
    figures: tuple[MeasuredPoint, ...]
    limits: tuple[tuple[float, str], ...] = ()

    @property
    def least(self) -> float:
        """The foot of the lane: 0, or the least value where that is below it."""
        return min(0.0, *(value for value in self._values))

    @property
    def most(self) -> float:
        """The head of the lane: the greatest value or limit; above the foot in any case."""
        most = max(self._values)
        return most if most > self.least else self.least + 1.0

    @property
    def _values(self) -> list[float]:
        return [*(point.value for point in self.points), *(value for value, _text in self.limits)]


@dataclass(frozen=True, slots=True)
class MeasurementPicture:
    """All lanes over one span of days; ticks are days with their words, at least one."""

    first: date
    last: date
    ticks: tuple[tuple[date, str], ...]
    lines: tuple[MeasuredLine, ...]

    def share(self, day: date) -> float:
        """Where a day lies, as a share of the width."""
        return (day - self.first) / (self.last - self.first)


def picture_of(series: Sequence[MeasuredSeries]) -> MeasurementPicture | None:
    """The picture of an item's series, None where nothing was measured."""
    days = [day for one in series for day, _value in one.points]
    if not days:
        return None
    return MeasurementPicture(
        first=min(days) - timedelta(days=_MARGIN_DAYS),
        last=max(days) + timedelta(days=_MARGIN_DAYS),
        ticks=_ticks(min(days), max(days)),
        lines=tuple(_line(one) for one in series),
    )


def picture_text(picture: MeasurementPicture) -> str:
    """The same as text, for those who do not see it."""
    return "\n".join(_line_text(line) for line in picture.lines)


def _line_text(line: MeasuredLine) -> str:
    values = "; ".join(f"{day_text(point.day)} {point.text}" for point in line.points)
    return ". ".join([f"{line.label}: {values}", *(text for _value, text in line.limits)])


def _line(one: MeasuredSeries) -> MeasuredLine:
    unit = one.first.unit
    points = tuple(MeasuredPoint(day, value, value_text(value, unit)) for day, value in one.points)
    limits = tuple((limit.value, _limit_text(limit)) for limit in one.limits)
    return MeasuredLine(series_text(one.first), points, _figures(points), limits)


def _figures(points: Sequence[MeasuredPoint]) -> tuple[MeasuredPoint, ...]:
    days = [list(group) for _day, group in groupby(points, key=lambda point: point.day)]
    return tuple(day[-1] if len(day) == 1 else replace(day[-1], text=_span(day[0], day[-1])) for day in days)


def _span(low: MeasuredPoint, high: MeasuredPoint) -> str:
    return high.text if low.text == high.text else _("{low} to {high}").format(low=low.text, high=high.text)


def _limit_text(limit: MeasuredLimit) -> str:
    said = _("at least {value}, as typed in the rule") if limit.at_least else _("at most {value}, as typed in the rule")
    return said.format(value=value_text(limit.value, limit.unit))


def _ticks(first: date, last: date) -> tuple[tuple[date, str], ...]:
    """The years that begin between; where these are few, the first and the last day."""
    years = [date(year, 1, 1) for year in range(first.year + 1, last.year + 1)]
    if len(years) >= _YEARS_FROM:
        return tuple((day, str(day.year)) for day in years)
    return tuple((day, day_text(day)) for day in dict.fromkeys((first, last)))
