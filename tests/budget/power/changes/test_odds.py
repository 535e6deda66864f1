"""How much oftener a day lasts with a change, on the same days drawn."""

from math import sqrt

import pytest

from kitlog.budget.power.chance import chance
from kitlog.budget.power.changes import edits
from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.changes.generate import candidates
from kitlog.budget.power.changes.given import ToHand
from kitlog.budget.power.changes.odds import odds, query_after
from kitlog.budget.power.day import Bank, Day
from kitlog.budget.power.question import Chance, Target

PHONE = {"id": "phone", "cell_Wh": 6, "draw_W": {"flight": 1.0}}
RADIO = {"id": "radio", "cell_Wh": 12, "draw_W": {"flight": 1.0}}
DAY = Day.model_validate(
    {
        "phases": [{"id": "flight", "hours": 5, "ambient_C": 25}],
        "devices": [PHONE, RADIO],
        "banks": [{"id": "bank", "cell_Wh": 5}],
    }
)
QUERY = Chance.model_validate({"hours": {"flight": [3, 5, 8]}, "seed": 7})


def less(watts):
    def make(day):
        return edits.used_otherwise(day, "phone", {"flight": watts})

    return Candidate("use_less", ("phone",), make)


NOTHING = Candidate("use_less", ("phone",), lambda day: day)


def test_the_triangle_by_hand():
    """6 Wh at 1 W over (3, 5, 8) h: P = 1 - (8-6)^2 / ((8-3)(8-5)) = .7333 (the handbook's distribution function)."""
    (gain,) = odds(DAY, [less(0.75)], QUERY, [], days=4_000)
    assert gain.before.probability == pytest.approx(0.7333, abs=4 * sqrt(0.7333 * 0.2667 / 4_000))
    assert gain.after.probability == 1  # 6 Wh / .75 W = 8 h
    assert gain.gain == pytest.approx(gain.after.probability - gain.before.probability)


def test_the_same_days_as_the_chance_that_is_asked_for_plainly():
    (gain,) = odds(DAY, [NOTHING], QUERY, [])
    plain = chance(DAY, QUERY.model_copy(update={"n": 500}))
    assert gain.before == plain["phone"]  # the radio always lasts
    assert gain.devices["phone"] == (plain["phone"], plain["phone"])
    assert (gain.gain, gain.gain_error) == (0, 0)


def test_numbers_in_common_narrow_the_difference():
    (gain,) = odds(DAY, [less(0.95)], QUERY, [])
    apart = sqrt(gain.before.standard_error**2 + gain.after.standard_error**2)
    assert gain.gain > 0
    assert gain.gain_error < 0.7 * apart


def test_what_is_given_up_is_not_asked():
    draws = {"phone": {"flight": [0.5, 1, 2]}}
    off = Candidate("leave_off", ("phone",), lambda day: edits.left_off(day, "phone"), gives_up=frozenset({"phone"}))
    (gain,) = odds(
        DAY, [off], Chance.model_validate({"draws": draws}), [Target(device="phone"), Target(device="radio")]
    )
    assert gain.before.probability < 1
    assert gain.after.probability == 1
    assert set(gain.devices) == {"radio"}


class TestTheQuestionOfAChangedDay:
    QUERY = Chance.model_validate(
        {
            "draws": {"phone": {"flight": [0.5, 1, 2]}, "radio": {"flight": [0.8, 1, 1.2]}},
            "start": {"phone": [0.8, 0.9, 1], "bank": [0.5, 0.9, 1]},
        }
    )

    def after(self, changed):
        return query_after(self.QUERY, DAY, changed)

    def test_a_draw_keeps_its_doubt_in_proportion(self):
        asked = self.after(less(0.4).make(DAY))
        assert asked.draws["phone"]["flight"] == pytest.approx((0.2, 0.4, 0.8))
        assert asked.draws["radio"] == self.QUERY.draws["radio"]

    def test_what_is_off_draws_nothing_for_certain(self):
        assert self.after(edits.left_off(DAY, "phone")).draws["phone"]["flight"] == (0, 0, 0)

    def test_another_bank_is_charged_as_it_says(self):
        other = edits.bank_instead(DAY, "bank", Bank(id="other", cell_Wh=20, start=0.7))
        assert self.after(other).start == {"phone": (0.8, 0.9, 1), "other": (0.7, 0.7, 0.7)}

    def test_full_is_certain(self):
        part = DAY.model_copy(update={"devices": tuple(d.model_copy(update={"start": 0.9}) for d in DAY.devices)})
        asked = query_after(self.QUERY, part, edits.started_full(part, "phone"))
        assert asked.start["phone"] == (1, 1, 1)
        assert asked.start["bank"] == (0.5, 0.9, 1)

    def test_all_other_figures_meet_the_same_draws(self):
        """Whatever is changed about the phone, the radio fares the same on each day drawn."""
        query = self.QUERY.model_copy(update={"draws": {**self.QUERY.draws, "radio": {"flight": (1.0, 2.4, 4.0)}}})
        hand = ToHand.model_validate(
            {"may_be_off": ["phone"], "spare_banks": [{"bank": {"id": "spare", "cell_Wh": 5}}]}
        )
        made = [less(0.4), *candidates(DAY, hand, {"phone"})]
        gains = odds(DAY, made, query, [])
        assert len(gains) >= 2
        assert 0.2 < gains[0].devices["radio"][0].probability < 0.8
        assert {gain.devices["radio"] for gain in gains} == {(gains[0].devices["radio"][0],) * 2}
