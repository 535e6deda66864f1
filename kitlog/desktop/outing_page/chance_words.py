"""What many days say of an outing's power, as words and as parts of the picture."""

from dataclasses import dataclass, replace

from kitlog.budget.power.chance import Odds
from kitlog.budget.power.fan import QUANTILES_PCT, LaneFan
from kitlog.budget.power.forecast import FIRST_DAYS, DeviceForecast, Forecast
from kitlog.budget.result import Finding
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_question import SEED, callers
from kitlog.paint.power_picture import Lane, clock_text
from kitlog.paint.power_spread import OffBy, Spread
from kitlog.wording.chance_text import error_text, odds_sentence, odds_text
from kitlog.wording.figures import number_text
from kitlog.wording.findings import Names, say
from kitlog.wording.translate import N_, _
from kitlog.wording.words import first_upper, word


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


@dataclass(frozen=True, slots=True)
class ChanceWords:
    """What the days say above the picture.

    Attributes:
        first: the chance that matters most; second: those beside it.
        why: what the chance of a phone rests on.
    """

    first: str
    second: str
    why: str = ""


_GRADES = {"thin": N_("a thin chance"), "bad": N_("too few days to rely on it")}
"""What a chance that is not good is called: its own words, for the mark beside it is that of the whole topic."""


def chance_words(assessment: Assessment, forecast: Forecast, names: Names, library: Library) -> ChanceWords:
    """The chance that a phone can still call at the end, else that something else can, else that all devices last."""
    last = _("all devices last: {odds}").format(odds=_brief(forecast.all_last))
    findings = chance_findings(assessment, forecast)
    phone = next((finding for finding in findings if finding.code == "power.phone_can_call"), None)
    beside = ", ".join([*(_some(finding) for finding in findings if finding.code == "power.any_can_call"), last])
    if phone is not None:
        said = say(phone, names)
        odds = phone.facts.get("odds")
        first = f"{said.title}: {odds_sentence(odds) if isinstance(odds, Odds) else said.sentence}"
        grade = _GRADES.get(str(phone.facts.get("grade")))
        return ChanceWords(f"{first}, {_(grade)}" if grade else first, beside, said.sentence)
    items = [line.item for line in assessment.lines if line.item.id not in assessment.grounded]
    caller = next((item for item in callers(assessment.power, items, library) if item in forecast.devices), None)
    if caller is None:
        return ChanceWords(first_upper(last), "")
    text = _("{device} can still call for help at the end: {odds}")
    odds_said = odds_sentence(forecast.devices[caller].alive_at_end)
    return ChanceWords(text.format(device=names.get(caller, caller), odds=odds_said), beside)


def _some(finding: Finding) -> str:
    odds = finding.facts.get("odds")
    text = (
        _("one of {n} that call for help: {odds}") if len(finding.items) > 1 else _("something calls for help: {odds}")
    )
    return text.format(n=len(finding.items), odds=_brief(odds) if isinstance(odds, Odds) else word("not known"))


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
