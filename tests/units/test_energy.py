"""Energies of labels."""

import pytest

from kitlog.units.energy import energy_wh


@pytest.mark.parametrize(
    ("capacity_mah", "voltage_v", "expected_wh"),
    [
        # Printed on sold cells, as reported in articles on power banks: 38.5 Wh and 96.48 Wh.
        (10_000, 3.85, 38.5),
        (26_800, 3.6, 96.48),
        # Definition of the watt-hour, by hand: the 100 Wh limit of airlines is crossed between these two.
        (26_800, 3.7, 99.16),
        (26_800, 3.85, 103.18),
        (0, 3.7, 0),
    ],
)
def test_capacity_times_voltage(capacity_mah: float, voltage_v: float, expected_wh: float) -> None:
    assert energy_wh(capacity_mah, voltage_v) == pytest.approx(expected_wh, abs=1e-9)
