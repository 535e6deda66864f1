"""A forecast with the keys of the JSON."""

from typing import Any

from kitlog.budget.power.chance import Odds
from kitlog.budget.power.fan import LaneFan
from kitlog.budget.power.forecast import DeviceForecast, Forecast


def forecast_json(forecast: Forecast) -> dict[str, Any]:
    """Probabilities with their standard errors and 95 % bounds; hours; charges of the fan, 0..1."""
    fan = forecast.fan
    return {
        "days": forecast.days,
        "devices": {name: _device_json(device) for name, device in forecast.devices.items()},
        "all_last": _odds_json(forecast.all_last),
        "caller_alive": None if forecast.caller_alive is None else _odds_json(forecast.caller_alive),
        "fan": None
        if fan is None
        else {
            "days": fan.days,
            "steps": fan.steps,
            "likely_h": list(fan.likely_h),
            "devices": {name: _lane_json(lane) for name, lane in fan.devices.items()},
            "banks": {name: _lane_json(lane) for name, lane in fan.banks.items()},
        },
    }


def _device_json(device: DeviceForecast) -> dict[str, Any]:
    return {
        "lasts": _odds_json(device.lasts),
        "alive_at_end": _odds_json(device.alive_at_end),
        "off_by_5_pct_h": device.off.by_5_pct_h,
        "off_by_50_pct_h": device.off.by_50_pct_h,
        "off_by_95_pct_h": device.off.by_95_pct_h,
    }


def _odds_json(odds: Odds) -> dict[str, Any]:
    return {
        "probability": odds.probability,
        "standard_error": odds.standard_error,
        "within_95_pct": list(odds.within),
    }


def _lane_json(lane: LaneFan) -> dict[str, list[float]]:
    return {
        "soc_5_pct": list(lane.low),
        "soc_50_pct": list(lane.middle),
        "soc_95_pct": list(lane.high),
        "soc_likely": list(lane.likely),
    }
