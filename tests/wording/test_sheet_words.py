"""What stands at the head of text, phone page and paper; and that the JSON says the same."""

from scenario import LIBRARY, NAMES, O1, changed, judged

from kitlog.files.assessment_json import assessment_json
from kitlog.wording.repack_text import repack_text
from kitlog.wording.sheet_words import ticked_text, what_and_where


def test_what_was_ticked_yes_stands_at_the_head() -> None:
    by_air = changed(O1, conditions={"by air": True, "forest": False})
    assert ticked_text(by_air) == "by air"
    assert what_and_where(judged(by_air), LIBRARY).endswith(", ticked: by air")
    head = " ".join(repack_text(judged(by_air), NAMES, LIBRARY).split("\n\n")[0].split())
    assert head.endswith("ticked: by air")
    conditions = assessment_json(judged(by_air), NAMES)["conditions"]
    assert (conditions["by air"], conditions["forest"]) == ("yes", "no")


def test_nothing_ticked_says_nothing() -> None:
    plain = changed(O1, conditions={})
    assert "ticked" not in what_and_where(judged(plain), LIBRARY)
    assert assessment_json(judged(plain), NAMES)["conditions"]["by air"] == "no"
