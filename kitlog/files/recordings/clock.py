"""When fixes were taken: a recording writes the time of day alone, and one date at its beginning."""

from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise

DAY_S = 86_400
BACK_S = 3_600
"""Back by less is a fix out of order, by more the next day."""
AHEAD_S = 60
WEEK_S = 7 * DAY_S
"""A date further ahead than this, in the midst of a recording, is not believed."""
_ATTEMPTS = 3
FEW = 20
"""So many fixes at the most are left out at once because their clock jumps."""
_RUN = 10
"""Fixes at the begin or end give way to a run of at least so many, and three times as many as they are."""


def moments(clock: Sequence[int], first_day_s: int, later_days_s: Mapping[int, int]) -> list[int | None]:
    """Seconds since 1970 of each fix, None for those out of order.

    A few fixes whose clock jumps against those about them are left out first (`astray`). A time of day before that of
    the last fix is the next day, if that is less than an hour later, or if it lies back by an hour or more and the fix
    after it goes on from there; else it is out of order. So is a single fix ahead of the one that follows it. Where
    most would be left out, the first were wrong: it begins anew with what follows.

    Args:
        clock: seconds since midnight UTC.
        first_day_s: midnight of the day of the first that is not left out.
        later_days_s: midnights of dates that stand before later fixes, by the index of the fix.
    """
    wrong = astray(clock, later_days_s)
    if not wrong:
        return _begun_anew(clock, first_day_s, later_days_s)
    kept = [i for i in range(len(clock)) if i not in wrong]
    later = {k: later_days_s[i] for k, i in enumerate(kept) if i in later_days_s}
    found: list[int | None] = [None] * len(clock)
    for i, at in zip(kept, _begun_anew([clock[i] for i in kept], first_day_s, later), strict=True):
        found[i] = at
    return found


def _begun_anew(clock: Sequence[int], first_day_s: int, later_days_s: Mapping[int, int]) -> list[int | None]:
    found = _in_order(clock, 0, first_day_s, later_days_s)
    for _ in range(_ATTEMPTS):
        lost = [i for i, at in enumerate(found) if at is None]
        if 2 * len(lost) <= len(found):
            break
        found = [*[None] * lost[0], *_in_order(clock, lost[0], first_day_s, later_days_s)]
    return found


def astray(clock: Sequence[int], dated: Collection[int]) -> frozenset[int]:
    """Fixes whose clock jumps ahead or back, `FEW` in a row at the most, while those about them go on plainly.

    Inside, time goes on after them from the fix before them. At the begin and the end, an hour or more (or any way
    back) lies between them and a run many times as long.

    Args:
        clock: seconds since midnight UTC.
        dated: indices of fixes with a date before them: these and what leads to them are believed.
    """
    steps = pairwise(clock)
    jumps = [i for i, (before, at) in enumerate(steps, 1) if (at - before) % DAY_S > AHEAD_S]
    if not jumps:
        return frozenset()
    start, end = _begin(clock, jumps, dated), _end(clock, jumps, dated)
    wrong = {*range(start), *range(end, len(clock))}
    resumed = start
    for k in jumps:
        if resumed < k < end and (resumes := _resumes(clock, k, end, dated)) is not None:
            wrong.update(range(k, resumes))
            resumed = resumes
    return frozenset(wrong)


def _resumes(clock: Sequence[int], k: int, end: int, dated: Collection[int]) -> int | None:
    """Where time goes on from the fix before the one at `k`, passing over some; None if it does not soon."""
    ahead_s = min((clock[k] - clock[k - 1]) % DAY_S, BACK_S)
    stop = next((i for i in range(k, min(k + FEW, end - 1) + 1) if i in dated), end)
    later = range(k + 1, min(k + FEW + 1, stop))
    return next((j for j in later if (clock[j] - clock[k - 1]) % DAY_S < ahead_s), None)


def _begin(clock: Sequence[int], jumps: Sequence[int], dated: Collection[int]) -> int:
    """The first fix that is not left out at the begin."""
    found = resumed = 0
    for k in jumps:
        if k > FEW or any(i in dated for i in range(1, k + 1)):
            break
        resumes = _resumes(clock, k, len(clock), dated)
        if resumes in jumps:
            resumed = resumes or 0
        elif k > resumed and _is_far(clock, k) and (resumes is None or resumes - k > k):
            found = k if _is_run(clock, jumps, k, k + _long(k)) else found
    return found


def _end(clock: Sequence[int], jumps: Sequence[int], dated: Collection[int]) -> int:
    """One past the last fix that is not left out at the end."""
    count = len(clock)
    for k in jumps:
        tail = count - k
        if tail > FEW or any(i in dated for i in range(k, count)) or not _is_far(clock, k):
            continue
        if _resumes(clock, k, count, dated) is None and _is_run(clock, jumps, k - _long(tail), k):
            return k
    return count


def _is_far(clock: Sequence[int], k: int) -> bool:
    return (clock[k] - clock[k - 1]) % DAY_S >= BACK_S


def _long(few: int) -> int:
    return max(_RUN, 3 * few)


def _is_run(clock: Sequence[int], jumps: Sequence[int], first: int, end: int) -> bool:
    """Whether time goes on plainly from one fix to the one before another."""
    return first >= 0 and end <= len(clock) and not any(first < k < end for k in jumps)


def _in_order(clock: Sequence[int], start: int, first_day_s: int, later_days_s: Mapping[int, int]) -> list[int | None]:
    found: list[int | None] = []
    kept: list[tuple[int, int]] = []
    for i in range(start, len(clock)):
        if len(kept) > 1 and _was_ahead(kept[-2][1], kept[-1][1], clock[i]):
            found[kept.pop()[0]] = None
        at = _following(clock, i, kept[-1][1], later_days_s.get(i)) if kept else first_day_s + clock[i]
        if at is not None:
            kept.append((i - start, at))
        found.append(at)
    return found


def _was_ahead(before: int, last: int, clock_s: int) -> bool:
    """Whether the last fix is a single one far ahead: this one goes on from the fix before it."""
    return last - before > AHEAD_S and before % DAY_S <= clock_s < last - before + before % DAY_S


def _following(clock: Sequence[int], i: int, last: int, day_s: int | None) -> int | None:
    """The moment of a fix after the `last` one, None if it is out of order."""
    if day_s is not None and 0 <= day_s + clock[i] - last <= WEEK_S:
        return day_s + clock[i]
    step = clock[i] - last % DAY_S
    if step >= 0:
        return last + step
    near = step + DAY_S < BACK_S
    goes_on = i + 1 < len(clock) and 0 <= (clock[i + 1] - clock[i]) % DAY_S < BACK_S
    return last + step + DAY_S if near or (-step >= BACK_S and goes_on) else None


def among(clock_s: int, earliest: int | None, latest: int | None) -> int | None:
    """The moment of a V fix: its clock may run free, so that it must lie between the A fixes about it.

    Args:
        clock_s: seconds since midnight UTC.
        earliest: moment of the fix before, None if there is none.
        latest: moment of the A fix after, None if there is none.
    """
    if earliest is None:
        return None if latest is None else _within(latest - (latest - clock_s) % DAY_S, latest - DAY_S // 2, latest)
    at = earliest + (clock_s - earliest) % DAY_S
    return _within(at, earliest, earliest + DAY_S // 2 if latest is None else latest)


def _within(at: int, earliest: int, latest: int) -> int | None:
    return at if earliest <= at <= latest else None
