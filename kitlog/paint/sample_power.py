"""Sample data for the gallery: the power picture of one evening, rough values, nobody's real kit."""

from dataclasses import replace

from kitlog.paint.mark import Mark
from kitlog.paint.power_picture import Lane, OffMark, PhaseBand, PowerPicture, PowerWords
from kitlog.paint.power_spread import OffBy, Spread

PHASES = (
    PhaseBand("wait", "9 °C", 1.5, 2.25),
    PhaseBand("flight", "−6 °C, cold locks part of every cell", 4.5, 6.0, cold=True),
    PhaseBand("walk", "12 °C", 1.0, 2.0),
    PhaseBand("ride home", "14 °C", 2.0, 3.5),
)

LANES = (
    Lane(
        "Phone",
        "17.3 Wh",
        likely=((0, 0.98), (1.5, 0.93), (5.05, 0.41), (6.0, 0.68), (7.0, 0.64), (9.0, 0.5)),
        high=((0, 0.98), (2.25, 0.91), (5.6, 0.4), (6.9, 0.79), (8.25, 0.79), (10.25, 0.62), (13.75, 0.45)),
        locked=(0.08, 0.17, 0.06, 0.05),
        on_bank=((5.05, 6.0),),
        end_likely="47 %",
        end_high="42 %",
        mark=Mark.FINE,
    ),
    Lane(
        "Vario",
        "9.3 Wh",
        likely=((0, 1.0), (1.5, 0.95), (6.0, 0.53), (9.0, 0.53)),
        high=((0, 1.0), (2.25, 0.92), (8.25, 0.36), (13.75, 0.36)),
        locked=(0.12, 0.24, 0.1, 0.08),
        end_likely="45 %",
        end_high="26 %",
        mark=Mark.FINE,
    ),
    Lane(
        "Radio",
        "13.3 Wh",
        likely=((0, 1.0), (1.5, 0.96), (6.0, 0.7), (7.0, 0.66), (9.0, 0.66)),
        high=((0, 1.0), (2.25, 0.93), (8.25, 0.57), (10.25, 0.51), (13.75, 0.5)),
        locked=(0.1, 0.2, 0.09, 0.07),
        end_likely="63 %",
        end_high="47 %",
        mark=Mark.FINE,
    ),
    Lane(
        "Gloves",
        "26.6 Wh",
        likely=((0, 1.0), (1.5, 1.0), (6.0, 0.22), (9.0, 0.22)),
        high=((0, 1.0), (2.25, 1.0), (7.4, 0.14)),
        locked=(0.0, 0.13, 0.05, 0.05),
        off=(OffMark(7.4, "off 17:24, 51 min before landing"),),
        end_likely="13 %",
        end_high="off",
        mark=Mark.LOOK,
    ),
    Lane(
        "Power bank",
        "37.0 Wh",
        likely=((0, 1.0), (5.05, 1.0), (6.0, 0.8), (9.0, 0.8)),
        high=((0, 1.0), (5.6, 1.0), (6.9, 0.7), (8.25, 0.62), (13.75, 0.62)),
        locked=(0.05, 0.16, 0.06, 0.05),
        on_bank=((5.05, 6.0),),
        remark="feeds the phone under 40 %",
        end_likely="76 %",
        end_high="57 %",
        mark=Mark.FINE,
    ),
)

POWER = PowerPicture(
    phases=PHASES,
    lanes=LANES,
    words=PowerWords(
        title="Power",
        caption="lane height is charge, 0 to 100 %",
        likely="likely",
        high="high",
        locked="locked by cold",
        left_at_end="left at the end",
        not_known="not known",
        footnote="gloves: at landing",
    ),
    clocks_likely=("10:00", "11:30", "16:00", "17:00", "19:00"),
    clocks_high=("10:00", "12:15", "18:15", "20:15", "23:45"),
    start_min=600,
)


def _spread(points: tuple[tuple[float, float, float], ...]) -> Spread:
    """A spread from (5, 50, 95 %) at the start and at the end of each phase: two points in a phase, rough values."""
    low, middle, high = zip(*points, strict=True)
    return Spread(2, low, middle, high)


SPREADS = {
    "Phone": _spread(
        (
            (0.94, 0.97, 1.0),
            (0.9, 0.95, 0.98),
            (0.87, 0.93, 0.97),
            (0.58, 0.69, 0.8),
            (0.41, 0.6, 0.78),
            (0.39, 0.63, 0.76),
            (0.37, 0.61, 0.74),
            (0.3, 0.55, 0.7),
            (0.24, 0.48, 0.66),
        )
    ),
    "Vario": _spread(
        (
            (0.98, 0.99, 1.0),
            (0.93, 0.97, 1.0),
            (0.91, 0.95, 0.98),
            (0.6, 0.74, 0.82),
            (0.33, 0.53, 0.66),
            (0.33, 0.53, 0.66),
            (0.33, 0.53, 0.66),
            (0.33, 0.53, 0.66),
            (0.33, 0.53, 0.66),
        )
    ),
    "Gloves": _spread(
        (
            (1.0, 1.0, 1.0),
            (1.0, 1.0, 1.0),
            (1.0, 1.0, 1.0),
            (0.42, 0.6, 0.72),
            (0.13, 0.22, 0.44),
            (0.13, 0.22, 0.44),
            (0.13, 0.22, 0.44),
            (0.13, 0.22, 0.44),
            (0.13, 0.22, 0.44),
        )
    ),
}

CHANCES = {"Phone": ("99.2 %", "± 0.1"), "Vario": (">99.9 %", ""), "Gloves": ("71.4 %", "± 0.5")}

SPARES = {"Phone": ("+5:10 h", "+4:20 h"), "Vario": ("+9:30 h", "+5:15 h"), "Gloves": ("", "−0:51 h")}

OFF_BY = {
    "Gloves": (
        OffBy(5, 1.74, "5 % of the days: off by 16:02"),
        OffBy(50, 1.97, "50 % of the days: off by 17:31"),
    )
}

POWER_DAYS = replace(
    POWER,
    lanes=tuple(
        replace(
            lane,
            spread=SPREADS.get(lane.label),
            off_by=OFF_BY.get(lane.label, ()),
            chance=CHANCES.get(lane.label, ("", ""))[0],
            chance_error=CHANCES.get(lane.label, ("", ""))[1],
            spare_likely=SPARES.get(lane.label, ("", ""))[0],
            spare_high=SPARES.get(lane.label, ("", ""))[1],
        )
        for lane in LANES
    ),
    words=replace(
        POWER.words,
        spread="5 to 95 % of days",
        off_by="5, 50, 95 % of days off",
        lasts="lasts",
        middle="50 %",
        outer="5–95 %",
    ),
)
"""The same evening with many days drawn; two lanes have none yet."""
