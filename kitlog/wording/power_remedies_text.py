"""Changes to the power of a day as sentences: what to do, what it saves, what it weighs, whom it harms."""

from collections.abc import Callable, Mapping

from kitlog.budget.result import Remedy
from kitlog.wording.figures import mass_text, percent_text, span_text
from kitlog.wording.translate import N_, _


def _number(facts: Mapping[str, object], name: str) -> float:
    value = facts.get(name)
    return float(value) if isinstance(value, int | float) else 0.0


def _changed(text: str) -> Callable[[Remedy, list[str]], str]:
    """A sentence with the first two items, and what came of it."""

    def say(remedy: Remedy, items: list[str]) -> str:
        facts = remedy.facts
        done = _(text).format(
            item=items[0],
            other=items[1] if len(items) > 1 else "",
            use=facts.get("use", ""),
            below=percent_text(100 * _number(facts, "below")),
        )
        return done + outcome_text(remedy, items)

    return say


def outcome_text(remedy: Remedy, items: list[str]) -> str:
    """What came of a change that was run: hours, mass, harm; empty for one that was not."""
    facts = remedy.facts
    if "all_last" not in facts:
        return ""
    return f": {_saved(facts)}{_weight(facts)}{_harm(facts, items)}"


def _saved(facts: Mapping[str, object]) -> str:
    if facts["all_last"]:
        rest = _("all the rest lasts") if facts["gives_up"] else _("all lasts")
        return rest if facts["all_last_high"] else _("{rest} on the likely day").format(rest=rest)
    cut_h = _number(facts, "cut_h")
    if cut_h > 0:
        return _("{span} less short").format(span=span_text(cut_h))
    return _("{span} shorter still").format(span=span_text(cut_h)) if cut_h < 0 else _("saves no hours")


def _weight(facts: Mapping[str, object]) -> str:
    mass_g = facts["mass_g"]
    if mass_g is None:
        return _(", mass not known")
    grams = _number(facts, "mass_g")
    if grams == 0:
        return ""
    text = _(", {mass} more") if grams > 0 else _(", {mass} less")
    return text.format(mass=mass_text(abs(grams)))


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
    "add_bank": _changed(N_("Take {other} along for {item}")),
    "plug_too": _changed(N_("Plug {item} into {other} too")),
    "plug_below": _changed(N_("Plug {item} in only below {below}")),
    "use_less": _changed(N_("Use {item} less: {use}")),
    "flight_mode": _changed(N_("Put {item} in flight mode")),
    "start_full": _changed(N_("Charge {item} full before leaving")),
    "leave_off": _changed(N_("Leave {item} off")),
    "carry_warmer": _warmer,
    "replace_battery": _plain(N_("Replace the battery of {item}, or measure its health again")),
    "take_cable": _plain(N_("Take a cable that joins {item} and {other}")),
    "name_cable": _name_cable,
    "enter_connector": _plain(N_("Enter the connectors of {item} and its bank")),
    "ask_airline": _plain(N_("Ask the airline to approve {item} before the journey")),
}
"""What is said of each code."""
