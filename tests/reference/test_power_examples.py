"""Worked examples of power, by hand or printed elsewhere; the source stands beside each."""

from math import exp

import pytest
from scipy.stats import triang

from kitlog.budget.power.chance import chance
from kitlog.budget.power.cold import usable_share
from kitlog.budget.power.day import TEMP_TABLE, Day
from kitlog.budget.power.question import Chance
from kitlog.budget.power.simulate import simulate


def lamp_on(bank, watts, hours=200):
    """A thing without a cell on a bank: it runs for as long as the bank gives."""
    return Day.model_validate(
        {
            "phases": [{"id": "night", "hours": hours, "ambient_C": 25}],
            "devices": [{"id": "lamp", "cell_Wh": 0, "draw_W": {"night": watts}}],
            "banks": [{"id": "bank", **bank}],
            "plugs": [{"phase": "night", "device": "lamp", "bank": "bank"}],
        }
    )


def radio(modes_ma, capacity_mah, volts=7.4):
    """Currents become powers with one voltage; the run time does not depend on which."""
    modes = [{"W": milliamps / 1000 * volts, "share": share} for milliamps, share in modes_ma]
    return Day.model_validate(
        {
            "phases": [{"id": "day", "hours": 100, "ambient_C": 25}],
            "devices": [
                {"id": "radio", "cell_mAh": capacity_mah, "nominal_V": volts, "draw_W": {"day": {"modes": modes}}}
            ],
        }
    )


def runtime(day):
    (device,) = simulate(day).devices.values()
    return device.first_off_h


@pytest.mark.parametrize(
    ("bank", "port_wh"),
    [
        # by hand: 37 Wh x 0.85
        ({"cell_Wh": 37, "eff": 0.85}, 31.45),
        # moruipower.com: 10,000 mAh at 3.7 V, losses of 20 %: 5,920 mAh at 5 V = 29.6 Wh
        ({"cell_mAh": 10_000, "nominal_V": 3.7, "eff": 0.80}, 5.920 * 5),
        # several sellers' pages: 10,000 mAh at 3.7 V before losses: 7,400 mAh at 5 V
        ({"cell_mAh": 10_000, "nominal_V": 3.7, "eff": 1}, 7.400 * 5),
        # printed on one 10,000 mAh bank: rated 6,500 mAh at 5 V, that is an efficiency of .878 at 3.7 V
        ({"cell_mAh": 10_000, "nominal_V": 3.7, "eff": 0.8784}, 6.500 * 5),
    ],
)
def test_what_a_bank_gives_at_the_port(bank, port_wh):
    result = simulate(lamp_on(bank, 2.0)).banks["bank"]
    assert result.delivered_wh == pytest.approx(port_wh, abs=0.01)
    assert result.empty_h == pytest.approx(port_wh / 2.0, abs=0.005)


@pytest.mark.parametrize(
    ("milliamp_hours", "volts", "watt_hours"),
    [(5_000, 3.6, 18.00), (10_000, 3.85, 38.50), (26_800, 3.6, 96.48), (26_800, 3.7, 99.16), (26_800, 3.85, 103.18)],
)
def test_energy_from_milliamp_hours(milliamp_hours, volts, watt_hours):
    """38.5 and 96.48 Wh are also printed on an article at hive.blog; the rest is mAh x V / 1000."""
    day = lamp_on({"cell_mAh": milliamp_hours, "nominal_V": volts}, 1.0)
    assert day.banks[0].label_wh == pytest.approx(watt_hours, abs=0.005)


@pytest.mark.parametrize(
    ("modes_ma", "capacity_mah", "hours"),
    [
        # ailunce.com, battery usage time: 1,500 mAh, standby 40 mA; printed 37.5 h
        ([(40, 1.0)], 1500, 37.5),
        # the same page: receive 140 mA a tenth of the time; printed 30 h
        ([(140, 0.1), (40, 0.9)], 1500, 30.0),
        # the same page: transmit 1.4 A 1 min, receive 6 min, standby 53 min of the hour; printed 20.6 h
        ([(1400, 1 / 60), (140, 6 / 60), (40, 53 / 60)], 1500, 20.64),
        # 5/5/90 (hytera-europe.com, wildtalk.com) with the same radio: 113 mA
        ([(1400, 0.05), (140, 0.05), (40, 0.90)], 1500, 13.27),
        # n1fd.org: 2.6 Ah at .135 A
        ([(135, 1.0)], 2600, 19.26),
        # quiz-forge on question T4A09 of the US amateur examination: 20 Ah, 10 A a fifth of the time, else 2 A; 5.6 h
        ([(10_000, 0.2), (2_000, 0.8)], 20_000, 5.56),
    ],
)
def test_how_long_a_radio_lasts(modes_ma, capacity_mah, hours):
    assert runtime(radio(modes_ma, capacity_mah)) == pytest.approx(hours, abs=0.005)


@pytest.mark.parametrize(("temp_c", "share"), [(-5, 0.775), (10, 0.88), (12.5, 0.90)])
def test_lines_between_the_points_of_a_cell_sheet(temp_c, share):
    """Samsung SDI INR18650-15L, specification clause 7.5: 60, 75, 80, 100 % at -20, -10, 0, 25 deg C; by hand between."""
    assert usable_share([(-20, 0.60), (-10, 0.75), (0, 0.80), (25, 1.0), (60, 1.0)], temp_c) == pytest.approx(share)


def test_the_starter_table_keeps_to_the_least_values_of_cell_sheets():
    """-20 C >= 60 % and 0 C >= 85 %: cell and pack sheets (lopezirrigation-landscaping.com, jiaxininc.com)."""
    assert usable_share(TEMP_TABLE, -20) == 0.60
    assert usable_share(TEMP_TABLE, 0) == 0.85
    assert usable_share(TEMP_TABLE, 25) == usable_share(TEMP_TABLE, 40) == 1.0
    assert usable_share(TEMP_TABLE, -40) == 0.60


def test_usable_energy_of_an_old_cold_bank():
    """By hand: 37 Wh x health .9 x cold .8 x efficiency .85 = 22.644 Wh; with a tenth kept back 20.38."""
    bank = {"cell_Wh": 37, "health": 0.9, "eff": 0.85, "temp_table": [[-10, 0.8]]}
    delivered_wh = simulate(lamp_on(bank, 1.0)).banks["bank"].delivered_wh
    assert delivered_wh == pytest.approx(22.644)
    assert 0.9 * delivered_wh == pytest.approx(20.38, abs=0.001)


def test_charging_above_the_knee_fades_by_an_exponential():
    """By hand: 12 Wh from 50 %, 6 W, efficiency .9, knee .8: knee at 2/3 h, then 1 - .2 exp(-2.25 t)."""
    day = Day.model_validate(
        {
            "phases": [{"id": "ride", "hours": 2, "ambient_C": 25}],
            "devices": [{"id": "cam", "cell_Wh": 12, "start": 0.5, "charge_max_W": 6}],
            "banks": [{"id": "car", "cell_Wh": None}],
            "plugs": [{"phase": "ride", "device": "cam", "bank": "car"}],
        }
    )
    samples = simulate(day, [1 / 3, 2 / 3, 1, 2]).devices["cam"].samples_soc
    assert samples == pytest.approx((0.65, 0.8, 1 - 0.2 * exp(-2.25 / 3), 1 - 0.2 * exp(-3.0)))


def test_a_cap_hides_the_knee():
    """By hand: cap 4 W, load 1 W, charger 6 W, knee .8: constant to max(.8, 1 - 3 x .2 / 6) = .9, at .4 x 12 / 2.7 h."""
    day = Day.model_validate(
        {
            "phases": [{"id": "ride", "hours": 3, "ambient_C": 25}],
            "devices": [
                {
                    "id": "cam", "cell_Wh": 12, "start": 0.5, "charge_max_W": 6,
                    "draw_W": {"ride": 1}, "input_limit_W": 4,
                }
            ],
            "banks": [{"id": "car", "cell_Wh": None}],
            "plugs": [{"phase": "ride", "device": "cam", "bank": "car"}],
        }
    )  # fmt: skip
    at_h = 0.4 * 12 / 2.7
    samples = simulate(day, [at_h / 2, at_h, at_h + 0.5]).devices["cam"].samples_soc
    assert samples == pytest.approx((0.7, 0.9, 1 - 0.1 * exp(-2.25 * 0.5)))


def test_chance_of_lasting_a_flight_of_uncertain_length():
    """Triangular (3, 5, 8), enough for 6 h: 1 - (8-6)^2 / ((8-3)(8-5)) = .7333; the same from scipy.stats.triang."""
    expected = triang.cdf(6, c=(5 - 3) / (8 - 3), loc=3, scale=8 - 3)
    assert expected == pytest.approx(0.7333, abs=5e-5)
    day = Day.model_validate(
        {
            "phases": [{"id": "flight", "hours": 5, "ambient_C": 25}],
            "devices": [{"id": "vario", "cell_Wh": 6, "draw_W": {"flight": 1}}],
        }
    )
    odds = chance(day, Chance(n=20_000, hours={"flight": (3, 5, 8)}))["vario"]
    assert abs(odds.probability - expected) < 4 * odds.standard_error
    assert odds.standard_error == pytest.approx((expected * (1 - expected) / 20_000) ** 0.5, rel=0.02)
