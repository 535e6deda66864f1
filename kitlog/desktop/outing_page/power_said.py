"""The power picture as text: for a screen reader, and for the place under the reading line."""

from kitlog.budget.power.forecast import Forecast
from kitlog.budget.power.result import DayResult
from kitlog.budget.result import Finding
from kitlog.desktop.outing_page.chance_words import device_days
from kitlog.desktop.outing_page.plan_words import hm_text, home_texts
from kitlog.desktop.outing_page.power_figures import end_text, start_of_day_min, too_early_h
from kitlog.outing.outing import Outing, Phase
from kitlog.packing.assessment import Assessment
from kitlog.paint.power_picture import LaneReading, PowerPicture, Reading, clock_text
from kitlog.wording.figures import hours_text, percent_text, span_text
from kitlog.wording.findings import Names
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


def power_sentences(assessment: Assessment, names: Names, forecast: Forecast | None = None) -> str:
    """The picture as text: for each device whether it lasts, hours to spare, its chance, and when it goes off."""
    likely, high = assessment.power.likely, assessment.power.high
    if likely is None or high is None:
        return ""
    findings = {f.items[0]: f for f in assessment.findings if f.code == "power.device" and f.items}
    said = [_device_text(item, assessment, findings.get(item), names) for item in likely.devices]
    if forecast is not None:
        days = (forecast.devices.get(item) for item in likely.devices)
        start_min = start_of_day_min(assessment)
        said = [
            text if one is None else f"{text} {device_days(one, start_min)}."
            for text, one in zip(said, days, strict=True)
        ]
    said += [_bank_text(names.get(item, item), likely, high, item) for item in likely.banks]
    said += [_("{device}: not known.").format(device=names.get(item, item)) for item in assessment.power.unknown]
    text = _("{device}: swollen, not to be taken, and not counted.")
    said += [text.format(device=names.get(item, item)) for item in assessment.power.swollen]
    return " ".join(said)


def _device_text(item: str, assessment: Assessment, finding: Finding | None, names: Names) -> str:
    cases = (
        (assessment.power.likely, _("the likely day"), "likely"),
        (assessment.power.high, _("the high day"), "high"),
    )
    said = [_case_text(day, item, name, too_early_h(finding, case), assessment) for day, name, case in cases if day]
    return f"{names.get(item, item)}: {'; '.join(said)}."


def _case_text(day: DayResult, item: str, name: str, short_h: float, assessment: Assessment) -> str:
    device = day.devices[item]
    if device.first_off_h is None:
        text = _("lasts {day}, {left} left").format(day=name, left=end_text(day, item))
        spare = "" if device.hours_more is None else _(", {span} to spare").format(span=hours_text(device.hours_more))
        return text + spare
    time = clock_text(start_of_day_min(assessment), device.first_off_h)
    text = _("off at {time} on {day}").format(time=time, day=name)
    return text + (_(", {span} too early").format(span=span_text(short_h)) if short_h > 0 else "")


def _bank_text(name: str, likely: DayResult, high: DayResult, item: str) -> str:
    return _("{bank}: {likely} left on the likely day, {high} on the high day.").format(
        bank=name, likely=end_text(likely, item), high=end_text(high, item)
    )


def reading_text(picture: PowerPicture, found: Reading) -> str:
    """What stands under the reading line, as text."""
    head = _("{phase}, likely {likely}, high {high}").format(
        phase=picture.phases[found.phase].label,
        likely=clock_text(picture.start_min, found.likely_h),
        high=clock_text(picture.start_min, found.high_h),
    )
    return f"{head}: {'; '.join(map(_lane_reading, found.lanes))}"


def _lane_reading(lane: LaneReading) -> str:
    text = _("{device} {likely}, high {high}").format(
        device=lane.label, likely=_share(lane.likely), high=_share(lane.high)
    )
    if lane.spread is not None:
        low, middle, top = map(_share, lane.spread)
        text += _(", of the days 5 % at or under {low}, half {middle}, 95 % {top}").format(
            low=low, middle=middle, top=top
        )
    return text if lane.off_by is None else f"{text}, {lane.off_by.text}"


def edge_text(outing: Outing, number: int, before: Phase) -> str:
    """What the end of a phase says while it is chosen or moved; low and high that move with it are told as new."""
    phase = outing.phases[number]
    home = (home_texts(outing) or ("", "", ""))[1]
    text = _("{phase}: {likely} likely ({low}, {high}), home at {home}")
    text = _("{phase}: {likely} likely ({low}, {high}), {home} h in all") if outing.starts_at is None else text
    low = _("low {hours}") if phase.low_h == before.low_h else _("low now {hours}")
    high = _("high {hours}") if phase.high_h == before.high_h else _("high now {hours}")
    return text.format(
        phase=first_upper(phase.name),
        likely=hours_text(phase.likely_h),
        low=low.format(hours=hm_text(phase.low_h)),
        high=high.format(hours=hm_text(phase.high_h)),
        home=home,
    )


def edge_help(*, moving: bool) -> str:
    """What can be done with the end of a phase that is chosen or moved."""
    if moving:
        return _("Power and phases follow, what is greyed does not. Let go or Enter keeps it, Esc gives it up.")
    return _("Drag it, or Ctrl with the left and right arrow moves it by five minutes.")


def _share(share: float | None) -> str:
    return percent_text(None if share is None else 100 * share)
