"""What many days say of an outing's power, as words and as parts of the picture."""

from dataclasses import replace

from kitlog.budget.power.chance import Odds
from kitlog.budget.power.fan import QUANTILES_PCT, LaneFan
from kitlog.budget.power.forecast import FIRST_DAYS, DeviceForecast, Forecast
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_question import SEED, callers
from kitlog.paint.power_picture import Lane, clock_text
from kitlog.paint.power_spread import OffBy, Spread
from kitlog.wording.chance_text import error_text, odds_sentence, odds_text
from kitlog.wording.figures import number_text
from kitlog.wording.findings import Names
from kitlog.wording.translate import _

WAYS_HOME = frozenset({PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME})


def with_days(lane: Lane, item: str, forecast: Forecast | None, start_min: int) -> Lane:
    """A lane with what the days say of its device or bank; as it was where they say nothing."""
    if forecast is None:
        return lane
    if forecast.fan is not None:
        fan = forecast.fan.devices.get(item) or forecast.fan.banks.get(item)
        lane = lane if fan is None else replace(lane, spread=_spread(fan, forecast.fan.steps))
    device = forecast.devices.get(item)
    if device is None:
        return lane
    return replace(
        lane,
        chance=odds_text(device.lasts),
        chance_error=error_text(device.lasts),
        off_by=_off_by(device, start_min),
    )


def chance_lines(assessment: Assessment, forecast: Forecast, names: Names, library: Library) -> tuple[str, str]:
    """The chance that matters most, and those beside it."""
    items = [line.item for line in assessment.lines]
    found = [item for item in callers(assessment.power, items, library) if item in forecast.devices]
    last = _("all devices last: {odds}").format(odds=_brief(forecast.all_last))
    if not found:
        return last[:1].upper() + last[1:], ""
    first = found[0]
    is_phone = any(item.id == first and item.kind is Kind.PHONE for item in items)
    text = _("{device} can still call at the end of {stretch}: {odds}")
    text = text if is_phone else _("{device} can still call for help at the end of {stretch}: {odds}")
    said = text.format(
        device=names.get(first, first),
        stretch=_last_stretch(assessment),
        odds=odds_sentence(forecast.devices[first].alive_at_end),
    )
    beside = [last]
    if len(found) > 1 and forecast.caller_alive is not None:
        some = _("one of {n} that call for help: {odds}")
        beside.insert(0, some.format(n=len(found), odds=_brief(forecast.caller_alive)))
    return said, ", ".join(beside)


def _brief(odds: Odds) -> str:
    error = error_text(odds)
    return f"{odds_text(odds)} ({error})" if error else odds_text(odds)


def stage_text(forecast: Forecast | None) -> str:
    """How far the drawing of days has come."""
    if forecast is None:
        return _("drawing days at random")
    days, of = number_text(forecast.days), number_text(forecast.of)
    if forecast.is_final:
        return _("{of} days drawn").format(of=of)
    if forecast.days <= FIRST_DAYS:
        return _("first estimate, {days} of {of} days").format(days=days, of=of)
    return _("estimate, {days} of {of} days").format(days=days, of=of)


def drawing_text(forecast: Forecast) -> str:
    """How the days were drawn, and what the error means."""
    return _(
        "{n} days drawn at random between low and high, seed {seed}: the same plan gives the same figures. "
        "± is the standard error of drawing so many days; the durations and draws put in are not made surer by it."
    ).format(n=number_text(forecast.days), seed=SEED)


def device_days(device: DeviceForecast, start_min: int) -> str:
    """The chance of a device and when it goes off, as sentences."""
    said = [_("Lasts on {odds} of the days").format(odds=odds_sentence(device.lasts))]
    said += [off.text for off in _off_by(device, start_min)]
    return "; ".join(said)


def _off_by(device: DeviceForecast, start_min: int) -> tuple[OffBy, ...]:
    hours = (device.off.by_5_pct_h, device.off.by_50_pct_h, device.off.by_95_pct_h)
    text = _("{pct}\u00a0% of the days: off by {time}")
    return tuple(
        OffBy(pct, at, text.format(pct=pct, time=clock_text(start_min, by_h)))
        for pct, by_h, at in zip(QUANTILES_PCT, hours, device.off_at, strict=True)
        if by_h is not None and at is not None
    )


def _spread(fan: LaneFan, steps: int) -> Spread:
    low, middle, high = (tuple(min(max(s, 0.0), 1.0) for s in line) for line in (fan.low, fan.middle, fan.high))
    return Spread(steps, low, middle, high)


def _last_stretch(assessment: Assessment) -> str:
    ways = [phase.way for phase in assessment.outing.phases if phase.high_h > 0]
    return _("the retrieve") if ways and ways[-1] in WAYS_HOME else _("the day")
