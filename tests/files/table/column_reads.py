"""Short ways to read a column in these tests."""

from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.read_column import read_column
from kitlog.files.table.targets import TARGETS


def read(target, unit, cells, answers=None, **more):
    given = {Question(question): answer for question, answer in (answers or {}).items()}
    return read_column(TARGETS[target], unit, cells, Answers(given), **more)


def one(target, unit, cell, answers=None, **more):
    """The value of a single cell; the question if it is doubtful."""
    reading = read(target, unit, [cell], answers, **more)
    return reading.doubts[0].question if reading.doubts else reading.values[0]


def remarks(reading):
    return [(remark.code, dict(remark.facts)) for remark in reading.remarks]
