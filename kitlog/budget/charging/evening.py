"""What a plan for the night is given. Field names are the keys of the JSON; units are in the names.

Hours go on one axis through the night: 19.5 is half past seven in the evening, 30.5 half past six the next morning.
"""
# ruff: noqa: N815  # the keys of the JSON keep the capitals of their units

from typing import Annotated

from pydantic import Field

from kitlog.budget.power.day import Amount, Given, Name, Real, Share

FULL = 0.995
"""A cell counts as full at this charge: above the knee the charge nears 1 without ever reaching it."""

MOST_THINGS, MOST_PORTS = 40, 8
"""What a pilot charges in one night."""

MOST_COMPARED = 12
"""Plans are compared for so many things that lack charge; those after them get what is left."""

Hour = Annotated[float, Field(ge=0, le=240)]


class Port(Given):
    """One port of a charger.

    Attributes:
        limit_W: most it gives; None: no limit of its own.
        connector: its plug type, such as USB-C; None: not known, taken to fit (with a caution).
        fixed_cable: its cable is fixed and ends in `connector`: no cable is needed, but the thing must have the same.
    """

    id: Name
    limit_W: Amount | None = None
    connector: Name | None = None
    fixed_cable: bool = False


class Charger(Given):
    """A charger takes one socket in the wall. total_W: most that all its ports give together; None: no limit."""

    id: Name
    ports: Annotated[tuple[Port, ...], Field(strict=False, min_length=1)]
    total_W: Amount | None = None


class Cable(Given):
    """`count` cables with these two ends, either way round."""

    connectors: Annotated[tuple[Name, Name], Field(strict=False)]
    count: Annotated[int, Field(ge=0, le=1000)] = 1


class Thing(Given):
    """A device or a bank to be charged; it is off or draws next to nothing.

    Attributes:
        cell_Wh: energy on the label; or cell_mAh and nominal_V, never both.
        health: share of the label energy that age has left.
        start: charge on hand.
        charge_max_W: most input power it takes; 0: cannot be charged. A bank: at its own input.
        charge_eff: share of that power that reaches the cell. Default .9: common practice, no source.
        knee: charge from which the power falls, straight to 0 at full.
        charge_min_C, charge_max_C: outside this band it takes no charge (0..45 on several cell specifications).
        connector: of its socket; None: not known.
        swollen: seen at the repack; such a cell is not charged.
        age_months: since it was bought; None: not known.
    """

    id: Name
    cell_Wh: Amount | None = None
    cell_mAh: Amount | None = None
    nominal_V: Amount | None = None
    health: Share = 1.0
    start: Share
    charge_max_W: Amount
    charge_eff: Share = 0.9
    knee: Share = 0.8
    charge_min_C: Real = 0.0
    charge_max_C: Real = 45.0
    connector: Name | None = None
    swollen: bool = False
    age_months: Annotated[int, Field(ge=0, le=1200)] | None = None


class Evening(Given):
    """One night, before anything is computed.

    Attributes:
        sockets: free sockets in the wall, one for each charger; None: enough.
        cables: None: enough of every kind.
        from_h, bed_h, up_h, leave_h: hands are there from from_h to bed_h and from up_h to leave_h, not between.
        place_C: temperature where things charge; None: not known.
        priority: ids, the one that must be full first; what is not named comes after, in the order of `things`.
        swap_step_min: things are swapped at steps of so many minutes from from_h and from up_h on.
    """

    chargers: Annotated[tuple[Charger, ...], Field(strict=False)]
    things: Annotated[tuple[Thing, ...], Field(strict=False, max_length=MOST_THINGS)]
    cables: Annotated[tuple[Cable, ...], Field(strict=False)] | None = None
    sockets: Annotated[int, Field(ge=0, le=1000)] | None = None
    from_h: Hour
    bed_h: Hour
    up_h: Hour
    leave_h: Hour
    place_C: Real | None = None
    priority: Annotated[tuple[Name, ...], Field(strict=False)] = ()
    swap_step_min: Annotated[float, Field(ge=1, le=120)] = 5.0
