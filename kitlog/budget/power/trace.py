"""Courses for pictures: what was recorded, as points and spans."""

from collections.abc import Iterable, Sequence

from kitlog.budget.power.curve import Terms, value
from kitlog.budget.power.day import Day
from kitlog.budget.power.recorder import Piece, Recorder
from kitlog.budget.power.result import Course, FloorSpan, Span
from kitlog.budget.power.state import AUTO_OFF, EMPTY, OFF, ON
from kitlog.budget.power.story import PLUGGED, SWITCHED_OFF, SWITCHED_ON, Run

BEND = 0.0005
"""How far, in soc, a straight line may miss the bend it stands for: less than a pixel in a lane of 1,000."""
_HALVINGS = 7


def device_course(run: Run, day: Day, recorder: Recorder, index: int) -> Course:
    """Points and spans of one device."""
    device = run.devices[index]
    pieces = recorder.devices[index] if device.loss else []
    return Course(
        points=_points(pieces, device.soc),
        floors=_floors(day, device.plan.floor),
        off=tuple(_merged(_off_spans(run, index))),
        plugged=tuple(_merged(_plugged_spans(run, day, index))),
    )


def bank_course(run: Run, day: Day, recorder: Recorder, index: int) -> Course:
    """Points and spans of one bank."""
    bank = run.banks[index]
    pieces = recorder.banks[index] if day.banks[index].label_wh is not None else []
    return Course(
        points=_points(pieces, bank.soc),
        floors=_floors(day, bank.plan.floor),
        states=tuple(_merged(_state_spans(run, index))),
    )


def _points(pieces: Sequence[Piece], end: float) -> tuple[tuple[float, float], ...]:
    points: list[tuple[float, float]] = []
    for from_h, for_h, soc, rate, terms in pieces:
        if for_h > 0.0:
            points.append((from_h, soc))
        if terms:
            last = (for_h, value(soc, rate, terms, for_h))
            _bend(points, (from_h, soc, rate, terms), (0.0, soc), last, _HALVINGS)
    if pieces:
        points.append((pieces[-1][0] + pieces[-1][1], end))
    return tuple(points)


def _bend(
    points: list[tuple[float, float]],
    curve: tuple[float, float, float, Terms],
    low: tuple[float, float],
    high: tuple[float, float],
    halvings: int,
) -> None:
    """Halve a bend until its chords are near enough to it."""
    from_h, soc, rate, terms = curve
    middle_h = 0.5 * (low[0] + high[0])
    middle = (middle_h, value(soc, rate, terms, middle_h))
    if halvings and abs(middle[1] - 0.5 * (low[1] + high[1])) > BEND:
        _bend(points, curve, low, middle, halvings - 1)
        points.append((from_h + middle_h, min(1.0, max(0.0, middle[1]))))
        _bend(points, curve, middle, high, halvings - 1)


def _phase_ends(day: Day) -> list[float]:
    ends, end_h = [], 0.0
    for phase in day.phases:
        end_h += phase.hours
        ends.append(end_h)
    return ends


def _floors(day: Day, floors: Sequence[float]) -> tuple[FloorSpan, ...]:
    return tuple(
        FloorSpan(phase.id, end_h - phase.hours, end_h, floor)
        for phase, end_h, floor in zip(day.phases, _phase_ends(day), floors, strict=True)
        if phase.hours > 0.0
    )


def _off_spans(run: Run, index: int) -> Iterable[Span]:
    since_h = None
    for what, who, _, at_h, _ in run.log:
        if who == index and what == SWITCHED_OFF:
            since_h = at_h
        elif who == index and what == SWITCHED_ON and since_h is not None:
            yield Span(since_h, at_h)
            since_h = None
    if since_h is not None:
        yield Span(since_h, run.now_h)


def _plugged_spans(run: Run, day: Day, index: int) -> Iterable[Span]:
    ends = _phase_ends(day)
    for what, who, phase, at_h, bank in run.log:
        if who == index and what == PLUGGED:
            yield Span(at_h, ends[phase], day.banks[bank].id)


def _state_spans(run: Run, index: int) -> Iterable[Span]:
    since_h, state = 0.0, OFF
    for what, who, _, at_h, _ in run.log:
        if who == index and what in {OFF, ON, AUTO_OFF, EMPTY}:
            yield Span(since_h, at_h, state)
            since_h, state = at_h, what
    yield Span(since_h, run.now_h, state)


def _merged(spans: Iterable[Span]) -> Iterable[Span]:
    """Without spans of no duration, and with neighbours that say the same joined."""
    before: Span | None = None
    for span in spans:
        if span.to_h <= span.from_h:
            continue
        if before is not None and before.to_h == span.from_h and before.what == span.what:
            before = Span(before.from_h, span.to_h, span.what)
            continue
        if before is not None:
            yield before
        before = span
    if before is not None:
        yield before
