"""Ask of this plan: what would help, how far it goes, which bank is enough. Worked out when it is unfolded."""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.budget.result import Remedy
from kitlog.desktop import look
from kitlog.desktop.outing_page.lightest_rows import LightestRows
from kitlog.desktop.outing_page.limit_rows import LimitRows, heads
from kitlog.desktop.outing_page.mend_rows import Act, Doing, MendRows
from kitlog.desktop.outing_page.outdated import grey
from kitlog.desktop.outing_page.percent_field import PercentField
from kitlog.desktop.outing_page.power_asking import Answers, PowerAsking
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_limits import PowerLimits, retrieve_limit
from kitlog.packing.power_mending import Mending, PowerAsked
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.findings import Names
from kitlog.wording.power_asked_text import (
    BANK_CAPTION,
    START_CAPTION,
    bank_words,
    grid_text,
    retrieve_words,
    start_words,
)
from kitlog.wording.power_mending_text import planned_texts, unknown_text, vain_text, verdict_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper


@dataclass(frozen=True, slots=True)
class AskTools:
    """What the panel needs of its page.

    Attributes:
        asking: works the answers out, and outlives the panel.
        read: the plan with all that its answers need.
        act: what taking a change does.
    """

    asking: PowerAsking
    read: Callable[[Assessment], PowerAsked]
    act: Act


class AskPanel(QWidget):
    """The questions and their answers; folded, nothing is worked out.

    Attributes:
        stage: how far it is; fold: unfolds and folds it.
        keep: charge that the phone keeps, %; retrieve, starts, banks, lightest, mends: the answers.
    """

    def __init__(self, assessment: Assessment, names: Names, tools: AskTools, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._assessment, self._names, self._tools = assessment, names, tools
        self._is_stale = False
        self.stage = CutText("", Role.SECOND, "muted")
        self.fold = Button("", Rank.ACT)
        self.fold.setObjectName("ask of this plan")
        self.planned, self.verdict = Paragraph(), Paragraph("", Role.NAME, "ink")
        self.mends = MendRows(names, self._act)
        self.vain, self.unknown = Paragraph("", Role.SMALL), Paragraph("", Role.SMALL)
        self.keep = PercentField(_("Charge that the phone is to keep on the way home, in per cent"))
        self.keep.setObjectName("keep at the end")
        self.retrieve = LimitRows()
        self.starts = LimitRows(_(START_CAPTION))
        self.banks = LimitRows(_(BANK_CAPTION))
        self.lightest = LightestRows(names)
        self._assemble()
        self.fold.clicked.connect(lambda _on=False: self.unfold(is_open=not tools.asking.is_open))
        self.keep.textChanged.connect(lambda _text: self._ask_retrieve())
        self.mends.grown.connect(self._order_stops)
        tools.asking.refined.connect(self._show)

    @property
    def is_open(self) -> bool:
        """Whether it is unfolded."""
        return not self._body.isHidden()

    def unfold(self, *, is_open: bool) -> None:
        """Unfold it and have it worked out, or fold it up and have the work ended."""
        self._tools.asking.is_open = is_open
        self.want()

    def want(self) -> None:
        """Have the plan answered that is shown, if it is unfolded."""
        asking = self._tools.asking
        self.set_aside(aside=False)
        self._body.setVisible(asking.is_open)
        self.fold.say(_("Fold up") if asking.is_open else _("Work it out"))
        self.fold.setAccessibleName(f"{self.fold.words}: {_('ask of this plan')}")
        if not asking.is_open:
            asking.pause()
            self.stage.say(_("what would help, how far it goes, which bank is enough"))
            return
        asking.want(self._tools.read(self._assessment))
        self._ask_retrieve()
        self._show()

    def set_aside(self, *, aside: bool) -> None:
        """Grey the answers while another plan is being tried: they are not of that one."""
        if aside == self._is_stale or (aside and not self.is_open):
            return
        self._is_stale = aside
        if aside:
            self._tools.asking.pause()
            self.stage.say(_("of the plan before the move; asked again once it is kept"))
        grey(self._body, is_old=aside, why=self.stage.text())
        self._body.setEnabled(not aside)

    def _show(self) -> None:
        if self._is_stale or not self.is_open:
            return
        found = self._tools.asking.latest or Answers()
        self.stage.say(_stage(found))
        self._show_limits(found.limits or PowerLimits())
        self._show_mending(found.mending or Mending(None))
        self.unknown.say(unknown_text(self._assessment.power, self._names))
        for line in (self.planned, self.verdict, self.vain, self.unknown):
            line.setVisible(bool(line.text()))

    def _show_limits(self, limits: PowerLimits) -> None:
        self.starts.show_answers(start_words(one, self._names) for one in limits.starts)
        self.banks.show_answers(bank_words(one, self._names) for one in limits.banks)
        self.grid.setVisible(bool(limits.starts or limits.banks))
        self.lightest.show_limits(limits)

    def _show_mending(self, mending: Mending) -> None:
        is_asked = mending.planned is not None
        self.planned.say("\n".join(planned_texts(mending, self._names)) if is_asked else "")
        self.verdict.say(verdict_text(mending))
        self.vain.say(vain_text(mending, self._names) if mending.complete else "")
        if self.mends.show_mending(mending):
            self._order_stops()

    def _order_stops(self) -> None:
        """Let Tab go down the page; rows that came later would be the last stops of all."""
        acts = [row.act for row in self.mends.rows if row.act is not None]
        stops = [self.fold, *acts, self.mends.more, self.keep]
        for before, after in pairwise(stops):
            QWidget.setTabOrder(before, after)

    def _ask_retrieve(self) -> None:
        """Two runs of the day: no more than a frame of the picture while it is dragged, so it is done at once."""
        pct = self.keep.pct()
        self.keep.mark("" if pct is not None else _("a charge from 0 to 100 %"))
        if pct is None:
            self.retrieve.show_answers(())
            return
        self._tools.asking.keep_pct = pct
        found = retrieve_limit(self._assessment, pct)
        self.retrieve.show_answers([retrieve_words(found, self._assessment.outing.starts_at)])

    def _act(self, remedy: Remedy) -> Doing | None:
        do = self._tools.act(remedy)
        return None if do is None else lambda: self._take(do)

    def _take(self, do: Doing) -> None:
        """Take a change; the focus waits on the head, for afterwards the rows are those of another plan."""
        self.fold.setFocus(Qt.FocusReason.OtherFocusReason)
        do()

    def _assemble(self) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, look.px(4), 0, 0)
        whole.setSpacing(look.px(4))
        head = QHBoxLayout()
        head.setSpacing(look.px(12))
        head.addWidget(Text(_("Ask of this plan"), Role.SECTION))
        head.addWidget(self.stage, 1)
        head.addWidget(self.fold)
        whole.addLayout(head)
        self._body = QWidget()
        self._body.hide()
        whole.addWidget(self._body)
        rows = QVBoxLayout(self._body)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(4))
        rows.addWidget(Text(_("What would help"), Role.GROUP))
        _stack(rows, self.planned, self.verdict, self.mends, self.vain)
        rows.addSpacing(look.px(8))
        rows.addWidget(Text(_("How far it goes"), Role.GROUP))
        rows.addWidget(heads())
        rows.addLayout(self._keep_row())
        self.grid = Paragraph(grid_text(), Role.SMALL)
        _stack(rows, self.retrieve, self.starts, self.banks, self.grid)
        rows.addSpacing(look.px(8))
        rows.addWidget(Text(_("Lightest of your banks that does"), Role.GROUP))
        _stack(rows, self.lightest, self.unknown)

    def _keep_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(look.px(6))
        self.keep.put(self._tools.asking.keep_pct)
        row.addWidget(Text(_("Longest way home with the phone on and at"), Role.SECOND))
        row.addWidget(self.keep)
        row.addWidget(Text(_("% or more"), Role.SECOND))
        row.addStretch(1)
        return row


def _stack(rows: QVBoxLayout, *parts: QWidget) -> None:
    for part in parts:
        rows.addWidget(part)


def _stage(found: Answers) -> str:
    if found.fault is not None:
        return _("Not answered: {why}.").format(why=first_upper(fault_text(found.fault).what))
    if found.is_final:
        return _("answered for the plan as it stands")
    mending = found.mending
    if mending is None or not mending.mends:
        return _("being worked out")
    return _("being worked out, {n} of {of} changes drawn").format(n=mending.drawn, of=len(mending.mends))
