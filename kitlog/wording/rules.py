"""Names of service rules: starters by their label, the pilot's own as typed."""

from kitlog.wording.translate import N_, _

_LABELS = {
    "wing.full": N_("full inspection"),
    "wing.trim": N_("trim check"),
    "wing.lowlines": N_("lower lines"),
    "wing.event": N_("check after an event"),
    "wing.siv": N_("check after a manoeuvre course"),
    "harness.visual": N_("visual check"),
    "harness.protector": N_("protector"),
    "harness.event": N_("check after an event"),
    "reserve.repack": N_("reserve repack"),
    "reserve.check": N_("full check by a packer"),
    "reserve.life": N_("age"),
    "reserve.fit": N_("compatibility check"),
    "reserve.event": N_("check after an event"),
    "reserve.rubbers": N_("loops, rubbers, pins"),
    "helmet.age": N_("age"),
    "helmet.event": N_("replace after a blow"),
    "carabiner.age": N_("age"),
    "carabiner.event": N_("replace after damage"),
    "speed.line": N_("line, hooks, pulleys"),
    "any.capacity": N_("capacity test"),
    "any.storage": N_("storage charge"),
    "any.dry": N_("dry it"),
    "any.rinse": N_("rinse it"),
    "beacon.battery": N_("battery date"),
    "beacon.selftest": N_("self-test"),
    "tracker.subscription": N_("paid to"),
    "instrument.airspace": N_("airspace data"),
    "buoyancy.service": N_("service"),
    "buoyancy.cartridge": N_("cartridge and bobbin"),
    "firstaid.check": N_("contents and dates"),
    "knife.blade": N_("blade"),
    "papers.expiry": N_("expiry"),
    "maker.notices": N_("maker’s safety notices"),
}


def rule_text(rule: str) -> str:
    """A rule's name as a person says it."""
    return _(_LABELS[rule]) if rule in _LABELS else rule
