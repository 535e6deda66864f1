"""What a pilot does on the page Repack, through the window and on a real data file: the last step."""

from collections.abc import Iterable
from pathlib import Path

import pytest
from desk_steps import Key, Use, item_named, outing_of, repack_page, row_of, stand_on, ticks_of, work_on
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog

from kitlog.budget.result import State
from kitlog.desktop.outing_page.override_dialog import OverrideDialog
from kitlog.desktop.repack_page.page import RepackPage
from kitlog.desktop.repack_page.progress import MISSING
from kitlog.desktop.repack_page.rows import RowKind
from kitlog.desktop.window import Window
from kitlog.outing.ticks import Step, Tick


def test_close_lists_findings_worst_first_and_the_open_questions(window: Window) -> None:
    work_on(window.desk.bench, "on foot")
    page = repack_page(window, Step.CLOSE)
    from kitlog.desktop.outing_page.finding_rows import FindingRow

    states = [row.finding.state for row in page.closing.findChildren(FindingRow)]
    order = (State.STOP, State.LOOK, State.NOT_KNOWN)
    assert states == sorted(states, key=order.index)
    assert State.STOP in states
    assert page.closing.band.segments


def test_close_asks_a_reason_for_each_stop_and_only_then_closes(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    work_on(bench, "on foot")
    page = repack_page(window, Step.STOW)
    stops = [f.key for f in bench.assess(outing_of(bench)).findings if f.state is State.STOP]
    assert page.footer.asks_count.text() == f"{len(stops)} stops"
    asked: list[str] = []

    def answer(dialog: QDialog) -> None:
        while isinstance(dialog, OverrideDialog):
            asked.append(dialog.windowTitle())
            dialog.reason_field.setPlainText(f"reason {len(asked)}")
            dialog.accept()
            break

    def answer_all() -> None:
        from PySide6.QtCore import QTimer

        def again() -> None:
            dialog = QApplication.activeModalWidget()
            if isinstance(dialog, OverrideDialog):
                answer(dialog)
            if len(asked) < len(stops):
                QTimer.singleShot(5, again)

        QTimer.singleShot(0, again)
        page.acts.close_now()

    answer_all()
    assert len(asked) == len(stops)
    assert [o.finding for o in outing_of(bench).overrides] == stops
    assert (Step.CLOSE, "repack") in ticks_of(bench)
    assert page.step is Step.CLOSE
    assert not page.footer.close_act.isVisible()
    qtbot.mouseClick(page.footer.reopen_act, Qt.MouseButton.LeftButton)
    assert (Step.CLOSE, "repack") not in ticks_of(bench)
    assert len(outing_of(bench).overrides) == len(stops)


def test_leaving_the_reason_leaves_the_repack_open(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    work_on(bench, "on foot")
    page = repack_page(window, Step.STOW)
    in_dialog(page.acts.close_now, lambda dialog: dialog.reject())
    assert ticks_of(bench) == {}
    assert outing_of(bench).overrides == ()


def test_an_essential_line_that_is_missing_asks_for_a_reason_too(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    page = repack_page(window, Step.STOW)
    stand_on(page, "Headlamp")
    qtbot.keyClick(page.list, Key.Key_M)
    assert page.footer.asks_count.text() == "1 stop"

    def reason(dialog: QDialog) -> None:
        assert isinstance(dialog, OverrideDialog)
        dialog.reason_field.setPlainText("home before dark, phone lamp")
        dialog.accept()

    in_dialog(page.acts.close_now, reason)
    lamp = item_named(bench, "Headlamp").id
    assert [o.finding for o in outing_of(bench).overrides] == [f"{MISSING}:{lamp}"]
    page.open_step(Step.STOW)
    assert "home before dark" in row_of(page, "Headlamp").note


def stow(page: RepackPage, lines: Iterable[str]) -> None:
    bench = page.desk.bench
    for line in lines:
        bench.tick(Tick(outing_id=page.outing_id, step=Step.STOW, line=line, at=bench.now()))


def test_stowed_and_without_stops_it_closes_at_once(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    assert page.progress is not None
    stow(page, page.progress.to_stow)
    assert page.progress.open_stops() == ()
    qtbot.mouseClick(page.footer.close_act, Qt.MouseButton.LeftButton)
    assert (Step.CLOSE, "repack") in ticks_of(window.desk.bench)
    assert "closed 18:41" in page.strip.tabs[Step.CLOSE].accessibleName()


def test_with_lines_to_stow_it_asks_first_and_staying_has_the_focus(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    assert page.progress is not None
    *others, last, missing = page.progress.to_stow
    stow(page, others)
    page.list.stand_on_key(missing)
    page.acts.mark_missing()
    qtbot.mouseClick(page.footer.close_act, Qt.MouseButton.LeftButton)
    assert (Step.CLOSE, "repack") not in ticks_of(window.desk.bench)
    assert page.question.isVisible()
    assert page.question.what.text() == "1 line is not stowed yet. Close all the same?"
    assert page.question.more.text() == page.desk.names()[last]
    assert QApplication.focusWidget() is page.question.stay_act
    qtbot.keyClick(page.question.stay_act, Key.Key_Return)
    assert not page.question.isVisible()
    row = page.current()
    assert row is not None
    assert (page.step, row.key) == (Step.STOW, last)
    assert (Step.CLOSE, "repack") not in ticks_of(window.desk.bench)


def test_it_names_a_few_of_many_lines_and_closes_by_keyboard(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    assert page.progress is not None
    to_stow = page.progress.to_stow
    page.acts.close_repack()
    assert page.question.what.text().startswith(f"{len(to_stow)} lines")
    assert page.question.more.text().endswith(f" and {len(to_stow) - 6} more")
    qtbot.keyClick(page.question.stay_act, Key.Key_Left)
    assert QApplication.focusWidget() is page.question.do_act
    qtbot.keyClick(page.question.do_act, Key.Key_Space)
    assert (Step.CLOSE, "repack") in ticks_of(window.desk.bench)
    assert window.status.undo_act.words == "Undo: close repack"
    page.acts.open_again()
    assert window.status.undo_act.words == "Undo: open the repack again"


def test_esc_or_a_change_takes_the_question_away(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    page.acts.close_repack()
    qtbot.keyClick(page.question.stay_act, Key.Key_Escape)
    assert not page.question.isVisible()
    page.acts.close_repack()
    stow(page, [item_named(page.desk.bench, "Boots").id])
    assert not page.question.isVisible()
    assert QApplication.focusWidget() is page.list
    page.acts.close_repack()
    page.open_step(Step.CHARGE)
    assert not page.question.isVisible()
    assert (Step.CLOSE, "repack") not in ticks_of(window.desk.bench)


def test_an_overridden_stop_shows_its_reason_at_its_line(window: Window) -> None:
    bench = window.desk.bench
    outing = work_on(bench, "on foot")
    page = repack_page(window, Step.STOW)
    stop = next(f for f in bench.assess(outing).findings if f.state is State.STOP and f.items)
    assert page.list.rows.rows[1].kind is RowKind.EXCEPTION
    bench.override(outing.id, stop.key, "paid by phone today")
    row = next(row for row in page.list.rows.rows if row.key == stop.items[0])
    assert row.kind is RowKind.LINE
    assert "paid by phone today" in row.note


def test_the_sheet_is_saved_as_one_file(window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot) -> None:
    page = repack_page(window, Step.CLOSE)
    to = tmp_path / "sheet.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_given: (str(to), ""))
    qtbot.mouseClick(page.closing.sheet_act, Qt.MouseButton.LeftButton)
    assert "Headlamp" in to.read_text(encoding="utf-8")
    assert "sheet.html" in page.remark.text()
