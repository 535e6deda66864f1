"""Will it last, how sure is that, and where does the charge go meanwhile? Many days, each run by the one routine."""

from collections.abc import Generator, Mapping
from dataclasses import dataclass

from kitlog.budget.power.chance import Odds, least_soc, odds_of
from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day, refuse_unknown
from kitlog.budget.power.day import Day
from kitlog.budget.power.fan import Columns, Fan, lane_fans, point_hours
from kitlog.budget.power.fan_sampler import FanSampler
from kitlog.budget.power.forecast_draws import Uncertain
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.budget.power.forecast_tally import Tally
from kitlog.budget.power.story import Run

FIRST_DAYS = 500
EVERY_DAYS = 1_000

FAN_DAYS = 4_000
"""The fan shows no more days than this. Its 5 % are then 5 % give or take 0.34 (sqrt(.05 x .95 / 4000)): no more than a
line's width, and it spares half the work."""


@dataclass(frozen=True, slots=True)
class OffHours:
    """Hours from the start by which 5, 50 and 95 % of all days have switched a device off; None: fewer days have."""

    by_5_pct_h: float | None
    by_50_pct_h: float | None
    by_95_pct_h: float | None


@dataclass(frozen=True, slots=True)
class DeviceForecast:
    """How a device fares over the days drawn.

    Attributes:
        lasts: never off, and at the end at the charge asked for or more.
        alive_at_end: on when the day ends, with usable charge or on a bank that gives: of a phone, that it can still
            call at the end of the retrieve. It may have been off before.
        off: when it goes off for the first time.
        off_at: where in the plan 5, 50 and 95 % of the days have switched it off, in phases passed: 1.25 is a quarter
            of the second. Durations differ from day to day, so this and `off` need not be of the same day.
    """

    lasts: Odds
    alive_at_end: Odds
    off: OffHours
    off_at: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class Forecast:
    """What `days` days have shown; an estimate until `days` is `of`.

    Attributes:
        all_last: every device lasts on the same day.
        caller_alive: at least one of the devices that can call for help is alive at the end; None: none was named.
        fan: None if none was asked for.
    """

    days: int
    of: int
    devices: Mapping[str, DeviceForecast]
    all_last: Odds
    caller_alive: Odds | None
    fan: Fan | None

    @property
    def is_final(self) -> bool:
        """Whether all days have been drawn."""
        return self.days == self.of


Estimates = Generator[Forecast, None, None]
"""One after the other, each of more days; close it to give up."""


def forecasts(day: Day, query: ForecastQuery, first: int = FIRST_DAYS, every: int = EVERY_DAYS) -> Estimates:
    """Draw `query.n` days; a first estimate after `first` of them, others at multiples of `every`, then the final one.

    The days are the same for the same seed, however often an estimate is asked for. Stop taking from the iterator, or
    close it, to give up. Not for two threads at once.

    Raises:
        InputFault: at once, before the first estimate: the day or the question contradicts itself (`checks`).
    """
    check_day(day)
    check_query(query, day)
    names = [device.id for device in day.devices]
    for caller in query.callers:
        if caller not in names:
            refuse_unknown(caller, "device", "query.callers")
    return _forecasts(day, query, first, every)


def forecast(day: Day, query: ForecastQuery) -> Forecast:
    """The final forecast alone.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    *_, final = forecasts(day, query, query.n, query.n)
    return final


def _forecasts(day: Day, query: ForecastQuery, first: int, every: int) -> Estimates:
    uncertain = Uncertain(day, query)
    names = [device.id for device in day.devices]
    tally = Tally([least_soc(query, name) for name in names], [names.index(name) for name in query.callers])
    fans = _Fans(day, uncertain, query.fan_steps) if query.fan_steps else None
    for run in uncertain.days(query.n, query.seed, fans.sampler if fans else None, FAN_DAYS):
        tally.add(run)
        if fans and tally.days <= FAN_DAYS:
            fans.add(run)
        if tally.days in (first, query.n) or (tally.days > first and tally.days % every == 0):
            yield _forecast(names, query, tally, fans.fan(final=tally.days == query.n) if fans else None)


def _forecast(names: list[str], query: ForecastQuery, tally: Tally, fan: Fan | None) -> Forecast:
    return Forecast(
        days=tally.days,
        of=query.n,
        devices={
            name: DeviceForecast(
                lasts=odds_of(tally.lasted[index], tally.days),
                alive_at_end=odds_of(tally.alive[index], tally.days),
                off=OffHours(*tally.off_h(index)),
                off_at=tally.off_at(index),
            )
            for index, name in enumerate(names)
        },
        all_last=odds_of(tally.all_lasted, tally.days),
        caller_alive=odds_of(tally.caller_alive, tally.days) if query.callers else None,
        fan=fan,
    )


class _Fans:
    """What has been seen of the charges so far, beside the likely day."""

    def __init__(self, day: Day, uncertain: Uncertain, steps: int) -> None:
        self.sampler = FanSampler(uncertain.plan, steps)
        self._likely = self.sampler.row(uncertain.likely_day(self.sampler))
        self._likely_h = point_hours(uncertain.plan.hours, steps)
        self._steps = steps
        self._devices = [day.devices[index].id for index in self.sampler.device_lanes]
        self._banks = [day.banks[index].id for index in self.sampler.bank_lanes]
        self._columns = Columns(len(self._likely))
        self._days = 0
        self._latest: Fan | None = None

    def add(self, run: Run) -> None:
        """Keep what the sampler has seen of a day."""
        self._columns.add(self.sampler.row(run))
        self._days += 1

    def fan(self, *, final: bool) -> Fan:
        """The fan of the days so far; the one before, as long as it shows more than half of them."""
        if self._latest is None or self._days >= 2 * self._latest.days or (final and self._days > self._latest.days):
            self._latest = self._drawn()
        return self._latest

    def _drawn(self) -> Fan:
        number = len(self._devices)
        lanes = lane_fans(number + len(self._banks), self._columns.quantiles(), self._likely)
        return Fan(
            days=self._days,
            steps=self._steps,
            likely_h=self._likely_h,
            devices=dict(zip(self._devices, lanes[:number], strict=True)),
            banks=dict(zip(self._banks, lanes[number:], strict=True)),
        )
