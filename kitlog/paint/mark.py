"""The four states a picture can show, and the absence of one."""

from enum import StrEnum


class Mark(StrEnum):
    """A state as every picture shows it: always a word, a shape and a colour together.

    The values are the state words of the design, so a finding's or a due state's value can be given as it is.
    """

    FINE = "fine"
    LOOK = "look"
    STOP = "stop"
    NOT_KNOWN = "not known"
    NONE = "none"
