"""Sample data for the gallery: what a workshop measured on a wing, with two gauges."""

from datetime import date

from kitlog.kit.measured_series import measured_series
from kitlog.kit.measurement import Measured, Measurement
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.paint.measurement_picture import MeasurementPicture, picture_of


def _record(day: date, *measured: tuple[Measured, float, str, str, str]) -> ServiceRecord:
    return ServiceRecord(
        id=str(day),
        item_id="wing",
        rules=("check",),
        done_on=day,
        measurements=tuple(Measurement(what=w, value=v, unit=u, gauge=g, place=p) for w, v, u, g, p in measured),
    )


_RECORDS = (
    _record(date(2021, 3, 9), (Measured.POROSITY, 240, "s", "gauge A", "")),
    _record(
        date(2023, 2, 20), (Measured.POROSITY, 182, "s", "gauge A", ""), (Measured.LINE_STRENGTH, 96.5, "daN", "", "A2")
    ),
    _record(
        date(2025, 3, 14), (Measured.POROSITY, 121, "s", "gauge A", ""), (Measured.LINE_STRENGTH, 88, "daN", "", "A2")
    ),
    _record(date(2027, 4, 2), (Measured.POROSITY, 74, "s", "gauge B", ""), (Measured.POROSITY, 69, "s", "gauge B", "")),
)
_RULE = ServiceRule(
    id="check", item_id="wing", rule="wing.full", months=24, source="manual: porosity at least 20 s (gauge A)"
)


def sample_picture() -> MeasurementPicture:
    """Four measurements of porosity by two gauges, and the strength of a line."""
    made = picture_of(measured_series(_RECORDS, [_RULE]))
    assert made is not None  # noqa: S101  # the sample holds measurements
    return made


MEASURED = sample_picture()
