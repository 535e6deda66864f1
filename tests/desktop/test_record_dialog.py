"""Recording a service: three keystrokes, measured values, papers, corrections."""

from datetime import date
from pathlib import Path

import pytest
from desk_steps import Use
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog

from kitlog.desktop import paper_opening
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.text import Text
from kitlog.desktop.service_page.history_dialog import HistoryDialog
from kitlog.desktop.service_page.page import ServicePage
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.window import Window
from kitlog.kit.measured_text import parse_measurement
from kitlog.kit.service import Result, ServiceRecord
from kitlog.workbench.reads import DueLine
from kitlog.workbench.workbench import Workbench

TODAY = date(2026, 5, 8)
PDF = b"%PDF-1.7\nporosity 182 s"


@pytest.fixture
def page(window: Window) -> ServicePage:
    made = window.open("service")
    assert isinstance(made, ServicePage)
    return made


@pytest.fixture
def scan(tmp_path: Path) -> Path:
    file = tmp_path / "check.pdf"
    file.write_bytes(PDF)
    return file


def line_of(bench: Workbench, item: str, rule: str) -> DueLine:
    return next(line for line in bench.due(TODAY) if line.item.name == item and line.rule.rule == rule)


def choose(page: ServicePage, item: str, rule: str) -> None:
    page._choose(line_of(page.desk.bench, item, rule).rule.id)


def newest(bench: Workbench) -> ServiceRecord:
    return bench.records()[-1]


def on_record(bench: Workbench, *measured: str, **fields: object) -> ServiceRecord:
    rule = line_of(bench, "Wing A", "wing.full").rule
    raw = {"id": bench.new_id(), "item_id": rule.item_id, "rules": (rule.id,), "done_on": TODAY, **fields}
    record = ServiceRecord.model_validate({**raw, "measurements": tuple(parse_measurement(one) for one in measured)})
    bench.add_record(record, sure=True)
    return record


def test_three_keystrokes_record_a_service(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    """Down to the rule, R, Enter: today, passed, by who did it the last time."""
    on_record(demo_bench, who="Workshop Vale", done_on=date(2025, 5, 8))
    row = page.model.row_of(line_of(demo_bench, "Wing A", "wing.full").rule.id)
    assert row is not None
    start = max(row - 1, 0)
    page.table.select(start)
    page.table.setFocus()
    if row != start:
        QTest.keyClick(page.table, Qt.Key.Key_Down)

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        QTest.keyClick(dialog.focusWidget(), Qt.Key.Key_Return)
        assert not dialog.isVisible()

    in_dialog(lambda: QTest.keyClick(page.table, Qt.Key.Key_R), enter)
    made = newest(demo_bench)
    assert (made.done_on, made.result, made.who) == (TODAY, Result.PASSED, "Workshop Vale")
    assert line_of(demo_bench, "Wing A", "wing.full").due.last == made


def test_everything_that_the_paper_says_can_be_entered(
    page: ServicePage, demo_bench: Workbench, in_dialog: Use, scan: Path
) -> None:
    choose(page, "Wing A", "wing.full")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        dialog.day.put(date(2026, 5, 1))
        dialog.outcome.choose("passed with remarks")
        dialog.hours.put(190.5)
        dialog.launches.put(900)
        dialog.cost.put(180)
        dialog.currency.setText("EUR")
        dialog.next_due.put(date(2027, 5, 1))
        dialog.next_within.put(80)
        dialog.measured.add_act.click()
        first = dialog.measured.rows[0]
        first.value.put(182)
        first.gauge.setText("gauge A")
        first.place.setText("cell 12")
        dialog.measured.add_act.click()
        second = dialog.measured.rows[1]
        second.what.choose("line strength")
        assert second.unit.chosen() == "daN"
        second.value.put(96.5)
        dialog.papers.attach([scan])
        dialog.accept()
        assert not dialog.isVisible(), dialog.wrong()

    in_dialog(page.acts.record_service, enter)
    made = newest(demo_bench)
    assert (made.hours, made.launches, made.cost, made.currency) == (190.5, 900, 180, "EUR")
    assert (made.next_due_on, made.next_within_h) == (date(2027, 5, 1), 80)
    assert made.measurements == (
        parse_measurement("porosity 182 s, gauge A, cell 12"),
        parse_measurement("line strength 96.5 daN, gauge A, cell 12"),
    )
    assert [paper.name for paper in made.papers] == ["check.pdf"]
    assert demo_bench.paper_bytes(made.papers[0]) == PDF


def test_hours_that_run_backwards_are_asked_about(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    choose(page, "Wing A", "wing.full")
    before = len(demo_bench.records())

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        dialog.hours.put(1)
        dialog.accept()
        assert dialog.isVisible()
        assert dialog.question.isVisible()
        assert "--sure" not in dialog.question.accessibleName() + dialog.wrong()
        assert len(demo_bench.records()) == before
        dialog.question.do_act.click()
        assert not dialog.isVisible()

    in_dialog(page.acts.record_service, enter)
    assert newest(demo_bench).hours == 1


def test_the_log_says_what_an_open_field_takes(page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
    choose(page, "Wing A", "wing.full")
    item = line_of(demo_bench, "Wing A", "wing.full").item

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        hours = demo_bench.usage(item.id, TODAY).airtime_h + (item.opening_h or 0)
        assert f"{hours:.1f}" in dialog._log.text()
        dialog.day.put(date(2015, 1, 1))
        assert f"{item.opening_h or 0:.1f}" in dialog._log.text()

    in_dialog(page.acts.record_service, enter)


def test_a_new_row_proposes_the_gauge_of_the_last_time_and_never_a_value(
    page: ServicePage, demo_bench: Workbench, in_dialog: Use
) -> None:
    on_record(demo_bench, "porosity 182 s, gauge B, cell 3", done_on=date(2025, 5, 8))
    choose(page, "Wing A", "wing.full")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        dialog.measured.add_act.click()
        row = dialog.measured.rows[0]
        assert (row.unit.chosen(), row.gauge.text(), row.place.text()) == ("s", "gauge B", "cell 3")
        assert row.value.number() is None
        dialog.accept()

    in_dialog(page.acts.record_service, enter)
    assert newest(demo_bench).measurements == ()


def test_files_are_dropped_and_what_is_no_paper_is_told_by_name(
    page: ServicePage, demo_bench: Workbench, in_dialog: Use, scan: Path, tmp_path: Path
) -> None:
    bad = tmp_path / "tool.pdf"
    bad.write_bytes(b"MZ not a paper")
    choose(page, "Wing A", "wing.full")

    def enter(dialog: QDialog) -> None:
        assert isinstance(dialog, RecordDialog)
        held = QMimeData()
        held.setUrls([QUrl.fromLocalFile(str(bad)), QUrl.fromLocalFile(str(scan)), QUrl.fromLocalFile(str(scan))])
        spot, left, none = QPointF(QPoint(5, 5)), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
        dialog.papers.dropEvent(QDropEvent(spot, Qt.DropAction.CopyAction, held, left, none))
        assert [paper.name for paper in dialog.papers.papers] == ["check.pdf"]
        assert "tool.pdf" in dialog.papers.wrong()
        assert dialog.changed()
        dialog.papers.remove(dialog.papers.papers[0])
        assert dialog.papers.papers == ()
        dialog.discard()

    in_dialog(page.acts.record_service, enter)


def test_a_record_is_corrected_and_the_old_one_stays_struck(
    page: ServicePage, demo_bench: Workbench, in_dialog: Use, qtbot, scan: Path
) -> None:
    old = on_record(demo_bench, "porosity 182 s, gauge A", who="Ana", cost=9, papers=(demo_bench.attach(scan),))
    dialog = RecordDialog(page.desk, "", "", page, change=old)
    qtbot.addWidget(dialog)
    assert dialog.record().model_copy(update={"id": old.id}) == old
    dialog.who.setText("Workshop Vale")
    dialog.accept()
    stored = {record.id: record for record in demo_bench.records()}
    assert stored[old.id].struck_at is not None
    assert (newest(demo_bench).who, newest(demo_bench).papers) == ("Workshop Vale", old.papers)
    demo_bench.undo()
    assert next(r for r in demo_bench.records() if r.id == old.id).struck_at is None


class TestHistory:
    def test_shows_everything_and_strikes_nothing_away(
        self, page: ServicePage, demo_bench: Workbench, qtbot, scan: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        on_record(demo_bench, "porosity 182 s, gauge A", done_on=date(2024, 5, 8))
        record = on_record(demo_bench, "porosity 121 s, gauge A", papers=(demo_bench.attach(scan),))
        item = line_of(demo_bench, "Wing A", "wing.full").item
        dialog = HistoryDialog(page.desk, item, page)
        qtbot.addWidget(dialog)
        assert dialog.view is not None
        assert "182\u00a0s" in dialog.view.accessibleDescription()
        opened: list[QUrl] = []
        monkeypatch.setattr(paper_opening.QDesktopServices, "openUrl", opened.append)
        acts = {button.text(): button for button in reversed(dialog.findChildren(Button))}
        acts["Open check.pdf"].click()
        assert Path(opened[0].toLocalFile()).read_bytes() == PDF
        acts["Strike through"].click()
        assert next(r for r in demo_bench.records() if r.id == record.id).struck_at is not None
        assert "121\u00a0s" not in dialog.view.accessibleDescription()
        words = " ".join(label.text() for label in dialog.findChildren(Text) if label.isVisibleTo(dialog))
        assert "counts for nothing" in words

    def test_older_entries_follow_on_demand(self, page: ServicePage, demo_bench: Workbench, qtbot) -> None:
        for year in range(2000, 2020):
            on_record(demo_bench, who=f"of {year}", done_on=date(year, 5, 8))
        dialog = HistoryDialog(page.desk, line_of(demo_bench, "Wing A", "wing.full").item, page)
        qtbot.addWidget(dialog)

        def words() -> str:
            return " ".join(label.text() for label in dialog.findChildren(Text) if label.isVisibleTo(dialog))

        assert "of 2019" in words()
        assert "of 2000" not in words()
        for _more in range(3):
            dialog.show_older()
        assert "of 2000" in words()

    def test_a_missing_paper_is_said_in_words(
        self, page: ServicePage, demo_bench: Workbench, qtbot, scan: Path
    ) -> None:
        from kitlog.files.papers import folder_of

        on_record(demo_bench, papers=(demo_bench.attach(scan),))
        for file in folder_of(demo_bench.path).rglob("*"):
            if file.is_file():
                file.unlink()
        dialog = HistoryDialog(page.desk, line_of(demo_bench, "Wing A", "wing.full").item, page)
        qtbot.addWidget(dialog)
        next(button for button in dialog.findChildren(Button) if button.text() == "Open check.pdf").click()
        assert "check.pdf" in dialog.wrong()

    def test_an_item_without_history_says_so(self, page: ServicePage, demo_bench: Workbench, in_dialog: Use) -> None:
        choose(page, "Helmet B", "helmet.age")

        def look(dialog: QDialog) -> None:
            assert isinstance(dialog, HistoryDialog)
            assert any("Nothing is on record" in label.text() for label in dialog.findChildren(Text))

        in_dialog(page.acts.show_history, look)
