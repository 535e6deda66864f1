"""The most that the model takes, read off the model."""

from math import inf

import pytest
from pydantic import ValidationError

from kitlog.files.table.limits import most
from kitlog.files.table.targets import TARGETS
from kitlog.kit.facets import Battery, Wing
from kitlog.kit.item import MAX_PIECE_G, MAX_QUANTITY, Item


def limit(name):
    return most(TARGETS[name])


def test_limits_are_those_of_the_model():
    assert limit("mass_g") == MAX_PIECE_G
    assert limit("quantity") == MAX_QUANTITY
    assert limit("draw_w") == limit("bank_port_w") == 1000
    assert limit("name") == limit("battery") == limit("made_on") == inf


@pytest.mark.parametrize(
    ("name", "make"),
    [
        ("wing_flat_m2", lambda value: Wing(flat_m2=value)),
        ("wing_max_kg", lambda value: Wing(max_g=int(value))),
        ("wing_range", lambda value: Wing(max_g=int(value))),
        ("mass_all", lambda value: Wing(max_g=int(value))),
        ("battery_wh", lambda value: Battery(wh=value)),
        ("battery_health_pct", lambda value: Battery(health_pct=value)),
        ("volume_ml", lambda value: Item(id="a", name="a", volume_ml=int(value))),
        ("value", lambda value: Item(id="a", name="a", value=value)),
    ],
)
def test_the_model_takes_the_most_and_no_more(name, make):
    make(limit(name))
    with pytest.raises(ValidationError):
        make(limit(name) + 1)
