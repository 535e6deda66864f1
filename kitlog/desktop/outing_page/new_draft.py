"""The draft of a new outing: tomorrow, cross-country, three phases with usual hours."""

from datetime import date, time, timedelta

from kitlog.kit.called import plain_blanks
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.library import Library
from kitlog.outing.outing import ChosenSet, Outing, Phase
from kitlog.wording.figures import day_text
from kitlog.wording.translate import _

USUAL_TYPE = "cross-country"
USUAL_START = time(10, 0)
USUAL_PHASES = (
    (PhaseWay.WAIT, 0.5, 1.0, 2.0),
    (PhaseWay.FLIGHT, 1.0, 3.0, 5.0),
    (PhaseWay.RIDE_HOME, 1.0, 2.0, 3.5),
)
"""Way of moving with low, likely and high hours, shown to be changed (common practice, no source)."""


def new_draft(outing_id: str, today: date, library: Library, last: Outing | None) -> Outing:
    """A draft for tomorrow; site, time zone, people and set as on the last outing, nobody told yet."""
    day = today + timedelta(days=1)
    known = {flight_type.name for flight_type in library.flight_types}
    usual = USUAL_TYPE if USUAL_TYPE in known else library.flight_types[0].name
    draft = Outing(
        id=outing_id,
        name=_("Outing of {day}").format(day=plain_blanks(day_text(day))),
        flight_types=(usual,),
        first_day=day,
        last_day=day,
        starts_at=USUAL_START,
        phases=tuple(
            Phase(name=way.value, way=way, low_h=low, likely_h=likely, high_h=high)
            for way, low, likely, high in USUAL_PHASES
        ),
    )
    if last is None:
        return draft
    people = tuple(person.model_copy(update={"told_at": None}) for person in last.people)
    chosen = last.set if usual in last.flight_types else ChosenSet()
    return draft.model_copy(update={"site": last.site, "time_zone": last.time_zone, "people": people, "set": chosen})
