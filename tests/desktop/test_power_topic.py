"""The power topic through the window, on a real data file: days drawn beside the window, values read, phases dragged."""

from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
from desk_steps import Key, Use, outing_of, outing_page, work_on
from power_topic_steps import at, drawn, picture_of, spread_shown, topic_of
from PySide6.QtCore import QElapsedTimer, QTimer
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from kitlog.budget.power.forecast import Forecast
from kitlog.budget.result import State, Topic
from kitlog.desktop.outing_page import forecasting
from kitlog.desktop.outing_page.page import OutingPage
from kitlog.desktop.outing_page.plan_editor import PlanEditor
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.desktop.outing_page.power_topic import PowerTopic
from kitlog.desktop.outing_page.power_view import PowerView
from kitlog.desktop.outing_page.power_words import power_picture
from kitlog.desktop.outing_page.topics import state_of
from kitlog.desktop.parts.chip import ChipButton
from kitlog.desktop.parts.text import Text
from kitlog.desktop.window import Window
from kitlog.outing.outing import PlugPlan
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_question import day_forecasts
from kitlog.paint.mark import Mark
from kitlog.wording.findings import say
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def page(window: Window) -> OutingPage:
    opened = outing_page(window)
    opened.open_topic(Topic.POWER)
    return opened


class TestDaysDrawn:
    def test_they_are_those_of_the_question(self, page: OutingPage, window: Window, qtbot) -> None:
        found = drawn(page, qtbot)
        assessment = window.desk.assessment()
        assert assessment is not None
        *_rest, expected = day_forecasts(assessment, window.desk.bench.library) or ()
        assert found == expected
        shown = {lane.label: lane for lane in picture_of(page).picture.lanes}
        names = window.desk.names()
        for item, device in expected.devices.items():
            assert shown[names[item]].spread is not None
            assert shown[names[item]].chance
            assert len(shown[names[item]].off_by) == sum(place is not None for place in device.off_at)

    def test_a_first_estimate_comes_before_all_days_and_says_so(self, window: Window, qtbot) -> None:
        opened = outing_page(window)
        said: list[str] = []
        opened.open_topic(Topic.POWER)
        opened.power.forecasting.refined.connect(lambda: said.append(topic_of(opened).second.text()))
        assert "drawing days" in topic_of(opened).first.text()
        assert not spread_shown(opened)
        drawn(opened, qtbot)
        assert said[0].endswith("first estimate, 500 of 10\u2009000 days")
        assert any("\u00b7 estimate, " in text and "of 10\u2009000 days" in text for text in said[1:-1])
        assert said[-1].endswith("10\u2009000 days drawn")

    def test_the_chance_that_matters_is_named_with_its_error(self, page: OutingPage, window: Window, qtbot) -> None:
        found = drawn(page, qtbot)
        topic = topic_of(page)
        assert topic.first.text().startswith("Phone can still call at the end of the retrieve: ")
        pct = 100 * found.all_last.probability
        assert (
            f"all devices last: {pct:.1f}\u00a0% (±\u00a0{100 * found.all_last.standard_error:.1f})"
            in topic.second.text()
        )
        assert "seed 1" in topic.first.toolTip()
        assessment = window.desk.assessment()
        assert assessment is not None
        phone = chance_findings(assessment, found)[0]
        worst = state_of((*assessment.of(Topic.POWER), *chance_findings(assessment, found)))
        assert topic.state.accessibleName() == worst.value
        assert say(phone, window.desk.names()).sentence in topic.first.toolTip()

    def test_a_lane_shows_the_worst_that_is_said_of_its_device_and_so_does_the_heading(
        self, page: OutingPage, window: Window, qtbot
    ) -> None:
        """A stop on the tile, from the phone at the landing, is none the less one in its lane."""
        assessment = window.desk.assessment()
        assert assessment is not None
        device = next(f for f in assessment.findings if f.code == "power.device" and f.items)
        landing = replace(device, code="power.phone_at_landing", state=State.STOP)
        stopped = replace(assessment, findings=(*assessment.findings, landing))
        names = window.desk.names()
        lane = next(one for one in power_picture(stopped, names).lanes if one.label == names[device.items[0]])
        assert lane.mark is Mark.STOP
        assert drawn(page, qtbot).is_final
        topic = PowerTopic(stopped, names, page.power)
        qtbot.addWidget(topic)
        assert topic.state.accessibleName() == "stop"

    def test_a_phone_that_is_not_described_is_not_known_never_fine(
        self, show: Callable[..., Window], demo_bench: Workbench, qtbot
    ) -> None:
        phone = next(item for item in demo_bench.items() if item.name == "Phone")
        assert phone.battery is not None
        demo_bench.edit_items([phone.model_copy(update={"battery": phone.battery.model_copy(update={"wh": None})})])
        opened = outing_page(show(demo_bench))
        opened.open_topic(Topic.POWER)
        drawn(opened, qtbot)
        topic = topic_of(opened)
        assert topic.state.accessibleName() in {"look", "stop", "not known"}
        assert "not known" in topic.first.text()
        assert "all devices last" in topic.second.text()

    def test_a_screen_reader_hears_chance_error_margin_and_times(self, page: OutingPage, qtbot) -> None:
        drawn(page, qtbot)
        said = picture_of(page).accessibleDescription()
        assert said.startswith("Phone can still call at the end of the retrieve")
        radio = said[said.index("Handheld radio: ") : said.index("Satellite messenger: ")]
        for words in ("lasts the likely day", "to spare", "off at 21:52 on the high day", "3:38", "too early", "(±"):
            assert words in radio, (words, radio)
        assert "5\u00a0% of the days: off by" in radio

    def test_the_same_plan_is_drawn_once(self, page: OutingPage, window: Window, qtbot) -> None:
        before = drawn(page, qtbot)
        window.desk.bench.answer(outing_of(window.desk.bench).id, "weather", "fine")
        assert page.power.forecasting.latest is before
        assert not page.power.forecasting.busy
        assert spread_shown(page)

    def test_days_of_another_plan_are_dropped_at_once(self, page: OutingPage, window: Window, qtbot) -> None:
        before = drawn(page, qtbot)
        bench = window.desk.bench
        plan = outing_of(bench)
        longer = plan.phases[1].model_copy(update={"likely_h": 5.5})
        bench.save_outing(plan.model_copy(update={"phases": (plan.phases[0], longer, *plan.phases[2:])}))
        assert page.power.forecasting.latest is None
        assert not spread_shown(page)
        assert "drawing days" in topic_of(page).first.text()
        assert drawn(page, qtbot).all_last != before.all_last

    def test_leaving_the_page_ends_the_work_and_coming_back_takes_it_up(
        self, window: Window, qtbot, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        closed: list[int] = []

        def watched(*asked: object, **how: int) -> Iterator[Forecast]:
            count = 0
            try:
                for estimate in day_forecasts(*asked, **how) or ():  # type: ignore[arg-type]
                    count = estimate.days
                    yield estimate
            finally:
                closed.append(count)

        monkeypatch.setattr(forecasting, "day_forecasts", watched)
        opened = outing_page(window)
        opened.open_topic(Topic.POWER)
        qtbot.waitUntil(lambda: opened.power.forecasting.latest is not None)
        window.open("kit")
        assert not opened.power.forecasting.busy
        qtbot.waitUntil(lambda: bool(closed))
        assert closed[0] < 10_000
        window.open("outing")
        assert drawn(opened, qtbot).days == 10_000

    def test_another_topic_ends_the_work(self, page: OutingPage) -> None:
        assert page.power.forecasting.busy
        page.open_topic(Topic.WEIGHT)
        assert not page.power.forecasting.busy

    def test_the_window_goes_on_while_days_are_drawn(self, window: Window, qtbot) -> None:
        """A timer of 5 ms beats on; the longest silence is printed. Asserted is only that the window had its turns."""
        opened = outing_page(window)
        beat, since, gaps = QTimer(opened), QElapsedTimer(), list[int]()
        beat.setInterval(5)
        beat.timeout.connect(lambda: gaps.append(since.restart()))
        opened.open_topic(Topic.POWER)
        since.start()
        beat.start()
        drawn(opened, qtbot)
        beat.stop()
        print(f"longest gap {max(gaps)} ms, {len(gaps)} beats in {sum(gaps)} ms")  # noqa: T201  # looked at
        assert len(gaps) > 20
        assert sorted(gaps)[len(gaps) // 2] < 50


class TestReading:
    def test_keys_read_the_days_too(self, page: OutingPage, qtbot) -> None:
        drawn(page, qtbot)
        picture = picture_of(page)
        qtbot.keyClick(picture, Key.Key_End)
        assert "of the days 5 % at or under" in picture.reading()
        assert "\u00a0% of the days: off by" in picture.reading()
        qtbot.keyClick(picture, Key.Key_Home)
        assert "off by" not in picture.reading()

    def test_the_pointer_reads_the_days_too(self, page: OutingPage, qtbot) -> None:
        drawn(page, qtbot)
        picture = picture_of(page)
        page.scroller.ensureWidgetVisible(picture)
        qtbot.mouseMove(picture, at(picture, 0.5, 60))
        qtbot.waitUntil(lambda: picture.cursor_at is not None)
        assert "of the days 5 % at or under" in picture.reading()

    def test_estimates_that_come_in_leave_the_reading_line_where_it_is(self, page: OutingPage, qtbot) -> None:
        picture = picture_of(page)
        qtbot.keyClick(picture, Key.Key_End)
        drawn(page, qtbot)
        assert picture.cursor_at == 1.0
        assert picture.accessibleDescription() == picture.reading()


class TestOutOfDate:
    def test_a_plan_that_cannot_be_reckoned_greys_what_was_found_before(
        self, page: OutingPage, window: Window, qtbot
    ) -> None:
        drawn(page, qtbot)
        bench = window.desk.bench
        good = outing_of(bench)
        bench.save_outing(good.model_copy(update={"plugs": contradiction(bench)}))
        assert page.outdated.isVisible()
        assert "Out of date" in page.outdated.what.text()
        assert "“Phone” is plugged in twice" in page.outdated.why.text()
        assert page.view is not None
        for part in (page.board, page.view):
            assert not part.isEnabled()
            assert part.graphicsEffect() is not None
            assert "Out of date" in part.accessibleDescription()
        assert not page.power.forecasting.busy
        assert page.power.forecasting.latest is None
        page.open_topic(Topic.WEIGHT)
        page.acts.answer_first()
        assert page.first().isEnabled()
        bench.undo()
        assert not page.outdated.isVisible()
        assert page.board.isEnabled()
        assert page.board.graphicsEffect() is None
        assert all(part.isEnabled() for part in page.view.findChildren(QWidget) if isinstance(part, PowerView))

    def test_figures_of_another_outing_are_not_kept(self, page: OutingPage, window: Window) -> None:
        bench = window.desk.bench
        other = work_on(bench, "on foot")
        bench.save_outing(other.model_copy(update={"plugs": contradiction(bench, other.phases[0].name)}))
        bench.work_on(bench.outings()[0].id if bench.outings()[0].id != other.id else bench.outings()[1].id)
        bench.work_on(other.id)
        assert page.outdated.isVisible()
        assert not page.board.isVisible()
        assert page.view is not None
        assert not page.view.isVisible()
        assert page.first().isEnabled()


def test_the_power_plan_opens_from_the_topic_by_the_keys(
    page: OutingPage, window: Window, in_dialog: Use, qtbot
) -> None:
    act = topic_of(page).plan_act
    assert act.accessibleName() == "Edit the power plan"
    act.setFocus()
    assert QApplication.focusWidget() is act
    in_dialog(lambda: qtbot.keyClick(act, Key.Key_Space), dialog_is_power_plan)


def dialog_is_power_plan(dialog: QDialog) -> None:
    assert isinstance(dialog, PowerPlan)


def contradiction(bench: Workbench, phase: str = "flight") -> tuple[PlugPlan, ...]:
    """One device on one bank twice in a phase."""
    named = {item.name: item.id for item in bench.items()}
    plug = PlugPlan(phase=phase, device=named["Phone"], bank=named["Power bank"])
    return (plug, plug)


def test_the_editor_says_what_cannot_be_reckoned_and_shows_no_figures_of_before(
    page: OutingPage, window: Window, in_dialog: Use
) -> None:
    bench = window.desk.bench
    bench.save_outing(outing_of(bench).model_copy(update={"plugs": contradiction(bench)}))

    def look(dialog: QDialog) -> None:
        assert isinstance(dialog, PlanEditor)
        assert dialog.assessed is None
        assert dialog.live.text() == "not known while something cannot be so"
        assert not dialog.main.isEnabled()
        said = " ".join(text.text() for text in dialog.findChildren(Text) if text.isVisibleTo(dialog))
        assert "plugged in twice" in said

    in_dialog(page.acts.edit_plan, look)


def test_the_tag_counts_nothing_of_a_plan_that_cannot_be_reckoned(page: OutingPage, window: Window, qtbot) -> None:
    bench = window.desk.bench
    window.show_counts()
    assert any(chip.isVisible() for chip in window.tag.findChildren(ChipButton))
    bench.save_outing(outing_of(bench).model_copy(update={"plugs": contradiction(bench)}))
    window.show_counts()
    assert not any(chip.isVisible() for chip in window.tag.findChildren(ChipButton))
