"""What an export writes, and what it says that it could not."""

import csv
import io
import itertools
from datetime import UTC, date, datetime
from typing import Any

import pytest

from kitlog.files.csv_export import Lost
from kitlog.files.csv_kit import read_kit
from kitlog.files.csv_kit_export import template_kit, write_kit
from kitlog.files.csv_service_export import write_service
from kitlog.kit.facets import Bank, Battery, Charger, ChargerPort, Harness, Share, WayOfUse, Wing
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay, Place
from kitlog.kit.service import Event, ModelRule, Result, ServiceRecord, ServiceRule

KIT_HEADINGS = (
    "name,kind,quantity,mass_g,mass_source,zone,zone_on_foot,fitted_to,serves,state,belongs_to,lent_to,back_by,maker,model,serial,made_on,bought_on,"
    "first_used_on,opening_h,opening_launches,opening_ground_h,colour,value,notes,wing_min_kg,wing_max_kg,wing_flat_m2,"
    "wing_projected_m2,wing_trim_kmh,wing_sink_ms,wing_figures_kg,harness_max_kg,harness_volume_l,reserve_min_kg,reserve_max_kg,"
    "reserve_sink_ms,reserve_sink_at_kg,battery_wh,battery_mah,battery_v,battery_health_pct,battery_cutoff_pct,draw_w,"
    "charge_max_w,connector,battery_on_hand_pct,battery_on_hand_at,battery_swollen_on,bank_rated_mah,"
    "bank_efficiency_pct,bank_ports,bank_port_w,bank_total_w,bank_min_w,bank_off_s,charger_total_w,clo,garment_layer,garment_part,vessel_ml,volume_ml"
)
SERVICE_HEADINGS = (
    "item,rule,months,recommended_months,hours,launches,due_on,event,event_days,last_on,last_hours,last_launches,last_who,"
    "last_result,last_cost,last_currency,last_remarks,last_next_due_on,last_next_within_h,counts_from,lead_days,"
    "warn_days,grounds,source"
)


def rows(data: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(data.decode(), newline="")))


def rule(rule_id: str = "1", item: str = "w", name: str = "full", **fields: object) -> ServiceRule:
    return ServiceRule.model_validate({"id": rule_id, "item_id": item, "rule": name, "months": 24, **fields})


def test_headings_come_in_their_order_even_without_items() -> None:
    assert write_kit([]).data == f"{KIT_HEADINGS}\r\n".encode()
    assert write_service([], [], []).data == f"{SERVICE_HEADINGS}\r\n".encode()


def test_lines_end_in_crlf_and_there_is_no_byte_order_mark() -> None:
    data = write_kit([Item(id="1", name="Schäkel"), Item(id="2", name="B")]).data
    assert data.startswith(b"name,")
    assert data.count(b"\r\n") == data.count(b"\n") == 3
    assert "Schäkel".encode() in data


def test_figures_are_written_short_and_loads_in_kilograms() -> None:
    item = Item(
        id="1",
        name="X",
        quantity=0,
        mass_g=0,
        value=12.0,
        opening_h=0.1 + 0.2,
        wing=Wing(min_g=85_000, max_g=105_050, sink_ms=1e-7),
        harness=Harness(max_g=1),
    )
    (row,) = rows(write_kit([item]).data)
    assert (row["quantity"], row["mass_g"], row["value"], row["opening_h"]) == (
        "0",
        "0",
        "12",
        "0.30000000000000004",
    )
    assert (row["wing_min_kg"], row["wing_max_kg"], row["harness_max_kg"]) == ("85", "105.05", "0.001")
    assert row["wing_sink_ms"] == "0.0000001"


def test_everything_the_columns_hold_is_not_lost() -> None:
    way = WayOfUse(name="on", power_w=0.5)
    item = Item(id="1", name="Radio", battery=Battery(wh=11.1, ways=(way,)), bank=Bank(ports=0))
    assert write_kit([item]).lost == ()


@pytest.mark.parametrize(
    ("facets", "field"),
    [
        ({"battery": Battery(wh=1, place=Place.COCKPIT)}, "battery.place"),
        ({"battery": Battery(wh=1, offset_k=0)}, "battery.offset_k"),
        ({"battery": Battery(wh=1, fixed_c=20)}, "battery.fixed_c"),
        ({"battery": Battery(wh=1, ways=(WayOfUse(name="tracking", power_w=1),))}, "battery.ways"),
        (
            {"battery": Battery(wh=1, ways=(WayOfUse(name="on", power_w=1), WayOfUse(name="off", power_w=0)))},
            "battery.ways",
        ),
        (
            {"battery": Battery(wh=1, ways=(WayOfUse(name="on", power_w=1, basis="measured"),))},
            "battery.ways.basis",
        ),
        (
            {
                "battery": Battery(
                    wh=1,
                    ways=(WayOfUse(name="on", power_w=1, shares=(Share(during=PhaseWay.FLIGHT, share=0.5),)),),
                )
            },
            "battery.ways.shares",
        ),
        ({"battery": Battery(wh=1, ways=(WayOfUse(name="on", power_w=1, low_w=0.5),))}, "battery.ways.low_w"),
        ({"battery": Battery(wh=1, ways=(WayOfUse(name="on", power_w=1, source="label"),))}, "battery.ways.source"),
        ({"battery": Battery(wh=1, ways=(WayOfUse(name="on", power_w=1, lasts_h=2),))}, "battery.ways"),
        ({"battery": Battery(wh=1, ways=(WayOfUse(name="on", lasts_h=2),))}, "battery.ways"),
        ({"battery": Battery(on_hand_pct=1, on_hand_at=datetime(1900, 1, 1, tzinfo=UTC))}, "battery.on_hand_at"),
        ({"charger": Charger(total_w=20, ports=(ChargerPort(power_w=18),))}, "charger.ports"),
        ({"bank": Bank(ports=2, quiescent_w=0.01)}, "bank.quiescent_w"),
        ({"battery": Battery()}, "battery"),
        ({"wing": Wing()}, "wing"),
        ({"wing": Wing(sink_ms=1e-30, min_g=1)}, "wing.sink_ms"),
        ({"fitted_to": "gone"}, "fitted_to"),
    ],
)
def test_what_the_columns_cannot_hold_is_named(facets: dict[str, object], field: str) -> None:
    item = Item.model_validate({"id": "1", "name": "X", **facets})
    assert write_kit([item]).lost == (Lost("X", field),)


def test_several_ways_of_use_leave_the_draw_empty_rather_than_wrong() -> None:
    ways = (WayOfUse(name="on", power_w=1), WayOfUse(name="transmit", power_w=5))
    (row,) = rows(write_kit([Item(id="1", name="X", battery=Battery(wh=1, ways=ways))]).data)
    assert (row["battery_wh"], row["draw_w"]) == ("1", "")


def test_a_pair_with_an_item_of_a_shared_name_is_left_out_and_named() -> None:
    items = [Item(id="1", name="H"), Item(id="2", name="H"), Item(id="3", name="R", fitted_to="1")]
    export = write_kit(items)
    assert rows(export.data)[2]["fitted_to"] == ""
    assert export.lost == (Lost("R", "fitted_to"),)


def test_the_template_holds_all_headings_and_three_items_that_read() -> None:
    count = itertools.count(1)
    table = read_kit(template_kit(), "template.csv", (), lambda: str(next(count)))
    assert template_kit().decode().splitlines()[0] == KIT_HEADINGS
    assert [item.kind for item in table.items] == [Kind.HARNESS, Kind.RESERVE, Kind.POWER_BANK]
    assert table.items[1].fitted_to == table.items[0].id
    assert template_kit() == write_kit(table.items).data


WING = Item(id="w", name="Wing", kind=Kind.WING)
DAY = date(2025, 1, 1)


def test_the_newest_record_that_stands_is_the_last_time() -> None:
    records = [
        ServiceRecord(id="a", item_id="w", rules=("1",), done_on=date(2023, 1, 1)),
        ServiceRecord(id="b", item_id="w", rules=("1",), done_on=date(2025, 1, 1), hours=112.5, launches=96),
        ServiceRecord(
            id="c",
            item_id="w",
            rules=("1",),
            done_on=date(2025, 6, 1),
            struck_at=datetime(2025, 6, 2, tzinfo=UTC),
        ),
    ]
    export = write_service([WING], [rule()], records)
    (row,) = rows(export.data)
    assert (row["item"], row["last_on"], row["last_hours"], row["last_launches"]) == (
        "Wing",
        "2025-01-01",
        "112.5",
        "96",
    )
    assert export.lost == (Lost("Wing", "records"),)


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"measurements": [{"what": "porosity", "value": 84, "unit": "s"}]}, "records.measurements"),
        (
            {"papers": [{"sha256": "0" * 64, "name": "a.pdf", "media_type": "application/pdf", "size": 9}]},
            "records.papers",
        ),
        ({"answers": ("e",)}, "records.answers"),
        ({"rules": ("1", "2")}, "records.rules"),
    ],
)
def test_what_a_record_says_besides_is_named(fields: dict[str, object], field: str) -> None:
    record = ServiceRecord.model_validate({"id": "a", "item_id": "w", "rules": ("1",), "done_on": DAY, **fields})
    assert write_service([WING], [rule()], [record]).lost == (Lost("Wing", field, "full"),)


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"applies": False}, "applies"),
        ({"ground_handling": True}, "ground_handling"),
        ({"hours": 100}, "ground_handling"),
        ({"of_model": "m"}, "of_model"),
    ],
)
def test_what_a_rule_says_besides_is_named(fields: dict[str, Any], field: str) -> None:
    assert write_service([WING], [rule(**fields)], []).lost == (Lost("Wing", field, "full"),)


def test_rules_that_could_not_be_read_back_are_left_out_and_named() -> None:
    twins = [Item(id="1", name="Twin"), Item(id="2", name="Twin")]
    rules = [rule("a", "1"), rule("b", "w"), rule("c", "w", months=36), rule("d", "gone")]
    export = write_service([*twins, WING], rules, [])
    assert [(row["item"], row["months"]) for row in rows(export.data)] == [("Wing", "24")]
    assert export.lost == (
        Lost("Twin", "rules", "full"),
        Lost("Wing", "rules", "full"),
        Lost("gone", "rules", "full"),
    )


def test_what_a_paper_of_the_last_time_says_is_written() -> None:
    last = {
        "who": "workshop, Hollin",
        "result": Result.WITH_REMARKS,
        "cost": 189.5,
        "currency": "EUR",
        "remarks": "two lines replaced",
        "next_due_on": date(2026, 1, 1),
        "next_within_h": 80,
    }
    record = ServiceRecord.model_validate({"id": "a", "item_id": "w", "rules": ("1",), "done_on": DAY, **last})
    export = write_service([WING], [rule(event_days=3, events=("water",))], [record])
    (row,) = rows(export.data)
    assert export.lost == ()
    assert [row[heading] for heading in ("event", "event_days", "last_who", "last_result")] == [
        "water",
        "3",
        "workshop, Hollin",
        "passed with remarks",
    ]
    assert [row[heading] for heading in ("last_cost", "last_currency", "last_next_due_on", "last_next_within_h")] == [
        "189.5",
        "EUR",
        "2026-01-01",
        "80",
    ]


def test_rules_by_model_are_named() -> None:
    model = ModelRule(id="m", kind=Kind.WING, model="Tarn 2", rule="wing.full", months=36)
    assert write_service([], [], [], models=[model, model]).lost == (Lost("Tarn 2", "model_rules", "wing.full"),)


def test_events_are_named_once_for_each_item() -> None:
    events = [Event(id=str(n), item_id="w", on=DAY, kind="blow") for n in range(3)]
    assert write_service([WING], [], [], events).lost == (Lost("Wing", "events"),)
