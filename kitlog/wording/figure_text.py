"""Sentences about a figure that was typed and cannot be taken."""

from kitlog.wording.figures import number_text, with_unit
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper


def unread_figure_text(name: str, typed: str, least: float, most: float, unit: str, decimals: int) -> str:
    """What was typed where, that it is no such figure, and what may stand there; least and most in the unit."""
    upper = with_unit(most, unit) if unit else number_text(most)
    said = _("“{typed}” cannot be read. Write a figure from {least} to {most}").format(
        typed=typed, least=number_text(least), most=upper
    )
    digits = ngettext(
        "{said}, with at most {n} digit after the point.", "{said}, with at most {n} digits after the point.", decimals
    )
    ends = digits.format(said=said, n=decimals) if decimals else f"{said}."
    return f"{first_upper(name)}: {ends}" if name else ends
