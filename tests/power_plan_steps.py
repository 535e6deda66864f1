"""Steps that the tests of the power plan share: a kit whose draws are known here, its pages, saving."""

from collections.abc import Callable
from typing import Any

from desk_steps import item_named, outing_of
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from kitlog.desktop.outing_page.device_plan import DevicePlan
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.kit.facets import Bank, Battery, WayOfUse
from kitlog.kit.item import Item
from kitlog.outing.outing import Outing
from kitlog.workbench.workbench import Workbench

Open = Callable[[], PowerPlan]

PHONE, RADIO, BANK, GLOVES = "Phone", "Handheld radio", "Power bank", "Heated gloves"
FLIGHT = 1
"""The flight is the second phase of the first outing of the demo."""


def _way(name: str, low_w: float, power_w: float, high_w: float, basis: str, **during: float) -> WayOfUse:
    shares = [{"during": way.replace("_", " "), "share": share} for way, share in during.items()]
    known: dict[str, Any] = {"name": name, "low_w": low_w, "power_w": power_w, "high_w": high_w, "basis": basis}
    return WayOfUse.model_validate(known | {"shares": shares})


WAYS = {
    PHONE: (
        _way("at launch", 0.6, 0.6, 0.6, "measured", wait_at_launch=1),
        _way("flight, screen off", 1.1, 1.1, 1.1, "measured", flight=1),
        _way("flight, screen on", 2.3, 2.7, 3.1, "starter"),
        _way("on the ground", 0.9, 0.9, 0.9, "measured", walk_out=1, ride_home=1),
    ),
    RADIO: (
        _way("transmit 5 W", 10.0, 10.0, 10.0, "maker", flight=0.05),
        _way("receive", 1.0, 1.0, 1.0, "maker", flight=0.05),
        _way("standby", 0.3, 0.3, 0.3, "maker", flight=0.9),
    ),
    GLOVES: (_way("medium", 4.0, 4.0, 4.0, "guess", flight=1), _way("high", 8.0, 8.0, 8.0, "guess")),
}
"""Ways of use with draws in W, invented."""


def known_kit(bench: Workbench) -> None:
    """Give the demo's devices these ways of use, and its first outing nothing planned of its power."""
    work = [item_named(bench, name) for name in WAYS]
    batteries = {
        PHONE: {"charge_max_w": 7.0, "connector": "USB-C", "on_hand_pct": None, "on_hand_at": None},
        RADIO: {"charge_max_w": 5.0, "connector": "USB-C"},
        GLOVES: {"charge_max_w": None},
    }
    changed = [with_battery(item, ways=WAYS[item.name], **batteries[item.name]) for item in work]
    bank = with_battery(item_named(bench, BANK), connector="USB-C").model_copy(update={"bank": Bank(ports=1)})
    bench.edit_items([*changed, bank])
    plain_plan = {"uses": (), "plugs": (), "starts": (), "conditions": {}}
    bench.save_outing(outing_of(bench).model_copy(update=plain_plan))


def with_battery(item: Item, **update: object) -> Item:
    """The item with other figures of its battery."""
    battery = (item.battery or Battery()).model_copy(update=update)
    return item.model_copy(update={"battery": battery})


def page_of(dialog: PowerPlan, name: str) -> DevicePlan:
    """Turn to the page of a device or bank."""
    thing = next(thing for thing in dialog.pages.things if thing.name == name)
    dialog.pages.choose(thing.id)
    return dialog.pages.page(thing)


def plain(text: str) -> str:
    """A text with plain spaces."""
    return text.replace("\u00a0", " ")


def row_text(dialog: PowerPlan, name: str) -> str:
    """What the list says of a device."""
    at = [thing.name for thing in dialog.pages.things].index(name)
    return dialog.pages.list.item(at).text().split("\n")[1]


def kept(dialog: PowerPlan, bench: Workbench) -> Outing:
    """Save, and give the outing as it then is."""
    dialog.look()
    QTest.mouseClick(dialog.main, Qt.MouseButton.LeftButton)
    assert not dialog.isVisible(), (dialog.reason.text(), dialog.wrong())
    return outing_of(bench)
