import subprocess
import sys
from pathlib import Path

import pytest
from paint_canvas import font_px, only_inside, painted
from PySide6.QtCore import QRectF
from PySide6.QtGui import QGuiApplication, QPainter, QPdfWriter

from kitlog.paint import power_lanes
from kitlog.paint.gallery import exhibits, main, render
from kitlog.paint.lettering import Lettering
from kitlog.paint.sample_power import POWER
from kitlog.paint.tokens import DARK, LIGHT


def test_every_picture_is_written_in_both_themes(tmp_path: Path):
    done = subprocess.run(
        [sys.executable, "-m", "kitlog.paint.gallery", str(tmp_path / "new")],
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert (done.returncode, done.stderr) == (0, "")
    names = {path.name for path in (tmp_path / "new").iterdir()}
    assert names == {f"{exhibit.name}_{theme}.png" for exhibit in exhibits() for theme in ("light", "dark")}


def test_without_a_folder_it_says_how_it_is_used(capsys: pytest.CaptureFixture[str]):
    assert main([]) == 2
    assert "FOLDER" in capsys.readouterr().err


@pytest.mark.parametrize("exhibit", exhibits(), ids=lambda exhibit: exhibit.name)
def test_themes_differ_and_sharp_screens_get_twice_the_pixels(exhibit):
    light, dark = (render(exhibit, theme, font_px()) for theme in (LIGHT, DARK))
    assert light != dark
    sharp = render(exhibit, LIGHT, font_px(), 2.0)
    assert (sharp.width(), sharp.height()) == (
        pytest.approx(2 * light.width(), abs=1),
        pytest.approx(2 * light.height(), abs=1),
    )


def test_pictures_need_no_widgets():
    code = "import sys, kitlog.paint.gallery; sys.exit('PySide6.QtWidgets' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False, timeout=60).returncode == 0


SINGLE = [exhibit for exhibit in exhibits() if exhibit.name not in {"step_rings", "item_sketches"}]  # rows of several


@pytest.mark.parametrize("exhibit", SINGLE, ids=lambda exhibit: exhibit.name)
@pytest.mark.parametrize("size", [(0, 0), (1, 1), (20, 400), (400, 12)])
def test_no_room_is_too_small(exhibit, size: tuple[float, float]):
    rect = QRectF(10, 10, *size)
    image = painted((size[0] + 20, size[1] + 20), lambda p: exhibit.paint(p, rect, LIGHT))
    assert only_inside(image, rect)


@pytest.mark.parametrize("exhibit", exhibits(), ids=lambda exhibit: exhibit.name)
def test_paper_shows_the_same_as_the_screen(exhibit, tmp_path: Path):
    font = font_px()
    font.setPointSizeF(10.5)
    writer = QPdfWriter(str(tmp_path / "page.pdf"))
    writer.setResolution(300)
    with QPainter(writer) as painter:
        painter.setFont(font)
        assert Lettering.of(painter).scale == pytest.approx(10.5 / 72 * 300 / 14)
        exhibit.paint(painter, QRectF(0, 0, 2000, 2400), LIGHT)
    assert (tmp_path / "page.pdf").read_bytes().startswith(b"%PDF")
    assert (tmp_path / "page.pdf").stat().st_size > 1000


def test_heights_on_paper_follow_its_resolution(tmp_path: Path):
    font = font_px()
    font.setPointSizeF(10.5)
    writer = QPdfWriter(str(tmp_path / "page.pdf"))
    writer.setResolution(300)
    on_screen = power_lanes.measure(POWER, 800, font)
    on_paper = power_lanes.measure(POWER, 800 * 300 / 96, font, writer)
    assert on_paper == pytest.approx(
        on_screen * 300 / 96 * (96 / QGuiApplication.primaryScreen().logicalDotsPerInchY()), rel=0.02
    )
