"""Storage charge: 40 to 60 % (check values 2.4; trade, any.storage)."""

import pytest

from kitlog.budget.charging.storage import KEPT_AFTER_A_YEAR, Stored, Storing, for_storage
from kitlog.fault import InputFault


def step(season_over=False, **keys):
    thing = Stored.model_validate({"id": "bank", **keys})
    (only,) = for_storage(Storing(things=(thing,), season_over=season_over))
    return only


@pytest.mark.parametrize(
    ("start", "act", "to_soc"),
    [
        (0.39, "charge", 0.5),
        (0.40, "leave", None),
        (0.60, "leave", None),
        (0.61, "use_down", 0.5),
        (0.0, "charge", 0.5),
    ],
)
def test_after_the_season(start, act, to_soc):
    found = step(season_over=True, start=start)
    assert (found.act, found.to_soc, found.from_soc) == (act, to_soc, start)
    assert found.source


@pytest.mark.parametrize(("days", "act"), [(41, "leave"), (42, "use_down"), (400, "use_down")])
def test_unused_for_six_weeks(days, act):
    assert step(start=1.0, unused_days=days).act == act


def test_not_known_is_not_good():
    assert step(start=0.5).act == "not_known"
    assert step(season_over=True).act == "not_known"
    assert step(unused_days=60).why == "charge_not_known"


def test_a_swollen_cell_is_neither_charged_nor_left():
    assert step(start=0.1, season_over=True, swollen=True).act == "dispose"


def test_the_table_of_losses_is_that_of_the_check_values():
    """Check values 2.4: one year at 0, 25, 40 C: 98, 96, 85 % stored at 40 %; 94, 80, 65 % stored full."""
    assert KEPT_AFTER_A_YEAR == ((0, 0.98, 0.94), (25, 0.96, 0.80), (40, 0.85, 0.65))


def test_one_thing_twice_is_refused():
    thing = Stored(id="bank")
    with pytest.raises(InputFault) as caught:
        for_storage(Storing(things=(thing, thing)))
    assert caught.value.code == "id.repeated"
