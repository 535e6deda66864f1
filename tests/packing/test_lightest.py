"""The lightest of the pilot's own banks that does, by hand: cells at 25 deg C, no losses."""

from datetime import date
from typing import Any

from scenario import LIBRARY, judged
from small_kit import NEW, but, item, outing

from kitlog.kit.item import Item
from kitlog.packing.lightest import MyLightest, my_lightest_bank

FLIGHT = {"name": "flight", "way": "flight", "likely_h": 4, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 2, "likely_h": 2, "high_h": 6, "air_c": 25}
PHONE = item(
    "phone",
    "phone",
    battery={
        "wh": 10,
        "cutoff_pct": 0,
        "offset_k": 0,
        "charge_max_w": 5,
        "ways": [
            {
                "name": "on",
                "power_w": 2,
                "shares": [{"during": "flight", "share": 1}, {"during": "ride home", "share": 1}],
            }
        ],
    },
)
"""10 Wh, 2 W: 8 of them gone at the landing. The ride asks 4 Wh more, 12 in the high case."""

RIDE_ON_A = [{"phase": "ride", "device": "phone", "bank": "a"}]


def bank(name: str, wh: float | None, mass_g: int | None, **fields: Any) -> Item:
    cell = {"wh": wh, "fixed_c": 25, "cutoff_pct": 0, **fields.pop("battery", {})}
    how = {"efficiency_pct": 100, "quiescent_w": 0, "ports": 1, **fields.pop("bank", {})}
    return item(name, "power bank", mass_g, battery=cell, bank=how, **fields)


def found(*banks: Item, along: tuple[str, ...] = ("a",), plugs: Any = RIDE_ON_A, ride: Any = RIDE) -> MyLightest | None:
    kit = but("phone", "radio", instead=(PHONE, *banks))
    plan = {"phases": [FLIGHT, ride], "pinned": along, "plugs": plugs}
    left = [one.id for one in banks if one.id not in along]
    return my_lightest_bank(judged(outing(**plan, left_out=left), kit, NEW), kit.items, LIBRARY)


def names(answer: MyLightest | None) -> list[tuple[str | None, bool, bool, str]]:
    assert answer is not None
    return [(one.bank, one.meets, one.meets_high, one.why) for one in answer.tried]


def test_the_lightest_that_does_on_the_high_day_too() -> None:
    """2 Wh are left at the landing and 1 Wh (10 %) is to be kept: 3 Wh likely and 11 Wh high are asked of the bank."""
    answer = found(bank("a", 30, 400), bank("b", 12, 250), bank("c", 6, 120), bank("d", 2, 60))
    assert names(answer) == [
        (None, False, False, "off"),
        ("d", False, False, "off"),
        ("c", True, False, "off"),
        ("b", True, True, ""),
        ("a", True, True, ""),
    ]
    assert answer is not None
    assert answer.lightest is not None
    assert answer.lightest_likely is not None
    assert (answer.place, answer.lightest.bank, answer.lightest_likely.bank) == ("a", "b", "c")
    assert answer.devices == ("phone",)


def test_ending_with_too_little_is_said_apart_from_going_off() -> None:
    """11 Wh, of them t h carried load and nine tenths of the rest in the phone: 2 + .9 (11 - 2 t) + 2 t - 12 Wh are left
    after 6 h, or .2 t - .1: more than nothing and less than 1, as 11 Wh at 7 W last between 1.5 and 5 h."""
    assert names(found(bank("a", 30, 400), bank("d", 11, 60)))[1] == ("d", True, False, "under")


def test_an_unknown_mass_is_last_and_never_the_lightest() -> None:
    answer = found(bank("a", 2, 60), bank("b", 40, None), along=("a",))
    assert answer is not None
    assert [one.bank for one in answer.tried] == [None, "a", "b"]
    assert answer.tried[-1].meets_high
    assert answer.tried[-1].mass_g is None
    assert answer.lightest is None


def test_those_that_cannot_go_are_named_with_the_reason() -> None:
    swollen = bank("s", 40, 100, battery={"swollen_on": date(2026, 4, 1)})
    answer = found(bank("a", 30, 400), swollen, bank("l", 40, 90, state="lent"), bank("u", None, 80))
    assert answer is not None
    assert {one.bank: one.why for one in answer.not_tried} == {
        "s": "swollen",
        "l": "not at hand",
        "u": "energy not known",
    }
    assert {one.bank for one in answer.tried} == {None, "a"}


def test_too_few_ports() -> None:
    clip = item("clip", "instrument", battery={"wh": 2, "charge_max_w": 2, "ways": [{"name": "on", "power_w": 0.1}]})
    plugs = [*RIDE_ON_A, {"phase": "ride", "device": "clip", "bank": "a"}]
    answer = found(bank("a", 30, 400, bank={"ports": 2}), bank("b", 30, 300), clip, along=("a", "clip"), plugs=plugs)
    assert ("b", False, False, "too few ports") in names(answer)


def test_no_bank_at_all_where_none_is_needed() -> None:
    """2 Wh at the landing, .8 for the ride: 1.2 Wh or 12 % are left."""
    answer = found(bank("a", 30, 400), ride={**RIDE, "low_h": 0.4, "likely_h": 0.4, "high_h": 0.4})
    assert answer is not None
    assert answer.lightest is not None
    assert (answer.lightest.bank, answer.lightest.mass_g) == (None, 0)


def test_where_none_goes_each_stands_on_the_usual_plugs() -> None:
    """The phone on the ground after the last flight (common practice, no source)."""
    answer = found(bank("b", 12, 250), bank("c", 6, 120), along=(), plugs=[])
    assert answer is not None
    assert answer.lightest is not None
    assert answer.lightest.bank == "b"


def test_another_bank_that_goes_along_is_no_choice() -> None:
    answer = found(bank("a", 30, 400), bank("b", 12, 250), along=("a", "b"))
    assert answer is not None
    assert [(one.bank, one.why) for one in answer.not_tried] == [("b", "goes along too")]


def test_nothing_to_ask() -> None:
    assert found(bank("a", 30, 400), plugs=[]) is None
    assert found(along=(), plugs=[]) is None
