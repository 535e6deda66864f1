"""The pilot on a terminal."""

from collections.abc import Iterator

from kitlog.outing.pilot import Pilot
from kitlog.wording.columns import table
from kitlog.wording.figures import day_text, kg_text
from kitlog.wording.translate import _


def pilot_lines(pilot: Pilot | None) -> Iterator[str]:
    """Name and body masses, the newest last."""
    if pilot is None:
        yield _("No pilot is entered. Enter one with: kitlog pilot --body-mass KG")
        return
    yield pilot.name
    if not pilot.masses:
        yield _("Body mass not known: no take-off mass can be summed. Enter it with: kitlog pilot --body-mass KG")
    masses = sorted(pilot.masses, key=lambda mass: mass.taken_on)
    yield from table(
        [(day_text(mass.taken_on), kg_text(mass.mass_g, 2 if mass.mass_g % 100 else 1), mass.how) for mass in masses],
        (False, True, False),
        2,
    )
