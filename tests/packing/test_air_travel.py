"""Batteries on a journey by air.

Sources: IATA Dangerous Goods Regulations, 67th edition (2026), as reported: to 100 Wh free, to 160 Wh with approval and
two spares at most, above not as baggage; 20 spares, 15 devices. ICAO Doc 9284, addendum from 27 March 2026: two power
banks. Wh of a 26,800 mAh bank at 3.6, 3.7 and 3.85 V: mAh x V / 1000.
"""

from datetime import date

import pytest
from scenario import LIBRARY
from small_kit import item

from kitlog.budget.result import State
from kitlog.packing.air_travel import air_findings

RULES = LIBRARY.air_travel
TODAY = date(2026, 5, 9)


def bank(name, wh, n=1, **battery):
    return item(name, "power bank", 200, quantity=n, battery={"wh": wh, **battery}, bank={})


def spare(name, wh, n=1):
    return item(name, "camera", 30, quantity=n, battery={"wh": wh, "ways": [{"name": "on", "power_w": 0}]})


def device(name, wh, n=1):
    return item(name, "phone", 200, quantity=n, battery={"wh": wh, "ways": [{"name": "on", "power_w": 1}]})


def codes(*items, on=TODAY):
    return {(f.code.removeprefix("power.air_"), f.subject): f for f in air_findings(items, RULES, on)}


class TestRules:
    def test_figures_and_dates_are_those_of_the_sources(self):
        assert (RULES.free_wh, RULES.approval_wh, RULES.most_with_approval) == (100, 160, 2)
        assert (RULES.most_spares, RULES.most_devices, RULES.most_banks) == (20, 15, 2)
        assert (RULES.edition, RULES.banks_from) == ("2026", date(2026, 3, 27))
        assert "IATA" in RULES.source
        assert "Doc 9284" in RULES.banks_source


class TestEnergy:
    @pytest.mark.parametrize(
        ("wh", "code", "state", "margin"),
        [
            (38.5, "allowed", State.FINE, 61.5),
            (100.0, "allowed", State.FINE, 0.0),
            (100.1, "approval", State.LOOK, -0.1),
            (160.0, "approval", State.LOOK, -60.0),
            (160.1, "forbidden", State.LOOK, -0.1),
        ],
    )
    def test_limits_are_inclusive(self, wh, code, state, margin):
        found = codes(bank("bank", wh))[code, "bank"]
        assert (found.state, found.figure) == (state, wh)
        assert found.margin == pytest.approx(margin)
        assert found.facts["edition"] == "2026"

    @pytest.mark.parametrize(("volts", "code"), [(3.6, "allowed"), (3.7, "allowed"), (3.85, "approval")])
    def test_the_same_mah_on_either_side_of_the_limit(self, volts, code):
        assert (code, "bank") in codes(bank("bank", None, mah=26_800, v=volts))

    @pytest.mark.parametrize("battery", [{}, {"mah": 26_800}])
    def test_unknown_energy_is_not_known_and_never_fine(self, battery):
        assert codes(bank("bank", None, **battery))["not_known", "bank"].state is State.NOT_KNOWN

    def test_age_does_not_count(self):
        assert ("approval", "bank") in codes(bank("bank", 101, health_pct=50))

    def test_a_device_within_the_limit_is_not_mentioned_but_over_it(self):
        assert codes(device("phone", 17)) == {}
        assert ("forbidden", "phone") in codes(device("phone", 161))

    def test_never_a_stop(self):
        found = air_findings([bank("bank", 500, 9), spare("cell", 6.6, 30), device("phone", 500, 40)], RULES, TODAY)
        assert {f.state for f in found} == {State.LOOK, State.FINE}


class TestCounts:
    def test_two_banks_and_no_more(self):
        assert ("too_many", "bank") not in codes(bank("bank", 30, 2))
        found = codes(bank("one", 30, 2), bank("two", 30))["too_many", "bank"]
        assert (found.figure, found.margin, found.items) == (3, -1, ("one", "two"))
        assert found.source == RULES.banks_source

    def test_the_day_the_rule_begins(self):
        assert ("too_many", "bank") not in codes(bank("bank", 30, 3), on=date(2026, 3, 26))
        assert ("too_many", "bank") in codes(bank("bank", 30, 3), on=date(2026, 3, 27))

    def test_spares(self):
        assert ("too_many", "spare") not in codes(spare("cell", 6.6, 20))
        assert codes(spare("cell", 6.6, 21))["too_many", "spare"].margin == -1

    def test_before_the_rule_banks_counted_as_spares(self):
        flying = spare("cell", 6.6, 19), bank("bank", 30, 2)
        assert ("too_many", "spare") in codes(*flying, on=date(2026, 3, 26))
        assert ("too_many", "spare") not in codes(*flying)

    def test_two_with_approval(self):
        assert ("too_many", "with approval") not in codes(bank("bank", 120, 2))
        assert ("too_many", "with approval") in codes(bank("bank", 120, 2), spare("cell", 120))

    def test_devices(self):
        assert ("too_many", "device") not in codes(device("phone", 17, 15))
        assert ("too_many", "device") in codes(device("phone", 17, 16))


class TestCabin:
    def test_banks_and_spares_go_in_hand_luggage(self):
        assert codes(bank("bank", 30), spare("cell", 6.6), device("phone", 17))["cabin", ""].items == ("bank", "cell")

    def test_nothing_to_say_without_batteries(self):
        assert air_findings([item("boots", "footwear", 900)], RULES, TODAY) == []
        assert air_findings([bank("bank", 30, 0)], RULES, TODAY) == []
