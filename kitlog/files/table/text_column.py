"""Columns of texts: names, makers, serial numbers, notes, names joined by a mark."""

import re
from collections.abc import Sequence

from kitlog.fault import InputFault
from kitlog.files.csv_forms import SEVERAL
from kitlog.files.csv_formula import undefuse
from kitlog.files.table.cells import Cell, text_of
from kitlog.files.table.column_reading import CellDoubt, ColumnReading
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.targets import Target, Way
from kitlog.units.text import unfit_character

_SUSPECT = re.compile("[\0-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\u2028\u2029]")
_BREAKS = re.compile(r"\s*[\r\n\t]+\s*")
_BLANKS = " \u00a0\u2007\u202f\ufeff\u200b\t\r\n"
_CAREFUL = frozenset({"", " ", "'"})
"""First letters that need a closer look: none, a blank, an apostrophe before a formula."""
_NOTHING = frozenset(
    {
        *("-", "--", "---", "–", "—", "…", "...", "?", "??", "???"),
        *("n/a", "N/A", "#N/A", "n.a.", "N.A.", "n. a.", "k.A.", "k. A.", "k.a.", "K.A.", "tbd", "TBD"),
        *("unbekannt", "Unbekannt", "unknown", "Unknown", "inconnu", "Inconnu", "inconnue", "Inconnue"),
    }
)
"""Cells that say no maker, model, serial number or the like; a name and a note are left as they stand."""
_JOINED = re.compile(r"\s*[+;,/]\s*|\s*\n\s*")


def read_texts(target: Target, cells: Sequence[Cell], answers: Answers, *, own: bool) -> ColumnReading:
    """The texts, notes as they are, others without blanks around; characters that nobody can see make a doubt.

    In kitlog's own form (`own`) only its own mark joins names.
    """
    texts = [cell if isinstance(cell, str) else text_of(cell) for cell in cells]
    meant: dict[str, object] = {text: text for text in texts}
    careful = (
        list(meant)
        if target.way is Way.SEVERAL
        else [text for text in meant if text[:1] in _CAREFUL or text[-1:] == " " or not text.isprintable()]
    )
    unread = set()
    for text in careful:
        try:
            meant[text] = _value(target, text, own=own) if text else None
        except InputFault:
            meant[text] = None
            unread.add(text)
    nothing = meant.keys() & _NOTHING if target.way is Way.TEXT and target.name != "name" and not own else set()
    meant |= dict.fromkeys(nothing)
    values = tuple([meant[text] for text in texts]) if careful or nothing else tuple(texts)
    emptied = bool(answers.to(Question.UNREAD))
    doubts = [CellDoubt(at, Question.UNREAD, emptied=emptied) for at, text in enumerate(texts) if text in unread]
    return ColumnReading(values, doubts=tuple(doubts))


def _value(target: Target, text: str, *, own: bool) -> object:
    if target.way is Way.NOTE:
        note = undefuse(text)
        _refuse_unseen(note, breaks=True)
        return note if own or note.strip(_BLANKS) else None
    cell = text.strip() if own else text.strip(_BLANKS)
    if _SUSPECT.search(cell):
        cell = cell if target.way is Way.SEVERAL else _BREAKS.sub(" ", cell)
        _refuse_unseen(cell, breaks=target.way is Way.SEVERAL)
    if target.way is Way.SEVERAL:
        return (_several(cell, own=own) or None) if cell else None
    return undefuse(cell) or None


def _refuse_unseen(text: str, *, breaks: bool) -> None:
    character = unfit_character(text.replace("\r\n", "\n").replace("\r", "\n"), breaks=breaks)
    if character is not None:
        raise InputFault("text.unfit_character", character=character)


def _several(line: str, *, own: bool) -> tuple[str, ...]:
    """Parts joined by our own mark, else by the marks that people use."""
    if own or "+" in line:
        parts = SEVERAL.read(line)
        return tuple(str(part) for part in parts) if isinstance(parts, tuple) else ()
    return tuple(part for part in _JOINED.split(undefuse(line)) if part)
