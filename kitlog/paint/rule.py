"""A rule in kg: which stretch it shows, where a mass lies on it, which marks it carries."""

import math
from dataclasses import dataclass

STEPS_KG = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
AROUND_KG = 3.0
"""What a rule shows on both sides of the range, so that *out* has a place."""


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule from `low_kg` to `high_kg` over `left` to `right` in pixels."""

    low_kg: float
    high_kg: float
    left: float
    right: float

    def x(self, kg: float) -> float:
        """Where a mass lies, in pixels."""
        return self.left + (kg - self.low_kg) / (self.high_kg - self.low_kg) * (self.right - self.left)

    def marks(self, least_px: float, least_kg: int = 1) -> list[int]:
        """Whole kg to mark, at least `least_px` and `least_kg` apart; none where the widest step is too close."""
        per_kg = (self.right - self.left) / (self.high_kg - self.low_kg)
        step = next((step for step in STEPS_KG if step >= least_kg and step * per_kg >= least_px), None)
        if step is None:
            return []
        first = math.ceil(self.low_kg / step - 1e-9)
        return [number * step for number in range(first, math.floor(self.high_kg / step + 1e-9) + 1)]


def rule_for(limits: tuple[float, float] | None, masses_kg: list[float], left: float, right: float) -> Rule:
    """The rule that shows the range with some room on both sides, and all masses."""
    edges = [*(limits or ()), *masses_kg] or [0.0]
    around = max(AROUND_KG, (max(limits) - min(limits)) * 0.15) if limits else AROUND_KG
    low = min([edge - 1.5 for edge in edges] + [limit - around for limit in limits or ()])
    high = max([edge + 1.5 for edge in edges] + [limit + around for limit in limits or ()])
    return Rule(low, high, left, right)
