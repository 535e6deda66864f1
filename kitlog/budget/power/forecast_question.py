"""What a forecast is asked beyond the chance that each device lasts."""

from typing import Annotated

from pydantic import Field

from kitlog.budget.power.day import Name
from kitlog.budget.power.question import Chance


class ForecastQuery(Chance):
    """The figures of `Chance`, and what is to be told of the days drawn.

    Attributes:
        callers: devices that can call for help (phone, messenger, radio); one of them alive at the end is enough.
        fan_steps: points of the picture's fan in each phase; None: no fan.
    """

    callers: Annotated[tuple[Name, ...], Field(strict=False)] = ()
    fan_steps: Annotated[int, Field(ge=1, le=100)] | None = 8
