"""kitlog kit: the inventory in, out and listed."""

from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents, kit_inventory
from kitlog.cli.call import DONE, Call
from kitlog.cli.import_choices import add_choices
from kitlog.cli.kit_import import take_in
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import note, say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.files.csv_export import Export
    from kitlog.workbench.reads import KitRow


def add(verbs: Verbs) -> None:
    """Add the verb and its own."""
    own = Verbs(verbs.add("kit", _("read a kit from a table, list it, write it as CSV")))
    taking = own.add("import", _("read items from a table (CSV, .xlsx, .ods): all of it, or nothing"), take_in)
    taking.add_argument("file", metavar=_("FILE"), help=_("one item a row, in your own words; - for standard input"))
    taking.add_argument("--service", metavar=_("FILE.csv"), help=_("service rules and last records, one a row"))
    taking.add_argument("--dry-run", action="store_true", help=_("say what would come in, and write nothing"))
    add_choices(taking)
    json_option(taking)
    json_option(own.add("list", _("list the items"), _list))
    giving = own.add("export", _("write the items as CSV"), _export)
    giving.add_argument("file", metavar=_("FILE.csv"), type=arguments.target(_("FILE.csv")), help=_("where to"))
    giving.add_argument(
        "--service",
        metavar=_("FILE.csv"),
        type=arguments.target("--service"),
        help=_("where to write service rules and newest records"),
    )
    kit_inventory.add(own)


def _list(call: Call) -> int:
    with call.reading() as bench:
        rows = bench.kit_rows()
    if call.options.json:
        return documents.say_json([_entry(row) for row in rows])
    from kitlog.wording.kit_text import kit_lines

    say(kit_lines([(row.item, row.zone, row.due_state) for row in rows]))
    return DONE


def _entry(row: "KitRow") -> dict[str, object]:
    """The item as the model holds it, and beside it what follows from it."""
    return row.item.model_dump(mode="json") | {
        "rides_in": row.zone.value,
        "rides_in_on_foot": row.zone_on_foot.value,
        "can_do": sorted(row.serves),
        "can_do_guessed": row.guessed,
        "due_state": row.due_state.value,
        "last_carried": None if row.last_carried is None else str(row.last_carried),
        "implausible": row.implausible,
    }


def _export(call: Call) -> int:
    options = call.options
    if options.service is not None and documents.is_same(options.file, options.service):
        raise InputFault("usage.same_file", field="--service", file=documents.shown_name(options.service))
    with call.reading() as bench:
        kit, service, left = bench.export_kit(), bench.export_service(), bench.left_behind()
    documents.write(options.file, kit.data)
    _say_lost(options.file, kit)
    if options.service is not None:
        documents.write(options.service, service.data)
        _say_lost(options.service, service)
    from kitlog.wording.export_text import left_behind_lines

    for line in left_behind_lines(left.logs, [(line.item.name, line.due) for line in left.opened]):
        note(line)
    return DONE


def _say_lost(file: str, export: "Export") -> None:
    """What the columns cannot hold: a remark, for the file is complete in all else."""
    from kitlog.wording.kit_text import lost_line

    say([_("written: {file}").format(file=Path(file))])
    if export.lost:
        note(lost_line(file, [(lost.item, lost.field, lost.rule) for lost in export.lost]))
