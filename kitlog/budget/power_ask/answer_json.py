"""Answers with the keys of the JSON: units in the names, charges and probabilities 0..1."""

from dataclasses import asdict
from functools import singledispatch
from typing import Any

from kitlog.budget.charging.ask import evening_json, storage_json
from kitlog.budget.power.changes.ask import changes_json
from kitlog.budget.power.forecast_json import forecast_json
from kitlog.budget.power.lightest_bank import BankTrial
from kitlog.budget.power.result import BankResult, DayResult, DeviceResult
from kitlog.budget.power_ask import answers


@singledispatch
def answer_json(answer: object) -> dict[str, Any]:
    """For a day `devices` and `banks` by id; for the night its plan; for a query `answer`."""
    raise TypeError(answer)


@answer_json.register
def _(answer: answers.DayCourse) -> dict[str, Any]:
    return result_json(answer.result)


@answer_json.register
def _(answer: answers.LongestPhaseFound) -> dict[str, Any]:
    return {"answer": answer.hours}


@answer_json.register
def _(answer: answers.SmallestBankFound) -> dict[str, Any]:
    return {"answer": answer.energy_wh}


@answer_json.register
def _(answer: answers.LowestStartFound) -> dict[str, Any]:
    return {"answer": answer.start}


@answer_json.register
def _(answer: answers.ChanceFound) -> dict[str, Any]:
    return {"answer": {name: odds.probability for name, odds in answer.odds.items()}}


@answer_json.register
def _(answer: answers.LightestBankFound) -> dict[str, Any]:
    lightest = answer.result.lightest
    return {
        "answer": {
            "lightest": None if lightest is None else _trial_json(lightest),
            "tried": [_trial_json(trial) for trial in answer.result.tried],
        }
    }


@answer_json.register
def _(answer: answers.ForecastFound) -> dict[str, Any]:
    return {"answer": forecast_json(answer.forecast)}


@answer_json.register
def _(answer: answers.ChangesFound) -> dict[str, Any]:
    return {"answer": changes_json(answer.weighed, answer.gains)}


@answer_json.register
def _(answer: answers.EveningFound) -> dict[str, Any]:
    return evening_json(answer.planned, answer.remedies)


@answer_json.register
def _(answer: answers.StorageFound) -> dict[str, Any]:
    return storage_json(answer.steps)


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


def _trial_json(trial: BankTrial) -> dict[str, Any]:
    return {
        "bank": trial.bank,
        "mass_g": trial.mass_g,
        "meets": trial.meets,
        "too_few_ports": trial.too_few_ports,
        "in_hand_Wh": trial.in_hand_wh,
        "targets": {name: _capital_wh(asdict(margin)) for name, margin in trial.margins.items()},
    }


def _capital_wh(fields: dict[str, Any]) -> dict[str, Any]:
    return {name.replace("_wh", "_Wh"): value for name, value in fields.items()}
