"""The power picture of an assessment: phases as bands, devices and banks as lanes."""

from collections.abc import Iterable
from itertools import accumulate

from kitlog.budget.power.forecast import Forecast
from kitlog.budget.power.result import Course, DayResult
from kitlog.budget.result import Finding, Topic
from kitlog.desktop.outing_page.chance_words import with_days
from kitlog.desktop.outing_page.power_figures import end_text, lasting_off, spare_text, start_of_day_min, too_early_h
from kitlog.desktop.outing_page.topics import mark_of, state_of
from kitlog.kit.item import Item
from kitlog.outing.outing import Phase
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import energy_wh
from kitlog.paint.mark import Mark
from kitlog.paint.power_picture import (
    Lane,
    OffMark,
    PhaseBand,
    PowerPicture,
    PowerWords,
    clock_text,
)
from kitlog.wording.figures import span_text, with_unit
from kitlog.wording.findings import Names
from kitlog.wording.translate import _

COLD_LOCK = 0.05
"""From this share of the cells on, a band is shown as cold: less cannot be seen."""


def power_picture(assessment: Assessment, names: Names, forecast: Forecast | None = None) -> PowerPicture:
    """The lanes of an assessment, with the days of its forecast; without a simulated day there are none."""
    likely, high = assessment.power.likely, assessment.power.high
    phases = assessment.outing.phases
    if likely is None or high is None:
        return PowerPicture((), (), _words())
    marks = {f.items[0]: f for f in assessment.findings if f.code in {"power.device", "power.bank_sleeps"} and f.items}
    items = [line.item for line in assessment.lines if not line.in_car]
    items = [item for item in items if item.id in {*likely.devices, *likely.banks}]
    items.sort(key=lambda item: item.id in likely.banks)
    start_min = start_of_day_min(assessment)
    lanes = [with_days(_lane(item, assessment, marks.get(item.id)), item.id, forecast, start_min) for item in items]
    unknown = (
        Lane(names.get(item, item), _("not known"), mark=_worst(item, assessment, Mark.NOT_KNOWN))
        for item in assessment.power.unknown
    )
    swollen = (
        Lane(names.get(item, item), _("swollen, not counted"), mark=_worst(item, assessment, Mark.LOOK))
        for item in assessment.power.swollen
    )
    return PowerPicture(
        phases=tuple(_band(phase, _floors(likely, phase)) for phase in phases),
        lanes=(*lanes, *unknown, *swollen),
        words=_words(),
        clocks_likely=_clocks(assessment, tuple(phase.likely_h for phase in phases)),
        clocks_high=_clocks(assessment, tuple(phase.high_h for phase in phases)),
        start_min=start_min,
    )


def _worst(item: str, assessment: Assessment, without: Mark) -> Mark:
    """The mark of the worst that is said of a device's or bank's power; the landing and its calls among it."""
    said = tuple(finding for finding in assessment.of(Topic.POWER) if item in finding.items)
    return mark_of(state_of(said)) if said else without


def _words() -> PowerWords:
    return PowerWords(
        caption=_("lane height: 0 to 100 %"),
        likely=_("likely"),
        high=_("high"),
        locked=_("locked by cold"),
        spread=_("5 to 95 % of days"),
        off_by=_("5, 50, 95 % of days off"),
        left_at_end=_("left at the end"),
        lasts=_("lasts"),
        middle=_("50 %"),
        outer=_("5\u201395 %"),
        not_known=_("not known"),
    )


def _band(phase: Phase, floor: float) -> PhaseBand:
    air = _("air not known") if phase.air_c is None else with_unit(phase.air_c, "°C")
    cold = floor >= COLD_LOCK
    note = _("{air}, cold locks part of the cells").format(air=air) if cold else air
    return PhaseBand(phase.name, note, phase.likely_h, phase.high_h, cold)


def _floors(day: DayResult, phase: Phase) -> float:
    """How much more than in the mildest phase some cell has locked."""
    most = 0.0
    for course in (*day.device_courses.values(), *day.bank_courses.values()):
        floors = {span.phase: span.floor_soc for span in course.floors}
        if phase.name in floors:
            most = max(most, floors[phase.name] - min(floors.values()))
    return most


def _lane(item: Item, assessment: Assessment, finding: Finding | None) -> Lane:
    likely, high = assessment.power.likely, assessment.power.high
    assert likely is not None  # noqa: S101  # asked by the caller, told to the type checker
    assert high is not None  # noqa: S101
    now, late = _course(likely, item.id), _course(high, item.id)
    energy = energy_wh(item)
    return Lane(
        label=item.name,
        note=_("not known") if energy is None else with_unit(energy, "Wh", 1),
        likely=_curve(now),
        high=_curve(late),
        locked=tuple(_locked(now, late, phase) for phase in assessment.outing.phases),
        off=tuple(_offs(item.id, assessment, finding)),
        on_bank=_on_bank(item, likely),
        remark=_remark(item, likely, assessment),
        end_likely=end_text(likely, item.id),
        end_high=end_text(high, item.id),
        spare_likely=spare_text(likely, item.id, too_early_h(finding, "likely")),
        spare_high=spare_text(high, item.id, too_early_h(finding, "high")),
        mark=_worst(item.id, assessment, Mark.NONE),
    )


def _course(day: DayResult, item: str) -> Course:
    return day.device_courses[item] if item in day.device_courses else day.bank_courses[item]


def _curve(course: Course) -> tuple[tuple[float, float], ...]:
    return tuple((hours, min(max(share, 0.0), 1.0)) for hours, share in course.points)


def _locked(now: Course, late: Course, phase: Phase) -> float:
    spans = (span.floor_soc for course in (now, late) for span in course.floors if span.phase == phase.name)
    return min(max(next(spans, 0.0), 0.0), 1.0)


def _offs(item: str, assessment: Assessment, finding: Finding | None) -> Iterable[OffMark]:
    """The first switch-off of a device, in the likely case if there is one there, else in the high one."""
    if finding is None or finding.code != "power.device":
        return
    for case, in_high in (("likely", False), ("high", True)):
        off_h, short_h = finding.facts[f"off_h_{case}"], finding.facts[f"short_h_{case}"]
        day = assessment.power.high if in_high else assessment.power.likely
        if isinstance(off_h, float) and day is not None and lasting_off(day, item):
            said = _("high day: off {time}") if in_high else _("off {time}")
            brief = said.format(time=clock_text(start_of_day_min(assessment), off_h))
            early_h = short_h if isinstance(short_h, float) else 0.0
            early = _(", {span} too early").format(span=span_text(early_h)) if early_h > 0 else ""
            yield OffMark(off_h, brief + early, in_high, brief)
            return


def _on_bank(item: Item, day: DayResult) -> tuple[tuple[float, float], ...]:
    """When a device hangs on a bank; for a bank, when something hangs on it."""
    if item.id in day.device_courses:
        return tuple((span.from_h, span.to_h) for span in day.device_courses[item.id].plugged)
    spans = (s for course in day.device_courses.values() for s in course.plugged if s.what == item.id)
    return tuple(sorted((span.from_h, span.to_h) for span in spans))


def _remark(item: Item, day: DayResult, assessment: Assessment) -> str:
    if item.id not in day.banks:
        return ""
    fed = [device for device, course in day.device_courses.items() if any(s.what == item.id for s in course.plugged)]
    names = [line.item.name for line in assessment.lines if line.item.id in fed]
    return _("feeds {devices}").format(devices=", ".join(names)) if names else _("nothing is plugged in")


def _clocks(assessment: Assessment, hours: tuple[float, ...]) -> tuple[str, ...]:
    edges = (0.0, *accumulate(hours))
    if assessment.outing.starts_at is None:
        return tuple(f"{round(edge * 60) // 60}:{round(edge * 60) % 60:02d}" for edge in edges)
    return tuple(clock_text(start_of_day_min(assessment), edge) for edge in edges)
