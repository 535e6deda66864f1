"""Changes that have been run, as remedies: the code of each, and what came of it."""

from collections.abc import Mapping

from kitlog.budget.power.changes.weigh import Weighed
from kitlog.budget.result import Remedy


def power_remedy(weighed: Weighed, told: Mapping[str, object] | None = None) -> Remedy:
    """A weighed change as a remedy; `told`: what it does for what a finding is about, if it is for one.

    Its items: whom the change is about (`about` of them), then what goes off, ends too low or falls asleep because of
    it (`harmed` of them), then banks that run empty, or sooner. Facts beside those of the candidate: `cut_h`,
    `cut_high_h`, `all_last`, `all_last_high`, `mass_g` and `gives_up`, as in `Weighed`; `keeps`: whether some are asked
    to end with a charge to keep.
    """
    candidate = weighed.candidate
    harmed = tuple(dict.fromkeys(harm.id for harm in weighed.harms if harm.code != "empty"))
    emptied = tuple(dict.fromkeys(harm.id for harm in weighed.harms if harm.code == "empty"))
    facts = {
        **candidate.facts,
        "about": len(candidate.ids),
        "harmed": len(harmed),
        "cut_h": weighed.cut_h,
        "cut_high_h": weighed.cut_high_h,
        "all_last": weighed.all_last,
        "all_last_high": weighed.all_last_high,
        "keeps": any(device.likely.least_soc for device in weighed.devices.values()),
        "mass_g": candidate.mass_g,
        "gives_up": bool(candidate.gives_up),
        **(told or {}),
    }
    return _of_code(candidate.code, (*candidate.ids, *harmed, *emptied), facts)


def is_computed(remedy: Remedy) -> bool:
    """Whether what a remedy does has been run, not advised."""
    return "all_last" in remedy.facts


def _of_code(code: str, items: tuple[str, ...], facts: Mapping[str, object]) -> Remedy:
    made = (
        Remedy("bank_instead", items, facts),
        Remedy("add_bank", items, facts),
        Remedy("plug_too", items, facts),
        Remedy("plug_below", items, facts),
        Remedy("use_less", items, facts),
        Remedy("flight_mode", items, facts),
        Remedy("carry_warmer", items, facts),
        Remedy("start_full", items, facts),
        Remedy("leave_off", items, facts),
    )
    return next(remedy for remedy in made if remedy.code == code)
