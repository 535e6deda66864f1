"""Remedies are tried before they are offered: judged against all needs and findings with the remedy taken."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from kitlog.budget.result import Finding, Remedy, State
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment, Counts
from kitlog.packing.power_remedies import is_computed
from kitlog.packing.remedied import remedied

PLAN_FACTS = ("mass_g", "phases", "use", "instead", "below")
"""Facts that change what a remedy plans."""

CAUTIONS = frozenset(
    {
        "power.charge_cold",
        "power.charge_hot",
        "power.cell_range",
        "power.worn",
        "power.old",
        "power.cable_missing",
        "power.cables_short",
        "power.cable_not_known",
        "power.ports_short",
        "power.bank_sleeps",
    }
)
"""What a change of plugs or banks may bring besides what it is for."""


def with_checked_remedies(
    judged: Assessment, judge: Callable[[Outing], Assessment], items: Mapping[str, Item], library: Library
) -> tuple[Finding, ...]:
    """The findings with those remedies only that make nothing else worse; `judge` assesses an outing.

    Computed ones that bring a caution tell it, and stand behind those that bring none; flight mode, in which nobody is
    followed, stands behind both.
    """
    tried: dict[tuple[object, ...], tuple[Finding, ...] | None] = {}

    def cautions(remedy: Remedy) -> tuple[Finding, ...] | None:
        """What a remedy brings to look at; None: it is not to be offered."""
        key = (remedy.code, remedy.items, *(repr(remedy.facts.get(name)) for name in PLAN_FACTS))
        if key not in tried:
            plan = remedied(judged, remedy, items, library)
            after = None if plan is None else judge(plan)
            of_set = remedy.code == "swap" and items[remedy.items[0]].kind in SET_KINDS
            is_worse = after is not None and not _no_worse(judged, after, of_set=of_set)
            tried[key] = None if is_worse else () if after is None else cautions_brought(judged, after)
        return tried[key]

    def offered(finding: Finding) -> tuple[Remedy, ...]:
        told = [with_cautions(one, found) for one in finding.remedies if (found := cautions(one)) is not None]
        return tuple(
            sorted(told, key=lambda one: (not is_computed(one), one.code == "flight_mode", "cautions" in one.facts))
        )

    return tuple(replace(finding, remedies=offered(finding)) for finding in judged.findings)


def cautions_brought(before: Assessment, after: Assessment) -> tuple[Finding, ...]:
    """Cautions about plugs and cells that another plan of the outing has, and this one not, or not of all things."""
    known = {(finding.key, item) for finding in before.findings for item in finding.items}
    return tuple(
        finding
        for finding in after.findings
        if finding.code in CAUTIONS and any((finding.key, item) not in known for item in finding.items)
    )


def with_cautions(remedy: Remedy, cautions: tuple[Finding, ...]) -> Remedy:
    """A computed remedy with what it brings to look at as its fact `cautions`; without any, as it is."""
    if not cautions or not is_computed(remedy):
        return remedy
    return replace(remedy, facts={**remedy.facts, "cautions": cautions})


def brought(before: Assessment, after: Assessment) -> tuple[Finding, ...]:
    """What another plan of the outing would bring that forbids to offer it: stops, else what is new to look at.

    Empty for a plan that makes nothing worse, by the same rule as for the remedies of findings.
    """
    if _no_worse(before, after, of_set=False):
        return ()
    known = {(finding.key, finding.state) for finding in before.findings}
    new = [finding for finding in after.findings if (finding.key, finding.state) not in known]
    stops = [finding for finding in new if finding.state is State.STOP]
    return tuple(stops or (finding for finding in new if finding.state is not State.FINE)) or after.findings[:1]


def _no_worse(before: Assessment, after: Assessment, *, of_set: bool) -> bool:
    """Whether a remedy brings no stop, nor more to look at than it closes; a swap of the set must close a stop."""
    old, new = _stops(before), _stops(after)
    if not new <= old:
        return False
    if of_set:
        return new < old and after.counts.not_known <= before.counts.not_known
    return new < old or _others(after.counts) <= _others(before.counts)


def _stops(assessment: Assessment) -> frozenset[str]:
    return frozenset(finding.key for finding in assessment.findings if finding.state is State.STOP)


def _others(counts: Counts) -> int:
    return counts.look + counts.not_known
