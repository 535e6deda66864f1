"""Columns of words from closed lists: kind, zone, state, how a mass was taken, layer of clothing."""

from collections.abc import Sequence
from enum import StrEnum

from kitlog.files.table.cells import Cell, text_of
from kitlog.files.table.choice_words import choice_of
from kitlog.files.table.column_reading import CellDoubt, ColumnReading
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.kind_words import is_broad, kind_of
from kitlog.files.table.remark import Remark
from kitlog.files.table.targets import Target
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.kit.kinds import ItemState, Kind

NOTHING_SAID = frozenset({"", "-", "–", "—", "?", "n/a"})
"""What a cell says that says nothing."""


def read_words(target: Target, cells: Sequence[Cell], answers: Answers, words: Vocabulary) -> ColumnReading:
    """The members that the words mean; what is not understood is told, and never stands for something good.

    A kind is then other, or open where the word is a broad category (the name may tell it); a zone, layer or weighing
    is left open; a state is doubtful, and *away* when such cells are to be left open, so that nothing counts on it.
    """
    stripped = {cell: text_of(cell).strip() for cell in dict.fromkeys(cells)}
    texts = [stripped[cell] for cell in cells]
    meant = {text: None if text in NOTHING_SAID else _member(target, text, words) for text in dict.fromkeys(texts)}
    lost = {
        text: _positions(texts, text) for text, member in meant.items() if member is None and text not in NOTHING_SAID
    }
    if target.name == "state":
        return _states(texts, meant, lost, answers)
    guesses: frozenset[int] = frozenset()
    if target.name == "kind":
        lost = {text: places for text, places in lost.items() if not is_broad(text, words)}
        meant |= dict.fromkeys(lost, Kind.OTHER)
        guesses = frozenset(at for places in lost.values() for at in places)
    code = "table.kind_other" if target.name == "kind" else "table.word_unknown"
    remarks = tuple(Remark(code, {"word": text, "at": positions}) for text, positions in lost.items())
    return ColumnReading(tuple(meant[text] for text in texts), guesses, remarks=remarks)


def _member(target: Target, text: str, words: Vocabulary) -> StrEnum | None:
    return kind_of(text, words) if target.name == "kind" else choice_of(target.name, text, words)


def _positions(texts: Sequence[str], wanted: str) -> tuple[int, ...]:
    return tuple(at for at, text in enumerate(texts) if text == wanted)


def _states(
    texts: Sequence[str], meant: dict[str, StrEnum | None], lost: dict[str, tuple[int, ...]], answers: Answers
) -> ColumnReading:
    emptied = bool(answers.to(Question.UNREAD))
    doubts = tuple(CellDoubt(at, Question.UNREAD, emptied=emptied) for places in lost.values() for at in places)
    values = tuple(ItemState.AWAY if text in lost and emptied else meant[text] for text in texts)
    unsaid = frozenset(doubt.at for doubt in doubts) if emptied else frozenset()
    return ColumnReading(values, unsaid, doubts=tuple(sorted(doubts, key=lambda doubt: doubt.at)))
