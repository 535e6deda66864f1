from dataclasses import dataclass

import pytest

from kitlog.kit.called import called, plain_blanks, spelled


@dataclass(frozen=True)
class Thing:
    name: str


DAY = Thing("Outing of 26\u00a0Nov\u00a02026")
RIDGE, SHOUTED, OTHER = Thing("Ridge"), Thing("RIDGE"), Thing("Bank small")
ALL = (DAY, RIDGE, SHOUTED, OTHER)


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("Outing of 26 Nov 2026", (DAY,)),
        ("Outing of 26\u00a0Nov\u00a02026", (DAY,)),
        ("Outing of 26\u202fNov\u20092026", (DAY,)),
        (" outing  of 26 nov 2026 ", (DAY,)),
        ("Ridge", (RIDGE,)),
        ("ridge", (RIDGE, SHOUTED)),
        ("bank SMALL", (OTHER,)),
        ("bank", ()),
        ("", ()),
    ],
)
def test_a_name_is_found_whatever_blanks_and_capitals_are_typed(typed, found):
    assert called(ALL, typed) == found


def test_what_is_spelled_alike_has_the_same_capitals():
    assert spelled(ALL, "Outing of 26 Nov 2026") == (DAY,)
    assert spelled(ALL, "outing of 26 nov 2026") == ()


def test_a_name_as_written_goes_before_one_with_other_blanks():
    plain = Thing(plain_blanks(DAY.name))
    assert called((DAY, plain), plain.name) == (plain,)
    assert called((DAY, plain), DAY.name) == (DAY,)
