"""What the two books share on the command line: the PDF file, its paper, and the text."""

from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import Call
from kitlog.cli.parser import Parser, json_option
from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.wording.book_parts import BookContent
    from kitlog.workbench.workbench import Workbench

PAPERS = ("A4", "letter")

CURRENCY = "currency"
"""The preference that names the pilot's currency, as the window keeps it."""


def book_options(parser: Parser) -> None:
    """``--pdf``, ``--paper``, ``--no-photos``, ``--currency`` and ``--json``."""
    parser.add_argument(
        "--pdf",
        metavar=_("FILE"),
        type=arguments.target("--pdf"),
        help=_("also write it as a PDF file to print, with its photos"),
    )
    parser.add_argument("--paper", choices=PAPERS, help=_("paper of the PDF file: A4 (unless said) or US letter"))
    parser.add_argument("--no-photos", action="store_true", help=_("list photos by name only"))
    parser.add_argument("--currency", metavar=_("CODE"), default="", help=_("of the values, to stand behind them"))
    json_option(parser)


def refuse_paper_alone(call: Call, verb: str) -> None:
    """A paper without a PDF file.

    Raises:
        InputFault: ``usage.missing``.
    """
    if call.options.paper is not None and call.options.pdf is None:
        raise InputFault("usage.missing", verb=verb, names="--pdf FILE")


def give(call: Call, bench: "Workbench", content: "BookContent", *, text: bool) -> None:
    """Write the PDF file if one is asked for, and print the text."""
    if call.options.pdf:
        made = call.doors.book_pdf(content, bench.paper_bytes, call.options.paper or PAPERS[0])
        documents.write(call.options.pdf, made)
    if text:
        from kitlog.wording.book_text import book_lines

        say(book_lines(content))
