"""Measured values in words: what, value, unit, gauge, place."""

from collections.abc import Iterable

from kitlog.kit.measurement import Measured, Measurement
from kitlog.wording.figures import with_unit
from kitlog.wording.translate import N_, _

MEASURED = {
    Measured.POROSITY: N_("porosity"),
    Measured.LINE_STRENGTH: N_("line strength"),
    Measured.TEAR_STRENGTH: N_("tear strength"),
    Measured.RELEASE_FORCE: N_("release force"),
    Measured.LINE_LENGTH: N_("line length"),
    Measured.CAPACITY: N_("capacity"),
}

NEVER_CONVERTED = N_("Figures of two gauges are never joined or converted: each has a line of its own.")

_UNITS = {"l/m2/min": "l/m²/min"}
MOST_DECIMALS = 3


def measured_text(what: Measured) -> str:
    """What was measured."""
    return _(MEASURED[what])


def measured_choices() -> list[tuple[str, str]]:
    """Everything that can be measured, to choose from."""
    return [(what.value, measured_text(what)) for what in Measured]


def unit_text(unit: str) -> str:
    """A unit as it is written."""
    return _UNITS.get(unit, unit)


def value_text(value: float, unit: str) -> str:
    """A value with its unit, with as many decimals as it has, three at most."""
    decimals = next((n for n in range(MOST_DECIMALS) if abs(value - round(value, n)) < 10 ** -(MOST_DECIMALS + 1)), 3)
    return with_unit(value, unit_text(unit), decimals)


def measurement_text(one: Measurement) -> str:
    """One measurement in a line: porosity 182 s, gauge A, cell 12."""
    first = f"{measured_text(one.what)} {value_text(one.value, one.unit)}"
    return ", ".join(part for part in (first, one.gauge or _("gauge not given"), one.place) if part)


def measurements_text(measurements: Iterable[Measurement]) -> str:
    """All measurements of a record in one line."""
    return "; ".join(measurement_text(one) for one in measurements)


def series_text(one: Measurement) -> str:
    """What the measurements of one line of a picture have in common."""
    head = f"{measured_text(one.what)}, {unit_text(one.unit)}"
    return ", ".join(part for part in (head, one.gauge or _("gauge not given"), one.place) if part)
