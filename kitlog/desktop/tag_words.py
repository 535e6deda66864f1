"""What the tag says of an outing."""

from kitlog.budget.result import State
from kitlog.desktop.words import count_text, near_text, outing_days_text
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.paint.mark import Mark
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper
from kitlog.workbench.workbench import Workbench


def tag_words(outing: Outing, bench: Workbench) -> tuple[str, str, str, str]:
    """Day, flight types, site and how near it is."""
    types = (bench.library.flight_type(name) for name in outing.flight_types)
    labels = ", ".join(_(kind.label) for kind in types if kind is not None)
    day = outing_days_text(outing.first_day, outing.last_day)
    near = near_text(outing.first_day, outing.last_day, bench.now().date())
    return day, first_upper(labels), outing.site.name or outing.name, near


def counts_of(assessment: Assessment | None) -> dict[Mark, tuple[int, str]]:
    """The counts as numbers and words; fine is never counted."""
    if assessment is None:
        return {}
    counts = assessment.counts
    return {
        Mark.STOP: (counts.stop, count_text(counts.stop, State.STOP)),
        Mark.LOOK: (counts.look, count_text(counts.look, State.LOOK)),
        Mark.NOT_KNOWN: (counts.not_known, count_text(counts.not_known, State.NOT_KNOWN)),
    }
