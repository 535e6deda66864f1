"""What cautions about power are made from, and the plain shape of one."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from kitlog.budget.power.day import Day, Device, Modes, Phase, Plug
from kitlog.budget.power.result import DayResult
from kitlog.budget.result import Finding, State, Sure, Topic
from kitlog.kit.item import Item

look_at = partial(Finding, topic=Topic.POWER, state=State.LOOK, sure=Sure.ESTIMATE, source="simulated day")
"""A finding about power that is a *look*."""


@dataclass(frozen=True, slots=True)
class CautionCase:
    """The likely day as planned and as it went, the items that go along, and the phases without a given temperature.

    The likely day decides: the high one is itself a reserve, in hours.
    """

    day: Day
    result: DayResult
    items: tuple[Item, ...]
    air_assumed: frozenset[str] = frozenset()

    def phases(self) -> Iterator[tuple[Phase, list[Plug]]]:
        """Phases with a duration, and the plugs made in them."""
        for phase in self.day.phases:
            if phase.hours > 0:
                yield phase, [plug for plug in self.day.plugs if plug.phase == phase.id]


def draws(device: Device, phase: str) -> bool:
    """Whether a device has a load in a phase."""
    draw = device.draw_W.get(phase, 0.0)
    return (draw.mean_w if isinstance(draw, Modes) else draw) > 0
