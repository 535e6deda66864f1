"""JSON in, JSON out: what `kitlog budget power FILE` prints."""

from functools import singledispatch
from typing import Any

from kitlog.budget.power.chance import chance
from kitlog.budget.power.day import Day
from kitlog.budget.power.longest_phase import longest_phase
from kitlog.budget.power.lowest_start import lowest_start
from kitlog.budget.power.question import Chance, LongestPhase, LowestStart, Request, SmallestBank
from kitlog.budget.power.reading import read_request
from kitlog.budget.power.result import BankResult, DayResult, DeviceResult
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power.smallest_bank import smallest_bank


def answer(text: str) -> dict[str, Any]:
    """Answer one JSON object: `{"day": ..., "sample_h": [...]}` or `{"day": ..., "query": {...}}`.

    Returns:
        For `sample_h`: `devices` and `banks` by id. For a `query`: `answer`, a number or None; for a chance a
        probability by device.

    Raises:
        InputFault: what is wrong with it; codes in `kitlog.budget.power.checks`.
    """
    request = read_request(text)
    if request.query is None:
        return result_json(simulate(request.day, request.sample_h or ()))
    return {"answer": _answer(request.query, request.day)}


def schema() -> dict[str, Any]:
    """JSON Schema of what `answer` reads."""
    return Request.model_json_schema(by_alias=True)


def result_json(result: DayResult) -> dict[str, Any]:
    """The end of a day with the keys of the JSON; courses are left to pictures."""
    return {
        "devices": {name: _device_json(device) for name, device in result.devices.items()},
        "banks": {name: _bank_json(bank) for name, bank in result.banks.items()},
    }


def _device_json(device: DeviceResult) -> dict[str, Any]:
    return {
        "first_off_h": device.first_off_h,
        "off_h": device.off_h,
        "on_at_end": device.on_at_end,
        "soc_end": device.soc_end,
        "phase_end_soc": _listed(device.phase_end_soc),
        "margin_Wh": device.margin_wh,
        "margin_pct": device.margin_pct,
        "hours_more": device.hours_more,
        "samples_soc": _listed(device.samples_soc),
    }


def _listed(socs: tuple[float, ...] | None) -> list[float] | None:
    return None if socs is None else list(socs)


def _bank_json(bank: BankResult) -> dict[str, Any]:
    return {
        "auto_off_h": bank.auto_off_h,
        "empty_h": bank.empty_h,
        "state_end": bank.state_end,
        "delivered_Wh": bank.delivered_wh,
        "soc_end": bank.soc_end,
        "in_hand_Wh": bank.in_hand_wh,
    }


@singledispatch
def _answer(query: object, _day: Day) -> float | dict[str, float] | None:
    raise TypeError(query)


@_answer.register
def _(query: LongestPhase, day: Day) -> float | None:
    return longest_phase(day, query)


@_answer.register
def _(query: SmallestBank, day: Day) -> float | None:
    return smallest_bank(day, query)


@_answer.register
def _(query: LowestStart, day: Day) -> float | None:
    return lowest_start(day, query)


@_answer.register
def _(query: Chance, day: Day) -> dict[str, float]:
    return {name: odds.probability for name, odds in chance(day, query).items()}
