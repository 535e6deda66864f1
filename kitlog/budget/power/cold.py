"""Cold locks part of a cell: what is stored stays stored, but less of it can be used until it is warm again.

This is a modelling choice, not a law of nature. Tried against four published cell models (parameter sets OKane2022,
Ecker2015, Ai2020, Marquis2019; single-particle model with electrolyte), the rule reads too high after a cold spell, by
0.2-1.5 % of the energy at 0..-10 deg C and up to 8 % when run to cut-off at -20, and too low, on the careful side,
while it is cold.
"""

from collections.abc import Sequence

from kitlog.budget.power.day import Cell


def usable_share(table: Sequence[tuple[float, float]], temp_c: float) -> float:
    """Share of the stored energy that can be used at `temp_c`: linear between the points, constant outside them."""
    low_c, low = table[0]
    if temp_c <= low_c:
        return low
    for high_c, high in table[1:]:
        if temp_c <= high_c:
            return low + (high - low) * (temp_c - low_c) / (high_c - low_c)
        low_c, low = high_c, high
    return low


def floor_soc(table: Sequence[tuple[float, float]], temp_c: float, cutoff: float) -> float:
    """State of charge at which the thing switches itself off when it must draw on its cell: 1 - f (1 - cutoff)."""
    return 1.0 - usable_share(table, temp_c) * (1.0 - cutoff)


def cell_temp_c(cell: Cell, ambient_c: float) -> float:
    """Temperature of the cell; it follows the air at once, which is too hopeful when it gets warmer."""
    return ambient_c + cell.temp_offset_C if cell.temp_fixed_C is None else cell.temp_fixed_C
