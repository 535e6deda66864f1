"""The topic power: the chance that matters in words, and the picture, in which the plan's phases can be dragged."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.budget.power.forecast import Forecast
from kitlog.budget.result import State, Topic
from kitlog.desktop import look
from kitlog.desktop.outing_page.ask_panel import AskPanel, AskTools
from kitlog.desktop.outing_page.chance_words import chance_words, drawing_text, stage_text
from kitlog.desktop.outing_page.forecasting import Forecasting
from kitlog.desktop.outing_page.power_said import edge_help, edge_text, power_sentences
from kitlog.desktop.outing_page.power_view import PowerView
from kitlog.desktop.outing_page.power_words import power_picture
from kitlog.desktop.outing_page.topics import TITLES, mark_of, state_of
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.fault import Fault
from kitlog.outing.library import Library
from kitlog.outing.outing import Phase
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_draft import redrawn, with_likely
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.findings import Names
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word

FOLLOW_MS = 40
"""So long after a frame of the picture the tile and the table of phases follow, also while the pointer goes on."""


@dataclass
class PowerTools:
    """What the topic needs of its page, and what it leaves to the next one after a change.

    Attributes:
        forecasting: draws the days.
        library: for who can call for help.
        keep: writes another phase in place of one; whether that was done.
        asks: for what is asked of the plan.
        follow: shows the power of a plan that is tried wherever else it stands; None: that of the plan again.
        edit: opens the power plan.
        edge: number of the phase whose end was moved last, None for none.
    """

    forecasting: Forecasting
    library: Library
    keep: Callable[[int, Phase], bool]
    asks: AskTools
    follow: Callable[[Assessment | None], object]
    edit: Callable[[], object]
    edge: int | None = None

    def pause(self) -> None:
        """Nothing of it is shown: work no more for now."""
        self.forecasting.pause()
        self.asks.asking.pause()

    def drop(self) -> None:
        """What was found is out of date."""
        self.forecasting.drop()
        self.asks.asking.drop()


class PowerTopic(QWidget):
    """Chance, and charge over the day.

    Attributes:
        draft: the assessment of what is being dragged, None while nothing is.
        first, second: the lines above the picture; state: the worst that is said of power, as on its tile.
        picture: the lanes; questions: what is asked of the plan; plan_act: opens the power plan.
    """

    def __init__(self, assessment: Assessment, names: Names, tools: PowerTools, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._assessment, self._names, self._tools = assessment, names, tools
        self.draft: Assessment | None = None
        self._number, self._is_followed = 0, False
        self._behind = QTimer(self)
        self._behind.setSingleShot(True)
        self._behind.setInterval(FOLLOW_MS)
        self._behind.timeout.connect(self._follow)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(2))
        self.first, self.second = Paragraph("", Role.NAME, "ink"), Paragraph("", Role.SMALL, "muted")
        self.picture = PowerView(_("Charge over the day"), power_picture(assessment, names), "")
        head = QHBoxLayout()
        head.setSpacing(look.px(12))
        head.addWidget(Text(_(TITLES[Topic.POWER]), Role.SECTION), 0, Qt.AlignmentFlag.AlignTop)
        self.state = StateMark(on_tint=False)  # at the title: it is that of all that is said of power
        head.addWidget(self.state, 0, Qt.AlignmentFlag.AlignTop)
        self.first.setContentsMargins(0, look.px(3), 0, 0)
        head.addWidget(self.first, 1)
        self.plan_act = Button(_("Power plan"), Rank.ACT)
        self.plan_act.setObjectName("power plan")
        self.plan_act.setAccessibleName(_("Edit the power plan"))
        self.plan_act.setToolTip(_("What each device does in each phase, where it hangs, what it begins with"))
        self.plan_act.clicked.connect(lambda _on=False: tools.edit())
        head.addWidget(self.plan_act, 0, Qt.AlignmentFlag.AlignTop)
        rows.addLayout(head)
        self.questions = AskPanel(assessment, names, tools.asks)
        for part in (self.second, self.picture, self.questions):
            rows.addWidget(part)
        self.picture.choose_edge(tools.edge)
        tools.edge = None
        self.picture.moved.connect(self._move)
        self.picture.kept.connect(self._keep)
        self.picture.given_up.connect(self.want_days)
        tools.forecasting.refined.connect(self._refine)
        self.want_days()

    def want_days(self) -> None:
        """Have days drawn for the plan that is shown, and what was asked of it answered."""
        self.questions.want()
        try:
            self._tools.forecasting.want(self._assessment, self._tools.library)
        except Fault as fault:
            self.restore()
            self.second.say(_("No days can be drawn: {why}.").format(why=fault_text(fault).what))
            return
        self.restore()

    def restore(self) -> None:
        """Show the plan as it stands, with the days drawn for it so far."""
        self.draft = None
        self._unfollow()
        forecast = self._tools.forecasting.latest
        if forecast is None:
            self._say(stage_text(None), "")
            self._show_state(state_of(self._assessment.of(Topic.POWER)))
        else:
            self._say_chance(forecast)
        sentences = power_sentences(self._assessment, self._names, forecast)
        said = sentences if forecast is None else f"{self.first.text()}. {self.second.text()}. {sentences}"
        self.picture.show_picture(power_picture(self._assessment, self._names, forecast), said)

    def _say_chance(self, forecast: Forecast) -> None:
        words = chance_words(self._assessment, forecast, self._names, self._tools.library)
        self._say(words.first, " \u00b7 ".join(part for part in (words.second, stage_text(forecast)) if part))
        self._show_state(state_of((*self._assessment.of(Topic.POWER), *chance_findings(self._assessment, forecast))))
        why = f"{first_upper(words.why)}.\n" if words.why else ""
        for part in (self.first, self.second, self.state):
            part.setToolTip(why + drawing_text(forecast))

    def _show_state(self, state: State) -> None:
        self.state.show_state(word(state.value), mark_of(state))

    def _refine(self) -> None:
        if self.draft is None and not self.isHidden():
            self.restore()

    def _move(self, number: int, likely_h: float) -> None:
        """Play the day through with another duration, and show it; the days drawn are of another plan."""
        outing = with_likely(self._assessment.outing, number, likely_h)
        self._number = number
        said = edge_text(outing, number, self._assessment.outing.phases[number])
        if self.picture.moving:
            self._tools.forecasting.pause()
            self.questions.set_aside(aside=True)
            try:
                self.draft = redrawn(self._assessment, outing, self._tools.library)
            except Fault as fault:
                said = fault_text(fault).what
            else:
                sentences = power_sentences(self.draft, self._names)
                self.picture.show_picture(power_picture(self.draft, self._names), sentences)
                if not self._behind.isActive():
                    self._behind.start()
        shown = self.draft or self._assessment
        self._say(said, edge_help(moving=self.picture.moving))
        self._show_state(state_of(shown.of(Topic.POWER)))
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.picture, f"{said} {self.second.text()}"))

    def _follow(self) -> None:
        """The picture has had its frame: let the rest follow."""
        if self.draft is not None and self.isVisible():
            self._is_followed = True
            self._tools.follow(self.draft)

    def _unfollow(self) -> None:
        self._behind.stop()
        if self._is_followed:
            self._is_followed = False
            self._tools.follow(None)

    def _keep(self) -> None:
        draft, self.draft = self.draft, None
        self._unfollow()
        self._tools.edge = self.picture.edge
        is_other = draft is not None and draft.outing.phases != self._assessment.outing.phases
        if draft is None or not is_other or not self._tools.keep(self._number, draft.outing.phases[self._number]):
            self._tools.edge = None
            self.want_days()

    def _say(self, first: str, second: str) -> None:
        self.state.show_state("", Mark.NONE)
        for line, text in ((self.first, first), (self.second, second)):
            line.setToolTip("")
            if text != line.text():  # a label that is told the same again asks for its room again
                line.say(text)
