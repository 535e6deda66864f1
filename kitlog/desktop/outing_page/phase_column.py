"""One phase of one device: a share for each way of use, their sum, the mean draw, and the plug."""

from collections.abc import Mapping

from PySide6.QtCore import QObject, Signal

from kitlog.budget.power.checks import SHARES_TOLERANCE
from kitlog.budget.power.describe import DrawRange
from kitlog.desktop.outing_page.percent_field import PercentField
from kitlog.desktop.outing_page.plug_fields import Banks, PlugFields
from kitlog.desktop.parts.text import CutText, Text
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase, PlugPlan
from kitlog.packing.draws import OFF_WAY, phase_draw
from kitlog.packing.power_plan import Shares, planned_shares, usual_shares, with_shares
from kitlog.paint.type_scale import Role
from kitlog.wording.draw_text import short_text
from kitlog.wording.power_plan_text import (
    gone_ways_text,
    left_open_text,
    mean_texts,
    total_fault_text,
    unread_text,
    way_text,
)
from kitlog.wording.translate import _


class PhaseColumn(QObject):
    """The fields of a phase.

    Attributes:
        changed: a share was changed; planned: whether the shares are the pilot's own, not as usual.
        fields: by way of use, off last; plug: on which bank.
        total, mean, range, sure: the lines under the shares.
    """

    changed = Signal()

    def __init__(
        self, item: Item, phase: Phase, outing: Outing, library: Library, banks: Banks, plug: PlugPlan | None
    ) -> None:
        super().__init__()
        self._item, self.phase, self._outing, self._library = item, phase, outing, library
        ways = [way.name for way in item.battery.ways] if item.battery else []
        self.fields = {
            way: PercentField(
                _("{way}, share of {phase} in %, {item}").format(way=way_text(way), phase=phase.name, item=item.name)
            )
            for way in dict.fromkeys((*ways, OFF_WAY))
        }
        self.total, self.mean = Text("", Role.SECOND), Text("", Role.NAME)
        self.range, self.sure = Text("", Role.SMALL, "muted"), CutText("", Role.SMALL, "muted")
        self.plug = PlugFields(item, phase.name, banks, plug)
        planned = planned_shares(item, phase, outing)
        self.planned = planned is not None
        self._gone = tuple(way for way in planned or {} if way not in self.fields)
        self._put(usual_shares(item, phase, outing, library) if planned is None else planned)
        self._opened = self.planned, self._texts()
        for field in self.fields.values():
            field.textChanged.connect(lambda _text: self._edited())
        for at, field in enumerate(self.fields.values()):
            field.stepped.connect(lambda by, at=at: self._step(at + by))

    @property
    def is_open(self) -> bool:
        """Whether nobody said what the device does in the phase."""
        return not self.planned and not self.shares()

    def shares(self) -> Shares:
        """What stands in the fields; one that cannot be read counts as nothing."""
        return {way: pct / 100 for way, field in self.fields.items() if (pct := field.pct())}

    def put(self, shares: Shares) -> None:
        """Plan these shares."""
        self._put(shares)
        self.planned = True
        self.changed.emit()

    def take_usual(self) -> None:
        """Take the item's own shares back."""
        self._put(usual_shares(self._item, self.phase, self._outing, self._library))
        self.planned, self._gone = False, ()
        self.changed.emit()

    def give_rest(self, way: str) -> None:
        """Give a way of use what the others leave; nothing happens where they leave less than nothing."""
        others = sum(share for name, share in self.shares().items() if name != way)
        if others <= 1 + SHARES_TOLERANCE and way in self.fields:
            self.fields[way].put(round(max(100 * (1 - others), 0.0), 6) or None)

    def planned_in(self, outing: Outing) -> Outing:
        """The outing with the shares as they stand; untouched, it is as it was."""
        if (self.planned, self._texts()) == self._opened:
            return outing
        return with_shares(outing, self._item.id, self.phase.name, self.shares() if self.planned else None)

    def state(self) -> object:
        """What stands in the fields, to tell whether anything was changed."""
        plug = self.plug
        return self.planned, self._texts(), plug.bank.chosen(), plug.below.text(), plug.to.text()

    def fault(self) -> str:
        """What cannot be so of the shares, said at each field; the lines under them show what they come to."""
        total_pct = 100 * sum(self.shares().values())
        if self.is_open:
            total_pct = 100.0  # left open: nothing is wrong of what nobody said
        wrong = [field for field in self.fields.values() if field.is_wrong()]
        text = unread_text(_("{phase}, share").format(phase=self.phase.name)) if wrong else ""
        if not wrong and abs(total_pct - 100) > 100 * SHARES_TOLERANCE:
            wrong, text = [*self.fields.values()], total_fault_text(self.phase.name, total_pct)
            text = f"{gone_ways_text(self.phase.name, self._gone)} {text}" if self._gone else text
        for field in self.fields.values():
            field.mark(text if field in wrong else "")
        self._show(total_pct, fault=bool(text))
        return text

    def _show(self, total_pct: float, *, fault: bool) -> None:
        origin = _("own") if self.planned else _("usual")
        said = _("{total}, not 100") if fault else _("{total}, {origin}")
        text = left_open_text() if self.is_open else said.format(total=short_text(total_pct, "%"), origin=origin)
        self.total.say(text, "stop" if fault else "look" if self.is_open else "muted")
        mean, range_, sure = ("–", "", "") if fault else mean_texts(self._draw())
        for line, text in ((self.mean, mean), (self.range, range_), (self.sure, sure)):
            line.say(text)
        spoken = ", ".join(part for part in (mean, range_, sure) if part)
        self.mean.setAccessibleName(_("Mean draw in {phase}: {draw}").format(phase=self.phase.name, draw=spoken))

    def _draw(self) -> DrawRange | None:
        shares = None if self.is_open else self.shares()
        planned = with_shares(self._outing, self._item.id, self.phase.name, shares)
        return phase_draw(self._item, self.phase, planned, self._library)

    def _put(self, shares: Mapping[str, float]) -> None:
        was, self._putting = getattr(self, "_putting", False), True
        for way, field in self.fields.items():
            field.put(100 * shares[way] if shares.get(way) else None)
        self._putting = was

    def _edited(self) -> None:
        if not self._putting:
            self.planned = True
            self.changed.emit()

    def _texts(self) -> tuple[str, ...]:
        return tuple(field.text() for field in self.fields.values())

    def _step(self, to: int) -> None:
        fields = [*self.fields.values()]
        if 0 <= to < len(fields):
            fields[to].setFocus()
            fields[to].selectAll()
