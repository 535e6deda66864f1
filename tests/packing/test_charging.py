from scenario import KIT, O1, changed, judged, with_item

from kitlog.kit.kinds import Kind
from kitlog.packing.charging import charges


def by_name(assessment):
    return {charge.item.name: charge for charge in charges(assessment)}


def test_banks_come_first_and_all_devices_follow() -> None:
    found = charges(judged(O1))
    assert found[0].item.name == "Power bank"
    assert [charge.is_bank for charge in found] == [True] + [False] * (len(found) - 1)
    assert {charge.item.name for charge in found} >= {"Phone", "Handheld radio", "Satellite messenger", "Headlamp"}
    assert "Locator beacon" not in {charge.item.name for charge in found}


def test_how_long_it_lasts() -> None:
    """Charges at the end of the demo day: computed once with an independent integrator, within 0.2 per cent."""
    phone = by_name(judged(O1))["Phone"]
    assert (phone.likely.reckoned, phone.likely.first_off_h) == (True, None)
    gloves = by_name(judged(O1))["Heated gloves"]
    assert gloves.likely.first_off_h is not None


def test_a_battery_without_figures_is_not_known() -> None:
    kit = with_item("Phone", battery=None)
    phone = by_name(judged(O1, kit))["Phone"]
    assert (phone.unknown, phone.likely.reckoned) == (True, False)


def test_a_plan_without_durations_knows_nothing() -> None:
    found = charges(judged(changed(O1, phases=[])))
    assert all(charge.unknown and not charge.likely.reckoned for charge in found)


def test_what_stays_in_the_car_is_not_charged_for_the_day() -> None:
    pins = [{"item": pin.item} for pin in O1.pinned]
    phone = next(charge.item.id for charge in charges(judged(O1)) if charge.item.name == "Phone")
    pins = [pin | ({"zone": "left in the car"} if pin["item"] == phone else {}) for pin in pins]
    assert "Phone" not in by_name(judged(changed(O1, pinned=pins)))


def test_a_cable_whose_ends_are_known_is_not_charged() -> None:
    cables = {item.name: item.battery for item in KIT.items if item.kind is Kind.CABLE}
    assert any(battery and battery.connector for battery in cables.values())
    assert not cables.keys() & by_name(judged(O1)).keys()
