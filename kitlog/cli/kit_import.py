"""kitlog kit import: a CSV file into the kit, all of it or nothing; what is doubtful is asked about."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from kitlog.cli import documents
from kitlog.cli.call import DONE, Call
from kitlog.cli.streams import say

if TYPE_CHECKING:
    from kitlog.workbench.exchange import KitPreview
    from kitlog.workbench.workbench import Workbench


@dataclass(frozen=True, slots=True)
class Import:
    """What comes in, and which of its names the kit had before: a file read twice would double the kit."""

    preview: "KitPreview"
    again: tuple[str, ...]


def take_in(call: Call) -> int:
    """Read the files of the call, write them unless it is a dry run, and say what came in."""
    look = _looking(call)

    def take(bench: "Workbench") -> Import:
        found = look(bench)
        bench.import_kit(found.preview)
        return found

    if call.options.dry_run:
        return _told(call, _looked_at(call, look))
    return _told(call, call.write(take))


def _looking(call: Call) -> "Callable[[Workbench], Import]":
    options = call.options
    kit = documents.read(options.file)
    service = None if options.service is None else documents.read(options.service)

    def look(bench: "Workbench") -> Import:
        had = {item.name for item in bench.items()}
        preview = bench.preview_kit(kit, documents.shown_name(options.file), service, options.service or "")
        return Import(preview, tuple(dict.fromkeys(item.name for item in preview.items if item.name in had)))

    return look


def _looked_at(call: Call, look: "Callable[[Workbench], Import]") -> Import:
    if not call.data_file.exists():
        return call.rehearse(look)
    with call.reading() as bench:
        return look(bench)


def _told(call: Call, found: Import) -> int:
    from kitlog.wording.kit_text import again_lines, doubts, import_line

    preview, written = found.preview, not call.options.dry_run
    if call.options.json:
        return documents.say_json(_as_json(found, written=written))
    say([import_line(len(preview.items), len(preview.rules), len(preview.records), written=written)])
    rows = preview.rows or {}
    asked = [(item, rows.get(item.id, 0), band) for item, band in preview.implausible]
    say(doubts(asked, preview.twins, preview.items))
    say(again_lines(found.again))
    return DONE


def _as_json(found: Import, *, written: bool) -> dict[str, object]:
    preview = found.preview
    rows = preview.rows or {}
    return {
        "written": written,
        "items": len(preview.items),
        "rules": len(preview.rules),
        "records": len(preview.records),
        "twins": [list(twin) for twin in preview.twins],
        "same_name": list(found.again),
        "implausible": [
            {"item": item.name, "row": rows.get(item.id), "mass_g": item.mass_g, "usual_g": list(band)}
            for item, band in preview.implausible
        ],
    }
