"""The line at the start that says what is overdue, due soon, or to go back; and the calendar file from the window.

The demo on its evening: harness protector, helmet after the knock and bank test are overdue (3); first aid, wing, carabiners,
messenger and speed bar are due soon (5): counted by hand in the season's table.
"""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QWidget

from kitlog.desktop.service_page import calendar_saving
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.desktop.windows import Windows
from kitlog.files.resources import resources_folder
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.kit.service import ServiceRecord
from kitlog.paint.icons import IconSet
from kitlog.paint.mark import Mark
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def windows(styled: object, memory: WindowMemory) -> Windows:
    return Windows(IconSet(resources_folder() / "icons"), memory, None)


def done(bench: Workbench, *items: str) -> None:
    """Record today whatever is overdue or due soon of these."""
    for row in (*bench.to_remember().overdue, *bench.to_remember().due_soon):
        if row.item.name in items:
            today = bench.now().date()
            rules = (row.rule.id,)
            bench.add_record(ServiceRecord(id=row.rule.id, item_id=row.item.id, rules=rules, done_on=today))


class TestAtTheStart:
    def test_the_first_window_says_it_once(self, qtbot, windows: Windows, demo_bench: Workbench) -> None:
        window = windows.open(demo_bench)
        qtbot.addWidget(window)
        qtbot.waitUntil(window.banner.isVisible)
        said = "3 services overdue, 5 due soon: Harness A, Helmet A, Power bank and 5 more"
        assert window.banner.what.text() == window.banner.accessibleName() == said
        assert not window.banner.isWindow(), "it is no dialog"
        assert window.focusWidget() is not window.banner.show_act, "it takes no focus"
        window.close()

    def test_a_second_window_does_not(self, qtbot, windows: Windows, demo_bench, empty_bench) -> None:
        first, second = windows.open(demo_bench), None
        qtbot.addWidget(first)
        qtbot.waitUntil(first.banner.isVisible)
        second = windows.open(empty_bench)
        qtbot.addWidget(second)
        qtbot.waitUntil(lambda: second.painted_once)
        assert second.receivers("2painted()") == first.receivers("2painted()") - 1, "nobody waits to remind in it"
        first.close()
        second.close()


@pytest.fixture
def window(show: Callable[..., Window], demo_bench: Workbench) -> Window:
    shown = show(demo_bench)
    shown.remind()
    return shown


def test_nothing_to_do_says_nothing(show: Callable[..., Window], empty_bench: Workbench) -> None:
    shown = show(empty_bench)
    shown.remind()
    assert not shown.banner.isVisible()


def test_the_list_is_a_key_away_and_the_line_is_gone(window: Window, qtbot) -> None:
    window.banner.show_act.setFocus()
    qtbot.keyClick(window.banner.show_act, Qt.Key.Key_Space)
    assert window.open_name == "service"
    assert not window.banner.isVisible()


def test_esc_takes_it_away_until_the_next_start(window: Window, qtbot) -> None:
    window.banner.close_act.setFocus()
    qtbot.keyClick(window.banner.close_act, Qt.Key.Key_Escape)
    assert not window.banner.isVisible()
    done(window.desk.bench, "Helmet A")
    assert not window.banner.isVisible(), "what is done later does not bring it back"


def test_it_counts_on_while_it_is_there(window: Window) -> None:
    done(window.desk.bench, "Helmet A", "Power bank", "Harness A")
    assert window.banner.what.text().startswith("5 services due soon: ")
    assert window.banner._mark is Mark.LOOK
    for name in ("First aid kit", "Wing A", "Carabiners A", "Speed bar A", "Satellite messenger"):
        done(window.desk.bench, name)
    left = window.desk.bench.to_remember()
    assert window.banner.isVisible() == bool(left.overdue or left.due_soon)


def test_what_is_lent_is_in_it(window: Window) -> None:
    bench = window.desk.bench
    wing = next(item for item in bench.items() if item.name == "Wing B")
    facts = {"state": ItemState.LENT, "lent_to": "Ines", "back_by": bench.now().date() + timedelta(days=2)}
    bench.edit_items([Item.model_validate({**wing.model_dump(), **facts})])
    assert "5 due soon, 1 loan to end" in window.banner.what.text()


@pytest.mark.parametrize("size", [(1280, 800), (1024, 600), (640, 480)])
def test_it_has_room_and_everything_under_it_keeps_its_place(
    show: Callable[..., Window], demo_bench: Workbench, size: tuple[int, int]
) -> None:
    shown = show(demo_bench, size=size)
    shown.remind()
    shown.ground.layout().activate()
    banner, tag, stack = (box(part) for part in (shown.banner, shown.tag, shown.stack))
    assert tag.bottom() < banner.top() < banner.bottom() < stack.top()
    words = shown.banner.what
    assert words.height() >= words.heightForWidth(words.width())
    assert shown.ground._sheet == shown.stack.geometry()


def box(part: QWidget):
    return part.geometry()


class TestCalendarFile:
    @pytest.fixture
    def chosen(self, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> list[str]:
        """What was proposed; the answer is a name without an ending."""
        asked: list[str] = []

        def answer(_parent: object, _title: str, name: str, *_more: object, **_options: object) -> tuple[str, str]:
            asked.append(name)
            return str(tmp_path / "mine"), ""

        monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
        return asked

    def test_it_is_written_and_told_where_the_caption_stands(
        self, window: Window, chosen: list[str], tmp_path: Path
    ) -> None:
        page = window.open("service")
        page.acts.write_calendar()
        assert (tmp_path / "mine.ics").read_bytes().startswith(b"BEGIN:VCALENDAR")
        assert page.caption.text().startswith("Written: mine.ics (17 entries). Open it with your calendar")
        assert "2 rules have no known day" in page.caption.text()
        done(window.desk.bench, "Helmet A")
        assert "mine.ics" not in page.caption.text()

    def test_a_large_book_is_written_beside_the_window(
        self, window: Window, chosen: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.setattr(calendar_saving, "MANY", 1)
        page = window.open("service")
        page.acts.write_calendar()
        assert (tmp_path / "mine.ics").exists()
        assert page.caption.text().startswith("Written: mine.ics (17 entries).")

    def test_the_same_file_is_proposed_the_next_time(self, window: Window, chosen: list[str], tmp_path: Path) -> None:
        page = window.open("service")
        page.acts.write_calendar()
        page.acts.write_calendar()
        assert chosen == [str(window.desk.path.with_suffix(".ics")), str(tmp_path / "mine.ics")]

    def test_another_file_is_refused_in_the_window(self, window: Window, chosen: list[str], tmp_path: Path) -> None:
        (tmp_path / "mine.ics").write_bytes(b"milk")
        window.open("service").acts.write_calendar()
        assert window.strip.isVisible()
        assert "no calendar that kitlog wrote" in window.strip.what.text()
        assert (tmp_path / "mine.ics").read_bytes() == b"milk"
