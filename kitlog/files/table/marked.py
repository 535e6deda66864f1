"""Columns of numbers: what the cells prove about the decimal mark, and what it decides for the doubtful ones."""

from collections import Counter
from collections.abc import Callable, Hashable, Mapping, Sequence
from typing import TypeVar

from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.reading import Read, gathered
from kitlog.files.table.remark import Remark

Key = TypeVar("Key", bound=Hashable)

Plain = tuple[object, str, bool]
"""Value of a plain cell, the decimal mark that it proves (empty if none), and whether because the model cannot hold the
other reading."""

Quick = Callable[[Key], Plain | None]
"""How a plain cell is read; None for one that needs a careful look."""


def read_marked(
    keys: Sequence[Key],
    quick: Quick[Key],
    careful: Callable[[Key], Read],
    text_of: Callable[[Key], str],
    answers: Answers,
) -> ColumnReading:
    """Read a column of numbers, each different cell once.

    The cells that can be written with one decimal mark only prove it for the others, and so do those whose other
    reading the model cannot hold. If they agree, the mark is decided, and a remark says so; if they do not, or if there
    are none, the doubtful cells stay doubtful until an answer settles them.

    `keys` are the cells, with whatever belongs to each; `text_of` gives the text of one for the remark.
    """
    plain: dict[Key, object] = {}
    reads: dict[Key, Read] = {}
    proofs: dict[str, Key] = {}
    beyond: dict[Key, str] = {}
    for key in dict.fromkeys(keys):
        found = quick(key)
        if found is None:
            reads[key] = careful(key)
            continue
        plain[key], mark, impossible = found
        if impossible:
            beyond[key] = mark
        elif mark:
            proofs.setdefault(mark, key)
    remarks = _decide(keys, plain, reads, proofs, beyond, careful, text_of) if reads or beyond else []
    return gathered(keys, plain, reads, answers, remarks)


def _decide(
    keys: Sequence[Key],
    plain: dict[Key, object],
    reads: dict[Key, Read],
    proofs: dict[str, Key],
    beyond: dict[Key, str],
    careful: Callable[[Key], Read],
    text_of: Callable[[Key], str],
) -> list[Remark]:
    """Settle what the proofs decide, in place, and say so; where they contradict each other, nothing is decided."""
    for key, read in reads.items():
        if read.impossible:
            beyond[key] = read.mark
        elif read.mark:
            proofs.setdefault(read.mark, key)
    marks = {*proofs, *beyond.values()}
    if len(marks) != 1:
        for key, mark in beyond.items():
            plain.pop(key, None)
            reads[key] = _only_possible(reads.get(key) or careful(key), mark, text_of(key))
        return []
    decided = beyond | _settle(reads, next(iter(marks)))
    return _remarks(keys, decided, proofs, beyond, text_of) if decided else []


def _only_possible(read: Read, mark: str, text: str) -> Read:
    """A cell that can only be meant with a mark which others contradict: asked about all the same, with what it says.

    Both readings are told, and the impossible one cannot be chosen.
    """
    readings = read.readings or {mark: text}
    return Read(rough=read.rough, question=Question.DECIMAL, choices={mark: read.value}, readings=readings)


def _settle(reads: dict[Key, Read], mark: str) -> dict[Key, str]:
    open_ones = {key: read for key, read in reads.items() if read.question is Question.DECIMAL}
    settled = {key: mark for key, read in open_ones.items() if mark not in read.unlikely}
    for key in settled:
        value = reads[key].choices[mark]
        reads[key] = Read(value, reads[key].rough, Question.UNREAD if value is None else None)
    return settled


def _remarks(
    keys: Sequence[Key],
    decided: Mapping[Key, str],
    proofs: Mapping[str, Key],
    beyond: Mapping[Key, str],
    text_of: Callable[[Key], str],
) -> list[Remark]:
    remarks = []
    for mark, cells in Counter(decided[key] for key in keys if key in decided).items():
        facts: dict[str, object] = {"mark": mark, "cells": cells}
        if mark in proofs:
            facts["example"] = text_of(proofs[mark])
        else:
            first = next(key for key in keys if beyond.get(key) == mark)
            facts |= {"example": text_of(first), "because": "impossible"}
        remarks.append(Remark("table.decided_decimal", facts))
    return remarks
