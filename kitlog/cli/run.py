"""From the command line to an exit code: parse, act, say every fault of the world in words."""

from collections.abc import Sequence

from kitlog.cli import streams
from kitlog.cli.call import AT_FAULT, WRONG_USE, Call
from kitlog.cli.command_line import parser
from kitlog.cli.doors import Doors
from kitlog.fault import InputFault, SystemFault

INTERRUPTED, READER_GONE = 130, 141
"""What a shell expects of a program ended by Ctrl-C, and of one whose reader left (128 + the signal)."""


def run(arguments: Sequence[str], doors: Doors) -> int:
    """Run one call; the exit code."""
    streams.speak_utf8()
    try:
        code = _run(arguments, doors)
        streams.finish()
    except BrokenPipeError:
        streams.hush()
        return READER_GONE
    except KeyboardInterrupt:
        return INTERRUPTED
    except InputFault as fault:
        streams.complain(fault)
        return WRONG_USE
    except SystemFault as fault:
        streams.complain(fault)
        return AT_FAULT
    return code


def _run(arguments: Sequence[str], doors: Doors) -> int:
    try:
        options = parser().parse_args(arguments)
    except SystemExit as leaving:  # --help and --version have printed and leave
        return int(leaving.code or 0)
    code: int = options.run(Call(options, doors))
    return code
