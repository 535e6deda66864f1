"""A fault in words: what happened and where, why, what to do."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from kitlog.fault import Fault
from kitlog.wording.fault_sentences import INPUT
from kitlog.wording.system_sentences import SYSTEM
from kitlog.wording.translate import N_, _, ngettext

SENTENCES = INPUT | SYSTEM


@dataclass(frozen=True, slots=True)
class FaultText:
    """A fault in three parts.

    Attributes:
        where: file, row and field, as far as they are known; what: what is wrong; remedy: what to do.
        more: further lines, one for each cell of a refused table.
    """

    where: str
    what: str
    remedy: str
    more: tuple[str, ...] = ()

    @property
    def line(self) -> str:
        """All on one line."""
        return f"{self.where}: {self.what}. {self.remedy}" if self.where else f"{self.what}. {self.remedy}"


MADE = frozenset({"limits", "draws", "not_read", "because", "found", "write", "or_empty"})
"""Blanks of sentences that are filled with words made here from other facts."""


class _Blanks(dict[str, Any]):
    """Facts for a sentence; one that is missing leaves a blank."""

    def __missing__(self, key: str) -> str:
        return ""


def fault_text(fault: Fault) -> FaultText:
    """A fault in words; one without a sentence of its own shows its code."""
    what, remedy = SENTENCES.get(fault.code, (fault.code, N_("Please report it.")))
    facts = _Blanks({name: _shown(value) for name, value in fault.facts.items() if value is not None})
    facts |= _said(fault)
    problems = fault.facts.get("problems")
    lines = tuple(fault_text(problem.as_fault()).line for problem in problems) if isinstance(problems, tuple) else ()
    more = fault.facts.get("more")
    if isinstance(more, int) and more:
        lines = (*lines, ngettext("and {n} more", "and {n} more", more).format(n=more))
    if fault.facts.get("count") == 1 and fault.code == "csv.refused":
        what = N_("one problem; nothing was imported")
    return FaultText(_where(fault.facts), " ".join(_fill(what, facts).split()), _fill(remedy, facts), lines)


def _said(fault: Fault) -> dict[str, str]:
    """Facts that are words of their own: limits, reasons in brackets, what to write instead."""
    facts = fault.facts
    found = facts.get("encoding") or facts.get("byte")
    meant, others = facts.get("meant"), facts.get("others")
    said = {
        "limits": _limits(facts),
        "because": f" ({facts['reason']})" if facts.get("reason") else "",
        "found": f" ({found})" if found else "",
        "not_read": _(" on the sheet in front (not read: {names})").format(names=_shown(others)) if others else "",
        "draws": _draws(facts),
        "or_empty": _(", or leave it out with --doubtful empty"),
        "write": _("Write a point: {meant}").format(meant=meant) if meant else _("Write it without a comma"),
    }
    if fault.code == "table.mass_unit":
        said["readings"] = _by_answer(facts)
    return said | ({"day": ""} if facts.get("value") is not None else {})


def _draws(facts: Mapping[str, object]) -> str:
    """The draws of a way of use that are known, from lowest to highest."""
    return ", ".join(f"{facts[name]:g} W" for name in ("low", "likely", "high") if isinstance(facts.get(name), float))


def _by_answer(facts: Mapping[str, object]) -> str:
    """What each answer would make of a cell."""
    answers, readings = facts.get("answers"), facts.get("readings")
    if not isinstance(answers, tuple) or not isinstance(readings, tuple):
        return _shown(readings)
    pairs = zip(answers, readings, strict=True)
    return ", ".join(_("{answer}: {reading}").format(answer=answer, reading=reading) for answer, reading in pairs)


def _fill(text: str, facts: _Blanks) -> str:
    return _(text).format_map(facts)


def _shown(value: object) -> str:
    if isinstance(value, list | tuple | frozenset):
        return ", ".join(str(part) for part in value)
    return str(value)


def _limits(facts: Mapping[str, object]) -> str:
    words = {
        "at_least": _("at least {n}"),
        "at_most": _("at most {n}"),
        "above": _("above {n}"),
        "below": _("below {n}"),
    }
    relation = facts.get("relation")
    if isinstance(relation, str) and relation in words:
        return " (" + words[relation].format(n=facts.get("limit")) + ")"
    if "limit" in facts and "inclusive" in facts:
        return f" ({words[_side(facts)].format(n=_plain(facts['limit']))})"
    parts = [text.format(n=facts[name]) for name, text in words.items() if facts.get(name) is not None]
    return f" ({', '.join(parts)})" if parts else ""


def _side(facts: Mapping[str, object]) -> str:
    """Which side of a cell's limit is allowed."""
    if facts.get("upper"):
        return "at_most" if facts["inclusive"] else "below"
    return "at_least" if facts["inclusive"] else "above"


def _plain(limit: object) -> object:
    return int(limit) if isinstance(limit, float) and limit.is_integer() else limit


def _where(facts: Mapping[str, object]) -> str:
    parts = []
    file = facts.get("file") or facts.get("path")
    if file:
        parts.append(str(file))
    if facts.get("row"):
        parts.append(_("row {row}").format(row=facts["row"]))
    if facts.get("within"):
        parts.append(str(facts["within"]))
    if facts.get("id") and facts.get("field"):
        parts.append(str(facts["id"]))
    if facts.get("field"):
        parts.append(str(facts["field"]))
    return ", ".join(parts)
