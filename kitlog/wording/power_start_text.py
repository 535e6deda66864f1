"""Charges at the start that nobody entered, in words: what is taken as full, and what was seen with less."""

from collections.abc import Mapping

from kitlog.budget.result import Finding
from kitlog.packing.assessment import Assessment
from kitlog.packing.own_banks import carried
from kitlog.packing.power_grounds import grounds, seen_lower
from kitlog.wording.figures import percent_text
from kitlog.wording.translate import _

Names = Mapping[str, str]


def begins_full_text(finding: Finding, names: Names) -> str:
    """That a device begins full, and the banks it hangs on, is assumed; what goes after its sentence, or nothing."""
    begin_full = finding.facts["begin_full"]
    assert isinstance(begin_full, tuple)  # noqa: S101  # put there by the power findings
    plain = [name for name in begin_full if name not in _seen(finding)]
    text = "".join(_("; begins full, assumed") for name in plain if name == finding.subject)
    if banks := ", ".join(names.get(name, name) for name in plain if name != finding.subject):
        text += _("; full at the start, assumed: {banks}").format(banks=banks)
    return text + seen_text(finding, names)


def seen_text(finding: Finding, names: Names) -> str:
    """What is taken as full though it was last seen with less, and what to do; what goes after a sentence."""
    seen = _seen(finding)
    if not seen:
        return ""
    parts = [
        (_("last seen with {charge}") if name == finding.subject else _("{thing} last seen with {charge}")).format(
            thing=names.get(name, name), charge=percent_text(pct)
        )
        for name, pct in seen.items()
    ]
    said = _("; {seen}: full by the start is assumed").format(seen=", ".join(parts))
    return said if finding.facts["charging_planned"] else said + _("; plan the charging")


def all_begin_full_text(assessment: Assessment, names: Names) -> str:
    """All devices, and banks they hang on, that are taken as full at the start; empty without any."""
    devices = [device.id for device in assessment.power.planned.devices] if assessment.power.planned else []
    begin_full = grounds(devices, assessment.outing, assessment.power).begin_full
    seen = dict(seen_lower(begin_full, carried(assessment), assessment.now))
    parts = [
        _("{thing} (last seen with {charge})").format(thing=names.get(name, name), charge=percent_text(seen[name]))
        if name in seen
        else names.get(name, name)
        for name in begin_full
    ]
    return _("Begin full, assumed: {things}").format(things=", ".join(parts)) if parts else ""


def _seen(finding: Finding) -> dict[str, float]:
    seen = finding.facts["seen"]
    assert isinstance(seen, tuple)  # noqa: S101  # put there by the power findings
    return dict(seen)
