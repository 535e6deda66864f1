import pytest
from scenario import IDS, KIT, LIBRARY, O1, changed, judged
from small_kit import NEW, item, outing, plus

from kitlog.fault import InputFault
from kitlog.outing.outing import Outing
from kitlog.packing.kit import Kit
from kitlog.packing.naming import refuse_unknown, with_ids


def refused(plan: Outing, **fields: object) -> InputFault:
    with pytest.raises(InputFault) as fault:
        judged(changed(plan, **fields), plus(), NEW)
    return fault.value


class TestNames:
    def test_names_become_ids(self) -> None:
        plan = changed(
            O1,
            set={"wing": "Wing A", "helmet": IDS["Helmet B"]},
            pinned=["Phone", {"item": IDS["Boots"], "zone": "worn"}],
            left_out=["Boots"],
            uses=[{"item": "Phone", "phase": "flight", "way": "flight, screen on", "share": 1.0}],
            plugs=[{"phase": "flight", "device": "Phone", "bank": "Power bank"}],
        )
        named = with_ids(plan, KIT.items)
        assert (named.set.wing, named.set.helmet) == (IDS["Wing A"], IDS["Helmet B"])
        assert [pin.item for pin in named.pinned] == [IDS["Phone"], IDS["Boots"]]
        assert named.left_out == (IDS["Boots"],)
        assert named.uses[0].item == IDS["Phone"]
        assert named.plugs is not None
        assert (named.plugs[0].device, named.plugs[0].bank) == (IDS["Phone"], IDS["Power bank"])

    def test_names_are_found_whatever_blanks_and_capitals_are_typed(self) -> None:
        plan = changed(O1, left_out=["power\u00a0BANK"], pinned=["phone"])
        named = with_ids(plan, KIT.items)
        assert (named.left_out, named.pinned[0].item) == ((IDS["Power bank"],), IDS["Phone"])

    def test_twice_is_the_same(self) -> None:
        once = with_ids(O1, KIT.items)
        assert with_ids(once, KIT.items) == once

    def test_an_id_goes_before_a_name(self) -> None:
        first, second = item("a"), item("b").model_copy(update={"name": "a"})
        assert with_ids(outing(pinned=["a"]), [first, second]).pinned[0].item == "a"


class TestRefusals:
    @pytest.mark.parametrize(
        ("fields", "field"),
        [
            ({"pinned": ["kite"]}, "pinned.item"),
            ({"left_out": ["kite"]}, "left_out"),
            ({"set": {"wing": "kite"}}, "set.wing"),
            ({"uses": [{"item": "kite", "phase": "x", "way": "y", "share": 1.0}]}, "uses.item"),
            ({"plugs": [{"phase": "x", "device": "kite", "bank": "phone"}]}, "plugs.device"),
            ({"plugs": [{"phase": "x", "device": "phone", "bank": "kite"}]}, "plugs.bank"),
        ],
    )
    def test_an_unknown_item_is_named_with_its_field(self, fields: dict[str, object], field: str) -> None:
        fault = refused(outing(), **fields)
        assert (fault.code, fault.facts["name"], fault.facts["field"]) == ("outing.unknown_item", "kite", field)

    def test_a_name_that_two_items_bear_is_ambiguous(self) -> None:
        with pytest.raises(InputFault) as fault:
            judged(outing(pinned=["flask"]), _twins(), NEW)
        assert (fault.value.code, fault.value.facts["count"]) == ("outing.ambiguous_item", 2)

    def test_twins_that_nobody_names_are_no_trouble(self) -> None:
        assert judged(outing(), _twins(), NEW).lines

    def test_an_unknown_flight_type_is_told_with_those_there_are(self) -> None:
        fault = refused(outing(), flight_types=["ridge", "moon flight"])
        assert (fault.code, fault.facts["name"]) == ("outing.unknown_flight_type", "moon flight")
        known = fault.facts["known"]
        assert isinstance(known, tuple)
        assert "ridge" in known


def _twins() -> Kit:
    flask = item("flask", "vessel", 50)
    return plus(*(flask.model_copy(update={"id": f"flask {n}"}) for n in (1, 2)))


class TestUnknownNames:
    def told(self, **fields: object) -> InputFault:
        with pytest.raises(InputFault) as fault:
            refuse_unknown(changed(outing(), **fields), LIBRARY)
        return fault.value

    def test_a_phase_that_there_is_not_is_told_with_those_there_are(self) -> None:
        plug = {"phase": "flihgt", "device": "phone", "bank": "bank"}
        fault = self.told(phases=[{"way": "flight", "likely_h": 1}], plugs=[plug])
        assert (fault.code, fault.facts["name"], fault.facts["known"]) == (
            "outing.unknown_phase",
            "flihgt",
            ("flight",),
        )
        assert self.told(phases=[], plugs=[plug]).code == "outing.no_phases"

    def test_a_check_that_there_is_not_is_told_with_those_alike(self) -> None:
        fault = self.told(answers=[{"check": "am.wether", "value": "x", "at": "2026-05-09T06:00:00Z"}])
        assert fault.code == "outing.unknown_check"
        assert fault.facts["known"][0] == "am.weather"
        assert len(fault.facts["known"]) < len(LIBRARY.checks)

    def test_every_check_of_the_library_can_be_answered(self) -> None:
        answers = [{"check": check.id, "value": "x", "at": "2026-05-09T06:00:00Z"} for check in LIBRARY.checks]
        refuse_unknown(changed(outing(), answers=answers), LIBRARY)

    def test_what_has_gone_from_the_library_is_assessed_all_the_same(self) -> None:
        answers = [{"check": "gone", "value": "x", "at": "2026-05-09T06:00:00Z"}]
        assert judged(changed(outing(), answers=answers), plus(), NEW).lines
