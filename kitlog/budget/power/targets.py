"""Whether a day that has been run meets what was asked, and its story for `walk_down`."""

from collections.abc import Sequence

from kitlog.budget.power.day import Day
from kitlog.budget.power.question import Target
from kitlog.budget.power.state import TINY
from kitlog.budget.power.story import Run
from kitlog.budget.power.walk_down import Trial


def targets_by_index(targets: Sequence[Target], day: Day) -> list[tuple[int, float]]:
    """(index of the device, least soc at the end)."""
    device_at = {device.id: index for index, device in enumerate(day.devices)}
    return [(device_at[target.device], target.min_soc) for target in targets]


def lasts(run: Run, device: int, min_soc: float) -> bool:
    """Never off, and at the end at `min_soc` or more. A device without a cell has no charge to keep."""
    state = run.devices[device]
    return state.first_off_h is None and (not state.loss or state.soc >= min_soc - TINY)


def judge(run: Run, targets: Sequence[tuple[int, float]]) -> Trial:
    """Whether all targets are met, and which plugs, switches and bank states came in which phase."""
    story = sorted((what, index, phase, bank) for what, index, phase, _, bank in run.log)
    return all(lasts(run, device, min_soc) for device, min_soc in targets), story
