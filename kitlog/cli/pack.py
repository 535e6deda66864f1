"""kitlog pack: the repack of an outing; nothing is stored."""

from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, STOPPED, Call
from kitlog.cli.outing import found
from kitlog.cli.parser import Verbs, json_option, strict_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.packing.assessment import Assessment
    from kitlog.workbench.workbench import Workbench

PAPERS = ("A4", "letter")


def add(verbs: Verbs) -> None:
    """Add the verb."""
    parser = verbs.add("pack", _("what to pack for an outing, what is missing, what it weighs, what lasts"), _pack)
    parser.add_argument("file", metavar=_("OUTING.json"), nargs="?", help=_("the outing; - for standard input"))
    parser.add_argument("--outing", metavar=_("NAME"), help=_("an outing of the data file instead"))
    parser.add_argument(
        "--html", metavar=_("FILE"), type=arguments.target("--html"), help=_("also write the sheet as one HTML file")
    )
    parser.add_argument(
        "--pdf",
        metavar=_("FILE"),
        type=arguments.target("--pdf"),
        help=_("also write the sheet as a PDF file to print"),
    )
    parser.add_argument("--paper", choices=PAPERS, help=_("paper of the PDF file: A4 (unless said) or US letter"))
    json_option(parser)
    strict_option(parser)
    parser.add_argument("--schema", action="store_true", help=_("print the JSON Schema of an outing"))


def _pack(call: Call) -> int:
    if call.options.schema:
        from kitlog.files.outing_json import outing_schema

        return documents.say_json(outing_schema())
    _refuse_unclear(call)
    with call.reading() as bench:
        assessment = _assessed(call, bench)
        give(call, bench, assessment)
    return STOPPED if call.options.strict and assessment.counts.stop else DONE


def _refuse_unclear(call: Call) -> None:
    file, name = call.options.file, call.options.outing
    if file is None and name is None:
        raise InputFault("usage.missing", verb="kitlog pack", names=_("OUTING.json or --outing NAME"))
    if file is not None and name is not None:
        raise InputFault("usage.excludes", verb="kitlog pack", field="--outing", other=_("OUTING.json"))
    if call.options.paper is not None and call.options.pdf is None:
        raise InputFault("usage.missing", verb="kitlog pack", names="--pdf FILE")


def _assessed(call: Call, bench: "Workbench") -> "Assessment":
    if call.options.file is None:
        return bench.assess(found(bench, call.options.outing))
    from kitlog.files.outing_json import read_outing
    from kitlog.packing.naming import refuse_unknown

    data = documents.read(call.options.file)
    with documents.naming(call.options.file):
        outing = read_outing(data, documents.shown_name(call.options.file))
        refuse_unknown(outing, bench.library)
        return bench.assess(outing)


def give(call: Call, bench: "Workbench", assessment: "Assessment", *, text: bool = True) -> None:
    """Write the sheet of an assessment if one is asked for, and print it as JSON or, with `text`, as text."""
    names = {item.id: item.name for item in bench.items()}
    if call.options.html:
        from kitlog.files.sheet_html import sheet_html

        page = sheet_html(assessment, names, bench.library, bench.now())
        documents.write(call.options.html, page.encode("utf-8"))
    if getattr(call.options, "pdf", None):
        made = call.doors.sheet_pdf(assessment, names, bench.library, call.options.paper or PAPERS[0])
        documents.write(call.options.pdf, made)
    if getattr(call.options, "json", False):
        from kitlog.files.assessment_json import assessment_json

        documents.say_json(assessment_json(assessment, names))
    elif text:
        from kitlog.wording.repack_text import repack_text

        say([repack_text(assessment, names, bench.library).rstrip("\n")])
