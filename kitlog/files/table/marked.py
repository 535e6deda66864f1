"""Columns of numbers: what the cells prove about the decimal mark, and what it decides for the doubtful ones."""

from collections import Counter
from collections.abc import Callable, Hashable, Mapping, Sequence
from typing import TypeVar

from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.reading import Read, gathered
from kitlog.files.table.remark import Remark

Key = TypeVar("Key", bound=Hashable)

Quick = Callable[[Key], tuple[object, str] | None]
"""Value and proven mark of a plain cell; None for one that needs a careful look."""


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

    Args:
        keys: the cells (with whatever belongs to each) in order.
        text_of: the text of a cell, for the remark.
    """
    plain: dict[Key, object] = {}
    reads: dict[Key, Read] = {}
    proofs: dict[str, Key] = {}
    for key in dict.fromkeys(keys):
        found = quick(key)
        if found is None:
            reads[key] = careful(key)
            continue
        plain[key], mark = found
        if mark:
            proofs.setdefault(mark, key)
    remarks = _decide(keys, reads, proofs, text_of) if reads else []
    return gathered(keys, plain, reads, answers, remarks)


def _decide(
    keys: Sequence[Key], reads: dict[Key, Read], proofs: dict[str, Key], text_of: Callable[[Key], str]
) -> list[Remark]:
    """Settle what the proofs decide, in place, and say so."""
    for key, read in reads.items():
        if read.mark and not read.impossible:
            proofs.setdefault(read.mark, key)
    beyond: dict[str, Key] = {}
    for key, read in reads.items():
        if read.impossible:
            beyond.setdefault(read.mark, key)
    marks = set(proofs) | set(beyond)
    decided = {key: read.mark for key, read in reads.items() if read.impossible}
    if len(marks) == 1:
        decided |= _settle(reads, next(iter(marks)))
    return _remarks(keys, decided, proofs, beyond, text_of)


def _settle(reads: dict[Key, Read], mark: str) -> dict[Key, str]:
    settled = {key: mark for key, read in reads.items() if read.question is Question.DECIMAL}
    for key in settled:
        value = reads[key].choices[mark]
        reads[key] = Read(value, reads[key].rough, Question.UNREAD if value is None else None)
    return settled


def _remarks(
    keys: Sequence[Key],
    decided: Mapping[Key, str],
    proofs: Mapping[str, Key],
    beyond: Mapping[str, Key],
    text_of: Callable[[Key], str],
) -> list[Remark]:
    if not decided:
        return []
    counts = Counter(decided[key] for key in keys if key in decided)
    agreed = len(set(proofs) | set(beyond)) == 1
    remarks = []
    for mark, cells in counts.items():
        proof = proofs.get(mark) if agreed else None
        facts: dict[str, object] = {"mark": mark, "cells": cells}
        if proof is None:
            facts |= {"example": text_of(beyond[mark]), "because": "impossible"}
        else:
            facts["example"] = text_of(proof)
        remarks.append(Remark("table.decided_decimal", facts))
    return remarks
