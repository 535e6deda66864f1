"""Remedies are tried before they are offered: judged against all needs and findings with the remedy taken."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from kitlog.budget.result import Finding, Remedy, State
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment, Counts
from kitlog.packing.remedied import remedied

PLAN_FACTS = ("mass_g", "phases", "use", "instead", "below")
"""Facts that change what a remedy plans."""


def with_checked_remedies(
    judged: Assessment, judge: Callable[[Outing], Assessment], items: Mapping[str, Item], library: Library
) -> tuple[Finding, ...]:
    """The findings with those remedies only that make nothing else worse; `judge` assesses an outing."""
    tried: dict[tuple[object, ...], bool] = {}

    def helps(remedy: Remedy) -> bool:
        key = (remedy.code, remedy.items, *(repr(remedy.facts.get(name)) for name in PLAN_FACTS))
        if key not in tried:
            plan = remedied(judged, remedy, items, library)
            of_set = remedy.code == "swap" and items[remedy.items[0]].kind in SET_KINDS
            tried[key] = plan is None or _no_worse(judged, judge(plan), of_set=of_set)
        return tried[key]

    return tuple(replace(f, remedies=tuple(r for r in f.remedies if helps(r))) for f in judged.findings)


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
