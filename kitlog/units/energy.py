"""Energies are watt-hours inside."""

PORT_V = (4.5, 5.5)
"""Volts of a 5 V port lie above the first and up to the second: 4.75 to 5.25 V of a dedicated one (USB Battery Charging
1.2), up to 5.5 V (from memory: USB Type-C). No lithium cell has them (3.6 to 3.85 V nominal, 4.2 V full, two 7.2 V);
three alkaline cells have 4.5 V."""


def energy_wh(capacity_mah: float, voltage_v: float) -> float:
    """Energy in Wh of a capacity in mAh at a voltage in V: C x U / 1000."""
    return capacity_mah * voltage_v / 1000


def is_port(volts: float | None) -> bool:
    """Whether volts are those of a 5 V port: mAh beside them may be the cell's or the port's."""
    return volts is not None and PORT_V[0] < volts <= PORT_V[1]
