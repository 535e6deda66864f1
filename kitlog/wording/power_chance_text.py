"""Chances as lines: per cent of the days with the standard error, hours by which devices go off, who can still call."""

from collections.abc import Iterator

from kitlog.budget.power.chance import Odds, least_soc
from kitlog.budget.power.fan import LaneFan
from kitlog.budget.power.forecast import Forecast
from kitlog.budget.power_ask.answers import ChanceFound, ForecastFound
from kitlog.wording.chance_text import error_text, odds_text
from kitlog.wording.columns import paragraph, table
from kitlog.wording.figures import hours_text, number_text, percent_text
from kitlog.wording.power_lasting_text import lasts_text
from kitlog.wording.translate import _, ngettext


def odds_with_error(odds: Odds) -> str:
    """Per cent of the days and the standard error in points; of all or none of them, the bound that holds 95 of 100."""
    return f"{odds_text(odds)} {error_text(odds)}".strip()


def chance_lines(found: ChanceFound) -> Iterator[str]:
    """How often each device lasts."""
    rows = [
        (name, lasts_text(least_soc(found.query, name)), odds_with_error(odds)) for name, odds in found.odds.items()
    ]
    yield from table(rows, (False, False, False))
    days = next((odds.days for odds in found.odds.values()), 0)
    yield from _error(days)


def _error(days: int) -> Iterator[str]:
    text = ngettext(
        "{days} day drawn; ± is the standard error of drawing no more. The error of the figures put in is not in it.",
        "{days} days drawn; ± is the standard error of drawing no more. The error of the figures put in is not in it.",
        days,
    )
    yield from paragraph(text.format(days=number_text(days)))


def forecast_lines(found: ForecastFound) -> Iterator[str]:
    """Who can still call, then what lasts, when devices go off, and the charges at the end."""
    forecast = found.forecast
    if forecast.caller_alive is not None:
        yield from paragraph(_callers(found.query.callers, odds_with_error(forecast.caller_alive)))
    asked = {name: least_soc(found.query, name) for name in forecast.devices}
    text = (
        _("All devices last with their charge to keep: {odds}")
        if any(asked.values())
        else _("All devices last: {odds}")
    )
    yield from paragraph(text.format(odds=odds_with_error(forecast.all_last)))
    heads = {lasts_text(least): None for least in asked.values()}
    rows = [
        (name, *_lasts(lasts_text(asked[name]), [*heads], device.lasts), odds_with_error(device.alive_at_end))
        for name, device in forecast.devices.items()
    ]
    yield from table([("", *heads, _("on at the end")), *rows], (False,) * (2 + len(heads)))
    yield from _off(forecast)
    yield from _charges(forecast)
    yield from _error(forecast.days)


def _lasts(asked: str, heads: list[str], odds: Odds) -> Iterator[str]:
    """The chance under the head of what was asked."""
    yield from (odds_with_error(odds) if head == asked else "" for head in heads)


def _callers(callers: tuple[str, ...], odds: str) -> str:
    if len(callers) == 1:
        return _("{device} can still call at the end: {odds}").format(device=callers[0], odds=odds)
    return _("At least one of {devices} can still call at the end: {odds}").format(
        devices=", ".join(callers), odds=odds
    )


def _off(forecast: Forecast) -> Iterator[str]:
    """By when a share of the days has switched a device off; nothing of those that seldom go off."""
    hours = {
        name: (one.off.by_5_pct_h, one.off.by_50_pct_h, one.off.by_95_pct_h) for name, one in forecast.devices.items()
    }
    rows = [(name, *map(_hour, three)) for name, three in hours.items() if three[0] is not None]
    if rows:
        head = (_("switched off by"), *_days())
        yield from table([head, *rows], (False, True, True, True))


def _days() -> tuple[str, ...]:
    return (_("5 %"), _("50 %"), _("95 % of the days"))


def _hour(at_h: float | None) -> str:
    return _("on") if at_h is None else hours_text(at_h)


def _charges(forecast: Forecast) -> Iterator[str]:
    """The last points of the fan."""
    if forecast.fan is not None:
        lanes = {**forecast.fan.devices, **forecast.fan.banks}
        rows = [(name, *_ends(lane)) for name, lane in lanes.items()]
        head = (_("at the end under"), *_days(), _("likely day"))
        yield from table([head, *rows], (False, True, True, True, True))


def _ends(lane: LaneFan) -> tuple[str, ...]:
    return tuple(percent_text(100 * soc[-1]) for soc in (lane.low, lane.middle, lane.high, lane.likely))
