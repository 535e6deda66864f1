"""Limits and reasons of a fault in words: what is allowed, on which side, and why in brackets."""

import pytest

from kitlog.fault import InputFault, SystemFault
from kitlog.wording.faults import fault_text


@pytest.mark.parametrize(
    ("code", "facts", "said"),
    [
        ("csv.too_large", {"limit": 100.0, "inclusive": False, "upper": True}, "“100” is too large (below 100)"),
        ("csv.too_large", {"limit": 200_000, "inclusive": True, "upper": True}, "“100” is too large (at most 200000)"),
        ("csv.too_small", {"limit": 0.0, "inclusive": False, "upper": False}, "“100” is too small (above 0)"),
        ("day.out_of_range", {"day": "100"}, "“100” lies outside 1970 to 2100"),
    ],
)
def test_the_allowed_side_is_said_once(code: str, facts: dict[str, object], said: str) -> None:
    assert fault_text(InputFault(code, value="100", **facts)).what == said


def test_a_reason_stands_in_brackets_and_only_if_there_is_one() -> None:
    assert fault_text(SystemFault("data_file.damaged", path="x", reason="cut short")).what.endswith("(cut short)")
    assert fault_text(SystemFault("data_file.damaged", path="x")).what == "the file is damaged"


def test_a_comma_in_a_whole_number_gets_a_remedy_of_its_own() -> None:
    assert fault_text(InputFault("csv.decimal_comma", value="5,5", meant="", whole=True)).remedy == (
        "Write it without a comma."
    )
