"""How finely a mass is printed: by hand, half of the last digit; the pound and ounce as in NIST SP 811, appendix B."""

from decimal import Decimal

import pytest

from kitlog.files.table.cells import Cell, Figure
from kitlog.files.table.printed import half_step_g


@pytest.mark.parametrize(
    ("cell", "unit", "grams", "half"),
    [
        ("4900", "g", 4900, 0.5),
        ("4.9", "kg", 4900, 50),
        ("4,90 kg", "", 4900, 5),
        ("4.900 kg", "", 4900, 0.5),
        ("1.250 g", "", 1250, 0.5),
        ("~5 kg", "", 5000, 500),
        ("10.7", "lb", 4853, 22.68),
        ("2 lb", "", 907, 226.8),
        ("10 lb 11 oz", "", 4848, 14.17),
        ("4.9", "", 4900, 50),
        (Figure(Decimal("4.85"), "4.85 kg", "kg"), "", 4850, 5),
        ("", "g", 0, 0.5),
    ],
)
def test_half_of_the_last_digit(cell: Cell, unit: str, grams: int, half: float) -> None:
    assert half_step_g(cell, unit, grams) == pytest.approx(half, rel=1e-3)
