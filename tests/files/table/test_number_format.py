"""Number formats: the built-in codes and their meaning as in ECMA-376 part 1, 18.8.30 and 18.8.31."""

from datetime import date, datetime
from decimal import Decimal

import pytest

from kitlog.files.table.cells import CalendarDay, Figure, Shows
from kitlog.files.table.xlsx_cells import number_cell

EPOCH_1900, EPOCH_1904 = datetime(1899, 12, 30), datetime(1904, 1, 1)  # noqa: DTZ001  # a sheet's days have no zone


def shown(value, code, epoch=EPOCH_1900):
    return number_cell(value, code, epoch)


@pytest.mark.parametrize(
    ("value", "code", "number", "unit", "text"),
    [
        (420, '0" g"', "420", "g", "420 g"),
        (420, "#,##0\\ \\g", "420", "g", "420 g"),
        (4.5, '#,##0.00\\ "kg"', "4.5", "kg", "4.50 kg"),
        (4500, '0.00," kg"', "4.5", "kg", "4.50 kg"),
        (1_500_000, '0.0,,"M"', "1.5", "M", "1.5M"),
        (900, '[<1000]0" g";0.0," kg"', "900", "g", "900 g"),
        (1900, '[<1000]0" g";0.0," kg"', "1.9", "kg", "1.9 kg"),
        (3.5, "0.0 lbs", "3.5", "lbs", "3.5 lbs"),
        (3, 'General" Stk."', "3", "Stk.", "3 Stk."),
        (12, '"ca. "0" g"', "12", "g", "ca. 12 g"),
        (20, '0"°C"', "20", "°C", "20°C"),
        (95, '"("0" g)"', "95", "g", "(95 g)"),
        (12.5, "[$€-407]\\ #,##0.00", "12.5", "", "€ 12.50"),
        (12.5, '#,##0.00\\ "€"', "12.5", "", "12.50 €"),
        (12.5, "[$CHF]\\ #,##0.00;[Red]-[$CHF]\\ #,##0.00", "12.5", "", "CHF 12.50"),
        (42, "0000", "42", "", "0042"),
        (1450, "#,##0", "1450", "", "1450"),
        (0.1 + 0.2, "General", "0.3", "", "0.3"),
        (85.0, "General", "85", "", "85"),
        (5, "0_);(0)", "5", "", "5"),
        (-5, "0_);(0)", "-5", "", "(5)"),
        (-5, "0;[Red]-0", "-5", "", "-5"),
        (12345.678, "0.00E+00", "12345.678", "", "12345.678"),
        (0.5, "# ?/?", "0.5", "", "0.5"),
        (7, "@", "7", "", "7"),
        (7, ";;;", "7", "", "7"),
        (123456789012345, "General", "123456789012345", "", "123456789012345"),
    ],
)  # fmt: skip
def test_numbers(value, code, number, unit, text):
    cell = shown(value, code)
    assert isinstance(cell, Figure)
    assert (cell.value, cell.unit, cell.text, cell.percent) == (Decimal(number), unit, text, False)


@pytest.mark.parametrize(("value", "code"), [(0.95, "0%"), (0.95, "0.0%"), (95, '0"%"'), (95, "0\\%")])
def test_percent(value, code):
    cell = shown(value, code)
    assert (cell.value, cell.percent, cell.unit) == (Decimal("0.95"), True, "")
    assert cell.text in {"95%", "95.0%"}


@pytest.mark.parametrize(
    ("code", "shows"),
    [
        ("mm-dd-yy", Shows.DAY), ("d-mmm-yy", Shows.DAY), ("d-mmm", Shows.DAY), ("mmm-yy", Shows.MONTH),
        ("m/d/yy h:mm", Shows.DAY), ("yyyy", Shows.YEAR), ("[$-407]mmmm\\ yyyy;@", Shows.MONTH),
        ("[$-407]d/\\ mmmm\\ yyyy;@", Shows.DAY), ("mm/yyyy", Shows.MONTH), ("yyyy\\-mm\\-dd", Shows.DAY),
        ("[Red]dd.mm.yyyy", Shows.DAY), ("yyyy mm", Shows.MONTH), ("dd.mm.yyyy hh:mm:ss", Shows.DAY),
    ],
)  # fmt: skip
def test_days(code, shows):
    """43252 is 2018-06-01: the example of the day count in any spreadsheet, counted here with Python's calendar."""
    cell = shown(43252.0, code)
    assert (cell.day, cell.shows) == (date(2018, 6, 1), shows)


def test_the_two_day_counts():
    assert shown(43252, "yyyy-mm-dd", EPOCH_1904).day == date(2022, 6, 2)
    assert shown(1, "yyyy-mm-dd").day == date(1900, 1, 1)
    assert shown(61, "yyyy-mm-dd").day == date(1900, 3, 1)


@pytest.mark.parametrize(
    ("value", "code", "hours", "text"),
    [
        (1.5, "[h]:mm", "36", "36:00"), (0.0625, "h:mm", "1.5", "1:30"), (0.0625, "[mm]", "1.5", "1:30"),
        (1 / 3, "[h]:mm:ss", "8", "8:00"), (43252.5, "h:mm", "12", "12:00"), (0.5, "h:mm AM/PM", "12", "12:00"),
        (0.0034722222, "mm:ss", "0.083333", "0:05"),
    ],
)  # fmt: skip
def test_times_are_hours(value, code, hours, text):
    cell = shown(value, code)
    assert (cell.value, cell.unit, cell.text) == (Decimal(hours), "h", text)


@pytest.mark.parametrize("value", [-1, 0.25, 1e9])
def test_what_is_no_day_stays_a_number(value):
    assert isinstance(shown(value, "dd/mm/yyyy"), Figure)


@pytest.mark.parametrize("value", [float("inf"), float("nan"), 1e300])
def test_no_figure(value):
    assert isinstance(shown(value, '0" g"'), str)


@pytest.mark.parametrize("code", ["", ";", '"', "[", "\\", "[h", '0"', "_", "*", "0;;;;;", "[<]0", "[<x]0", "m", "]"])
def test_broken_codes_do_no_harm(code):
    assert isinstance(shown(3, code), Figure | CalendarDay)
