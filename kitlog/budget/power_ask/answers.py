"""What each question gets: the figures, beside what was asked, for JSON and for words."""

from collections.abc import Mapping
from dataclasses import dataclass

from kitlog.budget.charging.result import EveningResult, Remedy
from kitlog.budget.charging.storage import StorageStep
from kitlog.budget.power.chance import Odds
from kitlog.budget.power.changes.odds import OddsGain, PlannedOdds
from kitlog.budget.power.changes.weigh import Planned, Weighed
from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast import Forecast
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.budget.power.lightest_bank import LightestBank, LightestResult
from kitlog.budget.power.question import Chance, LongestPhase, LowestStart, SmallestBank
from kitlog.budget.power.result import DayResult


@dataclass(frozen=True, slots=True)
class DayCourse:
    """How the day goes; sample_h: the times asked for."""

    day: Day
    sample_h: tuple[float, ...]
    result: DayResult


@dataclass(frozen=True, slots=True)
class LongestPhaseFound:
    """The longest last phase, h; None: longer than the horizon."""

    query: LongestPhase
    hours: float | None


@dataclass(frozen=True, slots=True)
class SmallestBankFound:
    """The least label energy, Wh; eff: energy at the ports for each unit of it; None: not even the largest will do."""

    query: SmallestBank
    eff: float
    energy_wh: float | None


@dataclass(frozen=True, slots=True)
class LowestStartFound:
    """The least state of charge at the start, 0..1; None: not even full will do."""

    query: LowestStart
    start: float | None


@dataclass(frozen=True, slots=True)
class LightestBankFound:
    """The lightest bank that does, and all that were tried."""

    query: LightestBank
    result: LightestResult


@dataclass(frozen=True, slots=True)
class ChanceFound:
    """The odds by device; `query`: with the charge asked for at the end."""

    query: Chance
    odds: Mapping[str, Odds]


@dataclass(frozen=True, slots=True)
class ForecastFound:
    """The forecast of all days drawn."""

    query: ForecastQuery
    forecast: Forecast


@dataclass(frozen=True, slots=True)
class ChangesFound:
    """The changes that help, best first.

    Attributes:
        gains: of each, in the same order; empty: no chance was asked for.
        odds: the chance as planned; None: none was asked for.
    """

    planned: Planned
    weighed: tuple[Weighed, ...]
    gains: tuple[OddsGain, ...]
    odds: PlannedOdds | None = None

    @property
    def seldom(self) -> frozenset[str]:
        """Devices that last on too few of the days drawn."""
        return self.odds.seldom if self.odds else frozenset()

    @property
    def troubled(self) -> frozenset[str]:
        """Devices that do not last in a case, or too seldom."""
        return self.planned.trouble | self.seldom


@dataclass(frozen=True, slots=True)
class EveningFound:
    """The plan of the night, and what would help where it falls short."""

    planned: EveningResult
    remedies: tuple[Remedy, ...]


@dataclass(frozen=True, slots=True)
class StorageFound:
    """What to do with each thing."""

    steps: tuple[StorageStep, ...]


Answer = (
    DayCourse
    | LongestPhaseFound
    | SmallestBankFound
    | LowestStartFound
    | LightestBankFound
    | ChanceFound
    | ForecastFound
    | ChangesFound
    | EveningFound
    | StorageFound
)
