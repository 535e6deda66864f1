"""Figures at the end of a lane: what is left, hours to spare or short, whether a device stays off."""

from kitlog.budget.power.result import DayResult
from kitlog.budget.result import Finding
from kitlog.packing.assessment import Assessment
from kitlog.wording.figures import MINUS, hours_text, percent_text, with_unit
from kitlog.wording.translate import _
from kitlog.wording.words import word

CHARGED = 0.02
"""A rise of the charge by less than this, after a switch-off, is no charging."""

LONG_H = 24.0
"""From so many hours on, minutes say nothing."""

SECONDS = 3e-4
"""Switch-offs shorter than this, in h, are noise of the simulation."""


def end_text(day: DayResult, item: str) -> str:
    """What a device or bank has left at the end of a day, or that it is off."""
    if item in day.devices and stays_off(day, item):
        return _("off")
    share = day.devices[item].soc_end if item in day.devices else day.banks[item].soc_end
    return word("not known") if share is None else percent_text(100 * share)


def too_early_h(finding: Finding | None, case: str) -> float:
    """How much too early a device goes off, in h."""
    short_h = None if finding is None else finding.facts.get(f"short_h_{case}")
    return short_h if isinstance(short_h, float) else 0.0


def spare_text(day: DayResult, item: str, short_h: float) -> str:
    """Hours that a device would go on, or lacks; what a bank could still give. Empty where that says nothing."""
    if item in day.banks:
        in_hand_wh = day.banks[item].in_hand_wh
        return "" if in_hand_wh is None else with_unit(in_hand_wh, "Wh")
    if stays_off(day, item):
        return f"{MINUS}{hours_text(short_h)}" if short_h > 0 else ""
    more_h = day.devices[item].hours_more
    if more_h is None:
        return ""
    return f"+{with_unit(more_h, 'h')}" if more_h >= LONG_H else f"+{hours_text(more_h)}"


def stays_off(day: DayResult, item: str) -> bool:
    """Whether a device is off at the end, or went off and was not charged since."""
    device = day.devices[item]
    if not device.on_at_end or device.first_off_h is None or not lasting_off(day, item):
        return not device.on_at_end
    at_off = next((soc for hours, soc in day.device_courses[item].points if hours >= device.first_off_h), 1.0)
    return device.soc_end is not None and device.soc_end <= at_off + CHARGED


def lasting_off(day: DayResult, item: str) -> bool:
    """Whether a device is off for longer than the simulation is exact."""
    return day.devices[item].off_h > SECONDS


def start_of_day_min(assessment: Assessment) -> int:
    """Minute of the day at which the plan begins; 0 where it does not say, so that clock times are hours passed."""
    start = assessment.outing.starts_at
    return start.hour * 60 + start.minute if start else 0
