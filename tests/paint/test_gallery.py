import subprocess
import sys
from pathlib import Path

import pytest
from paint_canvas import font_px

from kitlog.paint.gallery import exhibits, main, render
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
