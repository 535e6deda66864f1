"""The power plan of an outing in words: shares, plugs and charges at the start, and what cannot be so."""

from collections.abc import Mapping, Sequence

from kitlog.budget.power.describe import Basis, DrawRange
from kitlog.kit.facets import WayOfUse
from kitlog.outing.outing import Outing, PlugPlan
from kitlog.packing.draws import OFF_WAY
from kitlog.packing.plug_checks import PlugCheck, PlugTrouble
from kitlog.packing.plug_effect import GONE, NONE_LEFT, NOT_KNOWN, NOT_ON_LIST, SWOLLEN, IdlePlug
from kitlog.wording.draw_text import draw_text, given_text, not_known_text, short_text, sure_text, watts_text
from kitlog.wording.figures import number_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import first_upper

Names = Mapping[str, str]

ONE_LINE = 34
"""So many signs of a draw stand on one line beside the shares."""

BASES = {
    Basis.GUESSED: N_("guess"),
    Basis.STATED: N_("maker’s figure"),
    Basis.WORKED_BACK: N_("worked back"),
    Basis.MEASURED: N_("measured"),
}
"""How sure a mean draw is: as its weakest part."""


def phases_text(phases: object) -> str:
    """Phases of a plan by their names; empty without any."""
    return ", ".join(_(str(phase)) for phase in phases) if isinstance(phases, tuple) else ""


def way_text(name: str) -> str:
    """A way of use by its name; off has a word of its own in each language."""
    return _("off") if name == OFF_WAY else name


def way_draw_lines(way: WayOfUse, draw: DrawRange | None, *, has_energy: bool) -> list[str]:
    """What a way of use draws, its range and how sure; or why that is not known. Two lines where one were too long."""
    if draw is None:
        return [not_known_text(has_energy=has_energy)]
    whole = draw_text(draw, way)
    grounds = ", ".join(part for part in (given_text(way), sure_text(way.basis)) if part)
    figures = whole.removesuffix(f", {grounds}")
    return [whole] if len(whole) <= ONE_LINE else [figures, grounds]


def left_open_text() -> str:
    """Under the shares of a phase: that nobody said what the device does in it."""
    return _("left open")


def mean_texts(draw: DrawRange | None) -> tuple[str, str, str]:
    """A mean draw, its range, and how sure it is; empty where there is nothing to say."""
    if draw is None:
        return _("not known"), "", ""
    if not draw.high_w:
        return _("nothing"), "", ""
    low, high = (number_text(watts, 2) for watts in (draw.low_w, draw.high_w))
    return watts_text(draw.likely_w), f"{low}–{high}" if low != high else "", _(BASES[draw.basis])


def total_fault_text(phase: str, total_pct: float) -> str:
    """That the shares of a phase do not add up to 100 %, and what to do."""
    said = _("{phase}: the shares add up to {total}, not to 100 %.").format(
        phase=first_upper(phase), total=short_text(total_pct, "%")
    )
    rest = short_text(abs(100 - total_pct), "%")
    if total_pct < 100:
        return f"{said} " + _("Give the {rest} that is missing to a way of use, or to “off”.").format(rest=rest)
    return f"{said} " + _("Take {rest} away.").format(rest=rest)


def unread_text(what: str) -> str:
    """That a share or charge cannot be read."""
    return _("{what}: write a figure from 0 to 100.").format(what=first_upper(what))


def gone_ways_text(phase: str, ways: Sequence[str]) -> str:
    """That the plan names ways of use that the item has no more."""
    named = ", ".join(f"“{way}”" for way in ways)
    return ngettext(
        "{phase}: {ways} is no way of use of it any more.",
        "{phase}: {ways} are no ways of use of it any more.",
        len(ways),
    ).format(phase=first_upper(phase), ways=named)


def lacking_text(presets: Sequence[str], ways: Sequence[str]) -> str:
    """Why a preset is not offered, and what to do."""
    lacking = ", ".join(f"“{_(way)}”" for way in ways)
    return _("{presets} need ways of use for {ways}: describe them at the item in Kit.").format(
        presets=_(" and ").join(presets), ways=lacking
    )


def plug_trouble_text(check: PlugCheck, names: Names) -> str:
    """What is wrong with a plug, with its phase, and what to do."""
    device, bank = (names.get(name, name) for name in (check.plug.device, check.plug.bank))
    few = ngettext("{n} port", "{n} ports", check.ports or 0).format(n=check.ports)
    said = _(_TROUBLES[check.trouble]).format(device=device, bank=bank, n=check.plugs, ports=few)
    return f"{first_upper(check.plug.phase)}: {said}"


_TROUBLES = {
    PlugTrouble.PORTS: N_("{n} devices at a time on {bank}, which has {ports}. Take one off, or plug it in later."),
    PlugTrouble.ENDS_FIRST: N_("charging would end before it begins. Charge to more, or plug in below less."),
    PlugTrouble.PORTS_NOT_KNOWN: N_(
        "{n} devices at a time on {bank}, whose ports are not on record: one is reckoned with. Enter them in Kit."
    ),
    PlugTrouble.CABLE_MISSING: N_("no cable on the list fits between {device} and {bank}. Take one along."),
    PlugTrouble.CABLES_SHORT: N_("the cables that fit between {device} and {bank} are all taken. Take one more along."),
    PlugTrouble.CABLE_NOT_KNOWN: N_(
        "not known whether a cable fits between {device} and {bank}: not all connectors are on record."
        " Enter them in Kit."
    ),
    PlugTrouble.NOT_CHARGED: N_(
        "what {device} takes in when charging is not on record: {bank} carries its load, its battery gains nothing."
    ),
}


def absent_text(name: str, reason: str) -> str:
    """A thing that takes no part in the day, with the reason: ``Power bank, retired``."""
    return _("{name}, {reason}").format(name=name, reason=_(_ABSENT.get(reason, reason)))


def idle_plug_text(idle: IdlePlug, names: Names) -> str:
    """That a plug is without effect, and why."""
    return _("{phase}: without effect, {thing}.").format(
        phase=first_upper(idle.plug.phase), thing=absent_text(names.get(idle.thing, idle.thing), idle.reason)
    )


_ABSENT = {
    GONE: N_("no longer in the kit"),
    NONE_LEFT: N_("none left"),
    NOT_ON_LIST: N_("not on the list"),
    SWOLLEN: N_("swollen"),
    NOT_KNOWN: N_("its energy or draw is not known"),
}


def own_plugs_text(plugs: int, idle: int) -> str:
    """That the plugs are the pilot's own, and how many of them are without effect."""
    if not plugs:
        return _("Your own plan: nothing hangs on a bank.")
    if not idle:
        return _("Plugs of your own.")
    return ngettext(
        "Plugs of your own, {n} of them without effect.", "Plugs of your own, {n} of them without effect.", idle
    ).format(n=idle)


def hanging_text(plugs: Sequence[PlugPlan], names: Names) -> str:
    """What hangs on a bank, and in which phases."""
    if not plugs:
        return _("Nothing hangs on it. What does is chosen at the device.")
    devices: dict[str, list[str]] = {}
    for plug in plugs:
        devices.setdefault(names.get(plug.device, plug.device), []).append(plug.phase)
    said = "; ".join(f"{device} ({', '.join(phases)})" for device, phases in devices.items())
    return _("Hangs on it: {said}.").format(said=said)


def usual_plugs_text(plugs: Sequence[PlugPlan], names: Names) -> str:
    """The plugs that are reckoned with while the pilot has planned none."""
    if not plugs:
        return _("Usual plugs: nothing hangs on a bank.")
    device, bank = (names.get(name, name) for name in (plugs[0].device, plugs[0].bank))
    phases = ", ".join(dict.fromkeys(plug.phase for plug in plugs))
    return _("Usual plugs: {device} on {bank} after the flight ({phases}).").format(
        device=device, bank=bank, phases=phases
    )


def thing_text(*, own: bool, likely_pct: float | None, plugged: bool, is_open: bool = False) -> str:
    """What is not as usual of a device or bank: a phase left open, shares of its own, charge at the start, a plug."""
    said = [
        left_open_text() if is_open else "",
        _("own shares") if own else "",
        "" if likely_pct is None else _("from {charge}").format(charge=short_text(likely_pct, "%")),
        _("on a bank") if plugged else "",
    ]
    return ", ".join(part for part in said if part) or _("as usual")


def start_text(likely_pct: float | None) -> str:
    """What is reckoned with at the start."""
    if likely_pct is None:
        return _("nothing entered: reckoned as full")
    return _("as entered; what is seen later does not change it")


def seen_text(on_hand_pct: float, when: str) -> str:
    """The charge that it was last seen with, and when."""
    return _("last seen with {charge} ({when})").format(charge=short_text(on_hand_pct, "%"), when=when)


def take_text(on_hand_pct: float) -> str:
    """The act that takes the charge last seen for that at the start."""
    return _("Begin with {charge}").format(charge=short_text(on_hand_pct, "%"))


def summary_texts(outing: Outing) -> tuple[str, str, str]:
    """What the plan says of power, in three short sentences: shares, plugs, charges at the start."""
    own = len({use.item for use in outing.uses})
    shares = ngettext("Own shares of use for {n} device.", "Own shares of use for {n} devices.", own).format(n=own)
    plugs = len(outing.plugs or ())
    own_plugs = ngettext("{n} plug of your own.", "{n} plugs of your own.", plugs).format(n=plugs)
    less = len(outing.starts)
    starts = ngettext(
        "{n} charge at the start entered, all else begins full, assumed.",
        "{n} charges at the start entered, all else begins full, assumed.",
        less,
    ).format(n=less)
    return (
        shares if own else _("Shares of use as usual."),
        _("Plugs as usual.") if outing.plugs is None else own_plugs if plugs else _("Nothing hangs on a bank."),
        starts if less else _("All begin full, assumed."),
    )
