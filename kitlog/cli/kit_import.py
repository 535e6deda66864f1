"""kitlog kit import: a table of any form into the kit, all of it or nothing; what is doubtful is refused or settled."""

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from kitlog.cli import documents
from kitlog.cli.call import DONE, WRONG_USE, Call
from kitlog.cli.import_choices import choices_of
from kitlog.cli.streams import complain, say
from kitlog.cli.working import Working
from kitlog.fault import InputFault

if TYPE_CHECKING:
    from kitlog.workbench.kit_preview import KitPreview
    from kitlog.workbench.workbench import Workbench


def take_in(call: Call) -> int:
    """Read the files of the call, write them unless it is a dry run, and say what came in."""
    look = _looking(call)

    def take(bench: "Workbench") -> "KitPreview":
        preview = look(bench)
        bench.import_kit(preview)
        return preview

    if call.options.dry_run or call.options.json:
        preview = _looked_at(call, look)
        refusal = preview.refusal()
        if refusal is not None:
            return _refused(call, preview, refusal)
        if call.options.dry_run:
            return _told(call, preview)
    return _told(call, call.write(take))


def _looking(call: Call) -> "Callable[[Workbench], KitPreview]":
    """Reads the files once, whatever is then done with them."""
    from kitlog.files.table.open_grid import read_grid
    from kitlog.workbench.kit_preview import ServiceFile, preview_kit

    options = call.options
    choices, name = choices_of(options), documents.shown_name(options.file)
    data = documents.read(options.file)
    service = None if options.service is None else ServiceFile(documents.read(options.service), options.service)
    with Working(name) as tell:
        grid = read_grid(data, name, tell, options.sheet)

    def look(bench: "Workbench") -> "KitPreview":
        with documents.naming(options.file):
            return preview_kit(bench.kit_source(), grid, name, choices, service)

    return look


def _looked_at(call: Call, look: "Callable[[Workbench], KitPreview]") -> "KitPreview":
    if not call.data_file.exists():
        return call.rehearse(look)
    with call.reading() as bench:
        return look(bench)


def _refused(call: Call, preview: "KitPreview", refusal: InputFault) -> int:
    if call.options.json:
        from kitlog.cli.import_json import preview_json

        documents.say_json(preview_json(preview, written=False))
    complain(refusal)
    return WRONG_USE


def _told(call: Call, preview: "KitPreview") -> int:
    written = not call.options.dry_run
    if call.options.json:
        from kitlog.cli.import_json import preview_json

        return documents.say_json(preview_json(preview, written=written))
    say(_lines(preview, written=written))
    return DONE


def _lines(preview: "KitPreview", *, written: bool) -> "Iterator[str]":
    """The report: what came in, what was decided, what was left open, what is asked about."""
    from kitlog.cli.import_json import counts_of
    from kitlog.wording.import_text import import_line, remark_lines
    from kitlog.wording.kit_text import doubts

    yield import_line(counts_of(preview), written=written)
    yield from remark_lines([(remark.code, remark.facts) for remark in preview.remarks])
    yield from _left_open(preview)
    asked = [(item, preview.rows.get(item.id, 0), band) for item, band in preview.implausible]
    yield from doubts(asked, preview.twins, preview.new)


def _left_open(preview: "KitPreview") -> "Iterator[str]":
    from kitlog.wording.faults import fault_text
    from kitlog.wording.import_text import left_open_line

    states = {column.index for column in preview.columns if column.target == "state"}  # told as what became of them
    for doubt in (doubt for doubt in preview.emptied if doubt.column not in states):
        why = fault_text(preview.problem_of(doubt).as_fault()).what
        yield left_open_line(doubt.spot.row, doubt.heading, doubt.text, why)
    for problem in preview.dropped:
        why = fault_text(problem.as_fault()).what
        yield left_open_line(problem.row, problem.column, str(problem.facts.get("value", "")), why)
