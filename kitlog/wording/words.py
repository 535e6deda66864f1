"""Words for states, sources and the stance of the program."""

from kitlog.wording.translate import N_, _

STANCE = N_(
    "Planning figures, not a promise. The maker's manual, national rules and licensed inspectors and packers "
    "have the last word."
)
"""Stands in the program and on every sheet."""

ALARMS_NOBODY = N_("kitlog alarms nobody: it sends no message and calls no one.")

WORDS = (
    N_("fine"),
    N_("look"),
    N_("stop"),
    N_("not known"),
    N_("overdue"),
    N_("due soon"),
    N_("recommended date passed"),
    N_("in date"),
    N_("no record"),
    N_("no rule"),
    N_("does not apply"),
    N_("essential"),
    N_("advised"),
    N_("comfort"),
    N_("kitchen scale"),
    N_("luggage scale"),
    N_("person scale"),
    N_("maker's figure"),
    N_("guess"),
    N_("in service"),
    N_("away"),
    N_("lent"),
    N_("borrowed"),
    N_("lost"),
    N_("retired"),
    N_("overhead"),
    N_("harness"),
    N_("worn"),
    N_("cockpit"),
    N_("side pocket"),
    N_("back pocket"),
    N_("under seat"),
    N_("front container"),
    N_("rucksack"),
    N_("in hand"),
    N_("left in the car"),
    N_("empty"),
    N_("lay out"),
    N_("charge"),
    N_("stow"),
    N_("close"),
    N_("kit"),
    N_("power"),
    N_("weight"),
    N_("water"),
    N_("warmth"),
    N_("daylight"),
    N_("air"),
    N_("people"),
    N_("yes"),
    N_("by law"),
    N_("no"),
    N_("on record"),
    N_("measured"),
    N_("estimate"),
)
"""The closed lists whose values are shown as words; marked here so that translators see them."""


def word(value: str) -> str:
    """The word for a value of a closed list."""
    return _(value)


def counts_text(stop: int, look: int, not_known: int) -> str:
    """The counts of an assessment; a count of none is left out, fine is never counted."""
    parts = [f"{n} {_(name)}" for n, name in ((stop, "stop"), (look, "look"), (not_known, "not known")) if n]
    return ", ".join(parts) if parts else _("no stop, look or not known on record")


def first_upper(text: str) -> str:
    """The text with a capital first letter."""
    return text[:1].upper() + text[1:]
