"""What a tile says: one figure, two lines, and what would help."""

from collections.abc import Callable
from dataclasses import dataclass

from kitlog.budget.result import Finding, Remedy, State, Topic
from kitlog.desktop.outing_page.topics import TITLES, mark_of, state_of
from kitlog.desktop.words import count_text
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_day import NO_PHASES
from kitlog.paint.mark import Mark
from kitlog.wording.figures import MINUS, day_text, kg_text, number_text, percent_text, span_text
from kitlog.wording.findings import Names, say, tile_figure
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import first_upper


@dataclass(frozen=True, slots=True)
class TileWords:
    """A tile.

    Attributes:
        title: of its topic; mark, state: shape and word; figure: the one figure; lines: two short ones.
        act: what would help, or what opens; remedy: what the act does, None = it opens the tile.
    """

    topic: Topic
    title: str
    mark: Mark
    state: str
    figure: str
    lines: tuple[str, str]
    act: str = ""
    remedy: Remedy | None = None

    @property
    def spoken(self) -> str:
        """All of it in one line."""
        return f"{self.title}, {self.state}: {self.figure}. {', '.join(line for line in self.lines if line)}"


Body = tuple[str, tuple[str, str]]
"""Figure and two lines."""

OPENS = {
    Topic.KIT: N_("Show the list"),
    Topic.POWER: N_("Show the lanes"),
    Topic.WEIGHT: N_("Show the ruler"),
}


def tile_words(topic: Topic, assessment: Assessment, names: Names) -> TileWords:
    """What the tile of a topic says."""
    findings = assessment.of(topic)
    state = state_of(findings)
    figure, lines = _BODIES.get(topic, _any)(findings, assessment, names)
    remedy = _remedy(topic, findings, names)
    act = short_act(remedy, names) if remedy else _(OPENS.get(topic, N_("Show the findings")))
    return TileWords(topic, _(TITLES[topic]), mark_of(state), _(state.value), figure, lines, act, remedy)


def _remedy(topic: Topic, findings: tuple[Finding, ...], names: Names) -> Remedy | None:
    """What the tile's act does: of the device whose margin is its figure, else of the first finding of its state."""
    state = state_of(findings)
    short = _shortest(findings) if topic is Topic.POWER else None
    about = [short] if short else [f for f in findings if f.state is state and state is not State.FINE]
    offered = (one for finding in about for one in finding.remedies if not _costs(one))
    return next((remedy for remedy in offered if short_act(remedy, names)), None)


def _costs(remedy: Remedy) -> bool:
    """Whether a remedy brings something that has to be read first: a caution, or that nobody can follow the flight."""
    return "cautions" in remedy.facts or remedy.code == "flight_mode"


_SHORT = {
    "swap": N_("Swap: {last}"),
    "leave_at_home": N_("Leave out: {first}"),
    "record_service": N_("Record: {first}"),
    "close_service": N_("Service: {first}"),
    "take_along": N_("Take along: {first}"),
    "tell_contact": N_("Told just now: {name}"),
    "name_person": N_("Name someone"),
    "answer": N_("Answer it"),
    "choose": N_("Choose one"),
    "weigh": N_("Weigh: {first}"),
    "weigh_body": N_("Enter your body mass"),
    "enter_range": N_("Enter the range"),
    "enter_harness_limit": N_("Enter the greatest load"),
    "enter_reserve_limit": N_("Enter the printed load"),
    "enter_battery": N_("Enter Wh: {first}"),
    "enter_use": N_("Enter its use: {first}"),
    "enter_phases": N_("Enter the phases"),
    "enter_volume": N_("Enter the volume"),
    "carry_water": N_("Plan more water"),
    "fetch": N_("Get it back: {first}"),
    "bank_instead": N_("Take instead: {second}"),
    "add_bank": N_("Take along: {second}"),
    "plan_plugs": N_("Plan the plugs"),
    "plug_too": N_("Plug in: {first}"),
    "plug_below": N_("Plug in later: {first}"),
    "use_less": N_("Use less: {first}"),
    "flight_mode": N_("Flight mode, not followed: {first}"),
    "start_full": N_("Charge full: {first}"),
    "leave_off": N_("Leave off: {first}"),
    "carry_warmer": N_("Carry warmer: {first}"),
}
"""Remedies that can be pressed, short enough for a tile."""


def short_act(remedy: Remedy, names: Names) -> str:
    """A remedy in a few words; empty for advice alone."""
    items = [names.get(item, item) for item in remedy.items] or [""]
    name = str(remedy.facts.get("name", ""))
    text = _SHORT.get(remedy.code, "")
    return _(text).format(first=items[0], second=items[:2][-1], last=items[-1], name=name) if text else ""


def _kit(findings: tuple[Finding, ...], assessment: Assessment, names: Names) -> Body:
    open_ones = [finding for finding in findings if finding.state is not State.FINE]
    count = len(assessment.lines)
    if not open_ones:
        said = ngettext("{n} line", "{n} lines", count).format(n=count)
        return said, (_("needs met, no service open"), _next_due(assessment, names))
    worst = [finding for finding in open_ones if finding.state is open_ones[0].state]
    titles = [first_upper(say(finding, names).title) for finding in open_ones[:2]] + [""]
    rest = len(open_ones) - 1
    second = titles[1] if rest < 2 else ngettext("and {n} more", "and {n} more", rest).format(n=rest)
    return count_text(len(worst), worst[0].state), (titles[0], second)


def _next_due(assessment: Assessment, names: Names) -> str:
    """What of the things that go along falls due first after the outing."""
    due = assessment.next_due
    first = None if due is None else min((day for day in (due.due_on, due.predicted_on) if day), default=None)
    if due is None or first is None:
        return ""
    day = day_text(first, year=first.year != due.on.year)
    return _("next due: {item}, {day}").format(item=names.get(due.item_id, due.item_id), day=day)


def _power(findings: tuple[Finding, ...], assessment: Assessment, names: Names) -> Body:
    worst = _shortest(findings)
    if worst is not None:
        second = _swollen_line(assessment, names) or _goes_off_line(findings)
        return f"{MINUS}{span_text(worst.margin or 0.0)}", (_off_line(worst, names), second)
    phone = next((f for f in findings if f.code == "power.phone_at_landing"), None)
    unknown = len(assessment.power.unknown)
    rest = ngettext("{n} device not known", "{n} devices not known", unknown).format(n=unknown)
    swollen = _swollen_line(assessment, names)
    rest = swollen or rest
    if phone is not None:
        second = rest if unknown or swollen else _("all last, the high day too")
        return percent_text(phone.figure), (_("phone at the landing, likely"), second)
    if assessment.power.likely is None:
        why = (
            _("no phases with durations yet") if assessment.power.reason == NO_PHASES else _("no device described yet")
        )
        return _("not known"), (why, rest if unknown or swollen else "")
    lasting = len(assessment.power.likely.devices)
    said = ngettext("{n} device", "{n} devices", lasting).format(n=lasting)
    return said, (_("all last, the high day too"), rest if unknown or swollen else "")


def _short(findings: tuple[Finding, ...]) -> list[Finding]:
    """The devices that go off before their use ends."""
    return [f for f in findings if f.code == "power.device" and f.margin is not None and f.margin < 0]


def _shortest(findings: tuple[Finding, ...]) -> Finding | None:
    """The device that goes off the most too early, of those in the state of the tile where there are any."""
    state = state_of(findings)
    return min(_short(findings), key=lambda f: (f.state is not state, f.margin or 0.0), default=None)


def _goes_off_line(findings: tuple[Finding, ...]) -> str:
    count = sum(finding.facts["off_h_likely"] is not None for finding in _short(findings))
    off = ngettext("likely day: {n} goes off", "likely day: {n} go off", count).format(n=count)
    return off if count else _("likely day: all last")


def _swollen_line(assessment: Assessment, names: Names) -> str:
    """What is swollen, by name where it is one; empty for nothing."""
    swollen = assessment.power.swollen
    if len(swollen) == 1:
        return _("{item} swollen, not counted").format(item=names.get(swollen[0], swollen[0]))
    return _("{n} swollen, not counted").format(n=len(swollen)) if swollen else ""


def _off_line(finding: Finding, names: Names) -> str:
    likely = finding.facts["off_h_likely"]
    case = _("{device}, high day") if likely is None else _("{device}, likely day")
    return case.format(device=say(finding, names).title)


def _weight(findings: tuple[Finding, ...], assessment: Assessment, names: Names) -> Body:
    range_ = next((f for f in findings if f.code == "weight.takeoff_range"), None)
    if range_ is None or range_.figure is None:
        known = _("at least {mass}").format(mass=kg_text(assessment.mass.known_g))
        missing = len(assessment.mass.unknown)
        return _("not known"), (
            known,
            ngettext("{n} mass not known", "{n} masses not known", missing).format(n=missing),
        )
    worst = findings[0]
    beside = worst.state is not State.FINE and not worst.code.endswith("_range")
    second = say(worst, names).title if beside else _nearest_limit(range_)
    return kg_text(range_.figure), (range_line(range_), second)


def range_line(finding: Finding) -> str:
    """Tolerance and certified range of a take-off mass, in kg."""
    low, high, tolerance = (finding.facts[name] for name in ("low_g", "high_g", "tolerance_g"))
    around = number_text(_float(tolerance) / 1000, 1)
    if low is None or high is None:
        return _("± {around}, range not on record").format(around=around)
    return _("± {around}, range {low} to {high}").format(
        around=around, low=number_text(_float(low) / 1000), high=number_text(_float(high) / 1000)
    )


def _nearest_limit(finding: Finding) -> str:
    low, high, figure = finding.facts["low_g"], finding.facts["high_g"], finding.figure
    if low is None or high is None or figure is None:
        return ""
    to_low, to_high = figure - _float(low), _float(high) - figure
    text = _("{mass} above the low limit") if to_low <= to_high else _("{mass} below the high limit")
    if min(to_low, to_high) < 0:
        text = _("{mass} under the low limit") if to_low < to_high else _("{mass} over the high limit")
    return text.format(mass=kg_text(abs(min(to_low, to_high))))


def _people(_findings: tuple[Finding, ...], assessment: Assessment, _names: Names) -> Body:
    people = assessment.outing.people
    contacts = [person for person in people if person.role.value == "contact"]
    told = sum(person.told_at is not None for person in contacts)
    alarms = _("kitlog alarms nobody")
    if not contacts:
        return _("nobody named"), (_("nobody holds the flight note"), alarms)
    figure = _("{told} of {n} told").format(told=told, n=len(contacts))
    return figure, (", ".join(person.name for person in contacts), alarms)


def _any(findings: tuple[Finding, ...], _assessment: Assessment, names: Names) -> Body:
    worst = findings[0]
    said = say(worst, names)
    figure = tile_figure(worst) or said.figure or said.title
    return figure, (said.title if figure != said.title else "", said.sentence)


def _float(value: object) -> float:
    return float(value) if isinstance(value, int | float) else 0.0


_BODIES: dict[Topic, Callable[[tuple[Finding, ...], Assessment, Names], Body]] = {
    Topic.KIT: _kit,
    Topic.POWER: _power,
    Topic.WEIGHT: _weight,
    Topic.PEOPLE: _people,
}
