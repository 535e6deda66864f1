"""Shares of the time that are commonly planned with. Data, with their source; a pilot's own shares take their place."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class SharePreset:
    """Way of use -> share of the time (they add up to 1), and where that comes from."""

    name: str
    shares: Mapping[str, float]
    source: str


RADIO_5_5_90 = SharePreset(
    "5/5/90",
    MappingProxyType({"transmit": 0.05, "receive": 0.05, "standby": 0.90}),
    "the usual duty cycle of two-way radios: hytera-europe.com, two-way radios and battery life; wildtalk.com",
)
RADIO_5_25_70 = SharePreset(
    "5/25/70",
    MappingProxyType({"transmit": 0.05, "receive": 0.25, "standby": 0.70}),
    "a busy channel, as at a competition or a school: practice, no source",
)
