"""Energies are watt-hours inside."""


def energy_wh(capacity_mah: float, voltage_v: float) -> float:
    """Energy in Wh of a capacity in mAh at a voltage in V: C x U / 1000."""
    return capacity_mah * voltage_v / 1000
