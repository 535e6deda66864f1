"""The outings on a terminal."""

from collections.abc import Iterator, Sequence

from kitlog.outing.outing import Outing
from kitlog.wording.columns import table
from kitlog.wording.figures import days_text
from kitlog.wording.translate import _


def outing_lines(outings: Sequence[Outing], current: Outing | None) -> Iterator[str]:
    """One row an outing, by date; the one being worked on is marked."""
    if not outings:
        yield _("No outing is saved. Put one in with: kitlog outing save OUTING.json")
        return
    rows = [
        (
            days_text(outing.first_day, outing.last_day),
            outing.name,
            ", ".join(_(name) for name in outing.flight_types),
            outing.site.name,
            _("being worked on") if current is not None and outing.id == current.id else "",
        )
        for outing in outings
    ]
    yield from table(rows, (False,) * 5)
