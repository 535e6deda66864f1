"""The order of day, month and year that a heading gives."""

import pytest

from kitlog.files.table.day_order import order_of


@pytest.mark.parametrize(
    ("heading", "order"),
    [
        ("Bought (DD/MM/YYYY)", "dmy"), ("mm/dd/yy", "mdy"), ("Date [yyyy-mm-dd]", "ymd"), ("Kauf TT.MM.JJJJ", "dmy"),
        ("gekauft (JJJJ-MM-TT)", "ymd"), ("Achat (JJ/MM/AAAA)", "dmy"), ("AAAA-MM-JJ", "ymd"), ("Kauf (TT.MM.JJ)", "dmy"),
        ("d/m/y", "dmy"), ("Bought", ""), ("Jan/Mai/Juli", ""), ("(MM/YYYY)", ""), ("dd/dd/yyyy", ""), ("yy-mm-dd", "ymd"),
    ],
)  # fmt: skip
def test_orders_in_english_german_and_french(heading, order):
    # DD/MM/YYYY, TT.MM.JJJJ and JJ/MM/AAAA are the patterns as the CLDR's locales name their fields in the three
    # languages (day, Tag, jour; year, Jahr, année); from memory.
    assert order_of(heading) == order
