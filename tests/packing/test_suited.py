import pytest
from scenario import EVENING, HISTORY, KIT, LIBRARY, O2

from kitlog.outing.needs import Need
from kitlog.packing import suited as module
from kitlog.packing.assess import assess
from kitlog.packing.serving import meets
from kitlog.packing.suited import Suited

NEEDS = (*LIBRARY.base, *LIBRARY.overlays, *(need for kind in LIBRARY.flight_types for need in kind.needs))


@pytest.mark.parametrize("need", NEEDS, ids=lambda need: need.id)
def test_finds_what_meets_the_need_in_the_order_of_the_kit(need: Need) -> None:
    found = Suited(KIT.items, LIBRARY).to(need)
    assert list(found.values()) == [item for item in KIT.items if meets(item, need, LIBRARY)]


def test_an_assessment_with_all_its_trials_asks_once_for_each_item(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []
    real = module.serving
    monkeypatch.setattr(module, "serving", lambda item, library: asked.append(item.id) or real(item, library))
    assert any(finding.remedies for finding in assess(O2, KIT, LIBRARY, HISTORY, EVENING).findings)
    assert asked == [item.id for item in KIT.items]
