"""Weight from JSON; sums by hand. Tolerances: common practice, no source (scales, makers' figures, guesses)."""

import json
import math
from typing import Any

import pytest

from kitlog.budget.weight_ask import answer, schema
from kitlog.fault import InputFault


def ask(**fields: Any) -> dict[str, Any]:
    return answer(json.dumps(fields))


def test_sums_by_hand() -> None:
    mass = ask(
        pilot_g=74_000,
        loads=[
            {"name": "Wing", "kind": "wing", "mass_g": 5_000, "mass_source": "luggage scale", "zone": "overhead"},
            {"name": "Bladder", "kind": "vessel", "mass_g": 100, "content_ml": 2_000, "zone": "back pocket"},
            {"name": "Bars", "kind": "food", "n": 4, "mass_g": 50, "mass_source": "kitchen scale"},
            {"name": "Dry clothes", "mass_g": 900, "zone": "left in the car"},
        ],
    )["mass"]
    assert mass["take_off_g"] == 74_000 + 5_000 + 100 + 2_000 + 200
    assert mass["landing_g"] == 74_000 + 5_000 + 100
    assert mass["by_zone"] == {"overhead": 5_000, "back pocket": 2_100}
    # 1,000 g of body, 50 of the luggage scale, a quarter of 100 guessed, 50 of water, 5 of the kitchen scale
    parts = (1_000, 50, 25, 50, 5)
    assert mass["tolerance_g"] == pytest.approx(math.sqrt(sum(part**2 for part in parts)))
    assert mass["tolerance_sum_g"] == sum(parts)


def test_limits() -> None:
    said = ask(
        pilot_g=80_000,
        pilot_tolerance_g=500,
        loads=[{"name": "Wing", "kind": "wing", "mass_g": 5_000, "mass_source": "kitchen scale"}],
        wing={"min_kg": 70, "max_kg": 90},
        harness={"max_kg": 80.2},
        reserve={"min_kg": 60, "max_kg": 84},
    )
    assert said["wing"]["position_pct"] == 75
    assert said["wing"]["fit"] == "inside"
    assert said["harness"] == {"hanging_g": 80_000, "fit": "inside, tolerance reaches over"}
    assert said["reserve"]["fit_with_wing"] == "outside"
    assert said["reserve"]["fit_without_wing"] == "inside"
    assert said["reserve"]["below_min"] is False


def test_what_is_not_known_stays_not_known() -> None:
    said = ask(loads=[{"name": "Wing", "kind": "wing", "mass_g": 5_000}], wing={"min_kg": 70, "max_kg": 90})
    assert said["mass"]["take_off_g"] is None
    assert said["mass"]["unknown"] == ["pilot"]
    assert said["wing"] == {
        "fit": "not known",
        "landing_fit": "not known",
        "position_pct": None,
        "landing_position_pct": None,
    }
    no_wing = ask(pilot_g=70_000, harness={"max_kg": 100})
    assert no_wing["harness"] == {"hanging_g": None, "fit": "not known"}


def test_the_figure_that_would_sharpen_most() -> None:
    said = ask(pilot_g=74_000, loads=[{"name": "Harness", "kind": "harness", "mass_g": 4_000}])
    assert said["mass"]["sharpen"]["name"] == "Harness"
    # a guess of 4 kg is good to 1,000 g, the kitchen scale to 20 g
    assert said["mass"]["sharpen"]["by_g"] == pytest.approx(math.hypot(1_000, 1_000) - math.hypot(1_000, 20))


def test_reversed_limits_are_refused_by_field() -> None:
    with pytest.raises(InputFault) as caught:
        ask(reserve={"min_kg": 90, "max_kg": 60})
    assert (caught.value.code, caught.value.facts["field"]) == ("facet.limits_reversed", "reserve")


def test_schema_names_the_inputs() -> None:
    assert set(schema()["properties"]) == {"pilot_g", "pilot_tolerance_g", "loads", "wing", "harness", "reserve"}
