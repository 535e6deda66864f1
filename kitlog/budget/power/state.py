"""What changes while a day runs: devices and banks at one instant, and how they move until the next event."""

from math import inf

from kitlog.budget.power.curve import Terms
from kitlog.budget.power.plan import BankPlan, DevicePlan, PlugPlan

TINY = 1e-12
"""States of charge, W or h closer than this are the same: two events a rounding apart fall together."""

OFF, ON, AUTO_OFF, EMPTY = "off", "on", "auto_off", "empty"


class BankState:
    """A bank: soc, one of four states, who hangs on it, and since when its output is too low to stay on.

    out_w is the output now, out_terms how it falls from there; level_w is what each limited device gets under the total
    limit. rate and terms are the course of soc (see `curve`); drawn_rate and drawn_terms that of the energy delivered.
    """

    __slots__ = (
        "auto_off_at",
        "delivered_wh",
        "drawn_rate",
        "drawn_terms",
        "empty_at",
        "floor",
        "index",
        "judge_output",
        "level_terms",
        "level_w",
        "low_since",
        "members",
        "out_terms",
        "out_w",
        "plan",
        "rate",
        "reshare",
        "soc",
        "state",
        "terms",
    )

    def __init__(self, index: int, plan: BankPlan) -> None:
        self.index = index
        self.plan = plan
        self.soc = plan.start
        self.state = OFF
        self.floor = 0.0
        self.members: list[DeviceState] = []
        self.low_since: float | None = None
        self.auto_off_at: float | None = None
        self.empty_at: float | None = None
        self.delivered_wh = 0.0
        self.reshare = False
        self.judge_output = False
        self.out_w = 0.0
        self.out_terms: Terms = ()
        self.level_w = inf
        self.level_terms: Terms = ()
        self.rate = 0.0
        self.terms: Terms = ()
        self.drawn_rate = 0.0
        self.drawn_terms: Terms = ()


class DeviceState:
    """A device: soc, on or off, its plug, and its part in the flow.

    Per phase: phase_load_w, load_w (0 when off), floor, charge_w. Per flow: demand_w; tapers (the demand falls as soc
    rises); target (the soc at which the demand changes its form); limited (gets the bank's level, not its demand);
    starved (limited, and the level does not even carry the load); grant_w at the last event; rate and terms, the course
    of soc (see `curve`). gain and loss: soc per Wh, charging and draining; both 0 without a cell. fade: 1/h, how fast
    the charging power falls while tapering.
    """

    __slots__ = (
        "bank",
        "charge_w",
        "demand_w",
        "fade",
        "first_off_h",
        "floor",
        "gain",
        "grant_w",
        "index",
        "last_bank",
        "limited",
        "load_w",
        "loss",
        "off_h",
        "off_since",
        "on",
        "phase_load_w",
        "plan",
        "plug",
        "rate",
        "soc",
        "starved",
        "tapers",
        "target",
        "terms",
        "waiting",
    )

    def __init__(self, index: int, plan: DevicePlan) -> None:
        self.index = index
        self.plan = plan
        self.soc = plan.start
        self.on = True
        self.first_off_h: float | None = None
        self.off_since = 0.0
        self.off_h = 0.0
        self.loss = 1.0 / plan.energy_wh if plan.energy_wh else 0.0
        self.gain = plan.charge_eff * self.loss
        self.fade = 0.0
        self.phase_load_w = 0.0
        self.load_w = 0.0
        self.floor = 0.0
        self.charge_w = 0.0
        self.plug: PlugPlan | None = None
        self.waiting: PlugPlan | None = None
        self.bank: BankState | None = None
        self.last_bank = -1
        self.demand_w = 0.0
        self.target = inf
        self.tapers = False
        self.limited = False
        self.starved = False
        self.grant_w = 0.0
        self.rate = 0.0
        self.terms: Terms = ()
