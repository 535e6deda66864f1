"""What is wrong with single plugs, said of each."""

from small_kit import item

from kitlog.kit.item import Item
from kitlog.outing.outing import PlugPlan
from kitlog.packing.plug_checks import PlugTrouble, plug_checks


def phone(name: str = "phone", **battery: object) -> Item:
    return item(name, "phone", battery={"wh": 17, "charge_max_w": 7, "connector": "USB-C"} | battery)


def bank(ports: int | None = 1) -> Item:
    more = {} if ports is None else {"ports": ports}
    return item("bank", "power bank", battery={"wh": 38, "connector": "USB-A"}, bank=more)


def cable(text: str = "USB-A to USB-C") -> Item:
    return item("cable", "cable", battery={"connector": text})


def plug(device: str = "phone", phase: str = "walk", **more: float) -> PlugPlan:
    return PlugPlan(phase=phase, device=device, bank="bank", **more)


def troubles(plugs: list[PlugPlan], *along: Item) -> dict[tuple[str, str], list[PlugTrouble]]:
    found: dict[tuple[str, str], list[PlugTrouble]] = {}
    for check in plug_checks(plugs, along):
        found.setdefault((check.plug.device, check.plug.phase), []).append(check.trouble)
    return found


def test_a_phone_with_its_cable_is_no_trouble() -> None:
    assert troubles([plug()], phone(), bank(), cable()) == {}


def test_more_devices_than_ports_in_that_phase_alone() -> None:
    two, more = [plug(), plug("second")], [cable(), cable().model_copy(update={"id": "cable 2"})]
    found = troubles([*two, plug(phase="ride")], phone(), phone("second"), bank(), *more)
    assert found == {("phone", "walk"): [PlugTrouble.PORTS], ("second", "walk"): [PlugTrouble.PORTS]}
    assert troubles(two, phone(), phone("second"), bank(2), *more) == {}


def test_ports_that_are_not_known_are_one() -> None:
    more = [cable(), cable().model_copy(update={"id": "cable 2"})]
    found = troubles([plug(), plug("second")], phone(), phone("second"), bank(None), *more)
    assert set(map(tuple, found.values())) == {(PlugTrouble.PORTS_NOT_KNOWN,)}
    assert troubles([plug()], phone(), bank(None), cable()) == {}


def test_cables() -> None:
    assert troubles([plug()], phone(), bank())["phone", "walk"] == [PlugTrouble.CABLE_MISSING]
    assert troubles([plug()], phone(), bank(), cable("USB-A to micro-USB"))["phone", "walk"] == [
        PlugTrouble.CABLE_MISSING
    ]
    assert troubles([plug()], phone(connector=""), bank(), cable())["phone", "walk"] == [PlugTrouble.CABLE_NOT_KNOWN]
    both = troubles([plug(), plug("second")], phone(), phone("second"), bank(2), cable())
    assert list(both.values()) == [[PlugTrouble.CABLES_SHORT]]


def test_what_cannot_be_charged_gains_nothing() -> None:
    assert troubles([plug()], phone(charge_max_w=None), bank(), cable())["phone", "walk"] == [PlugTrouble.NOT_CHARGED]


def test_charging_that_ends_before_it_begins_comes_first() -> None:
    found = troubles([plug(connect_below_pct=60.0, charge_to_pct=60.0)], phone(), bank())
    assert found["phone", "walk"] == [PlugTrouble.ENDS_FIRST, PlugTrouble.CABLE_MISSING]


def test_what_stays_at_home_says_nothing() -> None:
    assert troubles([plug()], phone()) == {}
