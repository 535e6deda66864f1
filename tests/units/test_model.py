"""The base of every model."""

import math

import pytest
from pydantic import ValidationError

from kitlog.units.model import Frozen


class Sample(Frozen):
    mass_g: float = 0


def test_unknown_keys_and_what_is_no_figure_are_refused() -> None:
    for raw in ({"mass_kg": 1}, {"mass_g": math.nan}, {"mass_g": math.inf}):
        with pytest.raises(ValidationError):
            Sample.model_validate(raw)


def test_a_model_does_not_change() -> None:
    with pytest.raises(ValidationError):
        Sample().mass_g = 1
