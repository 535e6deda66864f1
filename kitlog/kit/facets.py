"""Facets: figures that only some items have. Masses in whole grams, energies in Wh, powers in W."""

from typing import Annotated, Literal, Self

from pydantic import AwareDatetime, Field, StrictBool, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.kinds import Layer, PhaseWay, Place
from kitlog.units.days import Day
from kitlog.units.energy import energy_wh, is_port
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name

LoadG = Annotated[int, Field(ge=0, le=1_000_000)]
Percent = Annotated[float, Field(ge=0, le=100)]
Watts = Annotated[float, Field(ge=0, le=1_000)]
WayGiven = Literal["watts", "current", "hours", "drop"]
"""What a draw is described with."""

CONTRADICTION_SHARE = 0.05
"""Wh may differ from mAh x V by this share of it before the two contradict each other (labels round)."""

MAH_AT_PORT = "mAh beside 5 V"
"""What was given where mAh stand beside the volts of a port: nobody said whether they are the cell's or the port's."""


def contradict(wh: float, mah: float, volts: float) -> bool:
    """Whether Wh and mAh x V differ by more than labels round."""
    product_wh = energy_wh(mah, volts)
    return abs(product_wh - wh) > CONTRADICTION_SHARE * product_wh


def _ordered(low: float | None, high: float | None, what: str) -> None:
    if low is not None and high is not None and low > high:
        raise PydanticCustomError("facet.limits_reversed", "{what}", {"what": what, "low": low, "high": high})


class Wing(Frozen):
    """A wing's certified range and the figures its maker gives.

    Attributes:
        min_g, max_g: certified total mass in flight, wing included, limits inclusive.
        flat_m2, projected_m2: areas.
        trim_kmh, sink_ms: trim speed and least sink, given at a total mass of `figures_g`.
    """

    min_g: LoadG | None = None
    max_g: LoadG | None = None
    flat_m2: Annotated[float, Field(gt=0, le=100)] | None = None
    projected_m2: Annotated[float, Field(gt=0, le=100)] | None = None
    trim_kmh: Annotated[float, Field(gt=0, le=150)] | None = None
    sink_ms: Annotated[float, Field(gt=0, le=20)] | None = None
    figures_g: LoadG | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        _ordered(self.min_g, self.max_g, "wing")
        return self


class Harness(Frozen):
    """A harness: the most that may hang in it (g) and the volume it holds (l)."""

    max_g: LoadG | None = None
    volume_l: Annotated[float, Field(ge=0, le=500)] | None = None


class Reserve(Frozen):
    """A reserve: printed least and greatest load (g), mean sink rate (m/s) given at a load (g)."""

    min_g: LoadG | None = None
    max_g: LoadG | None = None
    sink_ms: Annotated[float, Field(gt=0, le=20)] | None = None
    sink_at_g: LoadG | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        _ordered(self.min_g, self.max_g, "reserve")
        return self


class Share(Frozen):
    """The share of the time (0..1) that a way of use takes in phases of one way of moving."""

    during: PhaseWay
    share: Annotated[float, Field(ge=0, le=1)]


class WayOfUse(Frozen):
    """How a device draws: a name, what is known of the draw, how sure, and when by default.

    What is known is one of four: watts at the cell, a current, how long it lasts, or a drop of charge that the pilot
    has watched. A drop counts before hours, hours before a current, a current before watts; all of them are kept.

    Attributes:
        name: ``on``, ``tracking, screen off``, ``transmit 5 W`` ...
        power_w, low_w, high_w: likely draw at the cell and its range; low or high None = as likely.
        current_ma, at_v: a current, and at which volts it flows: those of the cell, or of the port it was taken at.
        lasts_h: "lasts 9 h like this", from full to switched off.
        from_pct, to_pct, over_h, measured_on: charge shown at both ends of so many hours, unplugged; the day.
        basis: ``measured``, ``maker``, ``starter`` or ``guess``.
        source: where the figure comes from, in the pilot's or the library's words.
        shares: share of the time by way of moving; empty = all the time in the phases usual for the kind.
    """

    name: Name
    power_w: Watts | None = None
    low_w: Watts | None = None
    high_w: Watts | None = None
    current_ma: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    at_v: Annotated[float, Field(gt=0, le=100)] | None = None
    lasts_h: Annotated[float, Field(gt=0, le=10_000)] | None = None
    from_pct: Percent | None = None
    to_pct: Percent | None = None
    over_h: Annotated[float, Field(gt=0, le=10_000)] | None = None
    measured_on: Day | None = None
    basis: Line = "guess"
    source: Line = ""
    shares: tuple[Share, ...] = ()

    @model_validator(mode="after")
    def _check(self) -> Self:
        known = [watts for watts in (self.low_w, self.power_w, self.high_w) if watts is not None]
        if known != sorted(known):
            facts = {"way": self.name, "low": self.low_w, "likely": self.power_w, "high": self.high_w}
            raise PydanticCustomError("way.range_not_rising", "{way}", facts)
        for parts in ((self.from_pct, self.to_pct, self.over_h), (self.current_ma, self.at_v)):
            if 0 < sum(part is not None for part in parts) < len(parts):
                raise PydanticCustomError("way.half_described", "{way}", {"way": self.name})
        if self.described == "":
            raise PydanticCustomError("way.not_described", "{way}", {"way": self.name})
        return self

    @property
    def described(self) -> WayGiven | Literal[""]:
        """What the draw is taken from."""
        if self.over_h is not None:
            return "drop"
        if self.lasts_h is not None:
            return "hours"
        if self.current_ma is not None:
            return "current"
        return "" if self.power_w is None else "watts"


class Battery(Frozen):
    """A cell in an item, and how the item uses it.

    Attributes:
        wh, mah, v: what was given; mAh without V, or beside those of a 5 V port, is not known.
        health_pct: share of the label energy that is left; None = not known, reckoned as 100 and said.
        cutoff_pct: charge at which the device switches itself off at 25 deg C.
        charge_max_w: most input power; None = it is not charged from a bank.
        connector: of its socket and ports, as text: ``USB-C``; of a cable both ends: ``USB-C to micro-USB``.
        on_hand_pct, on_hand_at: charge it was seen with, and when.
        swollen_on: the day it was seen swollen; such a battery is neither charged nor taken.
        place, offset_k, fixed_c: where it lies, or what it is warmer than the air by, or its own temperature.
    """

    wh: Annotated[float, Field(ge=0, le=10_000)] | None = None
    mah: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    v: Annotated[float, Field(gt=0, le=1_000)] | None = None
    health_pct: Percent | None = None
    cutoff_pct: Annotated[float, Field(ge=0, lt=100)] | None = None
    charge_max_w: Watts | None = None
    connector: Line = ""
    on_hand_pct: Percent | None = None
    on_hand_at: AwareDatetime | None = None
    swollen_on: Day | None = None
    place: Place | None = None
    offset_k: Annotated[float, Field(ge=-50, le=50)] | None = None
    fixed_c: Annotated[float, Field(ge=-40, le=60)] | None = None
    ways: tuple[WayOfUse, ...] = ()

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self.wh is None or self.mah is None or self.v is None:
            return self
        if contradict(self.wh, self.mah, self.v):
            facts = {"wh": self.wh, "product_wh": round(energy_wh(self.mah, self.v), 2)}
            raise PydanticCustomError("battery.contradiction", "{wh} {product_wh}", facts)
        return self

    @property
    def energy_wh(self) -> float | None:
        """Label energy in Wh, or None where it is not known: mAh without volts, or beside those of a 5 V port."""
        if self.wh is not None:
            return self.wh
        if self.mah is not None and self.v is not None and not is_port(self.v):
            return energy_wh(self.mah, self.v)
        return None

    @property
    def given(self) -> str:
        """Which figure was given: ``Wh``, ``mAh x V``, ``mAh`` or `MAH_AT_PORT` (not enough), or nothing."""
        if self.wh is not None:
            return "Wh"
        if self.mah is None:
            return ""
        if self.v is None:
            return "mAh"
        return MAH_AT_PORT if is_port(self.v) else "mAh x V"


class Bank(Frozen):
    """What a power bank adds to its battery; powers at the ports, in W; None = not known or no limit.

    Attributes:
        efficiency_pct: energy out at the ports per energy out of the cell.
        rated_mah: mAh at the 5 V of the ports, where that is what its label says; the loss is already inside.
        min_w, off_s: below this output for that many seconds it switches itself off.
        quiescent_w: what it uses itself while on.
    """

    efficiency_pct: Annotated[float, Field(gt=0, le=100)] | None = None
    rated_mah: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    ports: Annotated[int, Field(ge=0, le=100)] | None = None
    port_w: Watts | None = None
    total_w: Watts | None = None
    min_w: Watts | None = None
    off_s: Annotated[float, Field(ge=0, le=86_400)] | None = None
    quiescent_w: Watts | None = None


class ChargerPort(Frozen):
    """A port of a charger: most that it gives in W, its connector, whether a cable hangs fixed on it."""

    power_w: Watts | None = None
    connector: Line = ""
    fixed_cable: StrictBool = False


class Charger(Frozen):
    """What charges at home: its ports, and the most that all of them give together in W; None = no limit."""

    total_w: Watts | None = None
    ports: tuple[ChargerPort, ...] = ()


class Garment(Frozen):
    """Insulation in clo (1 clo = 0.155 m2 K/W), the layer, and the part of the body it covers."""

    clo: Annotated[float, Field(ge=0, le=10)] | None = None
    layer: Layer | None = None
    part: Line = ""


class Vessel(Frozen):
    """What a vessel holds when full, in ml; None = not known."""

    capacity_ml: Annotated[int, Field(ge=0, le=100_000)] | None = None
