from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from paint_canvas import GROUND, only_inside, painted
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage

from kitlog.fault import SystemFault
from kitlog.paint.icons import Icon, IconSet
from kitlog.paint.tokens import LIGHT

FOLDER = Path(__file__).parents[2] / "resources" / "icons"
ICONS = IconSet(FOLDER)


def opaque(image: QImage) -> int:
    return sum(image.pixelColor(x, y).alpha() > 100 for x in range(image.width()) for y in range(image.height()))


def test_every_icon_has_its_file_and_every_file_its_icon():
    assert {path.name for path in FOLDER.iterdir()} == {f"{icon.value}.svg" for icon in Icon}


@pytest.mark.parametrize("icon", Icon)
def test_files_lie_on_the_grid_of_24_and_load_nothing(icon: Icon):
    text = (FOLDER / f"{icon.value}.svg").read_text()
    root = ET.fromstring(text)  # noqa: S314  # our own file
    assert root.get("viewBox") == "0 0 24 24"
    assert "href" not in text
    assert "currentColor" in text or icon is Icon.KITLOG


@pytest.mark.parametrize("icon", Icon)
@pytest.mark.parametrize("ratio", [1.0, 2.0])
def test_an_icon_is_drawn_within_its_square(icon: Icon, ratio: float):
    rect = QRectF(10, 10, 24, 24)
    image = painted((44, 44), lambda p: ICONS.draw(p, rect, icon, LIGHT.ink), ratio)
    assert only_inside(image, QRectF(10 * ratio, 10 * ratio, 24 * ratio, 24 * ratio), GROUND)
    assert opaque(ICONS.pixmap(icon, 24, LIGHT.ink, ratio).toImage()) > 15 * ratio


def test_icons_take_the_colour_they_are_given():
    colours = {}
    for colour in (LIGHT.accent, LIGHT.stop):
        image = ICONS.pixmap(Icon.PLUS, 48, colour).toImage()
        colours[colour.name()] = image.pixelColor(24, 24).name()
    assert all(given == found for given, found in colours.items())


def test_no_two_icons_look_alike():
    looks = [ICONS.pixmap(icon, 24, QColor("black")).toImage() for icon in Icon]
    for i, one in enumerate(looks):
        assert all(one != other for other in looks[i + 1 :])


def test_a_wide_room_holds_a_square_icon_in_its_middle():
    image = painted((120, 40), lambda p: ICONS.draw(p, QRectF(0, 8, 120, 24), Icon.PLUS, LIGHT.ink))
    assert image.pixelColor(60, 20) == LIGHT.ink
    assert image.pixelColor(20, 20) == GROUND


def test_an_icon_serves_sharp_screens_and_the_disabled_state():
    made = ICONS.icon("tick", 16, LIGHT.ink, LIGHT.muted)
    assert max(size.width() for size in made.availableSizes()) == 48


def test_a_missing_and_a_broken_file_are_faults_of_the_system(tmp_path: Path):
    with pytest.raises(SystemFault) as missing:
        IconSet(tmp_path).pixmap(Icon.KIT, 24, LIGHT.ink)
    assert missing.value.code == "icon.missing"
    assert missing.value.facts["file"] == str(tmp_path / "kit.svg")


@pytest.mark.no_qt_log
def test_a_file_that_is_no_drawing_is_a_fault_too(tmp_path: Path):
    (tmp_path / "kit.svg").write_text("no drawing")
    with pytest.raises(SystemFault) as broken:
        IconSet(tmp_path).pixmap(Icon.KIT, 24, LIGHT.ink)
    assert broken.value.code == "icon.broken"


def test_a_name_that_is_no_icon_is_refused():
    with pytest.raises(ValueError, match="warning"):
        ICONS.pixmap("warning", 24, LIGHT.ink)
