"""What is on record, at a glance, in Kit and Outing: hours, launches, both limits, and the day of the outing."""

from datetime import date, timedelta

import pytest
from PySide6.QtWidgets import QLabel, QWidget

from kitlog.desktop.kit_page.details import Details
from kitlog.desktop.kit_page.record_sections import airtime_text, launches_text
from kitlog.desktop.outing_page.record_rows import Records, record_section
from kitlog.desktop.window import Window
from kitlog.kit.due import DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.workbench.workbench import Workbench

TODAY = date(2026, 5, 8)


def words(widget: QWidget) -> str:
    return " | ".join(label.text() for label in widget.findChildren(QLabel)).replace("\u00a0", " ")


def details_of(window: Window, bench: Workbench, name: str) -> str:
    made = Details(window.desk, lambda: None, lambda: None, window)
    made.show_rows([row for row in bench.kit_rows() if row.item.name == name])
    return words(made)


def test_the_details_tell_use_and_both_limits(window: Window, demo_bench: Workbench) -> None:
    said = details_of(window, demo_bench, "Wing A")
    for part in ("180.4 h", "184 launches", "9.5 h ground handling", "full inspection", "20 May 2026, or 22.1 h"):
        assert part in said


def test_hours_in_12_months_count_typed_totals(window: Window, demo_bench: Workbench) -> None:
    used = demo_bench.on_record(next(i.id for i in demo_bench.items() if i.name == "Wing A"))
    assert used is not None
    assert "16.4 h in 12 months" not in details_of(window, demo_bench, "Wing A")


def test_the_details_tell_of_the_day_of_the_outing_where_it_differs(window: Window, demo_bench: Workbench) -> None:
    said = details_of(window, demo_bench, "First aid kit")
    assert "on the outing, 9 May: overdue; overdue since 8 May 2026" in said
    assert "on the outing" not in details_of(window, demo_bench, "Helmet A")


@pytest.mark.parametrize(("opening_h", "text"), [(None, "at least 0.0 h"), (0.0, "0.0 h"), (12.5, "12.5 h")])
def test_hours_before_the_log_that_nobody_knows_make_the_least(
    empty_bench: Workbench, opening_h: float | None, text: str
) -> None:
    empty_bench.add_item(Item.model_validate({"id": "w", "name": "Wing", "kind": "wing", "opening_h": opening_h}))
    record = empty_bench.on_record("w")
    assert record is not None
    assert airtime_text(record).replace("\u00a0", " ") == text
    assert launches_text(record).startswith("0" if opening_h == 0 else "at least 0")


def test_who_has_it_stands_in_the_details(window: Window, demo_bench: Workbench) -> None:
    item = next(i for i in demo_bench.items() if i.name == "Wing B")
    lent = {"state": ItemState.LENT, "lent_to": "Bero", "back_by": TODAY + timedelta(days=3)}
    demo_bench.edit_items([item.model_copy(update=lent)])
    assert "Lent to Bero, back by 11 May 2026" in details_of(window, demo_bench, "Wing B")


def test_the_outing_tells_what_goes_along_on_its_day(window: Window, demo_bench: Workbench) -> None:
    outing = demo_bench.current_outing()
    assert outing is not None
    assessment = demo_bench.assess(outing)
    shown: list[str] = []
    made = record_section(assessment, Records(lambda name: demo_bench.on_record(name, outing), shown.append))
    assert made is not None
    said = words(made)
    assert "On record for 9 May 2026" in said
    assert "180.4 h, 184 launches" in said
    names = [w.accessibleName().replace("\u00a0", " ") for w in made.findChildren(QWidget) if w.accessibleName()]
    assert "contents and dates, overdue: overdue since 8 May 2026" in names
    assert any(name.startswith("full inspection, due soon: due 20 May 2026; 22.1 h left") for name in names)
    assert "check after an event, in date: in date" not in names


def test_a_stop_by_hours_foreseen_alone_is_said_to_be_foreseen(empty_bench: Workbench) -> None:
    from kitlog.kit.flights import Flight
    from kitlog.outing.outing import Outing

    empty_bench.add_item(Item.model_validate({"id": "w", "name": "Wing", "kind": "wing", "opening_h": 0}))
    empty_bench.save_rule(ServiceRule(id="r", item_id="w", rule="wing.full", hours=50))
    empty_bench.add_record(ServiceRecord(id="s", item_id="w", rules=("r",), done_on=TODAY - timedelta(days=300)))
    empty_bench.add_flight(
        Flight(id="f", on=date(2026, 4, 1), until=date(2026, 4, 30), airtime_min=2_900, flown=("w",), launches=30)
    )
    later = Outing.model_validate({"name": "x", "flight_types": ["ridge"], "first_day": TODAY + timedelta(days=90)})
    record = empty_bench.on_record("w", later)
    assert record is not None
    (due,) = record.dues
    assert (due.state, due.foreseen) == (DueState.OVERDUE, True)
