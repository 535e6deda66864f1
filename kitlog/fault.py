"""What goes wrong in the world: codes and facts, never sentences.

Every floor may raise these; `kitlog.wording.faults` turns a code and its facts into what happened, why, and what to do.
"""

from collections.abc import Mapping


class Fault(Exception):  # noqa: N818  # "fault" is the project's word; an error is what a program has
    """A fault of the world, not of the program.

    Attributes:
        code: dotted lower-case name of what is wrong, for example ``number.not_finite``.
        facts: what the sentence needs: ``file``, ``row``, ``field``, ``value``, ``limit`` and the like.
    """

    def __init__(self, code: str, **facts: object) -> None:
        super().__init__(code, facts)
        self.code = code
        self.facts: Mapping[str, object] = facts


class InputFault(Fault):
    """Wrong use or bad input: the command line ends with code 2."""


class SystemFault(Fault):
    """The data file or the system is at fault: the command line ends with code 3."""
