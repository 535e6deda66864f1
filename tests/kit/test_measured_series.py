"""Series of measured values: never joined over gauges, units or places; limits only as typed."""

from datetime import UTC, date, datetime

from kitlog.kit.measured_series import MeasuredLimit, limits_typed, measured_series
from kitlog.kit.measured_text import parse_measurement
from kitlog.kit.measurement import Measured
from kitlog.kit.service import ServiceRecord, ServiceRule


def record(day: date, *measured: str, struck: bool = False) -> ServiceRecord:
    return ServiceRecord(
        id=f"{day}{struck}{measured}",
        item_id="w",
        rules=("r",),
        done_on=day,
        measurements=tuple(parse_measurement(one) for one in measured),
        struck_at=datetime(2027, 1, 1, tzinfo=UTC) if struck else None,
    )


def rule(source: str) -> ServiceRule:
    return ServiceRule(id="r", item_id="w", rule="wing.full", months=24, source=source)


A, B, C = date(2023, 3, 1), date(2025, 3, 1), date(2027, 3, 1)


def test_one_line_for_each_gauge_unit_and_place() -> None:
    series = measured_series(
        [
            record(B, "porosity 120 s, Gauge A", "line strength 80 daN", "porosity 90 s, gauge A, cell 3"),
            record(A, "porosity 180 s, gauge a", "porosity 21 l/m2/min, gauge a"),
            record(C, "porosity 60 s, gauge B"),
        ]
    )
    assert [(one.first.series[:4], one.points) for one in series] == [
        ((Measured.POROSITY, "l/m2/min", "gauge a", ""), ((A, 21.0),)),
        ((Measured.POROSITY, "s", "gauge a", ""), ((A, 180.0), (B, 120.0))),
        ((Measured.POROSITY, "s", "gauge a", "cell 3"), ((B, 90.0),)),
        ((Measured.POROSITY, "s", "gauge b", ""), ((C, 60.0),)),
        ((Measured.LINE_STRENGTH, "daN", "", ""), ((B, 80.0),)),
    ]


def test_struck_records_count_for_nothing() -> None:
    assert measured_series([record(A, "porosity 180 s", struck=True)]) == ()


def test_limits_are_those_that_were_typed() -> None:
    assert limits_typed("manual p. 31: porosity at least 10 s (gauge A); Line strength >= 12,5 daN.") == (
        MeasuredLimit(Measured.POROSITY, 10.0, "s", at_least=True, gauge="gauge A"),
        MeasuredLimit(Measured.LINE_STRENGTH, 12.5, "daN", at_least=True),
    )
    assert limits_typed("porosity at most 540 l/m²/min")[0].at_least is False
    assert limits_typed("porosity below 10 s is bad, porosity at least 10 daN") == ()


def test_a_limit_is_never_laid_to_another_gauge() -> None:
    two = [record(A, "porosity 180 s, gauge A"), record(B, "porosity 120 s, gauge B")]
    named = measured_series(two, [rule("porosity at least 10 s (Gauge B)")])
    assert [len(one.limits) for one in named] == [0, 1]
    assert [len(one.limits) for one in measured_series(two, [rule("porosity at least 10 s")])] == [0, 0]
    assert [len(one.limits) for one in measured_series(two[:1], [rule("porosity at least 10 s")])] == [1]
