"""What can be done on the page Outing: the handlers of its actions."""

from typing import TYPE_CHECKING

from kitlog.budget.result import Topic
from kitlog.outing.outing import Outing

if TYPE_CHECKING:
    from kitlog.desktop.outing_page.page import OutingPage


class OutingActs:
    """The acts of a page Outing."""

    def __init__(self, page: "OutingPage") -> None:
        self._page = page
        self._desk = page.desk
        self._bench = page.desk.bench

    def new_outing(self) -> None:
        """Plan a new outing; nothing is written before it is saved, and then it is the one worked on."""
        from kitlog.desktop.outing_page.new_draft import new_draft

        last = max(self._bench.outings(), key=lambda outing: outing.last_day, default=None)
        today = self._bench.now().date()
        self._edit(new_draft(self._bench.new_id(), today, self._bench.library, last), is_new=True)

    def edit_plan(self) -> None:
        """Edit the plan."""
        outing = self._desk.outing()
        if outing is not None:
            self._edit(outing, is_new=False)

    def edit_power(self) -> None:
        """Edit what the devices do in each phase, where they hang and what they begin with."""
        from kitlog.desktop.outing_page.power_plan import PowerPlan

        outing = self._desk.outing()
        if outing is not None:
            PowerPlan(self._desk, outing, self._page).exec()

    def delete_outing(self) -> None:
        """Delete the outing; undo brings it back."""
        outing = self._desk.outing()
        if outing is not None:
            self._desk.perform(lambda: self._bench.delete_outing(outing.id))

    def answer_first(self) -> None:
        """Answer the first question that is open, else change the first answer."""
        assessment = self._desk.judged()
        if assessment is not None and assessment.questions:
            still = [question for question in assessment.questions if not question.answered]
            self._page.ask((still or list(assessment.questions))[0].id)

    def show_findings(self) -> None:
        """All findings, worst first."""
        self._page.open_topic(None)

    def show_kit(self) -> None:
        """What goes, what stays, and why."""
        self._page.open_topic(Topic.KIT)

    def show_power(self) -> None:
        """The lanes."""
        self._page.open_topic(Topic.POWER)

    def show_weight(self) -> None:
        """The ruler."""
        self._page.open_topic(Topic.WEIGHT)

    def show_people(self) -> None:
        """Who knows."""
        self._page.open_topic(Topic.PEOPLE)

    def _edit(self, outing: Outing, *, is_new: bool) -> None:
        from kitlog.desktop.outing_page.plan_editor import PlanEditor

        editor = PlanEditor(self._desk, outing, self._page, is_new=is_new)
        if editor.exec() and is_new:
            self._desk.perform(lambda: self._bench.work_on(outing.id))
