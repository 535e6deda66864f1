"""Random kits and outings with much about power that is odd: no energy, no connector, plugs on banks that stay."""

from random import Random
from typing import Any

from small_kit import but, item, outing

from kitlog.outing.outing import Outing
from kitlog.packing.kit import Kit

WAYS = (
    "on",
    "map, screen on",
    "tracking, screen off",
    "flight mode",
    "low",
    "high",
    "transmit 5 W",
    "transmit 1 W",
    "off",
)
MOVING = ("wait at launch", "flight", "walk out", "ride home", "night")
DEVICES = ("phone", "radio", "gloves", "camera", "messenger")


def random_kit(pick: Random) -> Kit:
    """A few devices, up to four banks and three cables; all else that a flight needs is there."""
    kinds = {"phone": "phone", "radio": "radio", "gloves": "gloves", "camera": "camera", "messenger": "tracker"}
    serves = {"messenger": ("call for help",)}
    powered = [
        item(name, kind, 150, serves=serves.get(name, ()), battery=_cell(pick, ways=_ways(pick)))
        for name, kind in kinds.items()
    ]
    banks = [
        item(
            f"bank{number}",
            "power bank",
            pick.choice([None, 100, 300]),
            quantity=pick.choice([1, 1, 2, 0]),
            battery=_cell(pick, wh=pick.choice([None, 2, 10, 40])),
            bank={"ports": pick.choice([None, 0, 1, 2]), "rated_mah": pick.choice([None, None, 400, 10_000])},
        )
        for number in range(pick.randint(0, 4))
    ]
    ends = [f"{_connector(pick)} to {_connector(pick)}" for _ in range(pick.randint(0, 3))]
    cables = [
        item(f"cable{n}", "cable", pick.choice([None, 20]), battery={"connector": text}) for n, text in enumerate(ends)
    ]
    return but("phone", "radio", "gloves", instead=(*powered, *banks, *cables))


def random_outing(pick: Random, kit: Kit) -> Outing:
    """Up to four phases; plugs as usual, or any."""
    names = [one.id for one in kit.items if one.battery is not None]
    banks = [name for name in names if name.startswith("bank")]
    along = [name for name in names if pick.random() < 0.6]
    phases = [_phase(pick, number) for number in range(pick.randint(0, 4))]
    plugs = [
        {"phase": phase["name"], "device": device, "bank": pick.choice(banks), "connect_below_pct": below}
        for phase in phases
        for device in DEVICES
        for below in [pick.choice([None, None, 40.0])]
        if banks and pick.random() < 0.3
    ]
    return outing(
        phases=phases,
        plugs=plugs if pick.random() < 0.6 else None,
        pinned=along,
        left_out=[name for name in names if name not in along and pick.random() < 0.5],
        starts=[
            {"item": name, "low_pct": 20, "likely_pct": 60, "high_pct": 95} for name in names if pick.random() < 0.2
        ],
    )


def _phase(pick: Random, number: int) -> dict[str, Any]:
    hours = pick.choice([0.0, 0.5, 2.0, 4.0])
    return {
        "name": f"p{number}",
        "way": pick.choice(MOVING),
        "low_h": hours * pick.choice([0.5, 1]),
        "likely_h": hours,
        "high_h": hours * pick.choice([1, 2]),
        "air_c": pick.choice([None, -15.0, -2.0, 10.0, 25.0]),
    }


def _connector(pick: Random) -> str:
    return pick.choice(["", "USB-C", "micro-USB", "barrel"])


def _cell(pick: Random, **fields: Any) -> dict[str, Any]:
    cell = {
        "wh": pick.choice([None, 0, 1, 4, 20]),
        "connector": _connector(pick),
        "charge_max_w": pick.choice([None, 0, 2, 7]),
        "health_pct": pick.choice([None, 50, 100]),
        "cutoff_pct": pick.choice([None, 0, 5]),
        "place": pick.choice([None, None, "cockpit", "under the shell"]),
        "fixed_c": pick.choice([None, None, None, -10, 15]),
    }
    return {**cell, **fields}


def _ways(pick: Random) -> list[dict[str, Any]]:
    """Some ways of use; the shares in one way of moving come to no more than 1."""
    left = dict.fromkeys(MOVING, 1.0)
    ways = []
    for name in pick.sample(WAYS, pick.randint(0, 5)):
        shares = []
        for during in pick.sample(MOVING, pick.randint(0, 4)):
            share = min(left[during], pick.choice([1.0, 0.5, 0.1, 0.0]))
            left[during] -= share
            shares.append({"during": during, "share": share})
        watts = 0.0 if name == "off" else pick.choice([0.05, 0.3, 1.0, 2.5, 6.0])
        ways.append({"name": name, "power_w": watts, "basis": pick.choice(["guess", "measured"]), "shares": shares})
    return ways
