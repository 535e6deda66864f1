"""How far an outing's power goes, in words: each answer for the likely and the high day, so rounded that it holds."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import time

from kitlog.budget.power.walk_down import STEPS
from kitlog.packing.power_day import NO_DEVICES, NO_PHASES
from kitlog.packing.power_inverse import LARGEST_WH, Inverse, Outcome
from kitlog.packing.power_limits import BothCases
from kitlog.wording.figures import hours_text, percent_text, with_unit
from kitlog.wording.power_limits_text import down_to_minutes, rounded_up
from kitlog.wording.translate import N_, _
from kitlog.wording.words import first_upper

Names = Mapping[str, str]

NOT_ASKED = N_("not asked")


@dataclass(frozen=True, slots=True)
class LimitWords:
    """One answer.

    Attributes:
        subject: the device, bank or phase; likely, high: the figure on the likely and on the high day, or why there is
            none; sure: how sure the figures are that it rests on; empty where nothing was asked.
        why_not: why it cannot be asked; empty where it was.
        note: what has to be known beside the figures; empty for nothing.
    """

    subject: str
    likely: str
    high: str
    sure: str
    why_not: str = ""
    note: str = ""

    @property
    def spoken(self) -> str:
        """All of it in one sentence."""
        if self.why_not:
            return _("{subject}: not asked, {why}").format(subject=self.subject, why=self.why_not)
        text = _("{subject}: likely day {likely}, high day {high} ({sure})")
        said = text.format(subject=self.subject, likely=self.likely, high=self.high, sure=self.sure)
        return f"{said}. {self.note}" if self.note else said


def retrieve_words(found: BothCases, starts_at: time | None = None) -> LimitWords:
    """The longest retrieve: the phase that was drawn out, in whole minutes, never more than it may be.

    Where the phone is off before, that is said: the figure alone would read as if it had been on all the time. With
    `starts_at` the switch-off is a clock time, else hours from the start.
    """
    one = found.likely
    why = _(_WHY_NOT[one.why]) if one.why else ""
    words = _words(first_upper(_(one.phase)) if one.phase else _("The way home"), found, why)
    return replace(words, note=_off_note(found, starts_at))


_WHY_NOT = {
    NO_PHASES: N_("the outing has no phases with durations yet"),
    NO_DEVICES: N_("no phone with known figures goes along"),
    "no phone": N_("no phone with known figures goes along"),
    "swollen": N_("the battery of the phone was seen swollen, so it is not counted"),
    "no way home": N_("the day does not end on a way home with a duration"),
    "no cell": N_("the phone has no cell of its own"),
}
"""Why the longest way home is not asked."""


def _off_note(found: BothCases, starts_at: time | None) -> str:
    """That the phone is off before the way home begins; by the likely day where it is off there, else by the high."""
    for one, text in (
        (found.likely, N_("It is off before that, from {at}, {span} in all: the figure counts from when it is back.")),
        (
            found.high,
            N_(
                "On the high day it is off before that, from {at}, {span} in all: the figure counts from when it is "
                "back."
            ),
        ),
    ):
        if one.off_from_h is not None and one.figure != 0:  # 0 says itself that it cannot even begin
            return _(text).format(at=_at(one.off_from_h, starts_at), span=hours_text(one.off_before_h))
    return ""


def _at(hours: float, starts_at: time | None) -> str:
    if starts_at is None:
        return _("{hours} after the start").format(hours=hours_text(hours))
    minutes = (60 * starts_at.hour + starts_at.minute + round(60 * hours)) % 1440
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def start_words(found: BothCases, names: Names) -> LimitWords:
    """The lowest charge with which a device may begin, rounded up."""
    return _words(_name(found, names), found, _("it has no cell of its own"))


def bank_words(found: BothCases, names: Names) -> LimitWords:
    """The least energy of a bank, on its label, rounded up."""
    return _words(_name(found, names), found, _("nothing is plugged into it in this plan"))


def _name(found: BothCases, names: Names) -> str:
    return names.get(found.likely.subject, found.likely.subject)


def _words(subject: str, found: BothCases, why_not: str) -> LimitWords:
    if found.likely.outcome is Outcome.NOT_ASKED:
        return LimitWords(subject, _(NOT_ASKED), _(NOT_ASKED), "", why_not)
    return LimitWords(subject, limit_text(found.likely), limit_text(found.high), _(found.sure.value))


def limit_text(found: Inverse) -> str:
    """The figure, or what stands in its place: beyond what was looked at, never, or not asked."""
    if found.outcome is Outcome.FOUND and found.figure is not None:
        return _figure(found.figure, found.unit)
    if found.outcome is Outcome.BEYOND:
        return _("beyond {limit}").format(limit=hours_text(found.limit))
    if found.outcome is Outcome.NEVER:
        most = with_unit(found.limit, "Wh") if found.unit == "Wh" else ""
        return _("never up to {most}").format(most=most) if most else _("never, not even when full")
    return _(NOT_ASKED)


def _figure(figure: float, unit: str) -> str:
    if unit == "h":
        return hours_text(down_to_minutes(figure)) if figure else _("never, it cannot even begin")
    if unit == "%":
        return percent_text(rounded_up(figure, 10), 1) if figure else _("any charge")
    return with_unit(rounded_up(figure, 10), "Wh", 1) if figure else _("none is needed")


START_CAPTION = N_("Lowest charge at the start with which it lasts with its charge to keep; every higher one does too")
BANK_CAPTION = N_(
    "Smallest bank with which all on it lasts with its charge to keep, Wh on its label; every larger one does too"
)


def grid_text() -> str:
    """How finely was looked for charges and banks."""
    text = _(
        "Looked for from the top down (full, {most}) in steps of {start} and {bank}, finer where the course of the day "
        "changes."
    )
    return text.format(
        most=with_unit(LARGEST_WH, "Wh"),
        start=percent_text(100 / STEPS, 1),
        bank=with_unit(LARGEST_WH / STEPS, "Wh", 1),
    )
