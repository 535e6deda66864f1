"""What a change does to devices and banks beside what it is meant for: harm, and trouble that it ends."""

from collections.abc import Iterator
from dataclasses import dataclass

from kitlog.budget.power.changes.outcome import Outcome

LEAST_H = 1e-6
"""Times nearer than this are the same: a rounding is no harm."""

LEAST_LONGER_H = 1 / 60
"""A device that is off longer by less is not told: hours are shown in minutes."""


@dataclass(frozen=True, slots=True)
class Effect:
    """One thing that one day has, and the other has not, or not so soon.

    Attributes:
        code: `off` (a device goes off), `off_at_end` (a device that was on again by the end is not), `off_longer` (a
            device is off longer in all, though it goes off no sooner), `under` (a device ends under the charge asked
            for), `empty` (a bank runs empty), `asleep` (a bank does not stay awake).
        id: the device or bank.
        case: `likely` or `high`.
        at_h: when, h from the start; None: at the end of the day.
        sooner_h: how much sooner than on the other day; None: there it does not come at all.
        least_soc: `under`: the charge asked for, 0..1; else 0.
        longer_h: `off_at_end`, `off_longer`: how much longer than on the other day it is off in all; else None.
    """

    code: str
    id: str
    case: str
    at_h: float | None
    sooner_h: float | None = None
    longer_h: float | None = None
    least_soc: float = 0.0


def effects(before: Outcome, after: Outcome, case: str, but: frozenset[str] = frozenset()) -> tuple[Effect, ...]:
    """What `after` has for the worse; `but`: devices given up, which cannot be harmed."""
    return (
        *_off(before, after, case, but),
        *_dark(before, after, case, but),
        *_under(before, after, case, but),
        *_banks(before, after, case),
    )


def _off(before: Outcome, after: Outcome, case: str, but: frozenset[str]) -> Iterator[Effect]:
    for name, was_h in before.first_off_h.items():
        is_h = after.first_off_h[name]
        if name not in but and _is_sooner(was_h, is_h):
            yield Effect("off", name, case, is_h, _sooner_h(was_h, is_h))


def _dark(before: Outcome, after: Outcome, case: str, but: frozenset[str]) -> Iterator[Effect]:
    """Of devices that went off before: those that do not come back any more, or that are off longer."""
    for name, was in before.result.devices.items():
        now = after.result.devices[name]
        if name in but or was.first_off_h is None or now.first_off_h is None:
            continue
        longer_h = now.off_h - was.off_h
        if was.on_at_end and not now.on_at_end:
            yield Effect("off_at_end", name, case, None, longer_h=longer_h)
        elif longer_h > LEAST_LONGER_H and not _is_sooner(was.first_off_h, now.first_off_h):
            yield Effect("off_longer", name, case, None, longer_h=longer_h)


def _under(before: Outcome, after: Outcome, case: str, but: frozenset[str]) -> Iterator[Effect]:
    for name, was in before.fares.items():
        now = after.fares[name]
        if name not in but and now.first_off_h is None and was.lasts and not now.lasts:
            yield Effect("under", name, case, None, least_soc=now.least_soc)


def _banks(before: Outcome, after: Outcome, case: str) -> Iterator[Effect]:
    for name, now in after.banks.items():
        was = before.banks.get(name)
        if was is not None and _is_sooner(was.empty_h, now.empty_h):
            yield Effect("empty", name, case, now.empty_h, _sooner_h(was.empty_h, now.empty_h))
        if name in after.sleepy and name not in before.sleepy:
            yield Effect("asleep", name, case, now.auto_off_h)


def _is_sooner(was_h: float | None, is_h: float | None) -> bool:
    return is_h is not None and (was_h is None or is_h < was_h - LEAST_H)


def _sooner_h(was_h: float | None, is_h: float | None) -> float | None:
    return None if was_h is None or is_h is None else was_h - is_h
