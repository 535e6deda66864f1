"""kitlog charge: what to plug where and when tonight; what lies unused; charges on hand."""

import argparse
from typing import TYPE_CHECKING

from kitlog.cli import documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.item_named import item_named
from kitlog.cli.outing import found
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.outing.outing import Outing
    from kitlog.workbench.workbench import Workbench


def add(verbs: Verbs) -> None:
    """Add the verb."""
    parser = verbs.add("charge", _("what to plug where and when the evening before, and what to store how"), _charge)
    parser.add_argument(
        "outing", metavar=_("OUTING"), nargs="?", help=_("an outing of the data file (default: the one worked on)")
    )
    parser.add_argument(
        "--storage", action="store_true", help=_("list instead what lies unused for six weeks, and its storage charge")
    )
    parser.add_argument("--season-over", action="store_true", help=_("with --storage: all of it will lie"))
    parser.add_argument(
        "--on-hand",
        metavar=_("NAME=PCT"),
        nargs="+",
        action="extend",
        help=_("note instead the charge with which things are seen now"),
    )
    json_option(parser)


def _charge(call: Call) -> int:
    options = call.options
    _refuse_unclear(options)
    if options.on_hand:
        return _note(call)
    return _storage(call) if options.storage else _tonight(call)


def _refuse_unclear(options: argparse.Namespace) -> None:
    if options.season_over and not options.storage:
        raise InputFault("usage.needs", field="--season-over", needs="--storage")
    for field, given in (("--on-hand", options.on_hand), ("--storage", options.storage)):
        if given and options.outing is not None:
            raise InputFault("usage.excludes", verb="kitlog charge", field=field, other=_("OUTING"))
    if options.on_hand and options.storage:
        raise InputFault("usage.excludes", verb="kitlog charge", field="--on-hand", other="--storage")


def _tonight(call: Call) -> int:
    with call.reading() as bench:
        outing = _outing(call, bench)
        plan = bench.evening_plan(outing)
        names, now = {item.id: item.name for item in bench.items()}, bench.now()
    if call.options.json:
        from kitlog.files.charge_json import charge_json

        return documents.say_json(charge_json(plan, names, outing))
    from kitlog.wording.charge_lines import charge_lines

    say(charge_lines(plan, names, now, outing))
    return DONE


def _outing(call: Call, bench: "Workbench") -> "Outing":
    if call.options.outing is not None:
        return found(bench, call.options.outing)
    current = bench.current_outing()
    if current is None:
        raise InputFault("outing.none")
    return current


def _storage(call: Call) -> int:
    season_over = bool(call.options.season_over)
    with call.reading() as bench:
        lines, now = bench.storage_due(season_over=season_over), bench.now()
    if call.options.json:
        from kitlog.files.charge_json import storage_json

        return documents.say_json(storage_json(lines, now))
    from kitlog.wording.charge_lines import storage_lines

    say(storage_lines(lines, now, season_over=season_over))
    return DONE


def _note(call: Call) -> int:
    typed = [_read(text) for text in call.options.on_hand]
    with call.reading() as bench:
        charges = _charges(bench, typed)
        bench.note_on_hand(charges)
        noted = [(item_named(bench, name, "--on-hand").name, pct) for name, pct in charges.items()]
    if call.options.json:
        return documents.say_json([{"item": name, "on_hand_pct": pct} for name, pct in noted])
    from kitlog.wording.charge_lines import on_hand_lines

    say(on_hand_lines(noted))
    return DONE


def _charges(bench: "Workbench", typed: list[tuple[str, float]]) -> dict[str, float]:
    """Charges by the id of the item; two for one item are refused: nobody knows which of them counts."""
    charges: dict[str, float] = {}
    for name, pct in typed:
        item = item_named(bench, name, "--on-hand")
        if item.id in charges:
            raise InputFault("usage.twice", field="--on-hand", name=item.name)
        charges[item.id] = pct
    return charges


def _read(text: str) -> tuple[str, float]:
    """A name and a charge in per cent; the last equals sign counts, for a name may have one."""
    from kitlog.units.number import parse_number
    from kitlog.units.strict_json import shown

    name, mark, typed = text.rpartition("=")
    if not mark or not name.strip():
        raise InputFault("usage.name_pct", field="--on-hand", value=shown(text))
    try:
        pct = parse_number(typed.strip().removesuffix("%").strip())
    except InputFault:
        raise InputFault("usage.name_pct", field="--on-hand", value=shown(text)) from None
    if not 0 <= pct <= 100:
        raise InputFault("usage.name_pct", field="--on-hand", value=shown(text))
    return name.strip(), pct
