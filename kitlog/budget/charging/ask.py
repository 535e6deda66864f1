"""The plan of a night, and what to do with stored cells, with the keys of the JSON; units are in the names."""

from dataclasses import asdict
from typing import Any

from kitlog.budget.charging.remedies import bottleneck
from kitlog.budget.charging.result import EveningResult, Remedy
from kitlog.budget.charging.storage import StorageStep


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
    """Wh and W keep their capitals in JSON; lists for tuples."""
    if isinstance(value, dict):
        return {key.replace("_wh", "_Wh").replace("power_w", "power_W"): _keyed(each) for key, each in value.items()}
    return [_keyed(each) for each in value] if isinstance(value, list | tuple) else value
