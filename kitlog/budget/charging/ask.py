"""JSON in, JSON out: an evening or things to be stored; keys with their units."""

from dataclasses import asdict
from typing import Any

from kitlog.budget.charging.evening import Evening
from kitlog.budget.charging.remedies import bottleneck, remedies
from kitlog.budget.charging.result import EveningResult, Remedy
from kitlog.budget.charging.storage import StorageStep, Storing, for_storage
from kitlog.budget.charging.tonight import charge_tonight
from kitlog.budget.power.day import Given
from kitlog.budget.power.reading import read
from kitlog.fault import InputFault
from kitlog.units.strict_json import strict_object


class Request(Given):
    """Exactly one of the two."""

    evening: Evening | None = None
    storage: Storing | None = None


def answer(text: str) -> dict[str, Any]:
    """Answer one JSON object: `{"evening": ...}` or `{"storage": ...}`.

    Raises:
        InputFault: what is wrong with it; codes in `check_evening` and `kitlog.budget.power.checks`; and
            charging.nothing_asked, charging.two_things_asked, without facts.
    """
    request = read(Request, strict_object(text))
    if request.evening is not None and request.storage is not None:
        raise InputFault("charging.two_things_asked")
    if request.storage is not None:
        return storage_json(for_storage(request.storage))
    if request.evening is None:
        raise InputFault("charging.nothing_asked")
    planned = charge_tonight(request.evening)
    return evening_json(planned, remedies(request.evening, planned))


def schema() -> dict[str, Any]:
    """JSON Schema of what `answer` reads."""
    return Request.model_json_schema()


def evening_json(planned: EveningResult, found: tuple[Remedy, ...]) -> dict[str, Any]:
    """The plan with the keys of the JSON."""
    return {
        **_keyed(asdict(planned)),
        "remedies": [_keyed(asdict(remedy)) for remedy in found],
        "bottleneck": bottleneck(found),
    }


def storage_json(steps: tuple[StorageStep, ...]) -> dict[str, Any]:
    """What to do with each thing."""
    return {"things": [asdict(step) for step in steps]}


def _keyed(value: Any) -> Any:
    """Wh keeps its capital in JSON; lists for tuples."""
    if isinstance(value, dict):
        return {key.replace("_wh", "_Wh"): _keyed(each) for key, each in value.items()}
    return [_keyed(each) for each in value] if isinstance(value, list | tuple) else value
