"""The unit of figures that are given without one: what is asked of masses, and what goes without saying."""

from collections.abc import Sequence
from dataclasses import replace

from kitlog.files.table.cells import Cell, Figure
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import CHOICES, Answers, Question
from kitlog.files.table.remark import Remark
from kitlog.files.table.targets import Target, Way

_OF_LOADS = {"g": "kg", "kg": "kg", "oz": "lb", "lb": "lb"}
"""Unit of what a wing, harness or reserve bears, by the unit of masses: nobody gives a pilot's weight in g or oz."""


def _is_load(target: Target) -> bool:
    return target.way is Way.MASS_RANGE or target.name.endswith("_kg")


def asked_units(target: Target) -> tuple[str, ...]:
    """The units that a mass without one can be in."""
    units = CHOICES[Question.MASS_UNIT]
    return tuple(unit for unit in units if unit in _OF_LOADS.values()) if _is_load(target) else units


def answered_unit(target: Target, answers: Answers) -> str:
    """The unit that the answers give to masses without one; empty where they give none."""
    answer = answers.to(Question.MASS_UNIT)
    return _OF_LOADS.get(answer, "") if _is_load(target) else answer if answer in _OF_LOADS else ""


def with_unit_told(reading: ColumnReading, cells: Sequence[Cell], unit: str) -> ColumnReading:
    """The reading with a remark on the figures that were taken in a unit which nobody gave."""
    bare = sum(1 for cell, value in zip(cells, reading.values, strict=True) if value is not None and _is_bare(cell))
    if not bare:
        return reading
    return replace(reading, remarks=(*reading.remarks, Remark("table.usual_unit", {"unit": unit, "cells": bare})))


def _is_bare(cell: Cell) -> bool:
    """Whether a cell that was read says no unit itself."""
    if isinstance(cell, Figure):
        return not (cell.unit or cell.percent)
    return isinstance(cell, str) and ":" not in cell and (cell.isdecimal() or cell.strip()[-1:].isdecimal())
