import re

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.wording.words import first_upper


@pytest.mark.parametrize(
    ("text", "said"), [("mass not known", "Mass not known"), ("mAh without volts", "mAh without volts"), ("", "")]
)
def test_a_sentence_begins_with_a_capital_and_a_unit_as_it_is_written(text: str, said: str) -> None:
    assert first_upper(text) == said


def test_sources_of_the_library_say_in_words_how_good_they_are() -> None:
    library = load_library(resources_folder())
    sources = [use.source for use in library.starter_uses] + [place.source for place in library.places]
    sources += [library.air_travel.source, library.air_travel.banks_source]
    sources += [text for rule in library.starter_rules for text in (rule.source, rule.spread)]
    sources += [incident.source for incident in library.incidents]
    assert len(sources) > 100
    assert [source for source in sources if re.search(r"\([A-Z](, [A-Z])*\)", source)] == []
