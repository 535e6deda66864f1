"""Changes to the power of a day as sentences: what to do, what it saves, what it weighs, whom it harms."""

from collections.abc import Callable, Mapping

from kitlog.budget.result import Remedy
from kitlog.wording.figures import MINUS, mass_text, percent_text, span_text, with_unit
from kitlog.wording.power_lasting_text import all_last_text, lasts_text
from kitlog.wording.translate import N_, _

MOST_H = 24
"""A gain of more hours is not told any closer."""


def _number(facts: Mapping[str, object], name: str) -> float:
    value = facts.get(name)
    return float(value) if isinstance(value, int | float) else 0.0


def _changed(text: str) -> Callable[[Remedy, list[str]], str]:
    """A sentence with the first two items and its phases, and what came of it."""
    return lambda remedy, items: _(text).format(**_blanks(remedy, items)) + outcome_text(remedy, items)


def _blanks(remedy: Remedy, items: list[str]) -> dict[str, str]:
    facts = remedy.facts
    phases = facts.get("phases", ())
    assert isinstance(phases, tuple | list)  # noqa: S101  # put there by the candidates
    return {
        "item": items[0],
        "other": items[1] if len(items) > 1 else "",
        "use": str(facts.get("use", "")),
        "instead": str(facts.get("instead", "")),
        "share": percent_text(100 * _number(facts, "share")),
        "below": percent_text(100 * _number(facts, "below")),
        "phases": ", ".join(_(str(phase)) for phase in phases),
    }


def _in_phases(text: str, plain: str) -> Callable[[Remedy, list[str]], str]:
    """A sentence that names its phases; `plain` where none are given."""
    return lambda remedy, items: _changed(text if remedy.facts.get("phases") else plain)(remedy, items)


def _less(remedy: Remedy, items: list[str]) -> str:
    if not remedy.facts.get("instead"):
        return _changed(N_("Use {item} less: {use}"))(remedy, items)
    if _number(remedy.facts, "share"):
        return _changed(N_("Use {item} in “{use}”, and for only {share} of the time in “{instead}”"))(remedy, items)
    return _changed(N_("Set {item} to “{use}” instead of “{instead}”"))(remedy, items)


def outcome_text(remedy: Remedy, items: list[str]) -> str:
    """What came of a change that was run: hours, mass, harm; empty for one that was not.

    A remedy of a finding says what it does for what the finding is about, any other what it does for the day.
    """
    facts = remedy.facts
    if "all_last" not in facts:
        return ""
    start = f"; {unknown_start_text(items[1])}" if "start_unknown" in facts else ""
    return f": {_done(facts)}{_weight(remedy)}{_harm(facts, items)}{start}"


def unknown_start_text(bank: str) -> str:
    """Why a bank that could give much is reckoned to give nothing."""
    return _("the charge of {bank} at the start is not known: reckoned from 0 %").format(bank=bank)


def _done(facts: Mapping[str, object]) -> str:
    if "gain_h" in facts:
        return f"{_gained(facts)}, {_fares(facts)}"
    if "landing_pct" in facts:
        return _("{likely} at the landing, {high} on a high day").format(
            likely=percent_text(_number(facts, "landing_pct")), high=percent_text(_number(facts, "landing_high_pct"))
        )
    return _("it stays awake") if "awake" in facts else _saved(facts)


def _gained(facts: Mapping[str, object]) -> str:
    hours = _number(facts, "gain_h")
    text = _("over +{hours}") if hours > MOST_H else "+{hours}"
    gained = text.format(hours=with_unit(min(hours, MOST_H), "h", 0 if hours > MOST_H else 1))
    return gained if facts["in_case"] == "likely" else _("{gained} on a high day").format(gained=gained)


def _fares(facts: Mapping[str, object]) -> str:
    lasts = lasts_text(_number(facts, "least_soc"))
    if facts["lasts"] and facts["lasts_high"]:
        return lasts
    if facts["lasts"] and facts["in_case"] == "likely":
        return _("{lasts} on the likely day").format(lasts=lasts)
    short_h = _number(facts, "still_short_h")
    if short_h > 0:
        return _("still {span} short").format(span=span_text(short_h))
    return _("but ends with {charge}").format(charge=percent_text(_number(facts, "end_pct")))


def _saved(facts: Mapping[str, object]) -> str:
    if facts["all_last"]:
        rest = all_last_text([_number(facts, "keeps")], but_some=bool(facts["gives_up"]))
        return rest if facts["all_last_high"] else _("{rest} on the likely day").format(rest=rest)
    cut_h = _number(facts, "cut_h")
    if cut_h > 0:
        return _("{span} less short").format(span=span_text(cut_h))
    return _("{span} shorter still").format(span=span_text(cut_h)) if cut_h < 0 else _("saves no hours")


def unknown_mass_text(code: str, facts: Mapping[str, object]) -> str:
    """What is known of a mass of which the cable's is not; empty where nothing is."""
    if code == "plug_too":
        return _("cable not known")
    least = facts.get("least_g")
    return _("at least +{mass}, cable not known").format(mass=mass_text(_number(facts, "least_g"))) if least else ""


def _weight(remedy: Remedy) -> str:
    mass_g = remedy.facts["mass_g"]
    if mass_g is None:
        return f"; {unknown_mass_text(remedy.code, remedy.facts) or _('mass not known')}"
    grams = _number(remedy.facts, "mass_g")
    if grams == 0:
        return ""
    return f"; {'+' if grams > 0 else MINUS}{mass_text(abs(grams))}"


def _harm(facts: Mapping[str, object], items: list[str]) -> str:
    about = int(_number(facts, "about"))
    split = about + int(_number(facts, "harmed"))
    harmed, emptied = items[about:split], items[split:]
    worse = _("; but then worse for {items}").format(items=", ".join(harmed)) if harmed else ""
    empty = _("; it runs {items} empty").format(items=", ".join(emptied)) if emptied else ""
    return worse + empty


def _warmer(remedy: Remedy, items: list[str]) -> str:
    place = remedy.facts.get("place")
    where = _("Carry {item} warmer") if place is None else _("Carry {item} warmer ({place})")
    return where.format(item=items[0], place=_(str(place))) + outcome_text(remedy, items)


def _plain(text: str) -> Callable[[Remedy, list[str]], str]:
    return lambda _remedy, items: _(text).format(item=items[0], other=items[1] if len(items) > 1 else "")


def _name_cable(_remedy: Remedy, items: list[str]) -> str:
    return _("Name both ends of {items}, as in “USB-C to micro-USB”").format(items=", ".join(items))


SAY: dict[str, Callable[[Remedy, list[str]], str]] = {
    "bank_instead": _changed(N_("Take {other} instead of {item}")),
    "add_bank": _in_phases(N_("Take {other} along for {item} ({phases})"), N_("Take {other} along for {item}")),
    "plug_too": _in_phases(N_("Plug {item} into {other} too ({phases})"), N_("Plug {item} into {other} too")),
    "plug_below": _changed(N_("Plug {item} in only below {below}")),
    "use_less": _less,
    "flight_mode": _in_phases(
        N_("Put {item} in flight mode ({phases}), without being followed"), N_("Put {item} in flight mode")
    ),
    "start_full": _changed(N_("Charge {item} full before leaving")),
    "leave_off": _changed(N_("Leave {item} off")),
    "carry_warmer": _warmer,
    "replace_battery": _plain(N_("Replace the battery of {item}, or measure its health again")),
    "plan_plugs": _plain(N_("Plan anew where {item} hangs")),
    "take_cable": _plain(N_("Take a cable that joins {item} and {other}")),
    "name_cable": _name_cable,
    "enter_connector": _plain(N_("Enter the connectors of {item} and its bank")),
    "ask_airline": _plain(N_("Ask the airline to approve {item} before the journey")),
}
"""What is said of each code."""
