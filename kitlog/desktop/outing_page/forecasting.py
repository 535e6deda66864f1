"""The forecast of the outing being worked on, drawn beside the window; that of another plan is never shown."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast import EVERY_DAYS, FIRST_DAYS, Estimates, Forecast
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.desktop.background import Background, Tell
from kitlog.desktop.turns import Turns
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_question import day_forecasts, forecast_query

SLICE_DAYS = 25
"""Days between two looks whether the window wants its turn: about 2 ms."""

Asked = tuple[Day, ForecastQuery]
"""All that a forecast depends on: the same again needs no other days."""


class Forecasting(QObject):
    """Draws days for one question at a time.

    Attributes:
        refined: there is a better estimate in `latest`.
        latest: of the plan that was asked for last; None before the first estimate.
    """

    refined = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.latest: Forecast | None = None
        self._asked: Asked | None = None
        self._drawn: list[Forecast] = []
        self._background, self._turns = Background(self), Turns(self)
        self._background.going.connect(lambda _seconds, _share: self._look())
        self._background.done.connect(lambda _result: self._look())
        self._background.done.connect(lambda _result: self._turns.end())
        self._background.broke.connect(self._turns.end)

    @property
    def busy(self) -> bool:
        """Whether days are being drawn."""
        return self._background.busy

    def want(self, assessment: Assessment, library: Library) -> None:
        """Draw days for an assessment; those of another plan are dropped at once.

        Raises:
            InputFault: the day contradicts itself.
        """
        asked = _question(assessment, library)
        if asked != self._asked:
            self.drop()
            self._asked = asked
        if self._background.busy or (self.latest and self.latest.is_final):
            return
        estimates = day_forecasts(assessment, library, first=SLICE_DAYS, every=SLICE_DAYS)
        if estimates is not None:
            self._drawn = []
            self._turns.begin()
            self._background.ask(_work(estimates, self._drawn, self._turns))

    def pause(self) -> None:
        """Draw no more for now; what there is stays."""
        self._background.stop()
        self._turns.end()

    def drop(self) -> None:
        """Draw no more, and forget what was drawn."""
        self.pause()
        self._drawn, self._asked, self.latest = [], None, None

    def _look(self) -> None:
        if not self._drawn:
            return
        newest = self._drawn[-1]
        if self.latest is None or newest.days > self.latest.days:
            self.latest = newest
            self.refined.emit()


def _question(assessment: Assessment, library: Library) -> Asked | None:
    day = assessment.power.planned
    if day is None:
        return None
    items = [line.item for line in assessment.lines]
    return day, forecast_query(assessment.outing, assessment.power, items, library)


def _work(estimates: Estimates, drawn: list[Forecast], turns: Turns) -> Callable[[Tell], None]:
    """The work of the thread: estimates go into the list, the iterator is closed as soon as nobody wants them."""

    def work(tell: Tell) -> None:
        try:
            for estimate in estimates:
                if estimate.is_final or estimate.days == FIRST_DAYS or estimate.days % EVERY_DAYS == 0:
                    drawn.append(estimate)
                tell(estimate.days / estimate.of)
                turns.wait()
        finally:
            estimates.close()

    return work
