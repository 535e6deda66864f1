"""When a stretch of a recording is in the air: evidence by windows, held until there is evidence of the ground.

The rule and where its figures come from stand in `kitlog.kit.recordings.judge`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from statistics import median

from kitlog.kit.recordings.track import CELL_S, Stretch

WINDOW_S = 30
AIR_SPEED_M_S, AIR_CLIMB_M_S = 4.5, 1.0
MOVING_M_S, MOVING_CLIMB_M_S = 3.0, 0.7
WALK_M_S, WALK_CLIMB_M_S = 2.2, 0.5
WALK_S = 180
WALK_HIGH_M, WALK_HIGH_GNSS_M = 45.0, 50.0
"""More up and down within `WALK_S` is no walk (0.25 m/s, 900 m an hour: from memory, what very fit people climb)."""
REST_S = 60
REST_ACROSS_M, REST_HIGH_M, REST_HIGH_GNSS_M = 15.0, 10.0, 25.0
EDGE_S = 20


@dataclass(frozen=True, slots=True)
class Air:
    """Time in the air within one stretch, without a landing.

    Attributes:
        first, last: indices of its first and last cell.
        open_start, open_end: it begins with the stretch, or ends with it: the take-off or landing is not in it.
    """

    first: int
    last: int
    open_start: bool
    open_end: bool


@dataclass(frozen=True, slots=True)
class Windows:
    """What is seen in the `WINDOW_S` from each cell on; where the stretch ends sooner, in its last window.

    Attributes:
        ends: index of the last cell of each window; speed_m_s: the median in it; climb_m_s: from its first to its last.
    """

    ends: Sequence[int]
    speed_m_s: Sequence[float]
    climb_m_s: Sequence[float]

    def is_air(self, i: int) -> bool:
        """Whether nobody on foot moves so."""
        return self.speed_m_s[i] >= AIR_SPEED_M_S or abs(self.climb_m_s[i]) >= AIR_CLIMB_M_S

    def is_walk(self, i: int) -> bool:
        """Whether it is no faster than a walk and no steeper."""
        return self.speed_m_s[i] < WALK_M_S and abs(self.climb_m_s[i]) < WALK_CLIMB_M_S


def windows_of(stretch: Stretch) -> Windows:
    """The windows of a stretch that do not reach beyond it; at least one."""
    t, speed, h = stretch.t, stretch.speed_m_s, stretch.h
    ends = list(_window_ends(t)) or [len(t) - 1]
    speeds = [median(speed[i:end]) for i, end in enumerate(ends)]
    climbs = [(h[end] - h[i]) / (t[end] - t[i]) for i, end in enumerate(ends)]
    return Windows(ends, speeds, climbs)


def _window_ends(t: Sequence[float]) -> Iterator[int]:
    end = 0
    for at in t:
        while end < len(t) and t[end] - at < WINDOW_S:
            end += 1
        if end == len(t):
            return
        yield end


def airs_of(stretch: Stretch) -> list[Air]:
    """The times in the air of a stretch, one for each launch seen in it."""
    windows = windows_of(stretch)
    moving = _moving(stretch, windows)
    if not moving:
        return []
    landings = [(a, b) for a, b in pairwise(moving) if b - a > 1 and _is_ground(stretch, windows, a + 1, b)]
    begins = [moving[0], *(b for _, b in landings)]
    ends = [*(a for a, _ in landings), moving[-1]]
    widest = zip([-1, *ends], begins, ends, [*begins[1:], len(stretch.speed_m_s)], strict=False)
    return list(_apart([_widened(stretch, *steps) for steps in widest]))


def _apart(airs: Sequence[Air]) -> Iterator[Air]:
    """Times that do not overlap, however noisy the rest between two is."""
    done = 0
    for air in airs:
        yield replace(air, first=max(air.first, done))
        done = air.last


def is_on_ground(stretch: Stretch) -> bool:
    """Whether a stretch without any time in the air shows the ground; else nothing can be said of it."""
    return _is_ground(stretch, windows_of(stretch), 0, len(stretch.t) - 1)


def _moving(stretch: Stretch, windows: Windows) -> list[int]:
    """Indices of the steps from cell to cell that lie in a window of the air and are quick themselves."""
    moving: list[int] = []
    upto = 0
    for i, end in enumerate(windows.ends):
        if windows.is_air(i):
            moving += [k for k in range(max(i, upto), end) if _is_quick(stretch, k)]
            upto = end
    return moving


def _is_quick(stretch: Stretch, k: int) -> bool:
    return stretch.speed_m_s[k] >= MOVING_M_S or abs(stretch.climb_m_s[k]) >= MOVING_CLIMB_M_S


def _is_ground(stretch: Stretch, windows: Windows, first: int, last: int) -> bool:
    """Whether the cells from `first` to `last` hold a rest or a long walk."""
    if stretch.t[last] - stretch.t[first] < REST_S - 3 * CELL_S:
        return False
    return _rests(stretch, first, last) or _walks(stretch, windows, first, last)


def _rests(stretch: Stretch, first: int, last: int) -> bool:
    """Whether the points of some cells stay in one place and height for `REST_S`; counted by fixes, not by cells."""
    points = stretch.points
    high_m = REST_HIGH_M if points.by_pressure else REST_HIGH_GNSS_M
    columns = [(points.x, REST_ACROSS_M), (points.y, REST_ACROSS_M)] + ([(points.h, high_m)] if points.h else [])
    start, end = stretch.starts[max(first - 1, 0)], stretch.starts[min(last + 2, len(stretch.starts) - 1)]
    at = start
    while at < end and points.t[end - 1] - points.t[at] >= REST_S:
        broken = _leaves(columns, at, end)
        if points.t[broken - 1] - points.t[at] >= REST_S:
            return True
        at += 1
    return False


def _leaves(columns: Sequence[tuple[Sequence[float], float]], at: int, end: int) -> int:
    """The first point after `at` with which the points since lie further apart than they may."""
    lows = highs = [column[at] for column, _ in columns]
    for i in range(at + 1, end):
        lows = [min(low, column[i]) for low, (column, _) in zip(lows, columns, strict=True)]
        highs = [max(high, column[i]) for high, (column, _) in zip(highs, columns, strict=True)]
        if any(high - low > most for low, high, (_, most) in zip(lows, highs, columns, strict=True)):
            return i
    return end


def _walks(stretch: Stretch, windows: Windows, first: int, last: int) -> bool:
    """Whether every window for `WALK_S` is a walk, and the height does not change more than a walk changes it."""
    high_m = WALK_HIGH_M if stretch.points.by_pressure else WALK_HIGH_GNSS_M
    since: int | None = None
    for i in range(first, min(last, len(windows.ends))):
        if not windows.is_walk(i) or windows.ends[i] > last:
            since = None
            continue
        since = i if since is None else since
        while stretch.t[windows.ends[i]] - stretch.t[since] >= WALK_S:
            if _up_and_down_m(stretch, since, windows.ends[i]) <= high_m:
                return True
            since += 1
    return False


def _up_and_down_m(stretch: Stretch, first: int, last: int) -> float:
    """Metres climbed and sunk between two cells, in steps of `WINDOW_S`, so that noise does not add up."""
    t, h = stretch.t, stretch.h
    at, total = first, 0.0
    for k in range(first + 1, last + 1):
        if t[k] - t[at] >= WINDOW_S or k == last:
            total += abs(h[k] - h[at])
            at = k
    return total


def _widened(stretch: Stretch, after: int, first: int, last: int, before: int) -> Air:
    """From steps to cells: what is slower than evidence of the air but quicker than a walk belongs to the flight.

    `after` and `before` are the steps of the neighbouring flights.
    """
    while first - 1 > after and not _is_slow(stretch, first - 1):
        first -= 1
    while last + 1 < before and not _is_slow(stretch, last + 1):
        last += 1
    open_start = stretch.t[first] - stretch.first_s <= EDGE_S
    open_end = stretch.last_s - stretch.t[last + 1] <= EDGE_S
    return Air(first, last + 1, open_start, open_end)


def _is_slow(stretch: Stretch, k: int) -> bool:
    """Whether the steps about one are a walk or slower, by their median."""
    about = slice(max(k - 1, 0), k + 2)
    return median(stretch.speed_m_s[about]) < WALK_M_S and abs(median(stretch.climb_m_s[about])) < WALK_CLIMB_M_S
