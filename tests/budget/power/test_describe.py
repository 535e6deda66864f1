"""Draws from what a pilot knows. Published and worked figures, and days run with what came out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.budget.power.day import Day
from kitlog.budget.power.describe import (
    GAUGE_BEND_PCT,
    Basis,
    DrawRange,
    draw_from_current,
    draw_from_drop,
    draw_from_runtime,
    good_drop_pct,
    guessed_draw,
    mean_by_name,
    mean_draw,
)
from kitlog.budget.power.describe_capacity import cell_from_mah
from kitlog.budget.power.describe_presets import RADIO_5_5_90, RADIO_5_25_70
from kitlog.budget.power.simulate import simulate
from kitlog.fault import InputFault

CURRENTS = {name: draw_from_current(ma, 7.4) for name, ma in (("transmit", 1400), ("receive", 140), ("standby", 40))}
"""The published radio: ailunce.com, battery-usage-time."""


def after(hours, watts, cell_wh, **device):
    """A device that draws so many W for so long, at 25 deg C."""
    day = Day.model_validate(
        {
            "phases": [{"id": "use", "hours": hours, "ambient_C": 25}],
            "devices": [{"id": "it", "cell_Wh": cell_wh, "draw_W": {"use": watts}, **device}],
        }
    )
    return simulate(day).devices["it"]


class TestCurrent:
    @pytest.mark.parametrize(
        ("current_ma", "at_v", "watts"),
        [
            (1400, 7.4, 10.36),  # transmitting at 5 W: ailunce.com, battery-usage-time
            (140, 7.4, 1.036),  # receiving, the same set
            (40, 7.4, 0.296),  # standing by, the same set
            (2100, 7.5, 15.75),  # transmitting: Motorola XTS 5000 manual, VHF specifications
            (500, 5, 2.5),  # USB 2.0 port (sabrent.com)
            (30, 5, 0.15),  # 30 mA at 5 V: the small instrument that does not keep a bank awake (by hand)
        ],
    )
    def test_published_figures(self, current_ma, at_v, watts):
        assert draw_from_current(current_ma, at_v).triple == pytest.approx((watts,) * 3)

    def test_reports_by_satellite(self):
        """1.1 to 1.3 mAh a report at 3.7 V each 10 min (NAL Shout ts manual, appendix C): .025 to .03 W."""
        assert draw_from_current(1.1 * 6, 3.7).likely_w == pytest.approx(0.025, abs=0.001)
        assert draw_from_current(1.3 * 6, 3.7).likely_w == pytest.approx(0.03, abs=0.0015)


class TestRuntime:
    @pytest.mark.parametrize(
        ("lasts_h", "cell_wh", "watts", "within"),
        [
            (4, 15.7, 3.9, 0.03),  # phone, screen on: 15.7 Wh in 4 to 6 h (Xewli, Papyrus)
            (6, 15.7, 2.6, 0.03),
            (8.6, 1.4 * 7.2, 1.17, 0.005),  # radio at 1 W and at 3 W: EFJohnson 7780 manual, section 5
            (7.5, 1.4 * 7.2, 1.34, 0.005),
            (5, 16, 3.2, 0.005),  # heated gloves: Ororo help page
            (7, 16, 2.3, 0.02),
            (7, 32, 4.6, 0.03),
            (11, 6.5, 0.6, 0.01),  # hand-held satellite navigation on two AA cells, 11 and 22 h
            (22, 6.5, 0.3, 0.005),
        ],
    )
    def test_published_run_times(self, lasts_h, cell_wh, watts, within):
        assert draw_from_runtime(lasts_h, cell_wh).likely_w == pytest.approx(watts, abs=within)

    @pytest.mark.parametrize(
        ("lasts_h", "half_step_h"), [(9, 0.5), (4.5, 0.25), (2.25, 0.125), (8.6, 0.05), (1.85, 0.025)]
    )
    def test_the_range_is_what_rounds_to_the_stated_hours(self, lasts_h, half_step_h):
        draw = draw_from_runtime(lasts_h, 18)
        assert draw.low_w == pytest.approx(18 / (lasts_h + half_step_h))
        assert draw.high_w == pytest.approx(18 / (lasts_h - half_step_h))
        assert draw.basis is Basis.WORKED_BACK

    def test_the_step_can_be_said(self):
        assert draw_from_runtime(20, 10, rounding_h=5).triple == pytest.approx((10 / 22.5, 0.5, 10 / 17.5))
        assert draw_from_runtime(20, 10, rounding_h=0).error == 0

    @given(st.floats(0.5, 100), st.floats(1, 100), st.floats(0.5, 1), st.floats(0, 0.3))
    def test_a_day_with_it_ends_when_it_was_said_to(self, lasts_h, cell_wh, health, cutoff):
        draw = draw_from_runtime(lasts_h, cell_wh, health=health, cutoff=cutoff)
        device = after(lasts_h + 1, draw.likely_w, cell_wh, health=health, cutoff=cutoff)
        assert device.first_off_h == pytest.approx(lasts_h)

    @pytest.mark.parametrize(
        ("figures", "field"),
        [
            ({"lasts_h": 0, "cell_wh": 10}, "lasts_h"),
            ({"lasts_h": float("nan"), "cell_wh": 10}, "lasts_h"),
            ({"lasts_h": 9, "cell_wh": 0}, "cell_Wh"),
            ({"lasts_h": 9, "cell_wh": 10, "health": 0}, "health"),
            ({"lasts_h": 9, "cell_wh": 10, "health": 1.1}, "health"),
            ({"lasts_h": 9, "cell_wh": 10, "cutoff": 1}, "cutoff"),
            ({"lasts_h": 9, "cell_wh": 10, "rounding_h": 10}, "rounding_h"),
        ],
    )
    def test_refused(self, figures, field):
        with pytest.raises(InputFault) as refused:
            draw_from_runtime(**figures)
        assert refused.value.code in {"number.out_of_range", "number.not_finite"}
        assert refused.value.facts["field"] == field


class TestDrop:
    def test_by_hand(self):
        """From 100 to 63 % in 4.5 h: .37 x 15.57 Wh / 4.5 h = 1.280 W; a point more or less is 1 in 37."""
        draw = draw_from_drop(100, 63, 4.5, 17.3, health=0.9)
        assert draw.triple == pytest.approx((0.36 * 15.57 / 4.5, 1.2802, 0.38 * 15.57 / 4.5), abs=1e-5)
        assert draw.error == pytest.approx(1 / 37)
        assert draw.basis is Basis.MEASURED

    @given(st.floats(0.2, 5), st.floats(0.5, 12), st.floats(5, 50), st.floats(0.5, 1), st.floats(0.3, 1))
    def test_what_a_whole_point_gauge_shows_of_a_day_holds_the_true_draw(self, watts, hours, cell_wh, health, start):
        """The charge at the end, from the simulation, rounded as a gauge does."""
        device = after(hours, watts, cell_wh, health=health, start=start)
        from_pct, to_pct = round(100 * start), round(100 * device.soc_end)
        if device.first_off_h is None and from_pct - to_pct > 2:
            draw = draw_from_drop(from_pct, to_pct, hours, cell_wh, health=health)
            assert draw.low_w - 1e-9 <= watts <= draw.high_w + 1e-9

    def test_the_bend_of_the_gauge_widens_it(self):
        draw = draw_from_drop(100, 63, 4.5, 17.3, bend_pct=GAUGE_BEND_PCT)
        assert draw.error == pytest.approx(4.1 / 37)

    @pytest.mark.parametrize(("from_pct", "to_pct"), [(100, 98), (80, 80)])
    def test_a_drop_that_says_nothing_is_refused(self, from_pct, to_pct):
        with pytest.raises(InputFault) as refused:
            draw_from_drop(from_pct, to_pct, 4.5, 17.3)
        assert refused.value.code == "draw.drop_too_small"
        assert refused.value.facts == {"from_pct": from_pct, "to_pct": to_pct, "least_pct": 2, "good_pct": 10}

    def test_a_charge_that_rose_is_no_drop(self):
        with pytest.raises(InputFault) as refused:
            draw_from_drop(60, 90, 4.5, 17.3)
        assert (refused.value.code, refused.value.facts) == ("draw.charge_rose", {"from_pct": 60, "to_pct": 90})

    def test_from_which_drop_on_it_is_good(self):
        assert good_drop_pct() == 10
        assert draw_from_drop(100, 90, 1, 10).error == pytest.approx(0.1)
        assert draw_from_drop(100, 89, 1, 10).error < 0.1
        assert draw_from_drop(100, 97, 1, 10).error == pytest.approx(1 / 3)

    @pytest.mark.parametrize("figures", [(101, 50, 1, 10), (100, -1, 1, 10), (100, 50, 0, 10), (100, 50, 1, 0)])
    def test_refused(self, figures):
        with pytest.raises(InputFault) as refused:
            draw_from_drop(*figures)
        assert refused.value.code == "number.out_of_range"


class TestMean:
    def runs_h(self, shares):
        """1,500 mAh at 7.4 V with these ways of use: hours until it goes off, from the simulation."""
        draw = mean_by_name(CURRENTS, shares, device="radio", phase="use")
        return after(99, draw.likely_w, cell_from_mah(1500, 7.4).likely_wh).first_off_h

    @pytest.mark.parametrize(
        ("shares", "hours"),
        [
            ({"standby": 1}, 37.5),  # ailunce.com, battery-usage-time
            ({"receive": 0.1, "standby": 0.9}, 30.0),  # the same page
            ({"transmit": 1 / 60, "receive": 6 / 60, "standby": 53 / 60}, 20.64),  # the same page, printed 20.6
            (RADIO_5_5_90.shares, 13.27),  # worked from the same currents: 113 mA
        ],
    )
    def test_the_published_radio(self, shares, hours):
        assert self.runs_h(shares) == pytest.approx(hours, abs=0.005)

    def test_presets(self):
        """Mean draws worked from the published currents: .8362 W, and about 1.0 W on a busy channel."""
        mean = mean_by_name(CURRENTS, RADIO_5_5_90.shares, device="radio", phase="use")
        assert mean.likely_w == pytest.approx(0.8362)
        busy = mean_by_name(CURRENTS, RADIO_5_25_70.shares, device="radio", phase="use")
        assert busy.likely_w == pytest.approx(0.984, abs=0.001)
        for preset in (RADIO_5_5_90, RADIO_5_25_70):
            assert sum(preset.shares.values()) == pytest.approx(1, abs=1e-12)
            assert preset.source

    def test_the_exam_question(self):
        """20 Ah, 10 A transmitting 20 % and 2 A receiving 80 % of the time: 5.56 h (quiz-forge on exam question T4A09)."""
        mean = mean_draw(
            [(draw_from_current(10_000, 12), 0.2), (draw_from_current(2_000, 12), 0.8)], device="r", phase=""
        )
        assert 20 * 12 / mean.likely_w == pytest.approx(5.56, abs=0.005)

    def test_a_mean_rests_on_the_weakest_of_its_ways(self):
        measured, guess = DrawRange(1, 2, 3, Basis.MEASURED), guessed_draw(0, 1, 9)
        mixed = mean_draw([(measured, 0.5), (guess, 0.5)], device="phone", phase="flight")
        assert (mixed.triple, mixed.basis) == ((0.5, 1.5, 6), Basis.GUESSED)
        alone = mean_draw([(measured, 1.0), (guess, 0.0)], device="phone", phase="flight")
        assert alone.basis is Basis.MEASURED

    @pytest.mark.parametrize("shares", [(0.5, 0.4), (0.6, 0.5), (0.0, 0.0)])
    def test_shares_that_do_not_add_up(self, shares):
        with pytest.raises(InputFault) as refused:
            mean_draw([(guessed_draw(1, 1, 1), share) for share in shares], device="radio", phase="flight")
        assert refused.value.code == "draw.shares"
        assert refused.value.facts == {"id": "radio", "phase": "flight", "total": pytest.approx(sum(shares))}

    def test_a_way_without_a_draw(self):
        with pytest.raises(InputFault) as refused:
            mean_by_name({"transmit": guessed_draw(1, 1, 1)}, RADIO_5_5_90.shares, device="radio", phase="flight")
        assert (refused.value.code, refused.value.facts["field"]) == ("field.missing", "receive")

    def test_a_guess_in_the_wrong_order(self):
        with pytest.raises(InputFault) as refused:
            guessed_draw(2, 1, 3)
        assert refused.value.code == "query.not_in_order"
