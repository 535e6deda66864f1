"""Which of the pilot's banks is the lightest that does, and why the others do not, as sentences."""

from collections.abc import Iterator, Mapping

from kitlog.budget.power.lightest_bank import TargetMargin
from kitlog.packing.lightest import MyLightest, OwnBank
from kitlog.packing.power_limits import PowerLimits
from kitlog.wording.figures import hours_text, mass_text, percent_text, with_unit
from kitlog.wording.translate import N_, _, ngettext

Names = Mapping[str, str]

_UNTRIED = {
    "not at hand": N_("is not at hand"),
    "swollen": N_("is swollen"),
    "stop open": N_("has a stop open on the day"),
    "energy not known": N_("has no Wh on record, so it cannot be reckoned with"),
    "no port": N_("has no port"),
    "goes along too": N_("goes along besides"),
    "too many": N_("was not tried, a hundred lighter ones were"),
}
"""Why a bank was not run."""


def lightest_text(limits: PowerLimits, names: Names, *, simulated: bool = True) -> str:
    """The answer in a sentence or two; `simulated`: whether anything was, else nothing could be asked."""
    found = limits.lightest
    if found is None:
        not_plugged = _("Not asked: no device is plugged into a bank in this plan.")
        return not_plugged if simulated else _("Not asked: nothing could be simulated.")
    said = [_head(found, names)]
    if found.place not in {one.likely.subject for one in limits.banks}:
        said.insert(0, _("No bank goes along as planned, so each was tried on the usual plugs."))
    likely = found.lightest_likely
    if likely is not None and likely != found.lightest:
        said.append(_("For the likely day alone: {bank}.").format(bank=bank_name(likely, names, massed=True)))
    if any(one.bank is not None and one.mass_g is None for one in found.tried):
        said.append(_("A bank whose mass is not known is never called the lightest."))
    return " ".join(said)


def _head(found: MyLightest, names: Names) -> str:
    lightest, devices = found.lightest, ", ".join(names.get(device, device) for device in found.devices)
    if lightest is None:
        text = _("None of your banks of known mass does for {devices} on both days.")
        return text.format(devices=devices)
    if lightest.bank is None:
        text = ngettext(
            "No bank is needed: {devices} lasts with its charge to keep without one, on the high day too.",
            "No bank is needed: {devices} last with their charge to keep without one, on the high day too.",
            len(found.devices),
        )
        return text.format(devices=devices)
    text = _("{bank} is the lightest that does for {devices}, on the high day too.")
    return text.format(bank=bank_name(lightest, names, massed=True), devices=devices)


def bank_name(one: OwnBank, names: Names, *, massed: bool = False) -> str:
    """The name of a bank, with its mass if asked for, or that it is none."""
    if one.bank is None:
        return _("no bank")
    name = names.get(one.bank, one.bank)
    if not massed:
        return name
    return f"{name} ({mass_text(one.mass_g) if one.mass_g is not None else _('mass not known')})"


def trial_texts(found: MyLightest, names: Names) -> Iterator[tuple[str, str, str]]:
    """Each bank with its mass and what came of it, lightest first; then those that were not run, and why."""
    for one in found.tried:
        mass = "" if one.bank is None else mass_text(one.mass_g)
        yield bank_name(one, names), mass, _verdict(one, names)
    for one in found.not_tried:
        yield bank_name(one, names), mass_text(one.mass_g), _(_UNTRIED.get(one.why, one.why))


def _verdict(one: OwnBank, names: Names) -> str:
    if one.why == "too few ports":
        return _("has too few ports for what is plugged in")
    if one.meets and one.meets_high:
        if one.in_hand_wh is None:
            return _("does on both days")
        energy = with_unit(one.in_hand_wh, "Wh", 1)
        return _("does on both days, {energy} left at its ports on the high day").format(energy=energy)
    if one.meets:
        return _("does on the likely day alone; on the high day {why}").format(why=_short(one.margins_high, names))
    if one.meets_high:
        return _("does on the high day alone; on the likely day {why}").format(why=_short(one.margins, names))
    return _("does not: on the likely day {why}").format(why=_short(one.margins, names))


def _short(margins: Mapping[str, TargetMargin], names: Names) -> str:
    return "; ".join(_missed(names.get(name, name), margin) for name, margin in margins.items() if not margin.met)


def _missed(name: str, margin: TargetMargin) -> str:
    if margin.first_off_h is not None:
        return _("{device} goes off after {hours}").format(device=name, hours=hours_text(margin.first_off_h))
    short = percent_text(max(-100 * (margin.soc_over or 0.0), 0.1), 1)
    return _("{device} ends {short} under the charge to keep").format(device=name, short=short)
