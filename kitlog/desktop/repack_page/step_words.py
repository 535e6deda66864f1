"""What the strip says of each step: its name, its count, its ring."""

from dataclasses import dataclass

from kitlog.desktop.repack_page.progress import Progress, missing_mark
from kitlog.outing.ticks import Step
from kitlog.paint.mark import Mark
from kitlog.paint.step_ring import StepRing
from kitlog.wording.figures import moment_text
from kitlog.wording.translate import N_, _, ngettext

STEPS = tuple(Step)
TITLES = {
    Step.EMPTY: N_("Empty"),
    Step.LAY_OUT: N_("Lay out"),
    Step.CHARGE: N_("Charge"),
    Step.STOW: N_("Stow"),
    Step.CLOSE: N_("Close"),
}


@dataclass(frozen=True, slots=True)
class StepWords:
    """One step: its title, its count in words, in which state, and the ring before it."""

    step: Step
    title: str
    count: str
    mark: Mark
    ring: StepRing


def step_words(progress: Progress, current: Step) -> list[StepWords]:
    """All five steps."""
    return [_one(step, progress, current) for step in STEPS]


def first_open(progress: Progress) -> Step:
    """The first step that is not done; closing, where all are."""
    return next((step for step in STEPS if not progress.count(step).is_full), Step.CLOSE)


def _one(step: Step, progress: Progress, current: Step) -> StepWords:
    count = progress.count(step)
    mark = _mark(progress) if step is Step.LAY_OUT else Mark.NONE
    ring = StepRing(STEPS.index(step) + 1, count.share, mark, step is current)
    return StepWords(step, _(TITLES[step]), _count(step, progress), mark, ring)


def _mark(progress: Progress) -> Mark:
    marks = [missing_mark(line) for line in progress.missing]
    return next((mark for mark in (Mark.STOP, Mark.LOOK) if mark in marks), Mark.NONE)


def _count(step: Step, progress: Progress) -> str:
    if step is Step.CLOSE:
        return _closing(progress)
    count = progress.count(step)
    if not count.of:
        return _("nothing to do")
    if step is Step.CHARGE:
        full = sum(progress.is_done(step, one.item.id) for one in progress.charges)
        return _("{done} of {n} full").format(done=full, n=len(progress.charges))
    said = _("{done} of {n}").format(done=count.done, n=count.of)
    missing = len(progress.missing)
    return f"{said}, {_('{n} missing').format(n=missing)}" if step is Step.LAY_OUT and missing else said


def _closing(progress: Progress) -> str:
    if progress.closed is not None:
        return _("closed {time}").format(time=moment_text(progress.closed.at))
    stops = len(progress.open_stops())
    if stops:
        return ngettext("{n} stop asks why", "{n} stops ask why", stops).format(n=stops)
    return _("after the last tick")
