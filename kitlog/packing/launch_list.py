"""The checks at launch that a day asks for, in the order of the library: what is hidden later comes first."""

from collections.abc import Collection
from dataclasses import dataclass

from kitlog.outing.conditions import Condition
from kitlog.outing.library import Check, Library
from kitlog.packing.assessment import Assessment

LAUNCH = "launch"


@dataclass(frozen=True, slots=True)
class LaunchCheck:
    """A check and whether it needs an explicit answer on this day. It is never ticked beforehand."""

    check: Check
    critical: bool


def launch_list(assessment: Assessment, library: Library) -> tuple[LaunchCheck, ...]:
    """The checks of the moment of launch."""
    holding = {truth.condition for truth in assessment.truths if truth.holds}
    return tuple(
        LaunchCheck(check, check.critical or _any(check.critical_when, holding))
        for check in library.checks
        if check.moment == LAUNCH and (not check.only_when or _any(check.only_when, holding))
    )


def _any(conditions: Collection[Condition], holding: Collection[Condition]) -> bool:
    return any(condition in holding for condition in conditions)
