"""The list that an insurer asks for."""

from datetime import date

from small_kit import item

from kitlog.kit.inventory import inventory

TODAY = date(2026, 5, 8)
KIT = (
    item("vario", "instrument", value=250.0),
    item("wing", "wing", value=4_000.5),
    item("old wing", "wing", state="retired", value=900.0),
    item("gas", "food", quantity=0),
    item("reserve", "reserve", state="borrowed", value=700.0),
    item("radio", "radio", belongs_to="the club", value=80.0),
    item("phone", "phone"),
    item("stolen", "camera", state="lost", value=300.0),
)


def names(items: object) -> list[str]:
    return [one.name for one in items]  # type: ignore[attr-defined]


def test_by_kind_with_what_belongs_to_others_apart_and_not_in_the_sum() -> None:
    listed = inventory(KIT, TODAY, "Ines")
    assert names(listed.own) == ["wing", "vario", "phone", "stolen"]
    assert names(listed.others) == ["reserve", "radio"]
    assert listed.value == 4_550.5
    assert names(listed.without_value) == ["phone"]
    assert listed.left_out == 2


def test_without_any_value_the_sum_is_not_known() -> None:
    assert (
        inventory([item("phone", "phone"), item("reserve", "reserve", state="borrowed", value=700.0)], TODAY).value
        is None
    )
    assert inventory([item("phone", "phone", value=0.0), item("wing", "wing")], TODAY).value == 0.0


def test_retired_and_used_up_ones_where_they_are_asked_for() -> None:
    listed = inventory(KIT, TODAY, retired=True)
    assert (len(listed.items), listed.left_out) == (len(KIT), 0)
    only = inventory(KIT, TODAY, only={"old wing", "vario"})
    assert (names(only.own), only.left_out) == (["old wing", "vario"], 0)
