"""The tiles of the board: which topics have one, and in which state each is."""

from kitlog.budget.result import SEVERITY, Finding, State, Topic
from kitlog.packing.assessment import Assessment
from kitlog.paint.mark import Mark
from kitlog.wording.translate import N_

ORDER = (
    Topic.KIT,
    Topic.POWER,
    Topic.WEIGHT,
    Topic.WATER,
    Topic.WARMTH,
    Topic.DAYLIGHT,
    Topic.AIR,
    Topic.PEOPLE,
)
"""Tiles keep their place in this order."""

ALWAYS = frozenset({Topic.KIT, Topic.POWER, Topic.WEIGHT, Topic.PEOPLE})
"""Topics that have a tile even if nothing is to be said about them; others come with their first finding."""

TITLES = {
    Topic.KIT: N_("Kit"),
    Topic.POWER: N_("Power"),
    Topic.WEIGHT: N_("Weight"),
    Topic.WATER: N_("Water"),
    Topic.WARMTH: N_("Warmth"),
    Topic.DAYLIGHT: N_("Daylight"),
    Topic.AIR: N_("Air"),
    Topic.PEOPLE: N_("People"),
}


def topics_of(assessment: Assessment) -> tuple[Topic, ...]:
    """The topics that have a tile, in their order."""
    said = {finding.topic for finding in assessment.findings}
    return tuple(topic for topic in ORDER if topic in ALWAYS or topic in said)


def state_of(findings: tuple[Finding, ...]) -> State:
    """The worst state of some findings; without any it is not known."""
    return min((finding.state for finding in findings), key=SEVERITY.index, default=State.NOT_KNOWN)


def mark_of(state: State) -> Mark:
    """The shape of a state."""
    return Mark(state.value)


def worst_topic(assessment: Assessment) -> Topic:
    """The topic of the worst finding, the first of the board among equals."""
    return min(topics_of(assessment), key=lambda topic: SEVERITY.index(state_of(assessment.of(topic))))
