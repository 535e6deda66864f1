"""When fixes were taken: a recording writes the time of day alone, and one date at its beginning."""

from collections.abc import Mapping, Sequence

DAY_S = 86_400
BACK_S = 3_600
"""Back by less is a fix out of order, by more the next day."""
AHEAD_S = 60
WEEK_S = 7 * DAY_S
"""A date further ahead than this, in the midst of a recording, is not believed."""
_ATTEMPTS = 3


def moments(clock: Sequence[int], first_day_s: int, later_days_s: Mapping[int, int]) -> list[int | None]:
    """Seconds since 1970 of each fix, None for those out of order.

    A time of day before that of the last fix is the next day, if that is less than an hour later, or if it lies back
    by an hour or more and the fix after it goes on from there; else it is out of order. So is a single fix ahead of the
    one that follows it. Where most would be left out, the first were wrong: it begins anew with what follows.

    Args:
        clock: seconds since midnight UTC.
        first_day_s: midnight of the day of the first.
        later_days_s: midnights of dates that stand before later fixes, by the index of the fix.
    """
    found = _in_order(clock, 0, first_day_s, later_days_s)
    for _ in range(_ATTEMPTS):
        lost = [i for i, at in enumerate(found) if at is None]
        if 2 * len(lost) <= len(found):
            break
        found = [*[None] * lost[0], *_in_order(clock, lost[0], first_day_s, later_days_s)]
    return found


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
