"""kitlog service papers: the papers and photos on record, listed, attached to an item, saved elsewhere."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from kitlog.cli import arguments, documents
from kitlog.cli.call import AT_FAULT, DONE, Call
from kitlog.cli.parser import Verbs, json_option
from kitlog.cli.streams import complain, say
from kitlog.fault import InputFault, SystemFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.kit.paper import Paper
    from kitlog.kit.service import ServiceRecord
    from kitlog.workbench.workbench import Workbench


@dataclass(frozen=True, slots=True)
class _Kept:
    """A paper, and what it belongs to; `record` is None where it is the item's own."""

    paper: "Paper"
    item: "Item"
    record: "ServiceRecord | None" = None


def add(verbs: Verbs) -> None:
    """Add the verb."""
    papers = verbs.add("papers", _("the papers and photos on record: list them, add to an item, save them"), _papers)
    papers.add_argument("item", metavar=_("ITEM"), nargs="?", help=_("name or id of one item (default: all)"))
    papers.add_argument(
        "--add", metavar=_("FILE"), action="append", default=[], help=_("keep this PDF or photo with the item")
    )
    papers.add_argument(
        "--save",
        metavar=_("FOLDER"),
        type=arguments.written_name("--save"),
        help=_("save the papers listed into this folder"),
    )
    json_option(papers)


def _papers(call: Call) -> int:
    options = call.options
    if options.add and options.item is None:
        raise InputFault("usage.needs", field="--add", needs=_("ITEM"))
    if options.save is not None and not Path(options.save).is_dir():
        raise InputFault("paper.no_folder", file=options.save)
    if options.add:
        call.write(lambda bench: _attach(call, bench))
    with call.reading() as bench:
        kept = list(_kept(call, bench))
        saved, code = _saved(bench, kept, options.save) if options.save is not None else ([], DONE)
        absent = bench.papers_absent(one.paper for one in kept)
    if options.json:
        documents.say_json([_json(one, one.paper.sha256 in absent) for one in kept])
    else:
        say([_line(one, one.paper.sha256 in absent) for one in kept] or [_("no paper is on record")])
        say([_("saved: {file}").format(file=file) for file in saved])
    return code


def _attach(call: Call, bench: "Workbench") -> None:
    from kitlog.cli.item_named import item_named

    item = item_named(bench, call.options.item, _("ITEM"))
    papers = (*item.papers, *(bench.attach(Path(name)) for name in call.options.add))
    once = tuple({paper.sha256: paper for paper in papers}.values())
    bench.edit_items([item.model_copy(update={"papers": once})])


def _kept(call: Call, bench: "Workbench") -> "Iterator[_Kept]":
    """The papers of the items, each item's own first; those of struck records stay in the book and are left out."""
    from kitlog.cli.item_named import item_named

    name = call.options.item
    items = bench.items() if name is None else (item_named(bench, name, _("ITEM")),)
    for item in items:
        yield from (_Kept(paper, item) for paper in item.papers)
        records = [one for one in bench.records() if one.item_id == item.id and one.struck_at is None]
        yield from (_Kept(paper, item, record) for record in records for paper in record.papers)


def _saved(bench: "Workbench", kept: list[_Kept], folder: str) -> tuple[list[Path], int]:
    """Save each paper once; those that are missing or damaged are told, the others are saved."""
    saved, code = [], DONE
    for paper in {one.paper.sha256: one.paper for one in kept}.values():
        try:
            saved.append(bench.save_paper(paper, Path(folder)))
        except SystemFault as fault:
            complain(fault)
            code = AT_FAULT
    return saved, code


def _line(one: _Kept, absent: bool) -> str:  # noqa: FBT001  # what is not there is said in the same line
    from kitlog.wording.figures import day_text
    from kitlog.wording.paper_text import paper_text

    of = one.item.name if one.record is None else f"{one.item.name}, {day_text(one.record.done_on)}"
    said = f"{of}: {paper_text(one.paper)}"
    return _("{paper} (not where it was kept)").format(paper=said) if absent else said


def _json(one: _Kept, absent: bool) -> dict[str, Any]:  # noqa: FBT001  # as in `_line`
    return {
        "item": one.item.name,
        "item_id": one.item.id,
        "record_id": None if one.record is None else one.record.id,
        "done_on": None if one.record is None else str(one.record.done_on),
        **one.paper.model_dump(mode="json"),
        "missing": absent,
    }
