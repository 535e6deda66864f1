"""The parser: argparse, with its complaints as faults in the program's own voice."""

import argparse
import re
from collections.abc import Callable
from typing import Any, NoReturn

from kitlog.cli.call import Call
from kitlog.fault import InputFault
from kitlog.wording.translate import _

Run = Callable[[Call], int]

_COMPLAINTS = (
    ("usage.missing", re.compile(r"the following arguments are required: (?P<names>.+)")),
    ("usage.missing", re.compile(r"one of the arguments (?P<names>.+) is required")),
    ("usage.unknown", re.compile(r"unrecognized arguments: (?P<value>.+)", re.DOTALL)),
    (
        "usage.no_such_choice",
        re.compile(
            r"argument (?P<field>-.+?): invalid choice: (?P<value>'.*?'|\".*?\") \(choose from (?P<known>.*)\)",
            re.DOTALL,
        ),
    ),
    (
        "usage.no_such_verb",
        re.compile(r"argument .+?: invalid choice: (?P<value>'.*?'|\".*?\") .*", re.DOTALL),
    ),
    ("usage.wants_value", re.compile(r"argument (?P<field>.+?): expected .*argument.*")),
    ("usage.takes_none", re.compile(r"argument (?P<field>.+?): ignored explicit argument (?P<value>.+)", re.DOTALL)),
    ("usage.excludes", re.compile(r"argument (?P<field>.+?): not allowed with argument (?P<other>.+)")),
)
"""What argparse says, from Python 3.11 to 3.14, and the fault that says it in our words."""

_DATA_LATE = re.compile(r"--data\b")


class Parser(argparse.ArgumentParser):
    """A parser that raises faults instead of printing and leaving.

    Raises:
        InputFault: ``usage.*`` with ``verb`` and, as far as they are known, ``field``, ``value`` and ``names``.
    """

    def __init__(self, **settings: Any) -> None:
        super().__init__(allow_abbrev=False, add_help=False, **settings)
        self.add_argument("-h", "--help", action="help", help=_("show this help and leave"))

    def error(self, message: str) -> NoReturn:
        """Say it in our words; what argparse may newly say is passed on."""
        for code, pattern in _COMPLAINTS:
            match = pattern.fullmatch(message)
            if match:
                raise InputFault(self._code(code, match), verb=self.prog, **_shown(match.groupdict()))
        raise InputFault("usage.other", verb=self.prog, reason=message)

    @staticmethod
    def _code(code: str, match: "re.Match[str]") -> str:
        late = code == "usage.unknown" and _DATA_LATE.match(match["value"])
        return "usage.data_late" if late else code


def _shown(facts: dict[str, str]) -> dict[str, object]:
    """Facts fit for one line of a terminal; of what can be chosen without the quotes that some versions put."""
    facts = {name: value.replace("'", "") if name == "known" else value.strip("'\"") for name, value in facts.items()}
    return {name: "".join(c if c.isprintable() else "?" for c in value)[:80] for name, value in facts.items()}


class Verbs:
    """Verbs under a parser.

    Args:
        parser: the parser they are added to.
        run: what is done without any of them; None = one of them must be there.
    """

    def __init__(self, parser: argparse.ArgumentParser, run: Run | None = None) -> None:
        self._group = parser.add_subparsers(
            title=_("verbs"), metavar=_("VERB"), required=run is None, parser_class=Parser
        )
        if run is not None:
            parser.set_defaults(run=run)

    def add(self, name: str, text: str, run: Run | None = None) -> Parser:
        """A verb with its one-line description; without `run` it has verbs of its own."""
        parser = self._group.add_parser(name, help=text, description=text)
        if run is not None:
            parser.set_defaults(run=run)
        return parser


def json_option(parser: argparse.ArgumentParser) -> None:
    """``--json``."""
    parser.add_argument("--json", action="store_true", help=_("print JSON, with the names and units of the models"))


def strict_option(parser: argparse.ArgumentParser) -> None:
    """``--strict``."""
    parser.add_argument("--strict", action="store_true", help=_("exit with code 1 if something is a stop"))
