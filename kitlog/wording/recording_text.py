"""What is said of a flight found in a recording: what it looks like and why, and what the recording lacks."""

from collections.abc import Iterator

from kitlog.fault import InputFault
from kitlog.kit.recordings.found import Because, Doubt, FlightFound, Leg, LooksLike
from kitlog.kit.recordings.outcome import Reason
from kitlog.wording.faults import FaultText, fault_text
from kitlog.wording.translate import N_, _, ngettext

LOOKS_LIKE = {
    LooksLike.CAR: N_("a car ride"),
    LooksLike.CABLE_CAR: N_("a cable car"),
    LooksLike.GROUND_HANDLING: N_("ground handling"),
    LooksLike.GROUND_RIDE: N_("a boat or a ride on the ground"),
}

BECAUSE = {
    Because.CLIMBS_STRAIGHT: N_("it climbs {up_m} m on a straight line"),
    Because.SINKS_STRAIGHT: N_("it sinks {down_m} m on a straight line, steeply and at an even speed"),
    Because.ONLY_CLIMBS: N_("it climbs {up_m} m and hardly ever sinks"),
    Because.FAST_AND_LEVEL: N_("it is fast ({speed_km_h} km/h) and mostly level"),
    Because.STOPS: N_("it is fast, mostly level, and stands still {stops} times"),
    Because.LOW_AND_NEAR: N_("all of it lies within {across_m} m and hardly any height"),
    Because.LEVEL: N_("nearly all of it is level within a few metres for minutes"),
    Because.FOLLOWS_GROUND: N_("it is slower the more it climbs, never steep, and seldom fast ({speed_km_h} km/h)"),
}


def doubt_text(doubt: Doubt) -> str:
    """What a time in the air looks like, and why."""
    why = _(BECAUSE[doubt.because]).format(
        up_m=round(doubt.up_m),
        down_m=round(doubt.down_m),
        across_m=round(doubt.across_m),
        speed_km_h=round(doubt.speed_m_s * 3.6),
        stops=doubt.stops,
    )
    return _("looks like {what}: {why}").format(what=_(LOOKS_LIKE[doubt.looks_like]), why=why)


def reason_text(reason: Reason) -> FaultText:
    """Why a recording is a duplicate or refused, or what is asked about it: what, and what to do."""
    doubt = reason.facts.get("doubt")
    said = {"likeness": doubt_text(doubt)} if isinstance(doubt, Doubt) else {}
    return fault_text(InputFault(reason.code, **reason.facts, **said))


def remarks_on(flight: FlightFound) -> Iterator[str]:
    """All that the pilot should know before confirming it, one line each; none for a plain flight."""
    yield from (doubt_text(doubt) for doubt in flight.doubts)
    for leg in flight.left_out:
        if leg.doubt:
            minutes = round(leg.airtime_s / 60)
            yield _("left out, {minutes} min: {doubt}").format(minutes=minutes, doubt=doubt_text(leg.doubt))
    for leg in flight.legs:
        yield from _lacking(leg)


def _lacking(leg: Leg) -> Iterator[str]:
    if not leg.takeoff_seen:
        yield _("the recording starts in the air: counted from its first fix there")
    if not leg.landing_seen:
        yield _("the recording ends in the air: counted to its last fix there")
    if leg.gaps:
        text = ngettext("{n} gap of {minutes} min counts as flown", "{n} gaps, {minutes} min, count as flown", leg.gaps)
        yield text.format(n=leg.gaps, minutes=round(leg.gaps_s / 60))


def out_of_order_text(count: int) -> str:
    """How many fixes were left out because of their time."""
    text = ngettext(
        "{n} fix left out: its time does not go on from those about it",
        "{n} fixes left out: their time does not go on from those about them",
        count,
    )
    return text.format(n=count)
