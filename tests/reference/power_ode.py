"""A second reading of the rules of the power budget, for comparison only.

Written from the rules themselves, not from `kitlog.budget.power`, of which nothing is imported. The charges are the
unknowns of an ordinary differential equation, integrated by scipy's `solve_ivp`; its events find floors, plugs, kinks and
time-outs, and the integration starts anew at each.
"""

from math import inf

import numpy as np
from scipy.integrate import solve_ivp

TABLE = [(-20, 0.60), (-10, 0.75), (0, 0.85), (25, 1.00)]
NEAR = 1e-10
"""Charges and powers nearer than this are taken as reached."""
LACK_W = 1e-9


def usable(table, temp_c):
    return float(np.interp(temp_c, [point[0] for point in table], [point[1] for point in table]))


def energy(thing):
    by_charge = "cell_mAh" in thing
    cell_wh = thing["cell_mAh"] / 1000 * thing["nominal_V"] if by_charge else thing["cell_Wh"]
    return None if cell_wh is None else cell_wh * thing.get("health", 1)


def mean_w(draw):
    return sum(mode["W"] * mode["share"] for mode in draw["modes"]) if isinstance(draw, dict) else draw


class Ode:
    """One day. Device i and bank j are counted as in the JSON; y = charges of devices, charges of banks, Wh delivered."""

    def __init__(self, day, rtol=1e-12, atol=1e-13):
        self.day, self.rtol, self.atol = day, rtol, atol
        self.dev, self.bank = day.get("devices", []), day.get("banks", [])
        self.n, self.m = len(self.dev), len(self.bank)
        self.E = [energy(device) for device in self.dev]
        self.Eb = [energy(bank) for bank in self.bank]
        self.y = np.array(
            [device.get("start", 1) for device in self.dev]
            + [bank.get("start", 1) for bank in self.bank]
            + [0.0] * self.m
        )
        self.on = [True] * self.n
        self.first_off = [None] * self.n
        self.off_h = [0.0] * self.n
        self.state = ["off"] * self.m
        self.low_since = [None] * self.m
        self.auto_off = [None] * self.m
        self.empty = [None] * self.m
        self.before = [None] * self.n
        self.phase_end = []
        self.t = 0.0

    # ---- one phase -------------------------------------------------------------------------------------------------

    def temp(self, thing):
        fixed = thing.get("temp_fixed_C")
        return self.phase["ambient_C"] + thing.get("temp_offset_C", 0) if fixed is None else fixed

    def floor_of(self, thing):
        table = thing.get("temp_table") or self.day.get("temp_table") or TABLE
        return 1 - usable(table, self.temp(thing)) * (1 - thing.get("cutoff", 0))

    def enter(self, phase):
        self.phase = phase
        self.L = [mean_w(device.get("draw_W", {}).get(phase["id"], 0)) for device in self.dev]
        self.floor = [self.floor_of(device) for device in self.dev]
        self.floor_b = [self.floor_of(bank) for bank in self.bank]
        self.A0 = []
        for device, cell_wh in zip(self.dev, self.E, strict=True):
            in_band = device.get("charge_min_C", 0) <= self.temp(device) <= device.get("charge_max_C", 45)
            self.A0.append(device.get("charge_max_W", 0) if in_band and cell_wh else 0)
        ids = [device["id"] for device in self.dev]
        bank_ids = [bank["id"] for bank in self.bank]
        self.plug = [None] * self.n
        for plug in self.day.get("plugs", []):
            if plug["phase"] == phase["id"]:
                self.plug[ids.index(plug["device"])] = (bank_ids.index(plug["bank"]), plug)
        self.joined = [None] * self.n  # the bank a device hangs on

    def low_enough(self, i):
        below = self.plug[i][1].get("connect_below")
        return below is None or not self.E[i] or self.y[i] <= below + NEAR

    def join(self, i, *, late):
        j = self.plug[i][0]
        self.joined[i] = j
        if late or self.before[i] != j:
            self.state[j], self.low_since[j] = "on", None

    def check_empty(self, j):
        if self.state[j] != "on" or self.Eb[j] is None:
            return False
        if self.Eb[j] > 0 and self.y[self.n + j] > self.floor_b[j] + NEAR:
            return False
        self.state[j], self.low_since[j] = "empty", None
        if self.empty[j] is None:
            self.empty[j] = self.t
        return True

    # ---- flow ------------------------------------------------------------------------------------------------------

    def load(self, i):
        return self.L[i] if self.on[i] else 0.0

    def cap(self, i):
        limits = (self.dev[i].get("input_limit_W"), self.bank[self.joined[i]].get("port_limit_W"))
        return min((limit for limit in limits if limit is not None), default=inf)

    def accept(self, i, s):
        knee, full = self.dev[i].get("knee", 0.8), self.plug[i][1].get("charge_to", 1)
        if s >= full or self.A0[i] == 0:
            return 0.0
        return self.A0[i] if s < knee else self.A0[i] * (1 - s) / (1 - knee)

    def demand(self, i, s):
        return min(self.load(i) + self.accept(i, s), self.cap(i))

    def members(self, j):
        return [i for i in range(self.n) if self.joined[i] == j and self.state[j] == "on"]

    def level(self, j, demands):
        """Water-filling: the level under the total limit; infinite if all demands can be met."""
        limit = self.bank[j].get("total_limit_W")
        if limit is None or sum(demands) <= limit:
            return inf
        left, asking = limit, sorted(demands)
        while asking and asking[0] * len(asking) <= left:
            left -= asking.pop(0)
        return left / len(asking) if asking else inf

    def grants(self, y):
        g, levels = [0.0] * self.n, [inf] * self.m
        for j in range(self.m):
            members = self.members(j)
            demands = [self.demand(i, y[i]) for i in members]
            if members:
                levels[j] = self.level(j, demands)
            for i, d in zip(members, demands, strict=True):
                g[i] = min(d, levels[j])
        return g, levels

    def rhs(self, _t, y):
        g, _ = self.grants(y)
        dy = np.zeros_like(y)
        for i in range(self.n):
            if self.E[i]:
                net = g[i] - self.load(i)
                dy[i] = (self.dev[i].get("charge_eff", 0.9) * net if net > 0 else net) / self.E[i]
        for j in range(self.m):
            if self.state[j] == "on":
                out = sum(g[i] for i in self.members(j))
                dy[self.n + self.m + j] = out
                if self.Eb[j]:
                    drawn = out / self.bank[j].get("eff", 0.85) + self.bank[j].get("quiescent_W", 0)
                    dy[self.n + j] = -drawn / self.Eb[j]
        return dy

    def out(self, j, y):
        g, _ = self.grants(y)
        return sum(g[i] for i in self.members(j))

    def least_out(self, j):
        return 0 if self.bank[j].get("low_current_mode", False) else self.bank[j].get("min_out_W", 0)

    # ---- events: each a function of y that falls through 0, and what then happens ------------------------------------

    def watch(self):
        watched = []
        for i in range(self.n):
            if self.E[i]:
                watched += self.watch_device(i)
        for j in range(self.m):
            if self.state[j] == "on":
                watched += self.watch_bank(j)
        return [(f, then) for f, then in watched if f(self.y) > NEAR]

    def watch_device(self, i):
        put = lambda value: lambda: self.y.__setitem__(i, value)  # noqa: E731
        j = self.joined[i]
        if j is None or self.state[j] != "on":
            watched = [(lambda y: y[i] - self.floor[i], put(self.floor[i]))]
            if j is None and self.plug[i] is not None:
                below = self.plug[i][1].get("connect_below")
                watched.append((lambda y: y[i] - below, put(below)))
            return watched
        knee, full = self.dev[i].get("knee", 0.8), self.plug[i][1].get("charge_to", 1)
        watched = [(lambda y: y[i] - self.floor[i], put(self.floor[i]))]
        watched.append((lambda y: full - y[i], put(full)))
        if knee < 1:
            watched.append((lambda y: knee - y[i], put(knee)))
            falling = lambda y: self.load(i) + self.A0[i] * (1 - y[i]) / (1 - knee)  # noqa: E731
            watched.append(
                (lambda y: falling(y) - self.cap(i), lambda: None) if self.cap(i) < inf else (lambda _: -1, None)
            )
        limit = self.bank[j].get("total_limit_W")
        if limit is not None:
            over = lambda y: self.demand(i, y[i]) - min(self.grants(y)[1][j], 1e9)  # noqa: E731
            watched.append((over, lambda: None))
            needs = min(self.load(i), self.cap(i))
            watched.append((lambda y: needs - min(self.grants(y)[1][j], 1e9), lambda: None))
        return watched

    def watch_bank(self, j):
        watched = []
        if self.Eb[j]:
            at = self.n + j
            watched.append((lambda y: y[at] - self.floor_b[j], lambda: self.y.__setitem__(at, self.floor_b[j])))
        if self.low_since[j] is None and self.least_out(j) > 0:
            least = self.least_out(j) - LACK_W
            watched.append((lambda y: self.out(j, y) - least, lambda: self.low_since.__setitem__(j, self.t)))
        return watched

    # ---- the order of things -----------------------------------------------------------------------------------------

    def settle(self):
        """Late plugs, then switch-offs until nobody else must go, then the clock of the banks."""
        changed = False
        for i in range(self.n):
            if self.plug[i] is not None and self.joined[i] is None and self.low_enough(i):
                self.join(i, late=True)
                self.check_empty(self.joined[i])
                changed = True
        while True:
            g, _ = self.grants(self.y)
            dying = [
                i
                for i in range(self.n)
                if self.load(i) - g[i] > LACK_W and (not self.E[i] or self.y[i] <= self.floor[i] + NEAR)
            ]
            if not dying:
                break
            changed = True
            for i in dying:
                self.on[i] = False
                if self.first_off[i] is None:
                    self.first_off[i] = self.t
        return changed

    def judge_banks(self, *, changed):
        for j in range(self.m):
            if self.state[j] == "on":
                if self.out(j, self.y) < self.least_out(j) - LACK_W:
                    if self.low_since[j] is None:
                        self.low_since[j] = self.t
                elif changed:
                    self.low_since[j] = None

    def stop_banks(self):
        changed = False
        for j in range(self.m):
            if self.state[j] != "on":
                continue
            if self.check_empty(j):
                changed = True
            elif self.low_since[j] is not None and self.t >= self.time_out(j) - NEAR:
                self.state[j], self.low_since[j] = "auto_off", None
                if self.auto_off[j] is None:
                    self.auto_off[j] = self.t
                changed = True
        return changed

    def time_out(self, j):
        return self.low_since[j] + self.bank[j].get("auto_off_s", 30) / 3600

    def begin(self):
        for i in range(self.n):
            if self.plug[i] is not None and self.low_enough(i):
                self.join(i, late=False)
        for j in range(self.m):
            if j not in self.joined:
                self.state[j], self.low_since[j] = "off", None
            self.check_empty(j)
        for i in range(self.n):
            margin = self.dev[i].get("restart_margin", 0.05)
            spare = self.y[i] - self.floor[i]
            if self.t > 0 and (not self.E[i] or (margin is not None and spare >= margin - NEAR)):
                self.on[i] = True

    def snap(self):
        """A charge a rounding short of where charging ends is there; else the integrator would dither about it."""
        for i in range(self.n):
            if self.joined[i] is not None and self.E[i]:
                full = self.plug[i][1].get("charge_to", 1)
                if 0 < full - self.y[i] <= NEAR:
                    self.y[i] = full

    def stretch(self, end):
        """Integrate to the next event, or to the end of the phase."""
        stop = min([end] + [self.time_out(j) for j in range(self.m) if self.low_since[j] is not None])
        stop = max(stop, self.t)
        watched = self.watch()
        then = None
        if stop > self.t:
            events = [self.event(f) for f, _ in watched]
            solution = solve_ivp(
                self.rhs, (self.t, stop), self.y, "DOP853", events=events, rtol=self.rtol, atol=self.atol
            )
            assert solution.success, solution.message
            was, self.t, self.y = self.t, float(solution.t[-1]), solution.y[:, -1].copy()
            for i in range(self.n):
                self.off_h[i] += 0 if self.on[i] else self.t - was
            hits = [index for index, times in enumerate(solution.t_events or []) if len(times)]
            then = watched[hits[0]][1] if hits else None
        if then is not None:
            then()

    @staticmethod
    def event(f):
        def falls(_t, y):
            return f(y)

        falls.terminal, falls.direction = True, -1
        return falls

    def run(self):
        for phase in self.day["phases"]:
            if phase["hours"] > 0:
                self.run_phase(phase)
            self.phase_end.append(list(self.y[: self.n]))
        return self

    def run_phase(self, phase):
        end = self.t + phase["hours"]
        self.enter(phase)
        self.begin()
        changed = True
        while True:
            self.snap()
            changed = self.settle() or changed
            self.judge_banks(changed=changed)
            if self.t >= end - 1e-11:
                break
            self.stretch(end)
            if self.t >= end - 1e-11:
                break
            changed = self.stop_banks()
        self.t = end
        self.before = list(self.joined)
