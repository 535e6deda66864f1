"""The entry point: decides between window and command line before anything heavy is imported."""

import sys
from collections.abc import Sequence
from pathlib import Path

from kitlog.app import App
from kitlog.fault import Fault


def main(arguments: Sequence[str] | None = None, app: App | None = None) -> int:
    """Run kitlog.

    Args:
        arguments: the command line without the program's name; that of the process if not given.
        app: the doors to data file and window; the usual ones if not given.

    Returns:
        The exit code: 0 done, 1 done and something is a stop (``--strict``), 2 wrong use or bad input, 3 the data file
        or the system is at fault.
    """
    given = sys.argv[1:] if arguments is None else list(arguments)
    doors = app or App()
    if not given or (len(given) == 2 and given[0] == "--data"):
        try:
            return doors.window(Path(given[1]) if given else doors.data_file())
        except Fault:
            pass  # the command line opens the same door, and says in words why it is shut
    from kitlog.cli.run import run

    return run(given, doors)


if __name__ == "__main__":
    sys.exit(main())
