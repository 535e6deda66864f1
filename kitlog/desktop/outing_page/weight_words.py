"""The weight picture of an assessment: the ruler, the reserve, the zones."""

from kitlog.budget.result import Finding
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.assessment import Assessment
from kitlog.paint.mark import Mark
from kitlog.paint.weight_picture import Pointer, Range, ReserveBar, TakeOff, WeightPicture, ZoneSums
from kitlog.wording.figures import kg_text, mass_text, number_text
from kitlog.wording.findings import Names, say
from kitlog.wording.sheet_words import SHARPENS_FROM_G
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word


def weight_picture(assessment: Assessment, names: Names) -> WeightPicture:
    """The ruler of an assessment; what is not known is left out, never guessed."""
    finding = _found(assessment, "weight.takeoff_range")
    wing = assessment.chosen.get(Kind.WING)
    low, high = (finding.facts["low_g"], finding.facts["high_g"]) if finding else (None, None)
    return WeightPicture(
        title=_("Weight"),
        caption=_caption(wing),
        range=_range(low, high, finding),
        take_off=_take_off(assessment),
        landing=_landing(assessment),
        ballast=_ballast(assessment),
        out=_("out"),
        middle=_("middle"),
        not_known=_("certified range not known"),
        reserve=_reserve(assessment),
        zones=_zones(assessment, names),
    )


def weight_sentences(assessment: Assessment, names: Names) -> str:
    """The same as text: one sentence a finding, then the zones."""
    said = (say(finding, names) for finding in assessment.findings if finding.topic.value == "weight")
    zones = "; ".join(f"{name} {figure} kg" for name, figure in _cells(assessment))
    return " ".join(f"{one.title} {one.figure}: {one.sentence}." for one in said) + f" {zones}."


def _found(assessment: Assessment, code: str) -> Finding | None:
    return next((finding for finding in assessment.findings if finding.code == code), None)


def _kg(grams: float) -> str:
    return number_text(grams / 1000, 1)


def _caption(wing: Item | None) -> str:
    if wing is None:
        return _("everything that leaves the ground; no wing is chosen")
    return _("everything that leaves the ground, against the certified range of {wing}").format(wing=full_name(wing))


def full_name(item: Item) -> str:
    """Name, maker and model of an item as far as they are known."""
    return " ".join(part for part in (item.name, item.maker, item.model) if part)


def _range(low: object, high: object, finding: Finding | None) -> Range:
    if not isinstance(low, int) or not isinstance(high, int) or finding is None:
        return Range(None, None)
    return Range(
        low / 1000,
        high / 1000,
        _("{kg} low limit").format(kg=_kg(low)),
        _("high limit {kg}").format(kg=_kg(high)),
        Mark(finding.state.value),
    )


def _take_off(assessment: Assessment) -> TakeOff | None:
    mass, tolerance = assessment.mass.take_off_g, assessment.mass.tolerance_g
    if mass is None:
        return None
    around = f"± {kg_text(tolerance)}"
    return TakeOff(mass / 1000, tolerance / 1000, _("Take-off"), _kg(mass), around)


def _landing(assessment: Assessment) -> Pointer | None:
    mass = assessment.mass.landing_g
    if mass is None:
        return None
    return Pointer(mass / 1000, _("Landing {kg}").format(kg=_kg(mass)), _("all water and food gone"))


def _ballast(assessment: Assessment) -> Pointer | None:
    """Where a ballast that a remedy offers would lead; nothing is drawn that was not offered."""
    take_off = assessment.mass.take_off_g
    offered = [r.facts.get("mass_g") for f in assessment.findings for r in f.remedies if r.code == "ballast"]
    if take_off is None or not offered or not isinstance(offered[0], int):
        return None
    to_g = take_off + offered[0]
    text = _("{kg} with {ballast} of ballast, optional").format(kg=_kg(to_g), ballast=kg_text(offered[0]))
    return Pointer(to_g / 1000, text)


def _reserve(assessment: Assessment) -> ReserveBar | None:
    finding, item = _found(assessment, "weight.reserve"), assessment.chosen.get(Kind.RESERVE)
    if finding is None or item is None:
        return None
    low, high = finding.facts["low_g"], finding.facts["high_g"]
    both = isinstance(high, int)
    least = low if isinstance(low, int) else 0
    if both:
        printed = _(
            "{item}, printed load {low} to {high}. Sources differ on whether the wing counts: both figures stand."
        )
        caption = printed.format(item=full_name(item), low=_kg(least), high=kg_text(_number(high)))
        bar = Range(least / 1000, _number(high) / 1000, _kg(least), _kg(_number(high)), Mark(finding.state.value))
    else:
        caption, bar = _("{item}, printed load not on record").format(item=full_name(item)), Range(None, None)
    pairs = ((_("without the wing {kg}"), finding.figure), (_("with it {kg}"), finding.facts["with_wing_g"]))
    pointers = [Pointer(g / 1000, text.format(kg=_kg(g))) for text, g in pairs if isinstance(g, int | float)]
    return ReserveBar(_("Reserve"), caption, bar, tuple(pointers))


def _number(value: object) -> float:
    return float(value) if isinstance(value, int | float) else 0.0


def _zones(assessment: Assessment, names: Names) -> ZoneSums:
    mass = assessment.mass
    total = number_text(mass.known_g / 1000, 2)
    at_least = _("≥ {kg}").format(kg=total) if mass.unknown else total
    return ZoneSums(
        _("By zone in the air, kg"), _next_weighing(assessment, names), _cells(assessment), (_("Take-off"), at_least)
    )


def _cells(assessment: Assessment) -> tuple[tuple[str, str], ...]:
    body = assessment.mass.pilot_g
    pilot = (_("Pilot"), _("not known") if body is None else number_text(body / 1000, 2))
    zones = ((first_upper(word(z.value)), number_text(g / 1000, 2)) for z, g in assessment.mass.by_zone.items())
    return (pilot, *zones)


def _next_weighing(assessment: Assessment, names: Names) -> str:
    """The one weighing that narrows take-off mass most."""
    sharpen = assessment.mass.sharpen
    if sharpen is None:
        return ""
    if sharpen.by_g < SHARPENS_FROM_G:
        around = kg_text(assessment.mass.tolerance_g)
        return _("no single weighing narrows ± {around} by much").format(around=around)
    item = _("the pilot") if sharpen.id == "pilot" else names.get(sharpen.id, sharpen.id)
    return _("weigh {item} next: narrows by {mass}").format(item=item, mass=mass_text(sharpen.by_g))
