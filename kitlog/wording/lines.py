"""Why a line is on the list, and why something is not."""

from kitlog.kit.kinds import MassSource
from kitlog.outing.needs import Need
from kitlog.packing.assessment import Assessment, ListLine, PassedOver, Question
from kitlog.wording.findings import Names
from kitlog.wording.reasons import reason_text
from kitlog.wording.translate import _


def why_text(line: ListLine, needs: dict[str, Need], names: Names) -> str:
    """The reason of a line in words: strength and what for; what is guessed is named, the mass too."""
    why = _why(line, needs, names)
    if line.item.mass_g is not None and line.item.mass_source is MassSource.GUESS:
        return _("{why} Mass guessed.").format(why=f"{why.rstrip('.')}.")
    return why


def _why(line: ListLine, needs: dict[str, Need], names: Names) -> str:
    if line.needs and line.strength is not None:
        strongest = needs[line.needs[0]]
        text = f"{_(line.strength.value)}, {_(strongest.why)}"
        by_name = strongest.serves and (strongest.both or line.item.kind not in strongest.kinds)
        return _("{why} (guessed from its name)").format(why=text) if line.guessed and by_name else text
    if line.pinned:
        return _("your own choice")
    if line.fitted:
        host = names.get(line.item.fitted_to or "", "")
        return _("goes with {item}").format(item=host) if host else _("goes with its pair")
    return _("part of the set")


def needs_by_id(assessment: Assessment) -> dict[str, Need]:
    """The needs that the outing asks, by id."""
    return {asked.need.id: asked.need for asked in assessment.asked}


def passed_over_text(passed: PassedOver, needs: dict[str, Need]) -> str:
    """Why an item was passed over for a need."""
    label = _(needs[passed.need].label) if passed.need in needs else passed.need
    reason = reason_text(passed.reason)
    if passed.taken and passed.reason == "heavier":
        return _("{label}: {reason} than {taken}").format(label=label, reason=reason, taken=passed.taken)
    return _("{label}: {reason}").format(label=label, reason=reason)


def question_text(question: Question) -> str:
    """A question to the pilot, short."""
    match question.kind:
        case "condition":
            return _("{condition}: yes or no?").format(condition=_(question.label))
        case "set":
            return _("which {kind}?").format(kind=_(question.label))
        case _:
            return _(question.label)
