"""The charge that a phone shows at the landing."""

from collections.abc import Iterable, Sequence

from kitlog.budget.power.result import DayResult
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.outing import Phase


def last_flight(phases: Sequence[Phase]) -> int | None:
    """Which phase ends with the landing; None: there is no flight."""
    flights = [i for i, phase in enumerate(phases) if phase.way is PhaseWay.FLIGHT]
    return flights[-1] if flights else None


def landing_pct(phones: Iterable[str], day: DayResult | None, phases: Sequence[Phase], case: str) -> float:
    """The charge, %, of the fullest of some phones at the landing; 0 if all are dark then, or there is no flight.

    Args:
        phones: ids.
        day: the outing's day as it went.
        phases: of the outing.
        case: the field of the durations that were played, ``likely_h`` or ``high_h``.
    """
    landing = last_flight(phases)
    if landing is None:
        return 0.0
    end_h = sum(getattr(phase, case) for phase in phases[: landing + 1])
    return max((_charge_pct(phone, day, landing, end_h) for phone in phones), default=0.0)


def _charge_pct(phone: str, day: DayResult | None, landing: int, end_h: float) -> float:
    """Charge at the end of a phase, 0 if it is dark then; a phone that draws nothing stays full."""
    if day is None:
        return 0.0
    if phone not in day.devices:
        return 100.0
    result = day.devices[phone]
    dark = any(span.from_h < end_h <= span.to_h for span in day.device_courses[phone].off)
    soc = result.phase_end_soc[landing] if result.phase_end_soc else 0.0
    return 0.0 if dark else 100 * soc
