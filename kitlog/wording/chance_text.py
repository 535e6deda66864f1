"""Chances as words: a share of days, never rounded to certain or to never, and how sure the drawing makes it."""

from math import ceil, floor

from kitlog.budget.power.chance import Odds
from kitlog.wording.figures import NO_BREAK, number_text, with_unit
from kitlog.wording.translate import _

COARSE_PCT = 0.5
"""From this standard error on, decimals say nothing."""


def odds_text(odds: Odds) -> str:
    """On how many days of a hundred it holds.

    Where it held on all the days drawn, or on none, the figure is the bound that holds 95 times of 100 (Wilson, 1927):
    a finite number of days never shows that something is certain.
    """
    if odds.probability == 1.0:
        return f">{with_unit(least_pct(odds), '%', 1)}"
    if odds.probability == 0.0:
        return f"<{with_unit(most_pct(odds), '%', 1)}"
    decimals = _decimals(odds)
    least = 1.0 if decimals == 0 else 0.1
    return with_unit(min(max(100 * odds.probability, least), 100 - least), "%", decimals)


def least_pct(odds: Odds) -> float:
    """The lower bound that holds 95 times of 100, rounded down to .1 %."""
    return floor(1000 * odds.within[0]) / 10


def most_pct(odds: Odds) -> float:
    """The upper bound that holds 95 times of 100, rounded up to .1 %."""
    return ceil(1000 * odds.within[1]) / 10


def error_text(odds: Odds) -> str:
    """The standard error in per cent, with its sign; empty where all days agree."""
    if odds.standard_error == 0.0:
        return ""
    decimals = _decimals(odds)
    least = 1.0 if decimals == 0 else 0.1
    return f"±{NO_BREAK}{number_text(max(100 * odds.standard_error, least), decimals)}"


def odds_sentence(odds: Odds) -> str:
    """The chance with its error in brackets, or that all days drawn agree."""
    error = error_text(odds)
    if error:
        return f"{odds_text(odds)} ({error})"
    return _("{share} (all {n} days agree)").format(share=odds_text(odds), n=number_text(odds.days))


def _decimals(odds: Odds) -> int:
    return 0 if 100 * odds.standard_error >= COARSE_PCT else 1
