"""Many days: how sure it is, when things go off, and that the days are those of the single-day routine."""

import json
import sys
from dataclasses import FrozenInstanceError
from math import sqrt
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest, triang

from kitlog.budget.power.chance import chance, odds_of
from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast import forecast, forecasts
from kitlog.budget.power.forecast_json import forecast_json
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.budget.power.forecast_tally import phases_passed
from kitlog.budget.power.question import Chance
from kitlog.budget.power.simulate import simulate
from kitlog.fault import InputFault

sys.path.insert(0, str(Path(__file__).parents[2] / "reference"))  # importmode=importlib finds no neighbours
from power_days import random_day

raw_days = st.randoms(use_true_random=False).map(random_day)
quick = settings(max_examples=30, deadline=None)


def day(hours, devices, banks=(), plugs=(), ambient_c=25):
    return Day.model_validate(
        {
            "phases": [{"id": name, "hours": value, "ambient_C": ambient_c} for name, value in hours.items()],
            "devices": [
                {"id": name, "cell_Wh": 10, "draw_W": dict.fromkeys(hours, 1.0), **how} for name, how in devices.items()
            ],
            "banks": banks,
            "plugs": plugs,
        }
    )


def ask(of, **query):
    return forecast(of, ForecastQuery.model_validate({"n": 4000, "seed": 7, "fan_steps": None} | query))


class TestChances:
    def test_the_worked_triangle(self):
        """E = L x 6 h, duration (3, 5, 8): 1 - (8 - 6)^2 / ((8 - 3)(8 - 5)) = .7333 (model, section 7)."""
        found = ask(day({"flight": 5}, {"phone": {"cell_Wh": 6}}), n=10_000, hours={"flight": [3, 5, 8]})
        odds = found.devices["phone"].lasts
        assert abs(odds.probability - (1 - 4 / 15)) < 3 * odds.standard_error
        assert odds.standard_error == pytest.approx(sqrt(odds.probability * (1 - odds.probability) / 10_000))

    def test_all_last_on_the_same_day_only(self):
        """Two draws of their own, each lasting 5 h with scipy's triang probability; together the product."""
        found = ask(
            day({"flight": 5}, {"a": {}, "b": {}}),
            n=10_000,
            draws={"a": {"flight": [1, 1.5, 3]}, "b": {"flight": [1.5, 1.8, 2.4]}},
        )
        both = triang.cdf(2, c=0.25, loc=1, scale=2) * triang.cdf(2, c=1 / 3, loc=1.5, scale=0.9)
        assert abs(found.all_last.probability - both) < 4 * found.all_last.standard_error

    def test_they_are_those_of_the_chance_alone(self):
        of = day({"flight": 5}, {"phone": {}, "radio": {"cell_Wh": 8}})
        query = {"n": 700, "seed": 3, "hours": {"flight": [4, 8, 12]}, "min_soc": {"radio": 0.1}}
        found = ask(of, **query)
        assert {name: each.lasts for name, each in found.devices.items()} == chance(of, Chance.model_validate(query))

    @pytest.mark.parametrize(("held", "n"), [(0, 500), (500, 500), (371, 500), (1, 1)])
    def test_bounds_are_those_of_wilson(self, held, n):
        """scipy.stats.binomtest: none or all of 500 days is not never or always."""
        expected = binomtest(held, n).proportion_ci(0.95, method="wilson")
        assert odds_of(held, n).within == pytest.approx((expected.low, expected.high), abs=1e-12)


class TestAlive:
    def test_a_phone_that_comes_back_can_call_at_the_end(self):
        """Dead at -20 C from a floor of .4, charged on the ride."""
        of = Day.model_validate(
            {
                "phases": [{"id": "flight", "hours": 7, "ambient_C": -20}, {"id": "ride", "hours": 1, "ambient_C": 25}],
                "devices": [{"id": "phone", "cell_Wh": 10, "draw_W": {"flight": 1, "ride": 1}}],
            }
        )
        phone = ask(of, n=3).devices["phone"]
        assert (phone.lasts.probability, phone.alive_at_end.probability) == (0.0, 1.0)

    def test_on_without_a_load_on_a_locked_cell_is_not_alive(self):
        of = Day.model_validate(
            {
                "phases": [{"id": "ride", "hours": 1, "ambient_C": -20}],
                "devices": [{"id": "phone", "cell_Wh": 10, "start": 0.3}],
            }
        )
        phone = ask(of, n=3).devices["phone"]
        assert (phone.lasts.probability, phone.alive_at_end.probability) == (1.0, 0.0)

    @pytest.mark.parametrize(("bank_wh", "alive"), [(10, 1.0), (0.5, 0.0)])
    def test_without_a_cell_it_lives_by_the_bank(self, bank_wh, alive):
        bank = {"id": "bank", "cell_Wh": bank_wh, "eff": 1}
        plug = {"phase": "ride", "device": "lamp", "bank": "bank"}
        found = ask(day({"ride": 1}, {"lamp": {"cell_Wh": 0}}, [bank], [plug]), n=3)
        assert found.devices["lamp"].alive_at_end.probability == alive

    def test_one_caller_is_enough(self):
        """Draws of their own: both are off after 5 h with the product of scipy's probabilities."""
        of = day({"flight": 5}, {"phone": {}, "messenger": {}, "camera": {}})
        draws = {"phone": {"flight": [1, 1.5, 3]}, "messenger": {"flight": [1.5, 2, 2.5]}}
        found = ask(of, n=10_000, draws=draws, callers=["phone", "messenger"])
        neither = triang.sf(2, c=0.25, loc=1, scale=2) * triang.sf(2, c=0.5, loc=1.5, scale=1)
        assert abs(found.caller_alive.probability - (1 - neither)) < 4 * found.caller_alive.standard_error

    def test_nobody_named_is_not_nobody_alive(self):
        assert ask(day({"flight": 5}, {"phone": {}}), n=3).caller_alive is None

    def test_an_unknown_caller_is_refused_before_anything_is_drawn(self):
        with pytest.raises(InputFault) as refused:
            forecasts(day({"flight": 5}, {"phone": {}}), ForecastQuery(callers=("fone",)))
        assert refused.value.code == "id.unknown"
        assert refused.value.facts["id"] == "fone"


class TestOffHours:
    def test_of_a_plain_battery_with_an_uncertain_draw(self):
        """10 Wh at L W go off at 10/L h. Quantiles: 10 over those of scipy.stats.triang(1, 1.6, 3), within 4 standard
        errors of a sample quantile, sqrt(q (1 - q) / n) / density."""
        draw = triang(c=0.3, loc=1, scale=2)
        n = 10_000
        found = ask(day({"night": 12}, {"lamp": {}}), n=n, draws={"lamp": {"night": [1, 1.6, 3]}}).devices["lamp"].off
        hours = (found.by_5_pct_h, found.by_50_pct_h, found.by_95_pct_h)
        for q, off_h in zip((0.05, 0.5, 0.95), hours, strict=True):
            watts = draw.ppf(1 - q)
            density = draw.pdf(watts) * watts**2 / 10
            assert abs(off_h - 10 / watts) < 4 * sqrt(q * (1 - q) / n) / density

    def test_none_where_fewer_days_have(self):
        """5 h: off by then on 1 - cdf(2) = .25 of the days (scipy's triang)."""
        found = ask(day({"night": 5}, {"lamp": {}}), draws={"lamp": {"night": [1, 1.5, 3]}}).devices["lamp"].off
        assert triang.sf(2, c=0.25, loc=1, scale=2) == pytest.approx(1 / 3)
        assert found.by_5_pct_h < 5
        assert found.by_50_pct_h is None
        assert found.by_95_pct_h is None


class TestProgress:
    OF = day({"flight": 5}, {"phone": {}})
    QUERY = ForecastQuery(n=2300, seed=5, hours={"flight": (6.0, 9.0, 14.0)}, callers=("phone",), fan_steps=3)

    def test_a_first_estimate_early_then_every_thousand(self):
        assert [each.days for each in forecasts(self.OF, self.QUERY)] == [500, 1000, 2000, 2300]
        assert [each.is_final for each in forecasts(self.OF, self.QUERY)] == [False, False, False, True]
        few = self.QUERY.model_copy(update={"n": 40})
        assert [each.days for each in forecasts(self.OF, few)] == [40]

    def test_the_end_is_the_same_whatever_the_steps(self):
        *_, fine = forecasts(self.OF, self.QUERY, 10, 70)
        assert fine == forecast(self.OF, self.QUERY)
        assert fine != forecast(self.OF, self.QUERY.model_copy(update={"seed": 6}))

    def test_an_estimate_is_the_forecast_of_fewer_days(self):
        first = next(forecasts(self.OF, self.QUERY))
        alone = forecast(self.OF, self.QUERY.model_copy(update={"n": 500}))
        assert (first.devices, first.fan, first.caller_alive) == (alone.devices, alone.fan, alone.caller_alive)

    def test_it_can_be_given_up(self):
        going = forecasts(self.OF, self.QUERY)
        next(going)
        going.close()
        assert list(going) == []

    def test_results_do_not_change(self):
        with pytest.raises(FrozenInstanceError):
            forecast(self.OF, self.QUERY).days = 1

    def test_as_json(self):
        found = forecast(self.OF, self.QUERY)
        shown = json.loads(json.dumps(forecast_json(found)))
        phone = found.devices["phone"]
        assert shown["devices"]["phone"]["off_by_50_pct_h"] == phone.off.by_50_pct_h
        assert shown["devices"]["phone"]["lasts"]["probability"] == phone.lasts.probability
        assert shown["caller_alive"]["within_95_pct"] == list(found.caller_alive.within)
        assert shown["fan"]["devices"]["phone"]["soc_5_pct"] == list(found.fan.devices["phone"].low)
        bare = forecast_json(ask(self.OF, n=2))
        assert (bare["fan"], bare["caller_alive"]) == (None, None)


@quick
@given(raw_days)
def test_without_doubt_it_is_the_single_day(raw):
    of = Day.model_validate(raw)
    sure = {phase.id: (phase.hours,) * 3 for phase in of.phases}
    starts = {cell.id: (cell.start,) * 3 for cell in (*of.devices, *of.banks)}
    found = forecast(of, ForecastQuery(n=3, hours=sure, start=starts, fan_steps=4))
    likely_h = [min(at_h, sum(phase.hours for phase in of.phases)) for at_h in found.fan.likely_h]
    single = simulate(of, likely_h)
    for name, device in single.devices.items():
        off = found.devices[name].off
        assert (off.by_5_pct_h, off.by_50_pct_h, off.by_95_pct_h) == (device.first_off_h,) * 3
        assert found.devices[name].lasts.probability == (device.first_off_h is None)
        if device.samples_soc is not None:
            fan = found.fan.devices[name]
            assert fan.low == fan.middle == fan.high == fan.likely
            assert fan.likely == pytest.approx(device.samples_soc, abs=1e-9)
            assert fan.likely[:: found.fan.steps][1:] == device.phase_end_soc


@quick
@given(
    raw_days,
    st.floats(0, 0.5),
    st.floats(0.5, 2),
    st.integers(1, 60),
)
def test_what_holds_for_every_forecast(raw, min_soc, spread, n):
    of = Day.model_validate(raw)
    hours = {phase.id: (phase.hours / (1 + spread), phase.hours, phase.hours * (1 + spread)) for phase in of.phases}
    ids = [device.id for device in of.devices]
    query = {"n": n, "hours": hours, "callers": ids[:2], "fan_steps": 3}
    found = forecast(of, ForecastQuery.model_validate(query))
    each = found.devices.values()
    assert found.all_last.probability <= min(device.lasts.probability for device in each)
    assert found.caller_alive.probability >= max(found.devices[name].alive_at_end.probability for name in ids[:2])
    for device in each:
        hours_off = [
            at_h for at_h in (device.off.by_5_pct_h, device.off.by_50_pct_h, device.off.by_95_pct_h) if at_h is not None
        ]
        assert hours_off == sorted(hours_off)
        assert 0 <= device.lasts.within[0] <= device.lasts.probability <= device.lasts.within[1] <= 1
    with_cell = {device.id for device in of.devices if device.label_wh}
    asked = forecast(of, ForecastQuery.model_validate(query | {"min_soc": dict.fromkeys(with_cell, min_soc)}))
    assert all(asked.devices[name].lasts.probability <= found.devices[name].lasts.probability for name in ids)


@quick
@given(st.floats(0.2, 2), st.floats(1, 1.5), st.floats(1, 1.5), st.floats(1, 1.5))
def test_more_draw_or_a_longer_day_never_helps_a_plain_battery(watts, more, longer, larger):
    """The same seed draws the same shares of each triangle."""

    def odds(load, stretch, size):
        of = day({"flight": 5}, {"phone": {"cell_Wh": 10 * size}})
        found = ask(
            of,
            n=150,
            hours={"flight": [3 * stretch, 5 * stretch, 9 * stretch]},
            draws={"phone": {"flight": [load, 1.2 * load, 2 * load]}},
        )
        phone = found.devices["phone"]
        return phone.lasts.probability, phone.alive_at_end.probability

    assert odds(watts * more, longer, 1) <= odds(watts, 1, 1) <= odds(watts, 1, larger)


class TestWhereInThePlan:
    @pytest.mark.parametrize(
        ("at_h", "passed"), [(0, 0), (1, 0.5), (2, 1), (2.5, 2.125), (6, 3), (9, 3)]
    )  # worked by hand: phases of 2, 0 and 4 h
    def test_phases_passed(self, at_h, passed):
        assert phases_passed([2.0, 0.0, 4.0], at_h) == passed

    def test_a_device_that_dies_at_one_place_of_the_plan(self):
        """10 Wh, 4 W from the landing on: off 2.5 h into a walk of 5 h on every day, whenever the landing was."""
        of = day({"flight": 3, "walk": 5}, {"phone": {"draw_W": {"flight": 0, "walk": 4.0}}})
        found = ask(of, n=400, hours={"flight": [1, 3, 6]}).devices["phone"]
        assert found.off_at == pytest.approx((1.5, 1.5, 1.5))
        assert found.off.by_95_pct_h - found.off.by_5_pct_h > 2

    def test_where_too_few_days_switch_it_off_there_is_no_place(self):
        assert ask(day({"flight": 3}, {"phone": {}}), n=100).devices["phone"].off_at == (None, None, None)
