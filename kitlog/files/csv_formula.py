"""Cells that a spreadsheet would run as a formula: an apostrophe in front on the way out, off again on the way in.

Characters: = + - @ TAB NUL (OWASP ASVS 5.0, requirement 1.2.10) and = + - @ (CWE-1236, mitigations); carriage return,
line feed and the full-width forms (OWASP, "CSV Injection"; from memory). Blanks in front do not help: some programs
trim them.
"""

import re

_FORMULA = re.compile("'*\\s*[=+\\-@\\t\\r\\n\\0\uff1d\uff0b\uff0d\uff20]")


def defuse(text: str) -> str:
    """The text as it is written: an apostrophe before whatever would run, also behind apostrophes of its own.

    Meant for texts; figures are written as they are.
    """
    return f"'{text}" if _FORMULA.match(text) else text


def undefuse(cell: str) -> str:
    """The text that `defuse` was given; a cell with any other apostrophe stays as it is."""
    return cell[1:] if cell.startswith("'") and _FORMULA.match(cell, 1) else cell
