"""What lasting is called: never off until the end of the day; with a charge asked for at the end, that is said too."""

from collections.abc import Iterable

from kitlog.wording.figures import percent_text
from kitlog.wording.translate import _


def lasts_text(least_soc: float) -> str:
    """That one device lasts, with the charge asked for at the end, 0..1, if there is one."""
    return _("lasts with {charge} or more").format(charge=charge_text(least_soc)) if least_soc else _("lasts")


def under_text(least_soc: float) -> str:
    """That one device lasts, but not with the charge asked for at the end."""
    return _("lasts, but ends under {charge}").format(charge=charge_text(least_soc))


def all_last_text(least_socs: Iterable[float], *, but_some: bool = False) -> str:
    """That all last, or all but those that are given up; with the charges asked for if any is."""
    if any(least_socs):
        return _("all the rest lasts with its charge to keep") if but_some else _("all lasts with its charge to keep")
    return _("all the rest lasts") if but_some else _("all lasts")


def charge_text(soc: float) -> str:
    """A charge asked for; decimals only where it has some."""
    pct = 100 * soc
    return percent_text(pct, 0 if abs(pct - round(pct)) < 0.05 else 1)  # half of the last decimal
