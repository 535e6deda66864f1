"""Options of kitlog kit import as choices: answers to doubts, meanings of columns, what becomes of known items."""

import argparse
from typing import TYPE_CHECKING

from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.files.table.targets import Meaning
    from kitlog.workbench.kit_preview import ImportChoices

_LEAVE = "-"
"""The field of a column that is left out."""


def add_choices(parser: argparse.ArgumentParser) -> None:
    """The options that settle what a table leaves open."""
    group = parser.add_argument_group(_("what settles a doubt"))
    group.add_argument("--dates", choices=("dmy", "mdy", "ymd"), help=_("the order in dates such as 03/04/2025"))
    group.add_argument("--decimal", choices=("comma", "point"), help=_("the decimal mark in figures such as 1.250"))
    group.add_argument("--mass-unit", choices=("g", "kg", "oz", "lb"), help=_("the unit of masses without one"))
    group.add_argument("--months", choices=("first", "last"), help=_("which day a month without a day stands for"))
    group.add_argument("--day-numbers", choices=("1900", "1904"), help=_("how the spreadsheet counts days"))
    group.add_argument("--mah", choices=("cell", "5v"), help=_("mAh beside 5 V: those of the cell, or at 5 V"))
    group.add_argument("--energy", choices=("wh", "mah"), help=_("which goes where Wh and mAh x V disagree"))
    group.add_argument("--doubtful", choices=("empty",), help=_("leave what is still doubtful not known, and list it"))
    group.add_argument(
        "--existing", choices=("skip", "update", "add"), help=_("what becomes of rows about items or rules of the kit")
    )
    group.add_argument(
        "--sure", action="store_true", help=_("what is unlikely in the service file is so: hours that run backwards …")
    )
    group.add_argument(
        "--sheet", default="", metavar=_("NAME"), help=_("the sheet of a workbook; else the one in front")
    )
    group.add_argument(
        "--map",
        action="append",
        default=[],
        metavar=_("HEADING=FIELD"),
        help=_("what a column stands for: a heading of the export, with :UNIT if need be; - leaves it out"),
    )


def choices_of(options: argparse.Namespace) -> "ImportChoices":
    """The options as choices.

    Raises:
        InputFault: ``table.map_form``, ``table.no_such_field``, ``table.no_such_unit`` with ``value``.
    """
    from kitlog.files.table.doubt import EMPTY, Answers, Question, Settled
    from kitlog.files.table.kit_items import Existing
    from kitlog.workbench.kit_preview import ImportChoices

    typed = {
        Question.DATES: options.dates,
        Question.DECIMAL: options.decimal,
        Question.MASS_UNIT: options.mass_unit,
        Question.MONTHS: options.months,
        Question.DAY_NUMBERS: options.day_numbers,
        Question.MAH_AT: options.mah,
        Question.ENERGY: options.energy,
    }
    empty = options.doubtful == EMPTY
    given = {question: answer or EMPTY for question, answer in typed.items() if answer or empty}
    if empty:
        given |= {Question.UNREAD: EMPTY, Question.TWO_MASSES: EMPTY}
    return ImportChoices(
        settled=Settled(Answers(given)),
        by_heading=dict(_mapped(text) for text in options.map),
        existing=Existing(options.existing) if options.existing else None,
        leave_out=empty,
        sure=options.sure,
    )


def _mapped(text: str) -> "tuple[str, Meaning]":
    from kitlog.files.table.targets import TARGETS, Meaning
    from kitlog.files.table.units import canonical_unit

    heading, mark, wanted = text.rpartition("=")
    if not mark or not heading.strip():
        raise InputFault("table.map_form", field="--map", value=text)
    field, _colon, unit = wanted.strip().partition(":")
    if field == _LEAVE:
        return heading, Meaning("")
    if field not in TARGETS:
        raise InputFault("table.no_such_field", field="--map", value=field, known=tuple(TARGETS))
    if unit and not canonical_unit(unit):
        raise InputFault("table.no_such_unit", field="--map", value=unit)
    return heading, Meaning(field, canonical_unit(unit))
