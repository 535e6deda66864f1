"""Every picture with sample data, in both themes, as PNG: ``python -m kitlog.paint.gallery FOLDER [FONT]``."""

import os
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QRectF
from PySide6.QtGui import QFont, QGuiApplication, QImage, QPainter

from kitlog.paint import (
    bench,
    item_sketch,
    luggage_tag,
    measurement_lines,
    power_lanes,
    service_band,
    step_ring,
    weight_ruler,
    zone_bars,
    zone_drawing,
)
from kitlog.paint.mark import Mark
from kitlog.paint.sample_measured import MEASURED
from kitlog.paint.sample_power import POWER, POWER_DAYS
from kitlog.paint.sample_service import SERVICE
from kitlog.paint.sample_weight import WEIGHT
from kitlog.paint.sample_zones import ZONES
from kitlog.paint.step_ring import StepRing
from kitlog.paint.tokens import DARK, LIGHT, Tokens

MARGIN = 24.0


@dataclass(frozen=True, slots=True)
class Exhibit:
    """One picture of the gallery: its size without margins, and how to paint it."""

    name: str
    width: float
    height: Callable[[QFont], float]
    paint: Callable[[QPainter, QRectF, Tokens], None]


def exhibits() -> list[Exhibit]:
    """All pictures, by name."""
    return [
        Exhibit(
            "power",
            800,
            lambda font: power_lanes.measure(POWER, 800, font),
            lambda painter, rect, tokens: power_lanes.paint(painter, rect, POWER, tokens),
        ),
        Exhibit(
            "power_reading",
            560,
            lambda font: power_lanes.measure(POWER, 560, font),
            lambda painter, rect, tokens: power_lanes.paint(painter, rect, POWER, tokens, 0.4),
        ),
        Exhibit(
            "power_days",
            800,
            lambda font: power_lanes.measure(POWER_DAYS, 800, font),
            lambda painter, rect, tokens: power_lanes.paint(painter, rect, POWER_DAYS, tokens),
        ),
        Exhibit(
            "power_days_reading",
            720,
            lambda font: power_lanes.measure(POWER_DAYS, 720, font),
            lambda painter, rect, tokens: power_lanes.paint(painter, rect, POWER_DAYS, tokens, 0.6),
        ),
        Exhibit(
            "weight",
            800,
            lambda font: weight_ruler.measure(WEIGHT, 800, font),
            lambda painter, rect, tokens: weight_ruler.paint(painter, rect, WEIGHT, tokens),
        ),
        Exhibit(
            "weight_narrow",
            480,
            lambda font: weight_ruler.measure(WEIGHT, 480, font),
            lambda painter, rect, tokens: weight_ruler.paint(painter, rect, WEIGHT, tokens, 0),
        ),
        Exhibit(
            "zones",
            464,
            lambda font: zone_drawing.measure(ZONES, 464, font),
            lambda painter, rect, tokens: zone_drawing.paint(painter, rect, ZONES, tokens, "cockpit"),
        ),
        Exhibit(
            "zones_bars",
            256,
            lambda font: zone_bars.measure(ZONES, font),
            lambda painter, rect, tokens: zone_bars.paint(painter, rect, ZONES, tokens, "cockpit"),
        ),
        Exhibit(
            "service",
            1128,
            lambda font: service_band.measure(SERVICE, font),
            lambda painter, rect, tokens: service_band.paint(painter, rect, SERVICE, tokens),
        ),
        Exhibit(
            "service_narrow",
            720,
            lambda font: service_band.measure(SERVICE, font),
            lambda painter, rect, tokens: service_band.paint(painter, rect, SERVICE, tokens, 5),
        ),
        Exhibit(
            "measured",
            480,
            lambda font: measurement_lines.measure(MEASURED, font),
            lambda painter, rect, tokens: measurement_lines.paint(painter, rect, MEASURED, tokens),
        ),
        Exhibit("bench", 500, lambda _: 180.0, bench.paint),
        Exhibit("luggage_tag", 700, lambda _: 40.0, luggage_tag.paint),
        Exhibit("step_rings", 240, lambda _: 24.0, _rings),
        Exhibit("item_sketches", 328, lambda _: 400.0, _sketches),
    ]


def _rings(painter: QPainter, rect: QRectF, tokens: Tokens) -> None:
    rings = (
        StepRing(1, 1.0),
        StepRing(2, 0.97, Mark.STOP),
        StepRing(3, 0.4),
        StepRing(4, 0.67, is_current=True),
        StepRing(5),
    )
    for number, ring in enumerate(rings):
        step_ring.paint(painter, QRectF(rect.left() + number * 48, rect.top(), 24, 24), ring, tokens)


def _sketches(painter: QPainter, rect: QRectF, tokens: Tokens) -> None:
    for number, kind in enumerate(("wing", "harness", "helmet", "radio")):
        item_sketch.paint(painter, QRectF(rect.left(), rect.top() + number * 100, rect.width(), 92), kind, tokens)


def application_font(family: str = "") -> QFont:
    """The font of the gallery: the family named, else the application's, at 14 px."""
    made = QFont(family) if family else QGuiApplication.font()
    made.setPixelSize(14)
    return made


def render(exhibit: Exhibit, tokens: Tokens, font: QFont, ratio: float = 1.0) -> QImage:
    """One picture on its sheet."""
    width, height = exhibit.width + 2 * MARGIN, exhibit.height(font) + 2 * MARGIN
    image = QImage(round(width * ratio), round(height * ratio), QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(tokens.surface)
    with QPainter(image) as painter:
        painter.setFont(font)
        exhibit.paint(painter, QRectF(MARGIN, MARGIN, exhibit.width, height - 2 * MARGIN), tokens)
    return image


def main(arguments: list[str]) -> int:
    """Write every picture in light and dark into the folder named."""
    if len(arguments) not in {1, 2}:
        sys.stderr.write("usage: python -m kitlog.paint.gallery FOLDER [FONT]\n")
        return 2
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application = QGuiApplication.instance() or QGuiApplication([])
    folder, font = Path(arguments[0]), application_font(*arguments[1:])
    folder.mkdir(parents=True, exist_ok=True)
    for exhibit in exhibits():
        for theme, tokens in (("light", LIGHT), ("dark", DARK)):
            render(exhibit, tokens, font).save(str(folder / f"{exhibit.name}_{theme}.png"))
    del application
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
