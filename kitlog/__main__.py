"""The entry point: everything behind it is imported when it is needed."""

import sys
from collections.abc import Sequence

from kitlog.app import App
from kitlog.cli.run import run


def main(arguments: Sequence[str] | None = None, app: App | None = None) -> int:
    """Run kitlog.

    Args:
        arguments: the command line without the program's name; that of the process if not given.
        app: the doors to data file and window; the usual ones if not given.

    Returns:
        The exit code: 0 done, 1 done and something is a stop (``--strict``), 2 wrong use or bad input, 3 the data file
        or the system is at fault.
    """
    return run(sys.argv[1:] if arguments is None else arguments, app or App())


if __name__ == "__main__":
    sys.exit(main())
