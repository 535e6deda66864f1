"""The sheet as one HTML file: for the phone without a network, and for paper. No script, nothing from outside."""

from datetime import datetime

from kitlog.files.sheet_html_marks import name, text
from kitlog.files.sheet_html_parts import Parts
from kitlog.files.sheet_html_style import style
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.wording.findings import Names
from kitlog.wording.sheet_content import SheetContent, sheet_content
from kitlog.wording.translate import _
from kitlog.wording.words import ALARMS_NOBODY, STANCE

_NO_NETWORK = "default-src 'none'; style-src 'unsafe-inline'"


def sheet_html(
    assessment: Assessment, names: Names, library: Library, printed_at: datetime, language: str = "en"
) -> str:
    """The sheet of one outing.

    Args:
        assessment: of the outing.
        names: names of all items of the kit by id.
        library: for check lists and flight types.
        printed_at: when it is made, aware.
        language: language of its words, as in the ``lang`` attribute.
    """
    content = sheet_content(assessment, names, library, printed_at)
    return (
        f'<!DOCTYPE html>\n<html lang="{text(language)}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{_NO_NETWORK}">\n'
        f"<title>{text(content.title)}</title>\n<style>{style(_(STANCE))}</style>\n</head>\n<body>\n<main>\n"
        f"{_header(content)}\n{_body(Parts(content))}\n{_footer()}\n"
        "</main>\n</body>\n</html>\n"
    )


def _header(content: SheetContent) -> str:
    return (
        f"<header><h1>{text(content.title)}</h1>"
        f'<p class="counts">{text(content.counts)}</p>'
        f"<p>{name(content.name)}: {name(content.what)}</p>"
        f'<p class="quiet">{text(content.valid)}</p></header>'
    )


def _body(parts: Parts) -> str:
    before = (parts.findings(), parts.questions(), parts.packing(), parts.charging())
    return "\n".join((*before, parts.launch(), parts.mass(), parts.people()))


def _footer() -> str:
    return f"<footer><p>{text(_(STANCE))}</p><p>{text(_(ALARMS_NOBODY))}</p></footer>"
