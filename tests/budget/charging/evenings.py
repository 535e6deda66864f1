"""Evenings for tests: drawn at random, and planned by trying everything."""

from itertools import permutations, product

from hypothesis import strategies as st

from kitlog.budget.charging.bench import Bench, Stay
from kitlog.budget.charging.check_evening import check_evening
from kitlog.budget.charging.evening import FULL, Evening
from kitlog.budget.charging.tonight import charge_tonight, in_order


def raw_thing(name="phone", **keys):
    return {"id": name, "cell_Wh": 15.0, "start": 0.4, "charge_max_W": 7.0, **keys}


def raw_evening(things, *limits_w, total_w=None, **keys):
    ports = [{"id": f"p{index}", "limit_W": limit_w} for index, limit_w in enumerate(limits_w)]
    chargers = [{"id": "wall", "ports": ports, "total_W": total_w}] if ports else []
    times = {"from_h": 19.0, "bed_h": 22.0, "up_h": 30.0, "leave_h": 31.0, "place_C": 20.0}
    return {"chargers": chargers, "things": things, **times, **keys}


@st.composite
def evenings(draw, most_things=4, most_ports=2, step_min=60, shared=True):
    """Hours on whole steps, so that a plan on a grid can be compared."""
    step_h = step_min / 60
    hours = [draw(st.integers(low, high)) * step_h for low, high in ((0, 2), (1, 4), (0, 1))]
    bed_h = 20.0 + hours[0]
    up_h = bed_h + hours[1]
    things = [
        raw_thing(
            f"t{index}",
            cell_Wh=draw(st.integers(2, 40)),
            start=draw(st.sampled_from([0.0, 0.15, 0.37, 0.6, 0.82, 0.97, 1.0])),
            charge_max_W=draw(st.integers(1, 20)),
            knee=draw(st.sampled_from([0.6, 0.8, 0.93, 1.0])),
            charge_eff=draw(st.sampled_from([0.85, 0.9, 1.0])),
        )
        for index in range(draw(st.integers(1, most_things)))
    ]
    limits_w = draw(st.lists(st.integers(2, 20), min_size=1, max_size=most_ports))
    total_w = draw(st.none() | st.integers(2, 25)) if shared else None
    times = {"from_h": 20.0, "bed_h": bed_h, "up_h": up_h, "leave_h": up_h + hours[2]}
    return raw_evening(things, *limits_w, total_w=total_w, swap_step_min=step_min, **times)


def planned(raw):
    return charge_tonight(Evening.model_validate(raw))


def levels(result):
    """What counts, in the order of priority."""
    return [min(thing.soc_at_leaving, FULL) for thing in result.things]


def behind(left, right, by=1e-6):
    """Whether left is worse than right: the first thing that differs by more than `by` is less full."""
    for mine, theirs in zip(left, right, strict=True):
        if abs(mine - theirs) > by:
            return mine < theirs
    return False


def hours(result, raw):
    """When each is full, in the order of priority; leaving where it is not."""
    return [raw["leave_h"] if thing.full_h is None else thing.full_h for thing in result.things]


def later(left, right, by=1e-6):
    """Whether the first hour that differs is later."""
    return behind(right, left, by)


def by_trying_everything(raw):
    """The charges of the best of all plans whose swaps fall on whole steps, in the order of priority."""
    return soonest_of_everything(raw)[0]


def soonest_of_everything(raw):
    """Charges and hours: every port, every step, every thing or nothing; fullest first, then full soonest."""
    evening = Evening.model_validate(raw)
    bench = Bench(evening, check_evening(evening))
    spans = list(_spans(evening))
    ports = range(len(bench.slots))
    things = [*range(len(evening.things)), *(None for _ in ports)]
    at_once = sorted(set(permutations(things, len(ports))), key=repr)
    best = None
    for night in product(at_once, repeat=len(spans)):
        stays = tuple(
            Stay(thing, port, *span)
            for span, hung in zip(spans, night, strict=True)
            for port, thing in enumerate(hung)
            if thing is not None
        )
        ends = [bench.ending(stays, thing) for thing in in_order(evening)]
        socs = [min(end.soc, FULL) for end in ends]
        full_h = [evening.leave_h if end.full_h is None else end.full_h for end in ends]
        if best is None or behind(best[0], socs) or (not behind(socs, best[0]) and later(best[1], full_h)):
            best = socs, full_h
    return best


def _spans(evening):
    step_h = evening.swap_step_min / 60
    for from_h, to_h in ((evening.from_h, evening.bed_h), (evening.up_h, evening.leave_h)):
        count = round((to_h - from_h) / step_h)
        yield from ((from_h + index * step_h, from_h + (index + 1) * step_h) for index in range(count))
    if evening.up_h > evening.bed_h:
        yield (evening.bed_h, evening.up_h)
