"""Masses are whole grams inside; kilograms and pounds only at the edges."""

from decimal import ROUND_HALF_UP, Decimal

G_PER_LB = Decimal("453.59237")
"""Grams in a pound, exact by definition (international pound; from memory)."""


def g_from_kg(mass_kg: float) -> int:
    """Whole grams of a mass in kilograms, halves rounded up."""
    return int((Decimal(str(mass_kg)) * 1000).quantize(Decimal(1), rounding=ROUND_HALF_UP))


def kg_from_g(mass_g: float) -> float:
    """Kilograms of a mass in grams."""
    return mass_g / 1000


def g_from_lb(mass_lb: float) -> int:
    """Whole grams of a mass in pounds, halves rounded up."""
    return int((Decimal(str(mass_lb)) * G_PER_LB).quantize(Decimal(1), rounding=ROUND_HALF_UP))
