"""Refuses a question that its day cannot answer. The codes stand in `kitlog.budget.power.checks`."""

from collections.abc import Iterable, Mapping, Sequence
from functools import singledispatch

from kitlog.budget.power.checks import refuse_unknown
from kitlog.budget.power.day import Day
from kitlog.budget.power.question import Chance, LongestPhase, LowestStart, SmallestBank, Target
from kitlog.fault import InputFault

_ROUNDING_H = 1e-9  # the hours of the phases and the sample are added up in different orders


def check_samples(day: Day, sample_h: Iterable[float]) -> None:
    """Nothing is known after the end of the day."""
    end_h = sum(phase.hours for phase in day.phases)
    for time_h in sample_h:
        if time_h > end_h + _ROUNDING_H:
            raise InputFault("sample.after_end", value=time_h, limit=end_h)


@singledispatch
def check_query(query: object, _day: Day) -> None:
    """Refuse ids that the day does not have, and what the question cannot mean."""
    raise TypeError(query)


@check_query.register
def _(query: LongestPhase, day: Day) -> None:
    phases = [phase.id for phase in day.phases]
    _known(query.phase, "phase", phases, "query.phase")
    later = [phase.id for phase in day.phases[phases.index(query.phase) + 1 :] if phase.hours > 0.0]
    if later:
        raise InputFault("query.phase_not_last", id=query.phase, last=later[-1])
    _check_targets([Target(device=query.device, min_soc=query.min_soc)], day, "query.device")


@check_query.register
def _(query: SmallestBank, day: Day) -> None:
    _known(query.bank, "bank", [bank.id for bank in day.banks], "query.bank")
    _check_targets(query.targets, day, "query.targets")


@check_query.register
def _(query: LowestStart, day: Day) -> None:
    _known(query.device, "device", [device.id for device in day.devices], "query.device")
    if _has_no_cell(query.device, day):
        raise InputFault("query.no_cell", id=query.device, field="query.device")
    _check_targets(query.targets, day, "query.targets")


@check_query.register
def _(query: Chance, day: Day) -> None:
    phases = [phase.id for phase in day.phases]
    devices = [device.id for device in day.devices]
    _check_triples(query.hours, "phase", phases, "query.hours")
    for device, draws in query.draws.items():
        _known(device, "device", devices, "query.draws")
        _check_triples(draws, "phase", phases, f"query.draws.{device}")
    _check_triples(query.start, "device", devices + [bank.id for bank in day.banks], "query.start")
    if isinstance(query.min_soc, Mapping):
        targets = [Target(device=device, min_soc=soc) for device, soc in query.min_soc.items()]
        _check_targets(targets, day, "query.min_soc")


def _known(name: str, part: str, names: Sequence[str], field: str) -> None:
    if name not in names:
        refuse_unknown(name, part, field)


def _check_targets(targets: Iterable[Target], day: Day, field: str) -> None:
    devices = [device.id for device in day.devices]
    for target in targets:
        _known(target.device, "device", devices, field)
        if target.min_soc > 0.0 and _has_no_cell(target.device, day):
            raise InputFault("query.no_cell", id=target.device, field=field)


def _has_no_cell(name: str, day: Day) -> bool:
    return any(device.id == name and not (device.label_wh or 0.0) * device.health for device in day.devices)


def _check_triples(
    triples: Mapping[str, tuple[float, float, float]], part: str, names: Sequence[str], field: str
) -> None:
    for name, (low, likely, high) in triples.items():
        _known(name, part, names, field)
        if not low <= likely <= high:
            raise InputFault("query.not_in_order", id=name, field=field, value=[low, likely, high])
