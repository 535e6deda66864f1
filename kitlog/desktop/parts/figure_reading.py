"""Reading a figure as it is typed: the whole of the text or nothing, never a part of it."""

import re

KILOGRAMS = re.compile(r"([0-9]{1,3}(?:[.,][0-9]{1,3})?)\s*kg", re.IGNORECASE)
"""A mass as scales show it."""

FIGURE = re.compile(r"([-−+]?)([0-9]+[.,]?|[0-9]*[.,][0-9]+)")
"""A figure with point or comma; no groups of thousands, no powers of ten."""

G_PER_KG = 1_000


def bare_text(text: str, unit: str) -> str:
    """The text without the unit behind it, with or without the space between."""
    stripped = text.strip()
    return stripped.removesuffix(unit).strip() if unit else stripped


def grams_of(text: str) -> float | None:
    """Grams of a mass typed in kilograms: ``5,2 kg``; None for anything else."""
    found = KILOGRAMS.fullmatch(text.strip())
    return float(round(float(found[1].replace(",", ".")) * G_PER_KG)) if found else None


def figure_of(bare: str, decimals: int) -> float | None:
    """A figure with at most so many decimals (noughts behind do not count); None if it is none."""
    found = FIGURE.fullmatch(bare)
    if found is None:
        return None
    digits = found[2].replace(",", ".")
    fraction = digits.partition(".")[2].rstrip("0")
    if len(fraction) > decimals or (decimals == 0 and "." in digits):
        return None
    return float(digits) * (-1 if found[1] in {"-", "−"} else 1)
