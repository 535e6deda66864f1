"""Swollen and old batteries, and what to do about them, as words."""

from collections.abc import Callable, Mapping
from datetime import date

from kitlog.budget.result import Finding, Remedy
from kitlog.wording.figures import day_text
from kitlog.wording.translate import N_, _, ngettext

Names = Mapping[str, str]
Parts = tuple[str, str, str]


def _swollen(finding: Finding, names: Names) -> Parts:
    seen = finding.facts["seen_on"]
    day = day_text(seen) if isinstance(seen, date) else ""
    sentence = _(
        "its battery was seen swollen on {day}: do not take it, do not charge it; it counts for no power"
    ).format(day=day)
    return names.get(finding.items[0], finding.items[0]), "", sentence


def _old(finding: Finding, names: Names) -> Parts:
    text = _("old since it was bought; from {most} on ask for a capacity test ({source})")
    if finding.facts["made"]:
        text = _("old since it was made; from {most} on ask for a capacity test ({source})")
    sentence = text.format(most=_years(finding.facts["most_months"]), source=_(finding.source))
    return names.get(finding.items[0], finding.items[0]), _years(finding.figure), sentence


def _years(months: object) -> str:
    years = int(months) // 12 if isinstance(months, int | float) else 0
    return ngettext("{n} year", "{n} years", years).format(n=years)


SAY: dict[str, Callable[[Finding, Names], Parts]] = {"power.swollen": _swollen, "power.old": _old}
"""What is said of each code."""


def _plain(text: str) -> Callable[[Remedy, list[str]], str]:
    return lambda _remedy, items: _(text).format(item=items[0])


REMEDIES: dict[str, Callable[[Remedy, list[str]], str]] = {
    "recycle": _plain(N_("Bring {item} to a collection point; until then let it lie outside, uncharged")),
    "enter_ports": _plain(N_("Enter the number of ports of {item}")),
    "test_capacity": _plain(N_("Have the capacity of {item} tested, or compare how long it lasts")),
}
"""What is said of each remedy."""
