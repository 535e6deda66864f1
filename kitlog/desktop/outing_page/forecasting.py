"""The forecast of the outing being worked on, drawn beside the window; that of another plan is never shown."""

from collections.abc import Generator

from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast import EVERY_DAYS, FIRST_DAYS, Forecast
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.desktop.outing_page.beside import Beside
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_question import day_forecasts, forecast_query

SLICE_DAYS = 25
"""Days between two looks whether the window wants its turn: about 2 ms."""


class Forecasting(Beside[Forecast]):
    """Draws days for one plan at a time."""

    def want(self, assessment: Assessment, library: Library) -> None:
        """Draw days for an assessment.

        Raises:
            InputFault: the day contradicts itself.
        """
        self.ask(_question(assessment, library), lambda: _steps(assessment, library))

    def is_better(self, answer: Forecast) -> bool:
        """More days than before: they are drawn from the first one again after a pause."""
        return self.latest is None or answer.days > self.latest.days


def _question(assessment: Assessment, library: Library) -> tuple[Day, ForecastQuery] | None:
    """All that a forecast depends on."""
    day = assessment.power.planned
    if day is None:
        return None
    items = [line.item for line in assessment.lines]
    return day, forecast_query(assessment.outing, assessment.power, items, library)


def _steps(assessment: Assessment, library: Library) -> Generator[Forecast | None, None, None] | None:
    estimates = day_forecasts(assessment, library, first=SLICE_DAYS, every=SLICE_DAYS)
    if estimates is None:
        return None
    return (one if one.is_final or one.days == FIRST_DAYS or one.days % EVERY_DAYS == 0 else None for one in estimates)
