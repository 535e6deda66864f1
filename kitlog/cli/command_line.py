"""The whole command line: the program's own options and every verb."""

from kitlog import __version__
from kitlog.cli import budget, charge, copies, demo, due, flights, kit, outing, pack, pilot, power, service
from kitlog.cli.call import Call
from kitlog.cli.parser import Parser, Verbs
from kitlog.wording.translate import _
from kitlog.wording.words import ALARMS_NOBODY, STANCE


def parser() -> Parser:
    """The parser of the whole command line; nothing heavy is imported for it."""
    top = Parser(
        prog="kitlog",
        description=_("Without a verb, kitlog opens its window on the data file."),
        epilog=f"{_(STANCE)} {_(ALARMS_NOBODY)}",
    )
    top.add_argument(
        "--version", action="version", version=f"kitlog {__version__}", help=_("print the version and leave")
    )
    top.add_argument("--data", metavar=_("FILE"), help=_("the data file, before the verb (default: your own)"))
    verbs = Verbs(top, run=_window)
    for module in (kit, due, service, pack, power, charge, budget, flights, pilot, outing, demo, copies):
        module.add(verbs)
    return top


def _window(call: Call) -> int:
    return call.doors.window(call.data_file)
