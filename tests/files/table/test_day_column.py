"""Columns of days: orders, evidence, months, day numbers."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from babel import Locale, localedata
from babel.dates import format_date
from column_reads import one, read, remarks
from hypothesis import assume, given
from hypothesis import strategies as st

from kitlog.files.table.cells import CalendarDay, Figure, Shows
from kitlog.files.table.doubt import Question

DAYS = st.dates(date(1970, 1, 1), date(2100, 12, 31))
SHORT_DAYS = st.dates(date(1970, 1, 1), date(2069, 12, 31))


@pytest.mark.parametrize(
    "cell",
    [
        "2023-05-12", "2023-5-12", "2023/05/12", "2023.05.12", "2023 05 12", "20230512", "2023-05-12 00:00",
        "2023-05-12T00:00:00", "2023-05-12T23:20:30+02:00", "2023-05-12T00:00:00Z", "2023-05-12 10:00 am", "12.05.2023",
        "12.5.23", "12. 5. 2023", "12.05.2023 14:30", "12. Mai 2023", "12 mai 2023", "12 May 2023", "May 12, 2023",
        "May 12th, 2023", "the 12th of May 2023", "12-May-23", "12-MAY-2023", "2023-May-12", "12/Mai/2023", "Fr, 12.05.2023",
        "Freitag, 12. Mai 2023", "ven. 12 mai 2023", "Fri May 12 2023", "vendredi 12 mai 2023", "le 12 mai 2023", "12 May '23",
    ],
)  # fmt: skip
def test_days_as_they_are_written(cell):
    reading = read("made_on", "", [cell])
    assert (reading.values, reading.doubts, reading.remarks) == ((date(2023, 5, 12),), (), ())


@pytest.mark.parametrize(
    ("cell", "day"),
    [
        ("1er mai 2023", date(2023, 5, 1)), ("12 août 2023", date(2023, 8, 12)), ("12 aout 2023", date(2023, 8, 12)),
        ("12. Jänner 2023", date(2023, 1, 12)), ("12. Mrz. 2023", date(2023, 3, 12)), ("12 févr. 2023", date(2023, 2, 12)),
        ("12 juil. 2023", date(2023, 7, 12)), ("Sept. 12, 2023", date(2023, 9, 12)), ("mar. 12 sept. 2023", date(2023, 9, 12)),
        ("Mar 12, 2023", date(2023, 3, 12)), ("mar 12/12/2023", date(2023, 12, 12)), ("05/05/2025", date(2025, 5, 5)),
        ("31/12/2024", date(2024, 12, 31)), ("12/31/2024", date(2024, 12, 31)), ("31.12.69", date(2069, 12, 31)),
        ("31.12.70", date(1970, 12, 31)), ("29.02.2024", date(2024, 2, 29)), ("", None), ("unbekannt", None),
    ],
)  # fmt: skip
def test_other_days(cell, day):
    # A year of two digits: 1970 to 2069, all that kitlog can take within a hundred years.
    assert one("bought_on", "", cell) == day


@pytest.mark.parametrize(
    "cell",
    [
        "31.02.2024", "29.02.2023", "2023-02-30", "2023-13-01", "20231301", "03052023", "99.99.9999", "1.1.1969", "1.1.2101",
        "12/05-2023", "12.05.", "12.5", "12 mai", "18-Jun", "June 18", "12-14 May 2023", "Q2 2018", "Sommer 2018", "vor 2018",
        "2018/2019", "31/12", "12 xyz 2023", "40", "70000", "1969", "2101", "-45000", "45000.5", "１２.05.2023", "x", "12.05.2023 25:30",
        "2023-05-12T23:20:30Z", "12/31/2024 (new)", "mai", "32 May 2023", "12.5.2023-13.5.2023", "-12 May 2023", "12 May 2023 -", "May-Jun 2018",
    ],
)  # fmt: skip
def test_what_is_no_day(cell):
    assert one("made_on", "", cell) is Question.UNREAD


def test_an_open_order_is_asked():
    reading = read("made_on", "", ["03/04/2025", "2025-01-01", "5/5/2025"])
    assert reading.values == (None, date(2025, 1, 1), date(2025, 5, 5))
    (doubt,) = reading.doubts
    assert (doubt.at, doubt.question) == (0, Question.DATES)
    assert dict(doubt.readings) == {"dmy": "2025-04-03", "mdy": "2025-03-04"}


@pytest.mark.parametrize(("answer", "day"), [("dmy", date(2025, 4, 3)), ("mdy", date(2025, 3, 4))])
def test_the_answer_settles_it(answer, day):
    assert one("made_on", "", "03/04/2025", {"dates": answer}) == day


def test_an_answer_that_cannot_be_meant():
    assert one("made_on", "", "03/04/2025", {"dates": "ymd"}) is Question.UNREAD
    assert one("made_on", "", "12/31/2024", {"dates": "dmy"}) == date(2024, 12, 31)
    assert one("made_on", "", "12.05.2023", {"dates": "mdy"}) == date(2023, 5, 12)


def test_one_cell_decides_the_order_for_the_column():
    reading = read("made_on", "", ["03/04/2025", "5/5/2025", "12/31/2024", "03/04/2025", "01/02/2024"])
    assert reading.values == (
        date(2025, 3, 4), date(2025, 5, 5), date(2024, 12, 31), date(2025, 3, 4), date(2024, 1, 2),
    )  # fmt: skip
    assert remarks(reading) == [("table.decided_dates", {"order": "mdy", "example": "12/31/2024", "cells": 3})]


def test_proofs_that_contradict_each_other_leave_each_cell_alone():
    reading = read("made_on", "", ["12/31/2024", "31/12/2024", "03/04/2025", "5/5/2025"])
    assert reading.values == (date(2024, 12, 31), date(2024, 12, 31), None, date(2025, 5, 5))
    assert (reading.remarks, [doubt.at for doubt in reading.doubts]) == ((), [2])


def test_days_with_dots_need_no_remark_and_say_nothing_of_slashes():
    assert read("made_on", "", ["03.04.2025", "05.06.2024"]).remarks == ()
    reading = read("made_on", "", ["03/04/2025", "05.06.2024"])
    assert reading.values == (None, date(2024, 6, 5))
    assert reading.doubts[0].readings == {"dmy": "2025-04-03", "mdy": "2025-03-04"}


def test_slashes_say_nothing_of_dashes():
    reading = read("made_on", "", ["12/31/2024", "03/04/2025", "03-04-2025"])
    assert reading.values == (date(2024, 12, 31), date(2025, 3, 4), None)


def test_two_digits_and_dashes_may_begin_with_the_year():
    reading = read("made_on", "", ["03-04-05"])
    assert dict(reading.doubts[0].readings) == {"dmy": "2005-04-03", "mdy": "2005-03-04", "ymd": "2003-04-05"}
    assert read("made_on", "", ["03-04-05", "98-12-31"]).values == (date(2003, 4, 5), date(1998, 12, 31))
    # No cell alone shows the order; only day-month-year fits both.
    assert read("made_on", "", ["13-05-06", "05-06-98"]).values == (date(2006, 5, 13), date(1998, 6, 5))


@pytest.mark.parametrize(
    ("cell", "first", "last"),
    [
        ("06/2018", "2018-06-01", "2018-06-30"), ("2018-06", "2018-06-01", "2018-06-30"), ("06.2018", "2018-06-01", "2018-06-30"),
        ("Juni 2018", "2018-06-01", "2018-06-30"), ("juin 2018", "2018-06-01", "2018-06-30"), ("Jun-18", "2018-06-01", "2018-06-30"),
        ("Jun. '18", "2018-06-01", "2018-06-30"), ("Jun 98", "1998-06-01", "1998-06-30"), ("06/18", "2018-06-01", "2018-06-30"),
        ("2/2024", "2024-02-01", "2024-02-29"), ("2018", "2018-01-01", "2018-12-31"), ("ca. 2018", "2018-01-01", "2018-12-31"),
        ("2018?", "2018-01-01", "2018-12-31"),
    ],
)  # fmt: skip
def test_a_month_or_a_year_is_asked_about(cell, first, last):
    reading = read("made_on", "", [cell])
    assert (reading.doubts[0].question, dict(reading.doubts[0].readings)) == (
        Question.MONTHS,
        {"first": first, "last": last},
    )
    assert one("made_on", "", cell, {"months": "last"}) == date.fromisoformat(last)
    assert one("made_on", "", cell, {"months": "first"}) == date.fromisoformat(first)


@pytest.mark.parametrize("cell", ["35981", Figure(Decimal(35981), "35981")])
def test_a_spreadsheets_count_of_days(cell):
    # Worked example of a spreadsheet component's manual: 5 July 1998 is 35981 in the 1900 system, 34519 in the 1904 one.
    reading = read("made_on", "", [cell])
    assert reading.doubts[0].question is Question.DAY_NUMBERS
    assert one("made_on", "", cell, {"day_numbers": "1900"}) == date(1998, 7, 5)
    assert one("made_on", "", "34519", {"day_numbers": "1904"}) == date(1998, 7, 5)


def test_a_count_of_days_outside_our_years_is_no_reading():
    assert dict(read("made_on", "", ["24500"]).doubts[0].readings) == {"1904": "1971-01-29"}
    assert one("made_on", "", "24500", {"day_numbers": "1900"}) is Question.UNREAD


def test_a_workbooks_days():
    june = date(2018, 6, 1)
    assert one("made_on", "", CalendarDay(june, "1.6.2018")) == june
    assert one("made_on", "", CalendarDay(june, "June 2018", Shows.MONTH)) is Question.MONTHS
    assert one("made_on", "", CalendarDay(date(2018, 1, 1), "2018", Shows.YEAR)) is Question.MONTHS
    assert one("made_on", "", CalendarDay(date(1900, 1, 1), "1.1.1900")) is Question.UNREAD
    # Whoever types a month gets its first day: any other was typed as a day, whatever is shown of it.
    assert one("made_on", "", CalendarDay(date(2018, 6, 17), "June 2018", Shows.MONTH)) == date(2018, 6, 17)
    assert one("made_on", "", Figure(Decimal(20180617), "20180617")) == date(2018, 6, 17)
    assert one("made_on", "", Figure(Decimal(2018), "2018")) is Question.MONTHS


def test_rough_days_are_marked():
    reading = read("made_on", "", ["ca. 12.5.2023", "03/04/2025?", "12/31/2024"])
    assert reading.values == (date(2023, 5, 12), date(2025, 3, 4), date(2024, 12, 31))
    assert reading.guesses == {0, 1}


_PATTERNS = {"dmy": "%d{0}%m{0}%Y", "mdy": "%m{0}%d{0}%Y", "ymd": "%Y{0}%m{0}%d"}


@given(st.lists(DAYS, min_size=1, max_size=8), st.sampled_from(["dmy", "mdy", "ymd"]), st.sampled_from("/- "))
def test_every_order_reads_back_with_a_proof(days, order, mark):
    cells = [day.strftime(_PATTERNS[order].format(mark)) for day in [*days, date(2024, 12, 31)]]
    reading = read("made_on", "", cells)
    assert reading.values == (*days, date(2024, 12, 31))
    assert reading.doubts == ()


@given(st.lists(SHORT_DAYS, min_size=1, max_size=8), st.sampled_from(["dmy", "mdy", "ymd"]), st.sampled_from("/-"))
def test_without_a_proof_the_truth_is_among_the_readings(days, order, mark):
    assume(order != "ymd" or mark == "-")
    cells = [day.strftime(_PATTERNS[order].format(mark).replace("Y", "y")) for day in days]
    reading = read("made_on", "", cells)
    doubts = {doubt.at: doubt for doubt in reading.doubts}
    for at, day in enumerate(days):
        if at in doubts:
            assert doubts[at].readings[order] == day.isoformat()
        else:
            assert reading.values[at] == day
    assert read("made_on", "", cells, {"dates": order}).values == tuple(days)


@given(DAYS, st.sampled_from(["en_US", "en_GB", "en_CA", "de_DE", "de_AT", "de_CH", "fr_FR", "fr_CA", "fr_CH"]))
def test_the_cldrs_own_long_writing_reads_back(day, locale):
    # Outside reference: date patterns and names of the Unicode CLDR, through babel.
    for width in ("full", "long", "medium"):
        shown = format_date(day, width, locale=locale)
        assert one("made_on", "", shown) == day, shown


@given(SHORT_DAYS, st.sampled_from(["en_US", "en_GB", "en_CA", "de_DE", "de_AT", "de_CH", "fr_FR", "fr_CA", "fr_CH"]))
def test_the_cldrs_own_short_writing_reads_back_with_a_proof(day, locale):
    shown = [format_date(each, "short", locale=locale) for each in (day, date(2024, 12, 31), date(1999, 12, 31))]
    assert read("made_on", "", shown).values[0] == day


def test_with_dots_no_language_begins_with_the_month():
    # Outside reference: short date patterns of all locales of the Unicode CLDR, through babel.
    patterns = [Locale.parse(name).date_formats["short"].pattern for name in localedata.locale_identifiers()]
    dotted = [pattern for pattern in patterns if "." in pattern]
    assert len(dotted) > 50
    assert not [pattern for pattern in dotted if pattern.strip("'").startswith("M")]


@given(st.integers(20_000, 60_000))
def test_counts_of_days_go_on_by_one(number):
    readings = read("made_on", "", [str(number)]).doubts[0].readings
    for system, zero in (("1900", date(1900, 3, 1) - timedelta(61)), ("1904", date(1904, 1, 1))):
        if system in readings:
            assert readings[system] == (zero + timedelta(number)).isoformat()


@pytest.mark.parametrize("mark", ["/", ".", "-"])
def test_the_pilot_may_say_that_a_year_of_two_digits_stands_first(mark):
    cells = [f"21{mark}05{mark}13", f"19{mark}02{mark}28", "2020-01-02"]
    assert read("made_on", "", cells, {"dates": "ymd"}).values == (
        date(2021, 5, 13),
        date(2019, 2, 28),
        date(2020, 1, 2),
    )


def test_dots_with_the_month_first_are_evidence_against_the_day_first():
    cells = ["12.31.2020", "04.03.2021", "05/06/2021"]
    reading = read("made_on", "", cells)
    assert reading.values == (date(2020, 12, 31), date(2021, 4, 3), None)
    assert remarks(reading) == [("table.decided_dates", {"order": "mdy", "example": "12.31.2020", "cells": 1})]


def test_dots_of_both_orders_are_asked_about():
    reading = read("made_on", "", ["12.31.2020", "31.12.2020", "04.03.2021"])
    assert reading.values == (date(2020, 12, 31), date(2020, 12, 31), None)
    assert reading.doubts[0].readings == {"dmy": "2021-03-04", "mdy": "2021-04-03"}
