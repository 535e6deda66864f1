"""Everything that an import can show has words."""

from kitlog.files.table.doubt import CHOICES, EMPTY
from kitlog.files.table.targets import TARGETS
from kitlog.wording.import_words import FIELD_GROUPS, FIELDS, answer_text, asked_text, cells_text, field_word, open_text


def test_every_field_stands_once_in_a_group() -> None:
    listed = [name for _group, fields in FIELD_GROUPS for name, _words in fields]
    assert sorted(listed) == sorted(TARGETS)
    assert set(listed) == FIELDS


def test_no_two_fields_have_the_same_words() -> None:
    words = [field_word(name).casefold() for name in ("", *TARGETS)]
    assert len(set(words)) == len(words)


def test_every_question_and_every_answer_has_words() -> None:
    for question, answers in CHOICES.items():
        assert asked_text(question.value).endswith(("?", "."))
        said = [answer_text(question.value, answer) for answer in (*answers, EMPTY)]
        assert len(set(said)) == len(said)


def test_counts_agree_with_their_words() -> None:
    assert cells_text(1, "row 3") == "1 cell, row 3"
    assert cells_text(2, "rows 3, 4") == "2 cells, rows 3, 4"
    assert open_text(0) == "all answered"
    assert open_text(3) == "3 open"
