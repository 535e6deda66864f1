"""The order of day, month and year that a heading gives: "Bought (DD/MM/YYYY)", "TT.MM.JJJJ", "JJ/MM/AAAA"."""

import re

_PART = "(d{1,2}|t{1,2}|m{1,3}|[yja]{1,4})"
_PATTERN = re.compile(rf"(?<![^\W_]){_PART}([/. -]){_PART}\2{_PART}(?![^\W_])")
_PARTS = {
    frozenset("dy"): {"d": "d", "y": "y"},
    frozenset("tj"): {"t": "d", "j": "y"},
    frozenset("ja"): {"j": "d", "a": "y"},
}
"""What the letters beside the m stand for: day and year, Tag and Jahr, jour and année."""
_ORDERS = frozenset({"dmy", "mdy", "ymd"})


def order_of(heading: str) -> str:
    """``dmy``, ``mdy`` or ``ymd``; empty where the heading gives no order."""
    match = _PATTERN.search(heading.casefold())
    if match is None:
        return ""
    letters = [match.group(part)[0] for part in (1, 3, 4)]
    meant = _PARTS.get(frozenset(letters) - {"m"}, {})
    order = "".join("m" if letter == "m" else meant.get(letter, "") for letter in letters)
    return order if order in _ORDERS else ""
