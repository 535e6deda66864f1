import pytest
from scenario import EVENING, judged, of_code, stops, the
from small_kit import NEW, outing, plus

from kitlog.budget.result import State
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment

FELLOW = {"name": "Leda", "role": "fellow pilot"}


def contact(name: str = "Jorun", *, told: bool = False) -> dict[str, object]:
    return {"name": name, "role": "contact", "told_at": EVENING if told else None}


def assessed(*people: dict[str, object], **fields: object) -> Assessment:
    plan: Outing = outing(people=list(people), **fields)
    return judged(plan, plus(), NEW)


class TestContact:
    @pytest.mark.parametrize("people", [(), (FELLOW,), ({"name": "T", "role": "driver"},)])
    def test_nobody_named_is_a_stop(self, people: tuple[dict[str, object], ...]) -> None:
        assessment = assessed(*people)
        finding = the(assessment, "people.missing", "contact")
        assert finding.state is State.STOP
        assert [(r.code, r.facts["role"]) for r in finding.remedies] == [("name_person", "contact")]

    def test_nobody_told_is_a_stop_while_alone(self) -> None:
        assert "people.nobody_told" in stops(assessed(contact()))

    def test_nobody_told_is_a_look_in_company(self) -> None:
        assert the(assessed(contact(), FELLOW), "people.nobody_told").state is State.LOOK

    def test_alone_can_be_ticked(self) -> None:
        ticked = {"water": False, "no signal": False, "forest": False, "airspace": False, "alone": True}
        assert "people.nobody_told" in stops(assessed(contact(), FELLOW, conditions=ticked))

    @pytest.mark.parametrize("others", [(), (FELLOW,)])
    def test_one_who_knows_is_enough(self, others: tuple[dict[str, object], ...]) -> None:
        assessment = assessed(contact("A"), contact("B", told=True), *others)
        told = the(assessment, "people.told")
        assert (told.state, told.facts["names"]) == (State.FINE, ("B",))
        assert not of_code(assessment, "people.nobody_told")

    def test_who_is_to_be_told_is_named(self) -> None:
        (tell,) = the(assessed(contact("A"), contact("B")), "people.nobody_told").remedies
        assert (tell.code, tell.facts["name"]) == ("tell_contact", "A")

    def test_a_fellow_pilot_who_was_told_is_no_contact(self) -> None:
        assert of_code(assessed(contact(), {**FELLOW, "told_at": EVENING}), "people.nobody_told")


class TestOthers:
    def test_a_boat_is_essential_on_a_course(self) -> None:
        without = assessed(contact(told=True), FELLOW, flight_types=["over-water course"])
        assert "people.missing:rescue boat" in stops(without)
        boat = {"name": "Pell", "role": "boat crew"}
        assert "people.missing:rescue boat" not in stops(assessed(contact(), boat, flight_types=["over-water course"]))

    def test_a_helper_on_the_coast_is_advised_and_essential_over_water(self) -> None:
        dry = assessed(contact(told=True), FELLOW, flight_types=["coast"])
        assert the(dry, "people.missing", "ground helper").state is State.LOOK
        wet = {"water": True, "no signal": False, "forest": False, "airspace": False}
        assert "people.missing:ground helper" in stops(
            assessed(contact(), FELLOW, flight_types=["coast"], conditions=wet)
        )
