"""Longest phase, smallest and lightest bank, lowest start, as lines: rounded so that what is said will itself do."""

from collections.abc import Iterator
from math import ceil, floor

from kitlog.budget.power.lightest_bank import BankTrial, TargetMargin
from kitlog.budget.power.walk_down import STEPS
from kitlog.budget.power_ask.answers import LightestBankFound, LongestPhaseFound, LowestStartFound, SmallestBankFound
from kitlog.wording.columns import paragraph, table
from kitlog.wording.figures import hours_text, mass_text, percent_text, with_unit
from kitlog.wording.translate import _

_ROUNDING = 1e-6
"""A figure so near to a round one is that one."""


def longest_phase_lines(found: LongestPhaseFound) -> Iterator[str]:
    """The longest last phase, in whole minutes, never more than it may be."""
    query = found.query
    asked = _("with {device} on").format(device=query.device)
    if query.min_soc:
        least = percent_text(100 * query.min_soc, 1)
        asked = _("with {device} on and at {least} or more").format(device=query.device, least=least)
    text = _("Longest {phase} {asked}: {hours}")
    if found.hours is None:
        text = _("{phase} {asked} may last longer than {horizon}")
    elif found.hours == 0.0:
        text = _("{phase} {asked} cannot even begin")
    whole_h = down_to_minutes(found.hours or 0.0)
    horizon = hours_text(query.horizon_h)
    yield from paragraph(text.format(phase=query.phase, asked=asked, hours=hours_text(whole_h), horizon=horizon) + ".")


def down_to_minutes(hours: float) -> float:
    """Hours in whole minutes, never more than they are, but for a rounding error."""
    return floor(60 * hours + _ROUNDING) / 60


def smallest_bank_lines(found: SmallestBankFound) -> Iterator[str]:
    """The least energy, rounded up, in the cell and at the ports."""
    most, bank = with_unit(found.query.max_Wh, "Wh", 1), found.query.bank
    if found.energy_wh is None:
        yield from paragraph(_("Not even {most} in {bank} will do.").format(most=most, bank=bank))
    elif found.energy_wh == 0.0:
        yield from paragraph(_("Nothing is needed of {bank}.").format(bank=bank))
    else:
        energy_wh = rounded_up(found.energy_wh, 100)
        text = _("Smallest {bank} that will do: {cell} in the cell, {port} at its ports; so will all up to {most}.")
        cell, port = with_unit(energy_wh, "Wh", 2), with_unit(energy_wh * found.eff, "Wh", 2)
        yield from paragraph(text.format(bank=bank, cell=cell, port=port, most=most))
    yield from _grid(with_unit(found.query.max_Wh / STEPS, "Wh", 2))


def lowest_start_lines(found: LowestStartFound) -> Iterator[str]:
    """The least charge, rounded up."""
    device = found.query.device
    if found.start is None:
        yield from paragraph(_("Not even a full {device} will do.").format(device=device))
    elif found.start == 0.0:
        yield from paragraph(_("Any charge of {device} at the start will do.").format(device=device))
    else:
        start = percent_text(rounded_up(100 * found.start, 10), 1)
        text = _("{device} has to start at {start} or more; from there on every start will do.")
        yield from paragraph(text.format(device=device, start=start))
    yield from _grid(percent_text(100 / STEPS, 1))


def rounded_up(figure: float, parts: int) -> float:
    """A figure rounded up to one of so many parts of its unit, but for a rounding error."""
    return ceil(figure * parts - _ROUNDING) / parts


def _grid(step: str) -> Iterator[str]:
    text = _("Looked at from the largest down in steps of {step}, finer where the course of the day changes.")
    yield from paragraph(text.format(step=step))


def lightest_bank_lines(found: LightestBankFound) -> Iterator[str]:
    """The lightest, and all that were tried."""
    lightest = found.result.lightest
    if lightest is None:
        yield _("None of them will do.")
    else:
        text = _("Lightest that will do: {bank}, {mass}.")
        yield from paragraph(text.format(bank=_name(lightest), mass=mass_text(lightest.mass_g)))
    rows = [(_name(trial), mass_text(trial.mass_g), _trial(trial)) for trial in found.result.tried]
    yield from table(rows, (False, True, False))


def _name(trial: BankTrial) -> str:
    return _("no bank") if trial.bank is None else trial.bank


def _trial(trial: BankTrial) -> str:
    if trial.too_few_ports:
        return _("too few ports")
    if not trial.meets:
        return "; ".join(_short(name, margin) for name, margin in trial.margins.items() if not margin.met)
    if trial.in_hand_wh is None:
        return _("will do")
    return _("will do, {energy} left at its ports").format(energy=with_unit(trial.in_hand_wh, "Wh", 1))


def _short(name: str, margin: TargetMargin) -> str:
    if margin.first_off_h is not None:
        return _("{device} goes off at {at}").format(device=name, at=hours_text(margin.first_off_h))
    short = percent_text(-100 * (margin.soc_over or 0.0), 1)
    return _("{device} ends {short} too low").format(device=name, short=short)
