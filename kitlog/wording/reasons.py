"""Why something is not on the list, as words."""

from kitlog.wording.translate import N_, _

_REASONS = {
    "none owned": N_("none in the kit"),
    "not chosen": N_("not chosen yet"),
    "waits for the set": N_("waits for the choice of the set"),
    "answered no": N_("answered with no"),
    "no water planned": N_("no water planned"),
    "heavier": N_("heavier"),
    "overdue": N_("overdue"),
    "stop open": N_("a stop is open"),
    "swollen": N_("its battery is swollen"),
    "left out": N_("left out by you"),
    "left in the car": N_("left in the car"),
    "not of the set": N_("not of the set"),
    "fitted elsewhere": N_("fitted to something that stays"),
    "used up": N_("used up"),
    "away": N_("away"),
    "lent": N_("lent"),
    "lost": N_("lost"),
    "retired": N_("retired"),
}


def reason_text(reason: str) -> str:
    """Why an item is not on the list or a need not met."""
    return _(_REASONS.get(reason, reason))


REASONS = frozenset(_REASONS)
"""Every reason that has words."""
