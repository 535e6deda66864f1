"""What a pilot does on the page Outing, through the window and on a real data file: planning."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from desk_steps import Key, Use, outing_of, outing_page
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from kitlog.budget.result import Topic
from kitlog.desktop.outing_page.plan_editor import PlanEditor
from kitlog.desktop.window import Window
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.outing import Outing
from kitlog.workbench.workbench import Workbench


def test_a_new_outing_is_prefilled_and_written_only_by_save(
    show: Callable[..., Window], empty_bench: Workbench, in_dialog: Use, qtbot
) -> None:
    page = outing_page(show(empty_bench))
    seen: list[Outing] = []

    def leave(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        seen.append(dialog.draft())
        dialog.reject()

    in_dialog(page.empty.buttons[0].click, leave)
    assert empty_bench.outings() == ()
    draft = seen[0]
    assert draft.first_day == empty_bench.now().date() + timedelta(days=1)
    assert draft.flight_types == ("cross-country",)
    assert [phase.way for phase in draft.phases] == [PhaseWay.WAIT, PhaseWay.FLIGHT, PhaseWay.RIDE_HOME]
    in_dialog(page.empty.buttons[0].click, lambda dialog: qtbot.mouseClick(dialog.main, Qt.MouseButton.LeftButton))
    assert [outing.first_day for outing in empty_bench.outings()] == [draft.first_day]
    assert set(page.board.tiles) == {Topic.KIT, Topic.POWER, Topic.WEIGHT, Topic.PEOPLE}


def test_the_editor_assesses_while_one_types_and_writes_only_by_save(window: Window, in_dialog: Use, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    before = outing_of(bench)
    said: list[str] = []

    def edit(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        said.append(dialog.live.text())
        flight = next(row for row in dialog.phases.rows if row.way.chosen() is PhaseWay.FLIGHT)
        flight.likely.setText("0:20")
        flight.low.setText("10 min")
        flight.high.setText("0,5")
        dialog.chosen.water.put(1.0)
        qtbot.waitUntil(lambda: dialog.live.text() != said[0], timeout=3000)
        said.append(dialog.live.text())
        assert outing_of(bench) == before
        qtbot.mouseClick(dialog.main, Qt.MouseButton.LeftButton)

    in_dialog(page.acts.edit_plan, edit)
    assert "95.2" in said[1]
    after = outing_of(bench)
    phase = next(p for p in after.phases if p.way is PhaseWay.FLIGHT)
    assert (round(phase.low_h, 6), round(phase.likely_h, 6), phase.high_h) == (0.166667, 0.333333, 0.5)
    assert after.water_ml == 1000
    assert page.plan.findChild(QWidget) is not None
    bench.undo()
    assert outing_of(bench) == before


def test_an_unchanged_plan_comes_back_as_it_was(window: Window, in_dialog: Use, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    for outing in bench.outings():
        bench.work_on(outing.id)
        seen: list[Outing] = []
        in_dialog(page.acts.edit_plan, lambda dialog, seen=seen: seen.append(dialog.draft()))
        assert seen == [outing]


def test_leaving_the_editor_writes_nothing(window: Window, in_dialog: Use, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench
    before = outing_of(bench)

    def leave(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        dialog.day.name.setText("another")
        qtbot.mouseClick(dialog.leave, Qt.MouseButton.LeftButton)
        assert not dialog.isVisible()

    in_dialog(page.acts.edit_plan, leave)
    assert outing_of(bench) == before


@pytest.mark.parametrize(
    ("what", "spoil", "where"),
    [
        ("falling durations", lambda e: e.phases.rows[0].likely.setText("9:00"), lambda e: e.phase_note),
        ("no duration", lambda e: e.phases.rows[0].low.setText("soon"), lambda e: e.phase_note),
        ("two names", lambda e: e.phases.rows[0].name.setText("flight"), lambda e: e.phase_note),
        ("no name", lambda e: e.day.name.setText(" "), lambda e: e.day.notes["name"]),
        ("days reversed", lambda e: e.day.last.put(e.day.first.day() - timedelta(days=1)), None),
        ("no time", lambda e: e.day.start.setText("25:99"), lambda e: e.day.notes["starts_at"]),
        ("no time zone", lambda e: e.day.zone.setText("Europe/Nowhere"), lambda e: e.day.notes["starts_at"]),
        ("no type", lambda e: [t.setChecked(False) for t in e.day.types.ticks.values()], None),
    ],
)
def test_what_cannot_be_so_is_said_at_its_field(
    window: Window,
    in_dialog: Use,
    qtbot,
    what: str,
    spoil: Callable[[PlanEditor], object],
    where: Callable[[PlanEditor], QWidget] | None,
) -> None:
    page, bench = outing_page(window), window.desk.bench
    before = outing_of(bench)

    def wrong(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        spoil(dialog)
        dialog.look()
        assert not dialog.main.isEnabled(), what
        notes = [*dialog.day.notes.values(), dialog.phase_note]
        said = [note for note in notes if note.text() and note.isVisibleTo(dialog)]
        assert len(said) == 1, what
        assert where is None or said == [where(dialog)], what
        assert dialog.reason.text()
        dialog.accept()
        assert dialog.isVisible()

    in_dialog(page.acts.edit_plan, wrong)
    assert outing_of(bench) == before


def test_phases_are_added_moved_and_removed_by_keyboard(window: Window, in_dialog: Use, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench

    def edit(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        table = dialog.phases
        names = [row.name.text() for row in table.rows]
        qtbot.keyClick(table.add_act, Key.Key_Space)
        assert len(table.rows) == len(names) + 1
        assert QApplication.focusWidget() is table.rows[-1].name
        qtbot.keyClicks(table.rows[-1].name, "second flight")
        qtbot.keyClick(table.rows[-1].up, Key.Key_Space)
        assert table.rows[-2].name.text() == "second flight"
        qtbot.keyClick(table.rows[0].remove, Key.Key_Space)
        assert [row.name.text() for row in table.rows] == [*names[1:-1], "second flight", names[-1]]
        qtbot.mouseClick(dialog.main, Qt.MouseButton.LeftButton)

    in_dialog(page.acts.edit_plan, edit)
    assert [phase.name for phase in outing_of(bench).phases] == ["flight", "walk out", "second flight", "ride home"]


def test_people_are_named_and_told(window: Window, in_dialog: Use, qtbot) -> None:
    page, bench = outing_page(window), window.desk.bench

    def edit(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        people = dialog.people
        first = people.rows[0].name.text()
        qtbot.keyClick(people.rows[1].remove, Key.Key_Space)
        qtbot.keyClick(people.add_act, Key.Key_Space)
        qtbot.keyClicks(QApplication.focusWidget(), "Ulla Farn")
        people.rows[0].told.setChecked(True)
        assert first == "Jorun Maravel"
        qtbot.mouseClick(dialog.main, Qt.MouseButton.LeftButton)

    in_dialog(page.acts.edit_plan, edit)
    people = {person.name: person for person in outing_of(bench).people}
    assert people["Jorun Maravel"].told_at == bench.now()
    assert "Ulla Farn" in people
    assert "Tobiah Renk" not in people
