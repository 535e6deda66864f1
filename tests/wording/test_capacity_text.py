"""Energy in the cell and at the port, with the figure that says so.

31.45 Wh of 10,000 mAh at 3.7 V and 85 %: mAh x V / 1000 x efficiency, by hand.
"""

import pytest

from kitlog.kit.facets import Bank, Battery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.wording.capacity_text import capacity_text


def said(battery: Battery | None, bank: Bank | None = None, kind: Kind = Kind.POWER_BANK) -> str:
    item = Item(id="b", name="Bank", kind=kind, battery=battery, bank=bank)
    return capacity_text(item).replace("\u00a0", " ").replace("\u2009", ",")


@pytest.mark.parametrize(
    ("battery", "bank", "text"),
    [
        (Battery(mah=10_000, v=3.7), None, "10,000 mAh × 3.7 V = 37 Wh; 31.45 Wh at the port (85 %, usual)"),
        (
            Battery(wh=37),
            Bank(efficiency_pct=90),
            "37 Wh, as printed; 33.3 Wh at the port (90 %, given)",
        ),
        # 6,290 mAh at 5 V are 31.45 Wh; the loss is in it already: the cell holds 31.45 / 0.85 = 37 Wh.
        (
            None,
            Bank(rated_mah=6_290),
            "37 Wh, worked back from the port; 31.45 Wh at the port (85 %, usual; the label says 6,290 mAh × 5 V = 31.45 Wh)",
        ),
        # Both are printed: 30 of 37 Wh are 81 %.
        (
            Battery(wh=37),
            Bank(rated_mah=6_000),
            "37 Wh, as printed; 30 Wh at the port (81 %, as the label says: 6,000 mAh × 5 V = 30 Wh)",
        ),
        (Battery(mah=10_000), None, "not known: are the 10,000 mAh those of the cell, or of the 5 V port?"),
        (None, None, "not known"),
    ],
)
def test_a_bank(battery: Battery | None, bank: Bank | None, text: str) -> None:
    assert said(battery, bank) == text


def test_a_device_has_no_port() -> None:
    assert said(Battery(mah=4_400, v=3.85), kind=Kind.PHONE) == "4,400 mAh × 3.85 V = 16.94 Wh"
    assert said(Battery(mah=4_500), kind=Kind.PHONE) == "not known: mAh without volts"
