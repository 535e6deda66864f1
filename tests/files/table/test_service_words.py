"""Headings about checks and packing. The words are common practice of pilots' lists, no source."""

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.headings import meaning_of
from kitlog.files.table.service_words import is_of_service
from kitlog.files.table.vocabulary import load_vocabulary

WORDS = load_vocabulary(resources_folder())

OF_SERVICE = (
    "Last check, letzte Kontrolle, nächster Check, Nächste Prüfung fällig am, dernier pliage, Next repack, Check, "
    "Prochaine révision, Date du dernier contrôle, Retter gepackt am, Reserve packed, Service due, Packintervall, "
    "Check-Datum (TT.MM.JJJJ), Line check, Wartung, Check bis, repack due, Naechster Check"
)
OTHERS = (
    "Last flight, Gekauft am, Packed volume, Packing list, Check box, Service hotline, Datum, Date, Zustand, , Packsack"
)


@pytest.mark.parametrize("heading", [heading.strip() for heading in OF_SERVICE.split(",")])
def test_a_heading_of_service_is_told(heading: str) -> None:
    assert is_of_service(heading, WORDS)
    assert meaning_of(heading, WORDS) is None


@pytest.mark.parametrize("heading", [heading.strip() for heading in OTHERS.split(",")])
def test_any_other_heading_is_not(heading: str) -> None:
    assert not is_of_service(heading, WORDS)
