"""What a plan for the night gives back. Hours on the evening's axis, charge 0..1, energy in Wh."""

from dataclasses import dataclass

NOT_TONIGHT = ("swollen", "too_cold", "too_warm", "takes_no_charge", "no_cell", "no_port", "no_cable", "no_socket")
"""Why a thing is left out: swollen, place under or over its band, charge_max_W 0, no energy, no port of its connector,
no cable between its connector and any port, no free socket for any charger."""


@dataclass(frozen=True, slots=True)
class Stay:
    """A thing on a port. overnight: it is there when the pilot goes to bed and when the pilot gets up."""

    thing: str
    charger: str
    port: str
    from_h: float
    to_h: float
    overnight: bool


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do by hand: take off what is on a port (None: nothing), put on another (None: leave it free)."""

    at_h: float
    charger: str
    port: str
    take_off: str | None
    put_on: str | None
    overnight: bool


@dataclass(frozen=True, slots=True)
class ThingResult:
    """How a thing ends.

    Attributes:
        soc_at_leaving: charge at leave_h.
        full_h: when it reaches `evening.FULL`; from_h if it is so from the start; None: not before leaving.
        missing_wh: in the cell, up to `evening.FULL`; 0 if full.
        left_out: why it is not charged at all (`NOT_TONIGHT`); None: it is, or is full, or no port was left for it.
            A cell that is swollen or gone is left out even if full.
    """

    thing: str
    start: float
    soc_at_leaving: float
    full_h: float | None
    missing_wh: float
    left_out: str | None

    @property
    def full(self) -> bool:
        """Whether it is full at leaving; what is left out is not."""
        return self.left_out is None and self.missing_wh == 0.0


@dataclass(frozen=True, slots=True)
class Caution:
    """Something to look at. value and limit in the unit of the code's name, None where there is none.

    Codes: swollen (not charged), too_cold_C, too_warm_C (not charged), place_not_known_C, cold_rate_W (more than the
    cell should take at that temperature), health, age_months, connector_not_known, charged_full_already.
    """

    code: str
    thing: str | None
    value: float | None
    limit: float | None
    source: str


@dataclass(frozen=True, slots=True)
class Remedy:
    """What a change would give, computed by planning the night anew.

    Attributes:
        kind: one_more_port (like the strongest of that charger), no_total_limit (of that charger), one_more_charger
            (like that one), more_sockets (for chargers on hand), one_more_cable (with these two connectors),
            charger_with_plug (one port with a fixed cable that ends in this connector), start_earlier.
        charger: which; None where it is none of those on hand.
        from_h: when charging would begin; None: as planned.
        full: how many things would be full at leaving.
        gained_wh: in all cells together, up to `evening.FULL`; may be negative where a higher priority gains instead.
        first_gain: the thing of highest priority that ends fuller.
        all_full: everything asked for would be full; all_chargeable_full: everything that could then be charged.
        connectors: those that are missing: two ends of a cable, or the plug of a charger (none: any).
        power_w: of the charger with that plug: as much as a thing takes; None for other kinds.
        sockets: how many more must be free for this than are.
    """

    kind: str
    charger: str | None
    from_h: float | None
    full: int
    gained_wh: float
    first_gain: str | None
    all_full: bool
    all_chargeable_full: bool
    connectors: tuple[str, ...] = ()
    power_w: float | None = None
    sockets: int = 0


@dataclass(frozen=True, slots=True)
class EveningResult:
    """The plan of one night.

    Attributes:
        chargers: those that are in the wall; the others find no socket or are not needed.
        stays: by port and time.    steps: the same as an order of hand work, by time.
        things: in the order of priority.
        all_full: everything asked for is full at leaving; what is left out is not.
        all_chargeable_full: everything that can be charged is.
        complete: no plan is better, in charges at leaving or in hours; else this is the best of those tried. Where
            things share a total, or could be moved between unequal ports, only if each is at its best.
        moves_compared: half-charged things moved between ports could not make it better; False: such moves were tried
            one after the other (`moved`), not all compared.
        by_turns: things past the most for which plans are compared: each was given what was left, by priority.
    """

    chargers: tuple[str, ...]
    stays: tuple[Stay, ...]
    steps: tuple[Step, ...]
    things: tuple[ThingResult, ...]
    cautions: tuple[Caution, ...]
    all_full: bool
    all_chargeable_full: bool
    complete: bool
    moves_compared: bool = True
    by_turns: tuple[str, ...] = ()
