"""What undo would take back, in a few words."""

from collections.abc import Callable, Mapping

from kitlog.wording.draw_text import sure_text, watts_text
from kitlog.wording.figures import day_text, number_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import word
from kitlog.workbench.undo_list import UndoStep

Names = Mapping[str, str]

_NAMED = {
    "item.add": N_("add {name}"),
    "item.edit": N_("edit {name}"),
    "item.paired": N_("edit {name}; the new pairing opens its check"),
    "item.measured": N_("measurement for {name}, {way} (before: {was_w}, {basis})"),
    "item.duplicate": N_("duplicate {name}"),
    "item.delete": N_("delete {name}"),
    "item.state": N_("state of {name}"),
    "item.zone": N_("zone of {name}"),
    "item.on_hand": N_("charge on hand of {name}"),
    "item.swollen": N_("{name} is swollen"),
    "item.not_swollen": N_("{name} is not swollen"),
    "pilot.edit": N_("edit {name}"),
    "pilot.mass": N_("body mass of {name}"),
    "rule.edit": N_("rule {rule}"),
    "rule.delete": N_("delete rule {rule}"),
    "rule.take": N_("take starter rules"),
    "rule.model": N_("rule {rule} of the model {name}"),
    "rule.model_delete": N_("delete rule {rule} of the model {name}"),
    "record.add": N_("record {item}"),
    "record.change": N_("change a record of {item}"),
    "record.strike": N_("strike a record of {item}"),
    "event.log": N_("event of {item}"),
    "event.strike": N_("strike an event of {item}"),
    "incident.log": N_("event of {item}"),
    "flight.add": N_("add flight of {day}"),
    "flight.edit": N_("edit flight of {day}"),
    "flight.delete": N_("delete flight of {day}"),
    "flights.import": N_("read recordings"),
    "outing.add": N_("add outing {name}"),
    "outing.edit": N_("change the plan of {name}"),
    "outing.phase": N_("{phase} {likely_h} (low {low_h}, high {high_h})"),
    "outing.delete": N_("delete outing {name}"),
    "outing.answer": N_("answer {check}"),
    "outing.condition": N_("condition {condition}"),
    "outing.override": N_("override a stop"),
    "outing.swap": N_("swap {name} for {instead}"),
    "outing.leave_out": N_("leave {name} at home"),
    "outing.take_along": N_("take {name} along"),
    "outing.evening": N_("evening before {name}"),
    "outing.starts": N_("charges at the start of {name}"),
    "tick": N_("tick {line}"),
    "untick": N_("untick {line}"),
    "repack.close": N_("close repack"),
    "repack.reopen": N_("open the repack again"),
    "kit.import": N_("import {file}"),
    "demo.fill": N_("fill with the demo kit"),
}
_MANY = frozenset(
    {"incident.log", "record.add", "item.edit", "item.paired", "item.delete", "item.state", "item.zone", "item.on_hand"}
)


def undo_text(step: UndoStep, names: Names) -> str:
    """What a step did, after "Undo:"; ids are shown as names. A step without words of its own shows its code."""
    return _("Undo: {what}").format(what=_what(step, names))


def _what(step: UndoStep, names: Names) -> str:
    facts = {name: _shown(name, value, names) for name, value in step.facts.items()}
    facts.setdefault("item", names.get(str(step.facts.get("item_id", "")), ""))
    text = _NAMED.get(step.code)
    what = step.code if text is None else _(text).format_map(_Blanks(facts))
    count = step.facts.get("count")
    if step.code in _MANY and isinstance(count, int) and count > 1:
        what = ngettext("{what} and {n} more", "{what} and {n} more", count - 1).format(what=what, n=count - 1)
    return " ".join(what.split())


def moving_text(step: UndoStep, names: Names, *, back: bool) -> str:
    """What is being taken back, or done again, while that goes on."""
    count = step.facts.get("count")
    if step.code == "kit.import" and isinstance(count, int):
        text = (
            ngettext("Taking back the import of {n} item …", "Taking back the import of {n} items …", count)
            if back
            else ngettext("Importing {n} item again …", "Importing {n} items again …", count)
        )
        return text.format(n=number_text(count))
    text = _("Taking back: {what} …") if back else _("Doing again: {what} …")
    return text.format(what=_what(step, names))


class _Blanks(dict[str, str]):
    """Facts for a sentence; one that is missing leaves a blank."""

    def __missing__(self, key: str) -> str:
        return ""


def _shown(name: str, value: object, names: Names) -> str:
    ways: dict[str, Callable[[], str]] = {
        "line": lambda: names.get(str(value), str(value)),
        "rule": lambda: rule_text(str(value)),
        "condition": lambda: word(str(value)),
        "was_w": lambda: watts_text(float(str(value))),
        "basis": lambda: sure_text(str(value)),
    }
    if name in ways:
        return ways[name]()
    if name in {"low_h", "likely_h", "high_h"} and isinstance(value, float):
        from kitlog.desktop.outing_page.plan_words import hm_text

        return hm_text(value)
    from datetime import date

    return day_text(value) if isinstance(value, date) else str(value)
