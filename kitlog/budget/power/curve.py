"""The one form that every charge and every power of the day has between two events.

    f(t) = f0 + f1 t + sum of q (1 - exp(-rate t)),      t in h from the last event

Linear for constant flow, one exponential for a cell that tapers, and both together for a device that gets what tapering
neighbours leave under a bank's total limit. Between two events every such function of interest rises or falls
throughout, so that its first zero can be found with certainty: in closed form where there is one, else by Newton's
method held inside a shrinking bracket.
"""

from collections.abc import Sequence
from math import expm1, inf, log1p

Term = tuple[float, float]
Terms = Sequence[Term]

_STEPS = 200  # bisection alone needs about 60; Newton about 5


def value(f0: float, f1: float, terms: Terms, at_h: float) -> float:
    """f(at_h)."""
    total = f0 + f1 * at_h
    for amount, rate in terms:
        total -= amount * expm1(-rate * at_h)
    return total


def first_zero(f0: float, f1: float, terms: Terms, until_h: float) -> float:
    """When a falling f reaches 0, or infinity if it does not within until_h. At once if it starts at or under 0."""
    if f0 <= 0.0:
        return 0.0
    if not terms:
        return -f0 / f1 if f1 < 0.0 else inf
    if f1 == 0.0 and len(terms) == 1:
        return _zero_of_one(f0, *terms[0])
    if value(f0, f1, terms, until_h) > 0.0:
        return inf
    return _bracketed(f0, f1, terms, until_h)


def _zero_of_one(f0: float, amount: float, rate: float) -> float:
    """f0 + amount (1 - exp(-rate t)) = 0."""
    return -log1p(f0 / amount) / rate if f0 + amount < 0.0 else inf


def _bracketed(f0: float, f1: float, terms: Terms, until_h: float) -> float:
    low, high, at_h = 0.0, until_h, 0.0
    for _ in range(_STEPS):
        left, slope = f0 + f1 * at_h, f1
        for amount, rate in terms:
            faded = expm1(-rate * at_h)
            left -= amount * faded
            slope += amount * rate * (faded + 1.0)
        if left > 0.0:
            low = at_h
        else:
            high = at_h
        step = at_h - left / slope if slope < 0.0 else inf
        if not low < step < high:
            step = 0.5 * (low + high)
        if not low < step < high or (abs(left) <= 1e-9 * f0 and abs(step - at_h) <= 1e-15 * until_h):
            return step
        at_h = step
    return high
