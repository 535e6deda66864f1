from kitlog.kit.item import Item
from kitlog.kit.meeting import Identity, meetings


def item(item_id: str, name: str = "Phone", **fields: object) -> Item:
    return Item.model_validate({"id": item_id, "name": name, **fields})


def met(incoming: list[Identity], kit: list[Item]) -> list[tuple[str, bool] | None]:
    return [one and (one.item.id, one.sure) for one in meetings(incoming, kit)]


def test_another_name_is_another_thing() -> None:
    assert met([Identity("Radio")], [item("1")]) == [None]


def test_case_and_blanks_of_a_name_do_not_count() -> None:
    assert met([Identity("action  CAMERA")], [item("1", "Action camera")]) == [("1", True)]


def test_a_blank_contradicts_nothing_but_another_serial_does() -> None:
    kit = [item("1", maker="Hollin", serial="A1")]
    assert met([Identity("Phone")], kit) == [("1", True)]
    assert met([Identity("Phone", "Hollin", "", "A2")], kit) == [None]


def test_each_item_is_met_once() -> None:
    assert met([Identity("Phone"), Identity("Phone")], [item("1")]) == [("1", True), None]


def test_serials_tell_namesakes_apart_whatever_the_order() -> None:
    kit = [item("1", serial="A"), item("2", serial="B")]
    assert met([Identity("Phone", serial="B"), Identity("Phone", serial="A")], kit) == [("2", True), ("1", True)]


def test_a_row_that_could_be_either_is_unsure() -> None:
    kit = [item("1", serial="A"), item("2", serial="B")]
    assert met([Identity("Phone")], kit) == [("1", False)]
    assert met([Identity("Phone"), Identity("Phone")], kit) == [("1", False), ("2", True)]


def test_as_many_rows_as_items_alike_in_all_four_pair_in_order() -> None:
    kit = [item("1", mass_g=100), item("2", mass_g=200)]
    assert met([Identity("Phone"), Identity("Phone")], kit) == [("1", True), ("2", True)]
    assert met([Identity("Phone")], kit) == [("1", False)]


def test_twins_are_interchangeable() -> None:
    assert met([Identity("Phone")], [item("1"), item("2")]) == [("1", True)]


def test_the_row_that_says_more_goes_first() -> None:
    kit = [item("1", maker="Hollin", serial="A")]
    assert met([Identity("Phone"), Identity("Phone", "Hollin")], kit) == [None, ("1", True)]


def test_how_an_accent_is_composed_does_not_count() -> None:
    """Unicode Standard Annex 15: composed and decomposed letters are canonically equivalent."""
    assert met([Identity("Sto\u0308cke", serial="E\u0301 1")], [item("1", "Stöcke", serial="É 1")]) == [("1", True)]
