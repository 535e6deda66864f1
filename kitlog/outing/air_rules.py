"""Rules for batteries as baggage by air: limits in Wh, counts, the year they are of, and where they come from."""

from typing import Annotated

from pydantic import Field

from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line

EnergyWh = Annotated[float, Field(gt=0, le=10_000)]
Count = Annotated[int, Field(ge=0, le=1_000)]


class AirRules(Frozen):
    """Limits for lithium-ion batteries as baggage, one person.

    Attributes:
        edition: year of the rules; source: where they come from.
        free_wh: up to this they go without asking; approval_wh: up to this with the airline's approval, above not.
        most_with_approval: spares and banks between the two limits.
        most_spares, most_devices: spare batteries, and devices with one.
        most_banks: power banks, from the day `banks_from`; before it they count as spare batteries.
    """

    edition: Line
    free_wh: EnergyWh
    approval_wh: EnergyWh
    most_with_approval: Count
    most_spares: Count
    most_devices: Count
    most_banks: Count
    banks_from: Day
    source: Line
    banks_source: Line
