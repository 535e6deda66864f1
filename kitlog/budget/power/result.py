"""What a power calculation gives back. Times in h from the start of the day, charge 0..1, energy in Wh."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class DeviceResult:
    """How a device fares. A device without a cell has no charge: soc, margin_pct and hours_more are None, margin_wh 0.

    Attributes:
        first_off_h: when it first goes off; None: never. A later restart does not clear it.
        off_h: how long it is off in all.
        soc_end, phase_end_soc, samples_soc: at the end, after each phase, at the times asked for.
        margin_wh: usable above the floor of the last phase; 0 if off.
        margin_pct: the same as a share of all that could be usable at that temperature.
        hours_more: how long it would go on unplugged, with the load of the last phase; None without a load.
        reserve_wh: a tenth of its energy if its cell is below 0 deg C in some phase, else 0: what to keep in hand,
            because the rule for cold reads too high after a cold spell.
    """

    first_off_h: float | None
    off_h: float
    on_at_end: bool
    soc_end: float | None
    phase_end_soc: tuple[float, ...] | None
    margin_wh: float
    margin_pct: float | None
    hours_more: float | None
    samples_soc: tuple[float, ...] | None
    reserve_wh: float


@dataclass(frozen=True, slots=True)
class BankResult:
    """How a bank fares. A supply without end has neither soc_end nor in_hand_wh.

    Attributes:
        auto_off_h, empty_h: the first time, or None.
        state_end: off, on, auto_off or empty.
        delivered_wh: at the ports.
        soc_end: charge at the end. A bank without cell energy (0 Wh, or health 0) keeps the figure it started with,
            and is empty at its first connection.
        in_hand_wh: what the ports could still give; the bank's own consumption is not taken off.
    """

    auto_off_h: float | None
    empty_h: float | None
    state_end: str
    delivered_wh: float
    soc_end: float | None
    in_hand_wh: float | None


@dataclass(frozen=True, slots=True)
class Span:
    """From when to when something holds: a bank's id (plugged), a state, or nothing more to say."""

    from_h: float
    to_h: float
    what: str = ""


@dataclass(frozen=True, slots=True)
class FloorSpan:
    """A phase with a duration, and the charge that cold and cut-off lock in it."""

    phase: str
    from_h: float
    to_h: float
    floor_soc: float


@dataclass(frozen=True, slots=True)
class Course:
    """What a picture of one device or bank needs.

    Attributes:
        points: (h, soc) at every event and within bends, near enough together to be joined by straight lines (0.0005 of
            soc); empty for a device without a cell and a supply without end.
        floors: by phase.
        off: spans in which a device is off. A bank has none.
        plugged: spans in which a device is plugged, with the id of the bank. A bank has none.
        states: spans of a bank's states. A device has none.
    """

    points: tuple[tuple[float, float], ...]
    floors: tuple[FloorSpan, ...]
    off: tuple[Span, ...] = ()
    plugged: tuple[Span, ...] = ()
    states: tuple[Span, ...] = ()


@dataclass(frozen=True, slots=True)
class LatePlug:
    """A plug planned for a charge at or under the floor: the device dies before it is plugged."""

    phase: str
    device: str
    bank: str
    connect_below: float
    floor_soc: float


@dataclass(frozen=True, slots=True)
class DayResult:
    """The whole day; devices, banks and courses by id, in the order given."""

    devices: Mapping[str, DeviceResult]
    banks: Mapping[str, BankResult]
    device_courses: Mapping[str, Course]
    bank_courses: Mapping[str, Course]
    late_plugs: tuple[LatePlug, ...]
